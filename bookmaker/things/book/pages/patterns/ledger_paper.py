"""Ledger paper: ruled lines, columns for dates and sums, a double rule at the head."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from .....ground.art import Group, Written
from .....ground.drawing import Canvas, Colour, Pen
from .....ground.geometry import Path, Point
from .....ground.typefaces import set_line
from .....shelf_file.fields.counts import Count
from .....shelf_file.fields.measures import Spacing
from .....shelf_file.fields.words import Flag, Ink
from .....typesetting.page import NUMBER_SIZE, Inside, PageFrame
from ..part import UnreadPart

__all__ = ["LedgerPaper", "LedgerPaperPage"]

HEAD = 1 / 6
"""Share of the page's height above the double rule."""

DATES = (1 / 12, 1 / 7)
"""Where the lines after month and day stand, as shares of the page's width (common practice)."""

WIDEST_SUMS = 0.55
"""The columns of sums take at most this share of the page's width."""

SUM_COLUMN = 1 / 8
"""Width of a column of sums as a share of the page's width, while there is room."""


class LedgerPaper(UnreadPart):
    """Lines to write on, a column for dates where they begin, columns for sums where they end."""

    kind: Literal["ledger paper"] = "ledger paper"
    spacing: Spacing = Field(0.7, description="distance from line to line, such as 0.7 mm")
    ink: Ink = Field(Colour.from_hex("#9fb6c6"), description="colour of the lines to write on")
    columns: Count = Field(3, description="columns for sums, where the lines end")
    column_ink: Ink = Field(Colour.from_hex("#b8524a"), description="colour of the lines between columns")
    numbers: Flag = Field(False, description="page numbers, yes or no")

    def compose(self, frame: PageFrame) -> Inside:
        """Ledger paper, numbered if asked."""
        page = LedgerPaperPage(self, frame)
        if not self.numbers:
            return Inside((page,) * frame.pages)
        return Inside(tuple(Group((page, _number_in_head(frame, number))) for number in range(1, frame.pages + 1)))


@dataclass(frozen=True, slots=True)
class LedgerPaperPage:
    """The lines of one page."""

    entry: LedgerPaper
    frame: PageFrame

    def draw(self, canvas: Canvas) -> None:
        """Draw the lines to write on, the columns over them, and the rules at the head."""
        frame, (width, height) = self.frame, self.frame.page().size
        top = height * (1 - HEAD)
        fine, double = frame.line(), 2 * frame.line()
        below = range(1, 1 + math.floor(top / self.entry.spacing - 1e-9))
        rows = [top - row * self.entry.spacing for row in below]
        if rows:
            canvas.stroke(Path.lines([(Point(0, y), Point(width, y)) for y in rows]), Pen(fine, self.entry.ink))
        # a double line parts what was bought from what it cost
        sums = list(self.sums())
        columns = [*self.dates(), *sums[1:]]
        columns += [x + aside for x in sums[:1] for aside in (-double / 2, double / 2)]
        lines = [(Point(x, 0), Point(x, top)) for x in columns]
        lines += [(Point(0, y), Point(width, y)) for y in (top, top + double)]
        canvas.stroke(Path.lines(lines), Pen(fine, self.entry.column_ink))

    def dates(self) -> list[float]:
        """Where month and day end, in the order of reading."""
        return self._across(share * self.frame.width for share in DATES)

    def sums(self) -> list[float]:
        """Where the columns of sums begin, in the order of reading."""
        count, width = self.entry.columns, self.frame.width
        share = min(SUM_COLUMN, WIDEST_SUMS / count) if count else 0.0
        return self._across(width * (1 - column * share) for column in range(count, 0, -1))

    def _across(self, distances: Iterable[float]) -> list[float]:
        """Places so far from the edge at which lines begin."""
        return [self.frame.width - x if self.frame.right_to_left else x for x in distances]


def _number_in_head(frame: PageFrame, number: int) -> Written:
    """A page number at the outer edge of the head, for at the foot it would stand on the lines."""
    typeface = frame.number_face()
    line = set_line(typeface, min(frame.height * NUMBER_SIZE, frame.width / 9), str(frame.folio(number)))
    aside = frame.width / 18
    x = frame.width - aside - line.width if frame.spine_on_left(number) else aside
    return Written(line, Point(x, frame.height * (1 - HEAD / 2) - typeface.cap_height * line.size / 2))
