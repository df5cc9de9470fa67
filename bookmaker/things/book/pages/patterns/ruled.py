"""Ruled pages, for ledgers, logs and exercise books."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from .....ground.drawing import Canvas, Colour, Pen
from .....ground.geometry import Path, Point
from .....ground.units import MM_PER_INCH
from .....shelf_file.fields.measures import Spacing
from .....shelf_file.fields.words import Flag, Ink
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import UnreadPart

__all__ = ["Ruled", "RuledPage"]

FINEST_LINE = 0.06
"""Width of a ruled line in mm, if the printer's dots are finer than that."""


class Ruled(UnreadPart):
    """Lines from edge to edge between the head and foot margins."""

    kind: Literal["ruled"] = "ruled"
    spacing: Spacing = Field(1.2, description="distance from line to line, such as 1.2 mm")
    ink: Ink = Field(Colour.from_hex("#7f9bb3"), description='colour of the lines, such as "#7f9bb3"')
    margin_line: Flag = Field(False, description="a line down the outer margin, yes or no")
    margin_ink: Ink = Field(Colour.from_hex("#c4605a"), description="colour of the margin line")
    numbers: Flag = Field(False, description="page numbers, yes or no")

    def compose(self, frame: PageFrame) -> Inside:
        """Ruled pages, numbered if asked."""
        pages = tuple(RuledPage(self, frame, number) for number in range(1, frame.pages + 1))
        return Inside(numbered(pages, frame) if self.numbers else pages)


@dataclass(frozen=True, slots=True)
class RuledPage:
    """The lines of one page."""

    entry: Ruled
    frame: PageFrame
    number: int

    def draw(self, canvas: Canvas) -> None:
        """Draw the lines, then the margin line over them."""
        width = max(FINEST_LINE, MM_PER_INCH / self.frame.resolution_dpi)
        for height in self.heights():
            line = Path.line(Point(0, height), Point(self.frame.width, height))
            canvas.stroke(line, Pen(width, self.entry.ink))
        if self.entry.margin_line:
            area = self.frame.type_area(self.number)
            x = area.right if self.frame.spine_on_left(self.number) else area.x
            line = Path.line(Point(x, 0), Point(x, self.frame.height))
            canvas.stroke(line, Pen(width, self.entry.margin_ink))

    def heights(self) -> Iterator[float]:
        """Where the lines run, from the head margin down."""
        area = self.frame.type_area(self.number)
        for step in range(1 + math.floor(area.height / self.entry.spacing + 1e-9)):
            yield area.top - step * self.entry.spacing
