"""The parts a text consists of: paragraphs, headings, verses and what else prose knows."""

from __future__ import annotations

from enum import Enum
from typing import NamedTuple

__all__ = ["Passage", "Role"]


class Role(Enum):
    """What a passage is to its reader."""

    BODY = "body"
    HEADING = "heading"
    VERSE = "verse"
    ITEM = "item"
    BREAK = "break"
    PLATE = "plate"


class Passage(NamedTuple):
    """One part of a text.

    In `text` words are parted by single spaces, the lines of verse by line feeds; nothing else is white space
    but no-break spaces. Words may hold the signs of `fount.Style`. `level` is the rank of a heading, from 1;
    `inset` counts the quotations and lists a passage stands in; `mark` is the bullet or number of an item, or
    the name of a plate's picture. `line` is the line of the source where a plate is named.
    """

    text: str
    role: Role = Role.BODY
    level: int = 0
    inset: int = 0
    mark: str = ""
    line: int = 0

    @property
    def words(self) -> int:
        """How many words it has."""
        return self.text.count(" ") + self.text.count("\n") + 1 if self.text else 0
