"""What the compositor has to remark on a text that was set: where it did not come out as its author may wish."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from itertools import chain
from typing import NamedTuple

__all__ = ["UNREMARKABLE", "Hindrance", "Plain", "Remarks", "Verse", "together"]


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


class Verse(NamedTuple):
    """A line of verse: how wide it is, in ems, and of how many signs."""

    width: float
    signs: int


class Remarks(NamedTuple):
    """All of it about some matter.

    `wide` are the words parted between letters, `short` the lines that do not reach the margin though they should,
    `placed` the lines for the middle or the right that are turned over, `unfit` the lines of the source in which
    tables begin that have no room for their columns, `long` the headings that are longer than a page, `captions` the
    size of captions, in mm, that had to be smaller than the text. `verses` has each line of verse that is turned over,
    and None for every other.
    """

    wide: tuple[str, ...] = ()
    short: tuple[str, ...] = ()
    placed: tuple[str, ...] = ()
    unfit: tuple[int, ...] = ()
    long: tuple[str, ...] = ()
    captions: tuple[float, ...] = ()
    plain: tuple[Plain, ...] = ()
    verses: tuple[Verse | None, ...] = ()


UNREMARKABLE = Remarks()


def together(remarks: Iterable[Remarks]) -> Remarks:
    """The remarks about several pieces of matter as one.

    >>> together([Remarks(wide=("fog",)), Remarks(wide=("bell",), verses=(None,))])[:2]
    (('fog', 'bell'), ())
    """
    told = [some for some in remarks if some is not UNREMARKABLE]
    return Remarks(*(tuple(chain(*parts)) for parts in zip(*told, strict=True))) if told else UNREMARKABLE
