"""Spines on a shelf seen as round: light across them, the joints beside them, head and tail. In pictures only.

Our art knows no transparent ink, so a shade is a row of upright bars finer than a screen shows, as engravers make it:
the wider the bars, the darker the tone.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..ground.art import Filled
from ..ground.drawing import WHITE, Art, Colour
from ..ground.geometry import Path, Rect
from ..sheets.flat import Role
from ..sheets.piece import Piece

__all__ = ["shading"]

SHADE = Colour.from_hex("#120d0a")

PITCH = 0.06
"""From bar to bar in mm: at 300 dots to the inch a dot is wider."""

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
