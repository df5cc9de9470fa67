"""Books on a shelf as eyes see them: spines round in the light, joints, leaves behind the head, shadows.

In pictures only. A shade that fades is a few veils of thin ink, one within the other: no step between two is seen.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from ..ground.art import Filled, Veiled
from ..ground.drawing import WHITE, Art, Colour
from ..ground.geometry import Path, Point, Rect, polygon
from ..sheets.flat import Role
from ..sheets.piece import Piece
from ..things.book.designs.tones import mixed
from ..things.draft import Head

__all__ = ["SHADE", "head_edge", "shading", "shadow_on"]

SHADE = Colour.from_hex("#120d0a")

STEPS = 14
"""So many veils make a shade that fades: each adds less than eyes tell apart."""

TURNS = 0.3
"""Over this share of its width a spine turns away from the light, at either side."""

DEEPEST, SHINE = 0.62, 0.16
"""How much is covered at the very edge by shade, and where the light falls, by white."""

LIT = (0.3, 0.16)
"""Where on a spine the light falls, and how broad it is, as shares of its width from the left; light is from above."""

END, DEEP_END = 0.42, 0.3
"""How far from head and tail the turning of the spine is seen, in mm, and how much is covered there."""

JOINT, DEEP_JOINT = 0.07, 0.85
"""How wide the groove of a joint is, in mm, and how much is covered there."""

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


def shading(piece: Piece, seen: Rect, spine: Rect, *, lit_right: bool = False) -> Iterator[Art]:
    """What lies over the art of a piece whose spine is seen, with a little of the sides beside it; the light falls on
    its left, or on its right if the book is turned so.
    """
    if not any(panel.role is Role.SPINE and panel.rect == spine for panel in piece.flat.panels):
        return
    lit = seen.x + seen.width * (1 - LIT[0] if lit_right else LIT[0])
    yield from _fading(
        lambda out: Path.rectangle(_upright(seen, lit, out * LIT[1])), lambda out: SHINE * (1 - out**2), WHITE
    )
    yield from _fading(lambda out: _edges(seen, out * TURNS), lambda out: DEEPEST * (1 - out) ** 2.2)
    yield from _fading(lambda out: _ends(seen, out * END), lambda out: DEEP_END * (1 - out) ** 2)
    if seen.width - spine.width > 2 * JOINT:
        grooves = [Rect(x - JOINT / 2, seen.y, JOINT, seen.height) for x in (spine.x, spine.right)]
        yield Veiled(_together(grooves), SHADE, DEEP_JOINT)


def _fading(
    within: Callable[[float], Path], covered: Callable[[float], float], colour: Colour = SHADE
) -> Iterator[Veiled]:
    """Veils one within the other, the widest first: `covered` tells how much is covered from 0, where the shade is
    deepest, to 1, where it ends, and `within` what lies up to there.
    """
    seen_through = 1.0
    for step in range(STEPS, 0, -1):
        through = 1 - covered((step - 0.5) / STEPS)
        yield Veiled(within(step / STEPS), colour, 1 - through / seen_through)
        seen_through = through


def _upright(seen: Rect, middle: float, half: float) -> Rect:
    return Rect(middle - half * seen.width, seen.y, 2 * half * seen.width, seen.height)


def _edges(seen: Rect, share: float) -> Path:
    """Strips at both sides, of a share of the width."""
    wide = seen.width * share
    return _together([Rect(x, seen.y, wide, seen.height) for x in (seen.x, seen.right - wide)])


def _ends(seen: Rect, high: float) -> Path:
    """Strips at head and tail."""
    return _together([Rect(seen.x, y, seen.width, high) for y in (seen.y, seen.top - high)])


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


def shadow_on(rect: Rect, neighbour: Rect) -> Iterator[Art]:
    """The shadow on what stands there of a neighbour close at its left, which is slanting at its upper end."""

    def within(out: float) -> Path:
        far, top = rect.x + CAST * out, min(rect.top, neighbour.top)
        low = min(top, neighbour.top - SLANT * CAST * out)
        bend = Point(rect.x + (neighbour.top - top) / SLANT, top)
        upper = [Point(far, low), bend] if bend.x < far else [Point(far, top)]
        return polygon([Point(rect.x, rect.y), Point(far, rect.y), *upper, Point(rect.x, top)])

    return _fading(within, lambda out: DEEP_CAST * (1 - out) ** 1.6)
