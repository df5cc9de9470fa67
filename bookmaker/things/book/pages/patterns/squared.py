"""Squared pages, for sums, plans and games on paper."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from .....ground.drawing import Canvas, Colour, Pen
from .....ground.geometry import Path, Point
from .....shelf_file.fields.counts import Count
from .....shelf_file.fields.measures import Spacing
from .....shelf_file.fields.words import Flag, Ink
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import UnreadPart

__all__ = ["Squared", "SquaredPage"]


class Squared(UnreadPart):
    """A grid from edge to edge, the same distance both ways, centred on the page.

    The 5 mm squares of an exercise book are 0.42 mm at 1:12; the default is a little wider, so that the
    lines stay apart.
    """

    kind: Literal["squared"] = "squared"
    spacing: Spacing = Field(0.5, description="distance from line to line, such as 0.5 mm")
    ink: Ink = Field(Colour.from_hex("#8fb0c4"), description='colour of the lines, such as "#8fb0c4"')
    strong_every: Count = Field(0, description="every so many lines one is twice as wide; 0: none")
    numbers: Flag = Field(False, description="page numbers, yes or no")

    def compose(self, frame: PageFrame) -> Inside:
        """Squared pages, numbered if asked."""
        pages = (SquaredPage(self, frame),) * frame.pages
        return Inside(numbered(pages, frame) if self.numbers else pages)


@dataclass(frozen=True, slots=True)
class SquaredPage:
    """The grid of one page."""

    entry: Squared
    frame: PageFrame

    def draw(self, canvas: Canvas) -> None:
        """Draw the fine lines, then the strong ones over them."""
        width, height = self.frame.page().size
        lines = [
            *((step, Point(x, 0), Point(x, height)) for step, x in self.steps(width)),
            *((step, Point(0, y), Point(width, y)) for step, y in self.steps(height)),
        ]
        for dots, strong in ((1, False), (2, True)):
            mine = [(start, end) for step, start, end in lines if self._strong(step) is strong]
            if mine:
                canvas.stroke(Path.lines(mine), Pen(self.frame.line(dots), self.entry.ink))

    def steps(self, length: float) -> Iterator[tuple[int, float]]:
        """Where lines cross an edge of a length: their numbers, counted from the middle, and places."""
        most = math.floor(length / 2 / self.entry.spacing - 1e-9)
        for step in range(-most, most + 1):
            yield step, length / 2 + step * self.entry.spacing

    def _strong(self, step: int) -> bool:
        return self.entry.strong_every > 0 and step % self.entry.strong_every == 0
