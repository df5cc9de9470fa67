"""The dedication: a few lines in the middle of a page of their own."""

from __future__ import annotations

from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field

from .....ground.art import NOTHING
from .....ground.geometry import Size
from .....shelf_file.fields.words import Lines, Text
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_for, family_of, missing_glyphs
from .....typesetting.display import centred
from .....typesetting.lines.fount import Style, as_read
from .....typesetting.manuscripts.markdown import emphasised
from .....typesetting.page import Inside, PageFrame
from ..part import Part
from ..prose.sizes import too_small
from .few_lines import few_lines, flat_emphasis, typed_line_ends

__all__ = ["Dedication", "compose", "extent", "load"]

SIZE = 1 / 28
"""Size of type (the em) as a share of the page's height: 0.75 mm on a page of 21 mm."""

SUNK = 3 / 9
"""From the head of the page down to the first line, as a share of its height (common practice)."""


class Dedication(Part):
    """Whom the book is for."""

    kind: Literal["dedication"] = "dedication"
    text: Lines = Field(description="what it says, line by line; asterisks are emphasis")
    face: Text | None = Field(None, description="name of a bundled typeface, or path of a TTF or OTF file")


def load(entry: Dedication, folder: FilePath) -> Family | None:
    """The typefaces, if any are named.

    Raises:
        ShelfFileError: they cannot be used.
    """
    return family_of(entry.face, folder)


def extent(entry: Dedication, source: Family | None, frame: PageFrame) -> int:  # noqa: ARG001 (every kind is called alike)
    """One page."""
    return 1


def compose(entry: Dedication, source: Family | None, frame: PageFrame) -> Inside:
    """The lines, and blank pages after them if there are more."""
    written, area = emphasised(entry.text), frame.type_area(1)
    words = as_read("".join(written))
    family = family_for(source, frame, words)
    roman, top = family[Style.ROMAN], frame.height * (1 - SUNK)
    room = Size(area.width, top - area.y)
    few = few_lines(written, family, frame.height * SIZE, room, frame)
    page = centred(few.lines, area.centre.x, top - roman.cap_height * few.size)
    problems = (
        *missing_glyphs("dedication", roman, words),
        *flat_emphasis("dedication", written, family),
        *typed_line_ends(entry.text, "text"),
        *too_small("the dedication", roman, few.size, frame, "write fewer words", ("text",)),
    )
    return Inside((page, *(NOTHING,) * (frame.pages - 1)), problems)
