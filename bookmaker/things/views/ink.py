"""The pens and greys of the drawings of the guide, and the few shapes they are made of."""

from __future__ import annotations

from collections.abc import Sequence

from ...ground.art import Filled, Group, Stroked, Written
from ...ground.drawing import BLACK, Colour, Pen
from ...ground.geometry import Path, Point, Rect, polygon
from ...ground.typefaces import set_line
from ...sheets.flat import FoldKind
from ...typesetting.stand_ins import face_with

__all__ = [
    "EDGE",
    "FOLDED",
    "GREY",
    "HAIRLINE",
    "PAPER",
    "PERFORATED",
    "SCORED",
    "TRIMMED",
    "beside",
    "box",
    "chain",
    "line",
    "word",
]

GREY = Colour(0.4, 0.4, 0.4)
PAPER = Colour(0.93, 0.93, 0.93)
HAIRLINE = Pen(0.1, GREY)
EDGE = Pen(0.25)
FOLDED = {
    FoldKind.MOUNTAIN: Pen(0.2, BLACK, (1.6, 0.5, 0.4, 0.5)),
    FoldKind.VALLEY: Pen(0.2, BLACK, (0.8, 0.6)),
}
"""Folds as on the sheets, in longer dashes: mountains in dash and dot, valleys in short dashes."""

SCORED = Pen(0.2, BLACK, (3.0, 0.6))
PERFORATED = Pen(0.3, BLACK, (0.3, 0.7))
"""Scores that stay flat in long dashes, perforations in dots apart."""

TRIMMED = Pen(0.25, BLACK, (0.25, 0.4))


def line(start: Point, end: Point, pen: Pen = EDGE) -> Stroked:
    """One straight line."""
    return Stroked.line(start, end, pen)


def box(rect: Rect, ground: Colour | None = None, pen: Pen = EDGE) -> Group:
    """A rectangle, on a ground or without one."""
    outline = Path.rectangle(rect)
    return Group((*((Filled(outline, ground),) if ground else ()), Stroked(outline, pen)))


def chain(points: Sequence[Point], pen: Pen = EDGE) -> Stroked:
    """Straight lines from point to point."""
    closed = polygon(points).commands
    return Stroked(Path(closed[:-1]), pen)


def word(text: str, middle: Point, size: float = 2.3, *, room: float = 1e9, upright: bool = False) -> Written:
    """A text centred on a point, set smaller if it is longer than its room; `upright` reads downwards."""
    face = face_with(text, "sans")
    set_text = set_line(face, size, text, room)
    rise = face.cap_height * set_text.size / 2
    if upright:
        return Written(set_text, middle.plus(-rise, set_text.width / 2), quarters=3)
    return Written(set_text, middle.plus(-set_text.width / 2, -rise))


def beside(text: str, at: Point, size: float = 2.3, room: float = 1e9) -> Written:
    """A text that begins at a point, on its middle height; set smaller if it is longer than its room."""
    centred = word(text, at, size, room=room)
    return Written(centred.line, centred.at.plus(centred.line.width / 2, 0))
