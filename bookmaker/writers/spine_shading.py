"""Books on a shelf as eyes see them: spines round in the light, joints, leaves behind the head, shadows.

In pictures only. Our art knows no transparent ink, so a shade is a row of upright bars finer than a screen shows, as
engravers make it: the wider the bars, the darker the tone.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..ground.art import Filled
from ..ground.drawing import WHITE, Art, Colour
from ..ground.geometry import Path, Rect
from ..sheets.flat import Role
from ..sheets.piece import Piece
from ..things.book.designs.tones import mixed
from ..things.draft import Head

__all__ = ["SHADE", "head_edge", "shading", "shadow_on"]

SHADE = Colour.from_hex("#120d0a")

PITCH = 0.042
"""From bar to bar in mm: a dot at 600 to the inch, so that no bar is seen as one, even at 400 % at 150."""

TURNS = 0.3
"""Over this share of its width a spine turns away from the light, at either side."""

DEEPEST, SHINE = 0.62, 0.2
"""How much is covered at the very edge by shade, and where the light falls, by white."""

LIT = (0.3, 0.16)
"""Where on a spine the light falls, and how broad it is, as shares of its width from the left."""

END, DEEP_END = 0.42, 0.3
"""How far from head and tail the turning of the spine is seen, in mm, and how much is covered there."""

JOINT = 0.07
"""How wide the groove of a joint is, in mm."""

LOOKED_DOWN, HIGHEST_HEAD = 0.035, 0.8
"""Eyes look a little down on a shelf: of what lies behind a head so much of its depth is seen, but no more, in mm."""

HEAD_STEPS, DARKEST = 5, 0.75
"""Towards the back of the shelf it is darker, in so many steps, up to that share of shade."""

RIDGE = 0.12
"""The headcap hides so much of what is seen of the leaves."""

LEAF = 0.16
"""From line to line of the leaves, in mm: a few at a time are seen as one."""

CAST, DEEP_CAST = 0.5, 0.55
"""How far the shadow of a book reaches on its neighbour, in mm, and how much is covered close to it."""

SLANT = 1.2
"""The light comes from so much above for each mm from the left."""


def shading(piece: Piece, seen: Rect, spine: Rect) -> Iterator[Art]:
    """What lies over the art of a piece whose spine is seen, with a little of the sides beside it."""
    if not any(panel.role is Role.SPINE and panel.rect == spine for panel in piece.flat.panels):
        return
    bars, light = list[Rect](), list[Rect]()
    count = max(8, round(seen.width / PITCH))
    step = seen.width / count
    for number in range(count):
        at = (number + 0.5) / count
        aside = min(at, 1 - at) / TURNS
        if aside < 1:
            bars.append(_bar(seen, seen.x + step * number, step * DEEPEST * (1 - aside) ** 2.2))
        away = abs(at - LIT[0]) / LIT[1]
        if away < 1:
            light.append(_bar(seen, seen.x + step * number, step * SHINE * (1 - away**2)))
    for x in (spine.x, spine.right):
        if seen.width - spine.width > 2 * JOINT:
            bars.append(Rect(x - JOINT / 2, seen.y, JOINT, seen.height))
    yield Filled(_together(light), WHITE)
    yield Filled(_together([*bars, *_ends(seen)]), SHADE)


def _bar(seen: Rect, x: float, width: float) -> Rect:
    return Rect(x, seen.y, width, seen.height)


def _ends(seen: Rect) -> Iterator[Rect]:
    """Level bars at head and tail, denser towards the ends."""
    rows = round(END / PITCH)
    for row in range(rows):
        high = PITCH * DEEP_END * (1 - row / rows) ** 2
        yield Rect(seen.x, seen.y + PITCH * row, seen.width, high)
        yield Rect(seen.x, seen.top - PITCH * row - high, seen.width, high)


def _together(rects: list[Rect]) -> Path:
    return Path(tuple(command for rect in rects for command in Path.rectangle(rect).commands))


def head_edge(head: Head, rect: Rect, deep: float) -> Iterator[Art]:
    """The edges of the leaves behind the head of a book that stands there, between its boards, darker to the back."""
    high = min(LOOKED_DOWN * deep, HIGHEST_HEAD)
    board = min(head.board, rect.width / 3)
    leaves = range(1, int((rect.width - 2 * board) / LEAF))
    for step in range(HEAD_STEPS):
        share = (step + 0.6) / HEAD_STEPS * DARKEST
        # each step goes on under the next one: no seam is seen between them
        strip = Rect(rect.x, rect.top + high * step / HEAD_STEPS, rect.width, high * (1 - step / HEAD_STEPS))
        yield Filled.box(strip, mixed(head.boards, SHADE, share))
        inner = strip.grown(-board, -high * RIDGE if step == 0 else 0.0, -board, 0.0)
        yield Filled.box(inner, mixed(head.leaves, SHADE, share))
        lines = [Rect(inner.x + LEAF * leaf, inner.y, LEAF / 4, inner.height) for leaf in leaves]
        yield Filled(_together(lines), mixed(head.leaves, SHADE, share + (1 - share) * 0.35))


def shadow_on(rect: Rect, neighbour: Rect) -> Art:
    """The shadow on what stands there of a neighbour close at its left, which is slanting at its upper end."""
    count = round(CAST / PITCH)
    bars = [
        Rect(rect.x + PITCH * bar, rect.y, PITCH * DEEP_CAST * (1 - bar / count) ** 1.6, high)
        for bar in range(count)
        if (high := min(rect.top, neighbour.top - SLANT * PITCH * bar) - rect.y) > 0
    ]
    return Filled(_together(bars), SHADE)
