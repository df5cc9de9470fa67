"""Music pages: staves of five lines, alone or joined in systems."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from .....ground.drawing import Canvas, Colour, Pen
from .....ground.geometry import Path, Point, Rect
from .....ground.problems import Problem, Severity
from .....ground.units import print_mm
from .....shelf_file.fields.counts import Count
from .....shelf_file.fields.measures import Margin, StaffSpacing
from .....shelf_file.fields.words import Flag, Ink
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import UnreadPart

__all__ = ["Music", "MusicPage"]

LINES = 5


class Music(UnreadPart):
    """Staves across the type area.

    Lines of manuscript paper are about 1.8 mm apart in life (common practice), 0.15 mm at 1:12.
    """

    kind: Literal["music"] = "music"
    spacing: StaffSpacing = Field(0.17, description="from line to line in a staff; printed in whole printer dots")
    gap: Margin = Field(1.0, description="clear height between staves, such as 1 mm")
    system: Count = Field(1, description="so many staves are joined by a line at their left end; 1: none")
    bars: Count = Field(0, description="bars in each staff; 0: no bar lines")
    ink: Ink = Field(Colour.from_hex("#000000"), description="colour of the lines")
    numbers: Flag = Field(False, description="page numbers, yes or no")

    def compose(self, frame: PageFrame) -> Inside:
        """Pages of staves, as many whole systems as the type area holds; numbered if asked."""
        space = max(2, round(self.spacing / frame.dot)) * frame.dot
        tops = _tops(self, frame.type_area(1), space)
        pages = frame.with_blanks()
        problems: tuple[Problem, ...] = ()
        if tops:
            pages = tuple(
                MusicPage(self, frame, frame.type_area(number), space, tops) for number in range(1, frame.pages + 1)
            )
        else:
            problems = (_too_high(self, frame, space),)
        return Inside(numbered(pages, frame) if self.numbers else pages, problems)


@dataclass(frozen=True, slots=True)
class MusicPage:
    """The staves of one page: `tops` are the heights of their uppermost lines, `space` from line to line."""

    entry: Music
    frame: PageFrame
    area: Rect
    space: float
    tops: tuple[float, ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw staves, the lines that join them, and bar lines."""
        lines = [(Point(self.area.x, y), Point(self.area.right, y)) for y in self._heights()]
        joined = max(1, self.entry.system)
        for first in range(0, len(self.tops), joined):
            system = self.tops[first : first + joined]
            foot = system[-1] - (LINES - 1) * self.space
            upright = [self.area.x] if len(system) > 1 else []
            upright += [self.area.x + bar * self.area.width / self.entry.bars for bar in range(1, self.entry.bars + 1)]
            lines += [(Point(x, system[0]), Point(x, foot)) for x in upright]
        canvas.stroke(Path.lines(lines), Pen(self.frame.line(), self.entry.ink))

    def _heights(self) -> Iterator[float]:
        for top in self.tops:
            for line in range(LINES):
                yield top - line * self.space


def _tops(entry: Music, area: Rect, space: float) -> tuple[float, ...]:
    """The upper lines of all staves, spread evenly over the height of the type area."""
    staff, joined = (LINES - 1) * space, max(1, entry.system)
    count = math.floor((area.height - staff) / (staff + entry.gap) + 1 + 1e-9)
    count -= count % joined
    if count < 1:
        return ()
    pitch = (area.height - staff) / (count - 1) if count > 1 else 0.0
    return tuple(area.top - number * pitch for number in range(count))


def _too_high(entry: Music, frame: PageFrame, space: float) -> Problem:
    joined = max(1, entry.system)
    needed = joined * (LINES - 1) * space + (joined - 1) * entry.gap
    what = "a staff" if joined == 1 else f"a system of {joined} staves"
    return Problem(
        f"{what} is {print_mm(needed, 2)} high, the type area has {print_mm(frame.type_area(1).height, 2)}: "
        "the pages stay empty",
        "write a smaller spacing, gap or system",
        Severity.WARNING,
        field=("spacing",),
    )
