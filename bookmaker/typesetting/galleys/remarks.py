"""What the compositor has to remark on a text that was set: where it did not come out as its author may wish."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import NamedTuple

__all__ = ["Hindrance", "Plain", "Remarks", "Verses"]


class Hindrance(Enum):
    """Why a chapter has no drop capital."""

    SHORT = "is shorter than it is deep"
    NO_LETTER = "does not begin with a capital letter"
    NO_ROOM = "would have too little room beside it"
    VERSE = "is verse"
    TABLE = "is a table"
    PLACED = "stands in the middle or at the right"


class Plain(NamedTuple):
    """A chapter that begins without the drop capital it should have: its text, and why."""

    text: str
    why: Hindrance


@dataclass(slots=True)
class Verses:
    """Lines of verse: how many there are, how many are turned over, and how wide the widest of these is, in ems."""

    count: int = 0
    turned: int = 0
    widest: float = 0.0


@dataclass(slots=True)
class Remarks:
    """All of it, so far as the text has been set.

    `wide` are the words parted between letters, `short` the lines that do not reach the margin though they should,
    `placed` the lines for the middle or the right that are turned over, `unfit` the lines of the source in which
    tables begin that have no room for their columns, `long` the headings that are longer than a page, `captions` the
    size of captions, in mm, if they had to be smaller than the text.
    """

    wide: dict[str, None] = field(default_factory=dict)
    short: list[str] = field(default_factory=list)
    placed: list[str] = field(default_factory=list)
    unfit: list[int] = field(default_factory=list)
    long: list[str] = field(default_factory=list)
    captions: float | None = None
    plain: list[Plain] = field(default_factory=list)
    verses: Verses = field(default_factory=Verses)
