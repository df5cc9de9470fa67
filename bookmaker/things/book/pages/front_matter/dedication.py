"""The dedication: a few lines in the middle of a page of their own."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from .....ground.geometry import Size
from .....shelf_file.fields.words import Lines
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_for
from .....typesetting.display import centred
from .....typesetting.lines.fount import Style, as_read
from .....typesetting.manuscripts.markdown import emphasised
from .....typesetting.page import Inside, PageFrame
from .few_lines import few_lines, few_lines_problems
from .lettered import LetteredPart

__all__ = ["Dedication"]

SIZE = 1 / 28
"""Size of type (the em) as a share of the page's height: 0.75 mm on a page of 21 mm."""

SUNK = 3 / 9
"""From the head of the page down to the first line, as a share of its height (common practice)."""


class Dedication(LetteredPart):
    """Whom the book is for."""

    kind: Literal["dedication"] = "dedication"
    text: Lines = Field(description="what it says, line by line; asterisks are emphasis")

    def compose(self, typefaces: Family | None, frame: PageFrame) -> Inside:
        """The lines, and blank pages after them if there are more."""
        written, area = emphasised(self.text), frame.type_area(1)
        family = family_for(typefaces, frame, as_read("".join(written)))
        roman, top = family[Style.ROMAN], frame.height * (1 - SUNK)
        room = Size(area.width, top - area.y)
        few = few_lines(written, family, frame.upright.height * SIZE, room, frame)
        page = centred(few.lines, area.centre.x, top - roman.cap_height * few.size)
        problems = few_lines_problems("dedication", written, self.text, few.size, family, frame)
        return Inside(frame.with_blanks(page), problems)
