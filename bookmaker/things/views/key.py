"""What the lines and signs of all drawings mean, side by side."""

from __future__ import annotations

from collections.abc import Iterator

from ...ground.art import Group, Stroked
from ...ground.drawing import Art
from ...ground.geometry import Path, Point, Rect, Size, Transform
from ...sheets.flat import FoldKind
from ..making import Figure
from .ink import EDGE, FOLDED, PERFORATED, SCORED, TRIMMED, beside, line
from .signs import HIDDEN, INNER_THREAD, THREAD, arrow, glued, hole, ring

__all__ = ["key_of_signs"]

CELL = Size(36.0, 5.5)
"""The room of a sign and its meaning, in mm."""

LONG = 12.0
"""How long a line is shown, in mm."""

LINES = (
    (EDGE, "edge, or cut"),
    (HIDDEN, "edge behind"),
    (FOLDED[FoldKind.MOUNTAIN], "mountain fold"),
    (FOLDED[FoldKind.VALLEY], "valley fold"),
    (SCORED, "score that stays flat"),
    (PERFORATED, "perforation"),
    (TRIMMED, "trimmed at the end"),
    (THREAD, "thread, wire"),
    (INNER_THREAD, "thread inside"),
)


def key_of_signs(room: float) -> Figure:
    """The signs in as many columns as the room takes."""
    across = max(1, int(room // CELL.width))
    shown = list(_signs())
    rows = -(-len(shown) // across)
    size = Size(min(room, across * CELL.width), rows * CELL.height)
    art: list[Art] = []
    for place, (sign, meaning) in enumerate(shown):
        at = Point(place // rows * CELL.width, size.height - (place % rows + 0.5) * CELL.height)
        art += [
            Group((sign,), Transform.move(*at)),
            beside(meaning, at.plus(LONG + 2.0, 0), 2.1, CELL.width - LONG - 3.0),
        ]
    return Figure(Group(tuple(art)), size)


def _signs() -> Iterator[tuple[Art, str]]:
    """Each sign around the middle of its left end, and what it means."""
    for pen, meaning in LINES:
        yield line(Point(0, 0), Point(LONG, 0), pen), meaning
    yield arrow(Point(1.0, 0), Point(LONG, 0)), "this way"
    yield ring("1", Point(LONG / 2, 0)), "in this order"
    yield hole(Point(LONG / 2, 0)), "hole"
    box = Rect(2.0, -1.6, LONG - 4.0, 3.2)
    yield Group((glued(box.corners), Stroked(Path.rectangle(box), EDGE))), "glue"
