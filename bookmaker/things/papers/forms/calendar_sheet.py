"""Calendars: a month or a whole year, under a picture or a design."""

from __future__ import annotations

from calendar import Calendar
from collections.abc import Iterator, Sequence
from typing import Literal

from pydantic import Field

from ....ground.art import Stroked
from ....ground.drawing import Art, Colour, Pen
from ....ground.geometry import Path, Point, Rect
from ....shelf_file.fields.counts import Month, Year
from ....shelf_file.fields.words import Ink
from ...book.designs.design import TypefaceName
from ...lettering import fitted, line_of
from ..entry import Leaf, PaperEntry, Press
from ..face import FaceEntry, SetFace, dress_face, together

__all__ = ["MONTHS", "CalendarSheet", "weeks_of"]

MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
          "November", "December")  # fmt: skip
DAYS = ("Mo", "Tu", "We", "Th", "Fr", "Sa", "Su")

INK, RED = Colour.from_hex("#22201d"), Colour.from_hex("#a8322b")

PICTURE = 0.52
"""The picture takes such a share of the height."""


def weeks_of(year: int, month: int, *, sunday_first: bool = False) -> list[list[int]]:
    """The days of a month week by week, 0 where a day is of another month.

    >>> weeks_of(2021, 2)
    [[1, 2, 3, 4, 5, 6, 7], [8, 9, 10, 11, 12, 13, 14], [15, 16, 17, 18, 19, 20, 21], [22, 23, 24, 25, 26, 27, 28]]
    """
    return Calendar(6 if sunday_first else 0).monthdayscalendar(year, month)


class CalendarSheet(PaperEntry):
    """A calendar to hang on a wall."""

    kind: Literal["calendar"] = "calendar"
    year: Year = Field(description="which year it shows")
    month: Month | None = Field(None, description="which month, from 1 to 12; the whole year, if not given")
    week: Literal["from Monday", "from Sunday"] = Field("from Monday", description="with which day a week begins")
    picture: FaceEntry = Field(FaceEntry(), description="what stands over the days; nothing, if not given")
    back: FaceEntry = Field(FaceEntry(), description="what its back shows")
    holidays: Ink = Field(RED, description="colour of Sundays")
    figures: TypefaceName = Field("didone", description="typeface of its words and figures")

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """The picture and the days."""
        area = Rect(0, 0, *press.size)
        reach = area.grown(press.bleed)
        days, picture = area, SetFace()
        if "picture" in self.model_fields_set:
            low = area.height * (1 - PICTURE)
            upper = Rect(0, low, area.width, area.height - low)
            over = Rect(reach.x, low, reach.width, reach.top - low)
            picture = dress_face(press.face("picture"), upper, over, press.words, press.dpi, self.paper)
            days = area._replace(height=low)
        back = dress_face(press.face("back"), area, reach, press.words, press.dpi, self.paper).told_of("back")
        inner = days.grown(-min(days.size) * 0.08)
        shown = SetFace(tuple(self._month(self.month, inner) if self.month else self._months(inner)))
        return [(together(picture.told_of("picture"), shown), back) for _ in leaves]

    def _months(self, area: Rect) -> Iterator[Art]:
        """Twelve of them under the year, in as many columns as the area is wide for."""
        head = area.height * 0.1
        yield fitted(str(self.year), self.figures, Rect(area.x, area.top - head, area.width, head), INK)
        room = area.grown(0, 0, 0, -head * 1.15)
        across = 3 if room.width < room.height * 1.1 else 4 if room.width < room.height * 2.2 else 6
        down = 12 // across
        wide, high = room.width / across, room.height / down
        for n in range(12):
            box = Rect(room.x + n % across * wide, room.top - (n // across + 1) * high, wide, high)
            yield from self._month(n + 1, box.grown(-wide * 0.06, -high * 0.05, -wide * 0.06, -high * 0.05), small=True)

    def _month(self, month: int, area: Rect, *, small: bool = False) -> Iterator[Art]:
        """The name of a month, the days of the week, the days."""
        weeks = weeks_of(self.year, month, sunday_first=self.week == "from Sunday")
        name = MONTHS[month - 1] if small else f"{MONTHS[month - 1]} {self.year}"
        head = area.height * 0.17
        yield fitted(name, self.figures, Rect(area.x, area.top - head, area.width, head * 0.9), INK)
        wide, high = area.width / 7, (area.height - head) / 7
        size = min(high * 0.72, wide * 0.62)
        days = (*DAYS[-1:], *DAYS[:-1]) if self.week == "from Sunday" else DAYS
        rows = [days, *[[str(day) if day else "" for day in week] for week in weeks]]
        for row, cells in enumerate(rows):
            y = area.top - head - (row + 0.75) * high
            for column, text in enumerate(cells):
                if text:
                    ink = self.holidays if days[column] == "Su" else INK
                    place = Point(area.x + (column + 0.5) * wide, y)
                    yield line_of(text, self.figures, size * (0.8 if row == 0 else 1.0), place, ink, align="middle")
        y = area.top - head - high
        yield Stroked(Path.line(Point(area.x, y), Point(area.right, y)), Pen(0.05, INK))
