"""The few things the drawings of the guide are made of: lines, shapes and words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ..ground.drawing import BLACK, Canvas, Colour, Pen
from ..ground.geometry import Path, Point, Transform, polygon
from ..ground.typefaces import TextLine, set_line
from ..sheets.flat import FoldKind
from ..typesetting.stand_ins import face_with

__all__ = ["EDGE", "FOLDED", "GREY", "HAIRLINE", "PAPER", "TRIMMED", "Shape", "Word", "chain", "line", "word"]

GREY = Colour(0.4, 0.4, 0.4)
PAPER = Colour(0.93, 0.93, 0.93)
HAIRLINE = Pen(0.1, GREY)
EDGE = Pen(0.25)
FOLDED = {
    FoldKind.MOUNTAIN: Pen(0.2, BLACK, (1.6, 0.5, 0.4, 0.5)),
    FoldKind.VALLEY: Pen(0.2, BLACK, (0.8, 0.6)),
}
"""Folds as on the sheets, in longer dashes: mountains in dash and dot, valleys in short dashes."""

TRIMMED = Pen(0.25, BLACK, (0.25, 0.4))


@dataclass(frozen=True, slots=True)
class Shape:
    """A path, filled or drawn along or both."""

    path: Path
    pen: Pen | None = EDGE
    ground: Colour | None = None

    def draw(self, canvas: Canvas) -> None:
        """Draw it, the ground first."""
        if self.ground is not None:
            canvas.fill(self.path, self.ground)
        if self.pen is not None:
            canvas.stroke(self.path, self.pen)


@dataclass(frozen=True, slots=True)
class Word:
    """A line of text with its left end at a point, turned counter-clockwise by so many quarters."""

    text: TextLine
    at: Point
    colour: Colour = BLACK
    quarters: int = 0

    def draw(self, canvas: Canvas) -> None:
        """Set it."""
        if not self.quarters:
            canvas.text(self.text, self.at, self.colour)
            return
        with canvas.placed(Transform.quarter_turn(self.quarters).moved(*self.at)):
            canvas.text(self.text, Point(0.0, 0.0), self.colour)


def line(start: Point, end: Point, pen: Pen = EDGE) -> Shape:
    """One straight line."""
    return Shape(Path.line(start, end), pen)


def chain(points: Sequence[Point], pen: Pen = EDGE) -> Shape:
    """Straight lines from point to point."""
    closed = polygon(points).commands
    return Shape(Path(closed[:-1]), pen)


def word(text: str, middle: Point, size: float = 2.3, *, room: float = 1e9, upright: bool = False) -> Word:
    """A text centred on a point, set smaller if it is longer than its room; `upright` reads downwards."""
    face = face_with(text, "sans")
    set_text = set_line(face, size, text)
    if set_text.width > room:
        size *= room / set_text.width
        set_text = set_line(face, size, text)
    rise = face.cap_height * size / 2
    if upright:
        return Word(set_text, middle.plus(-rise, set_text.width / 2), quarters=3)
    return Word(set_text, middle.plus(-set_text.width / 2, -rise))
