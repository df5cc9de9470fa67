"""The inks of a sheet's marks: pens, lines, notes and blots, in nominal millimetres."""

from __future__ import annotations

from dataclasses import dataclass

from ...ground.drawing import WHITE, Canvas, Colour, Pen
from ...ground.geometry import Path, Point, Rect, Transform, polygon
from ...ground.typefaces import TextLine
from ..flat import FoldKind

__all__ = ["CROSS", "CUT", "FOLD_PENS", "TRIM", "Blot", "Casing", "Line", "Note"]

INK = Colour(0.25, 0.25, 0.25)
CUT = Pen(0.12, INK)
"""Cut marks: a thin unbroken line."""

CASING = 0.4
"""White beside a cut line that crosses print, on the waste, so that the line shows on dark colours too: in mm."""

FOLD_PENS = {
    FoldKind.MOUNTAIN: Pen(0.15, INK, (0.5, 0.15, 0.12, 0.15)),
    FoldKind.VALLEY: Pen(0.15, INK, (0.25, 0.2)),
}
"""Fold marks: mountains in dash and dot, valleys in short dashes."""

TRIM = Pen(0.12, INK, (0.12, 0.12))
"""Trim marks, dotted, in the paper that is trimmed off."""

CROSS = Pen(0.15)
"""Alignment crosses of a cutting machine."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line drawn with one pen."""

    start: Point
    end: Point
    pen: Pen

    def draw(self, canvas: Canvas) -> None:
        """Draw it."""
        canvas.stroke(Path.line(self.start, self.end), self.pen)


@dataclass(frozen=True, slots=True)
class Note:
    """A line of text at a point, turned counter-clockwise with its piece if that lies turned."""

    line: TextLine
    at: Point
    turned: bool = False

    def draw(self, canvas: Canvas) -> None:
        """Set it."""
        if not self.turned:
            canvas.text(self.line, self.at, INK)
            return
        with canvas.placed(Transform.quarter_turn().moved(*self.at)):
            canvas.text(self.line, Point(0.0, 0.0), INK)


@dataclass(frozen=True, slots=True)
class Blot:
    """A filled shape."""

    shape: Path

    def draw(self, canvas: Canvas) -> None:
        """Fill it."""
        canvas.fill(self.shape, INK)


@dataclass(frozen=True, slots=True)
class Casing:
    """White along some edges of an outline that runs counter-clockwise, outside of it: none falls on the piece."""

    edges: tuple[tuple[Point, Point], ...]
    outline: tuple[Point, ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw along the edges, clipped to the waste."""
        around = Rect.around(self.outline).grown(CASING).corners
        # The outer rectangle runs the other way, so that the piece is the hole in it.
        waste = Path((*polygon(around[::-1]).commands, *polygon(self.outline).commands))
        with canvas.placed(Transform(), waste):
            for begin, end in self.edges:
                canvas.stroke(Path.line(begin, end), Pen(2 * CASING, WHITE))
