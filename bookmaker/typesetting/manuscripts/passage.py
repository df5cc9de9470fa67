"""The parts a text consists of: paragraphs, headings, verses and what else prose knows."""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

__all__ = ["AFLOAT", "INDENT_SIGN", "Passage", "Role"]

INDENT_SIGN = "\u2002"
"""Each sets a line of verse in by half an em; they stand before its first word."""


class Role(StrEnum):
    """What a passage is to its reader."""

    BODY = "body"
    HEADING = "heading"
    VERSE = "verse"
    ITEM = "item"
    BREAK = "break"
    PLATE = "plate"
    FIGURE = "figure"
    TABLE = "table"
    NOTE = "note"
    PLACED = "placed"
    MOTTO = "motto"


AFLOAT = (Role.PLATE, Role.FIGURE)
"""Pictures, which may find their place further on: the text goes on as if they were not there."""


class Passage(NamedTuple):
    """One part of a text.

    In `text` words are parted by single spaces, the lines of verse and mottoes and the rows of tables by line
    feeds, the cells of a row by tabs; nothing else is white space but no-break spaces. Words may hold the signs of
    `fount.Style`.
    `level` is the rank of a heading, from 1; `inset` counts the quotations and lists a passage stands in; `mark` is
    the bullet or number of an item or a note, the name of a plate's picture, or one letter for each column of a
    table: l, c or r, as its cells keep left, to the middle or right; for lines `PLACED` there c or r. `line` is the
    line of the source where a plate is named or a table begins. What stands in is `apart` if it begins right after
    another quotation or list. A chapter is `within` a part if it stands under the title of one. `shape`
    is how many times as high as wide the picture of a figure is, `short` the running title of a chapter.
    """

    text: str
    role: Role = Role.BODY
    level: int = 0
    inset: int = 0
    mark: str = ""
    line: int = 0
    apart: bool = False
    within: bool = False
    shape: float = 0.0
    short: str = ""

    @property
    def words(self) -> int:
        """How many words it has."""
        between = sum(map(self.text.count, (" ", "\n", "\t")))
        return between + 1 if self.text else 0
