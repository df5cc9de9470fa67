"""The colophon: a few lines at the end that say what the book is, how it is set, and who made it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from .....ground.art import NOTHING, Group
from .....ground.drawing import BLACK, Art
from .....ground.geometry import Rect, Size
from .....ground.typefaces import Typeface
from .....shelf_file.fields.words import Flag, Lines, Title
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_for
from .....typesetting.display import centred
from .....typesetting.lines.fount import Style, as_read
from .....typesetting.manuscripts.markdown import emphasised
from .....typesetting.page import Inside, PageFrame, numbered
from .few_lines import FewLines, few_lines, few_lines_problems
from .lettered import LetteredPart
from .phrases import phrases_in, spoken
from .title_page import SwelledRule

__all__ = ["Colophon"]

SIZE = 1 / 34
"""Size of type (the em) as a share of the page's height: 0.62 mm on a page of 21 mm."""

MOST_ROOM = 0.9
"""Share of the type area's height that it takes at the most."""


class Colophon(LetteredPart):
    """A colophon, on the last page of its part."""

    kind: Literal["colophon"] = "colophon"
    text: Lines | None = Field(None, description="what it says, line by line, in place of title, author and shelf")
    imprint: Title | None = Field(None, description="who brings the book out")
    place: Title | None = Field(None, description="where")
    year: Title | None = Field(None, description="when")
    numbers: Flag = Field(False, description="page numbers, yes or no")

    def compose(self, typefaces: Family | None, frame: PageFrame) -> Inside:
        """The colophon on the last page, blank ones before it if there are more."""
        area = frame.type_area(frame.pages)
        imprint = ", ".join(part for part in (self.imprint, self.place, self.year) if part)
        own = [*(emphasised(self.text) if self.text else []), *(emphasised(imprint) if imprint else [])]
        words = "" if self.text else frame.book.title + frame.book.author
        family = family_for(typefaces, frame, as_read("".join(own)) + words)
        roman = family[Style.ROMAN]
        written = own if self.text else [*_usual(frame, roman), *own]
        room = Size(area.width, area.height * MOST_ROOM)
        few = few_lines(written, family, frame.upright.height * SIZE, room, frame)
        page = _set(few, area, roman.cap_height, frame)
        problems = few_lines_problems("colophon", written, self.text or "", few.size, family, frame)
        pages: tuple[Art, ...] = (*(NOTHING,) * (frame.pages - 1), page)
        return Inside(numbered(pages, frame, roman) if self.numbers else pages, problems)


def _usual(frame: PageFrame, face: Typeface) -> Iterator[str]:
    """Title, author, shelf and the typefaces of the text, or else that of the colophon itself.

    They are sentences where the language of the book is known and we speak it, else the bare words. Nobody
    wrote shelf and typefaces for this page: they are left out if the face of the colophon lacks their letters.
    """
    book, names = frame.book, ", ".join(frame.type.names) if frame.type else face.name
    said = phrases_in(frame.type.language if frame.type else spoken("en", book.title))
    yield book.title
    if book.author:
        yield said.by.format(book.author) if said else book.author
    further = (said.made_for.format(book.shelf), said.set_in.format(names)) if said else (book.shelf, names)
    yield from (line for line in further if not face.missing(line))


def _set(few: FewLines, area: Rect, cap_height: float, frame: PageFrame) -> Art:
    """The lines at the foot of the type area, under a short swelled rule."""
    top = area.y + few.height
    rule = Rect(area.centre.x - area.width / 12, top + few.size / 2, area.width / 6, 2 * frame.line())
    lines = centred(few.lines, area.centre.x, top - cap_height * few.size)
    return Group((SwelledRule(rule, BLACK), lines))
