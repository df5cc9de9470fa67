"""Bindings seen from the side, drawn for a spine on the left and mirrored for books that read the other way."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Self

from ...ground.art import Filled, Group, Stroked, Written
from ...ground.drawing import Colour, Pen
from ...ground.geometry import Point, Rect, polygon
from .ink import EDGE, box, chain, line, word

__all__ = ["GLUE", "SHEETS", "SideView"]

WIDEST = 96.0
"""How wide a view is drawn at most, in mm."""

GLUE = Colour(0.8, 0.8, 0.8)
SHEETS = Pen(0.2)
"""How glue and the edges of sheets are drawn."""


@dataclass(frozen=True, slots=True)
class SideView:
    """Where things stand in a side view `width` mm wide: x counts from the spine, whichever hand it is on."""

    width: float
    right_to_left: bool

    @classmethod
    def within(cls, room: float, *, right_to_left: bool) -> Self:
        """A view in a room so many mm wide; wider than most paper is high it would show no more."""
        return cls(min(room, WIDEST), right_to_left)

    def at(self, x: float, y: float) -> Point:
        """A point `x` mm from the spine."""
        return Point(self.width - x if self.right_to_left else x, y)

    def line(self, start: tuple[float, float], end: tuple[float, float], pen: Pen = EDGE) -> Stroked:
        """A line between two points."""
        return line(self.at(*start), self.at(*end), pen)

    def box(self, x: float, y: float, wide: float, high: float, ground: Colour | None = None) -> Group:
        """A rectangle, its corner nearest to spine and foot at (x, y)."""
        return box(Rect.around([self.at(x, y), self.at(x + wide, y + high)]), ground)

    def chain(self, points: Iterable[tuple[float, float]], pen: Pen = EDGE) -> Stroked:
        """Lines from point to point."""
        return chain([self.at(*point) for point in points], pen)

    def filled(self, points: Iterable[tuple[float, float]], ground: Colour) -> Filled:
        """A filled shape without an edge."""
        return Filled(polygon([self.at(*point) for point in points]), ground)

    def word(self, text: str, x: float, y: float, size: float = 2.1, room: float = 1e9) -> Written:
        """Text centred on a point, set smaller if it is longer than its room."""
        return word(text, self.at(x, y), size, room=room)
