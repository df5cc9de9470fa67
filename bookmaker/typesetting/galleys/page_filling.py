"""Filling a page: as many lines of a galley as it has room for, and none that must not stand there.

No page ends with the first line of a paragraph and none begins with the last one, as far as pages have room
for that; a heading is not parted from what it heads. A page is left a line short rather than that.
"""

from __future__ import annotations

import math
from collections import deque
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from ..manuscripts.passage import Role
from .made_pages import MadePage, Slot
from .matter import Matter

__all__ = ["FilledPage", "Place", "ReadMatter", "filled_page"]

FEWEST_ROWS = 5
"""On pages of fewer lines single lines of a paragraph may stand alone."""

LEAST_UNDER_HEADS = 3
"""Rows that a page has under the heads of a table, or they are not repeated."""

CARRIED = 2
"""So many lines of a letter at least stand over its signature."""

MOST_SUNK = 2
"""The head of a chapter is sunk further by no more rows than these for its page to end with the one that faces it."""

HYPHENS = ("-", "\u2010", "\u00ad")


class _Page:
    """The page being made up."""

    def __init__(self, rows: int) -> None:
        self.rows = rows
        self.slots: list[Slot] = []
        self.used = 0.0
        self.after = 0.0
        self.chapter = ""
        self.opens = False

    def room(self, matter: Matter) -> int:
        """Rows left for some matter."""
        return math.floor(self.rows - self.begin(matter))

    def begin(self, matter: Matter) -> float:
        """The row on which some matter begins.

        What is set apart from the text stands half a row off the grid if it all ends on this page, with text under
        it: then the white over it and under it is alike. Everything else keeps to the grid.
        """
        if not self.slots:
            return min(matter.sink, max(0, self.rows - matter.rows))
        at = self.used + max(self.after, matter.before)
        apart = self.used % 1 > 0 or at + matter.run + matter.before < self.rows
        return at if matter.run and apart else math.ceil(at)

    @property
    def parts_a_word(self) -> int:
        """How many lines of the last matter stand over the foot of the page if a word is parted there; else 0."""
        last = self.slots[-1] if self.slots else None
        parts = last and last.end and last.matter.lines[last.end - 1].words.endswith(HYPHENS)
        return last.end if last and parts and last.end < len(last.matter.lines) else 0

    def sink(self, rows: int) -> int:
        """Set all of a page that opens with the head of a chapter lower by some rows; how many these are."""
        if not (self.slots and self.slots[0].matter.sink and 0 < rows <= MOST_SUNK and self.used % 1 == 0):
            return 0
        self.slots = [slot._replace(row=slot.row + rows) for slot in self.slots]
        self.used += rows
        return rows

    def put(self, matter: Matter, start: int, end: int, rows: int) -> None:
        """Add lines of some matter."""
        at = self.begin(matter) if start == 0 else self.used + _heads_again(matter, start, self.rows)
        self.slots.append(Slot(matter, start, end, at))
        self.used, self.after = at + rows, matter.after
        if matter.heading:
            self.chapter = matter.heading
            self.opens = self.opens or at == 0 or matter.opens


class ReadMatter:
    """Matter that is read when it is needed, by its number, and may be forgotten from the beginning."""

    def __init__(self, source: Iterable[Matter]) -> None:
        self._source = iter(source)
        self._read: deque[Matter] = deque()
        self._forgotten = 0

    def __getitem__(self, number: int) -> Matter | None:
        while len(self._read) <= number - self._forgotten:
            matter = next(self._source, None)
            if matter is None:
                return None
            self._read.append(matter)
        return self._read[number - self._forgotten]

    def put(self, number: int, matter: Matter) -> None:
        """Have other matter in the place of some that was read."""
        self._read[number - self._forgotten] = matter

    def forget(self, before: int) -> None:
        """Let go of all matter before a number."""
        while self._forgotten < before:
            self._read.popleft()
            self._forgotten += 1


class Place(NamedTuple):
    """Where a page begins: with which matter, with which of its lines, in which chapter."""

    matter: int = 0
    line: int = 0
    chapter: str = ""


class FilledPage(NamedTuple):
    """A page that was filled, the plates that waited for that, how deep it is, and where the next one begins.

    It is `free` if it need not be full: the text ends with it, or what follows opens a page. The head of a chapter with
    which it begins may be `sunk` by more rows than others are.
    """

    page: _Page
    plates: tuple[Matter, ...]
    next: Place
    free: bool
    sunk: int = 0

    def lacking(self, rows: int) -> int:
        """How many of so many rows the page lacks, or would if its head were not sunk for that."""
        return rows - math.ceil(self.page.used) + self.sunk

    @property
    def pages(self) -> Iterator[MadePage]:
        """The page, if anything stands on it, and its plates."""
        if self.page.slots:
            yield MadePage(tuple(self.page.slots), self.page.chapter, self.page.opens)
        for plate in self.plates:
            yield MadePage((Slot(plate, 0, len(plate.lines), 0),), self.page.chapter)


def _heads_again(matter: Matter, start: int, rows: int) -> int:
    """How many lines the heads of a table take that goes on from some line on a page of so many rows."""
    heads = matter.rule[0] if matter.rule and start else 0
    return heads if heads + LEAST_UNDER_HEADS <= rows else 0


def filled_page(galley: ReadMatter, place: Place, rows: int, depth: int) -> FilledPage:
    """The page that begins at a place, filled to a depth of so many rows of those it has."""
    page, plates = _Page(depth), list[Matter]()
    number, line, page.chapter = place
    while (matter := galley[number]) is not None:
        if matter.role is Role.PLATE:
            plates.append(matter)
        elif line == 0 and page.slots and (matter.opens or page.room(matter) < _needed(galley, number, rows)):
            break
        elif _whole(matter, rows):
            page.put(matter, 0, len(matter.lines), matter.rows)
        else:
            room = page.room(matter)
            if line:
                room = math.floor(page.rows - page.used) - _heads_again(matter, line, page.rows)
            take = _share(matter, line, room, rows)
            if line + take == len(matter.lines) and take > _left_to_sign(galley, number, page, line, rows):
                take -= CARRIED
            page.put(matter, line, line + take, take)
            line += take
            if line < len(matter.lines):
                break
        number, line = number + 1, 0
    free = matter is None or (matter.opens and line == 0)
    sunk = 0 if free else page.sink(depth - math.ceil(page.used))
    return FilledPage(page, tuple(plates), Place(number, line, page.chapter), free, sunk)


def _left_to_sign(galley: ReadMatter, number: int, page: _Page, line: int, rows: int) -> int:
    """How many lines of some matter this page may hold, from a line to the last, for the sake of what signs it.

    A signature that has no room after them has some of these lines with it on the next page.
    """
    matter = galley[number]
    assert matter is not None  # it is being set
    left, carried = len(matter.lines) - line, len(matter.lines) - CARRIED
    if rows < FEWEST_ROWS or carried - line < (1 if line else matter.together) or carried in matter.bound:
        return left
    place, signature = _signature(galley, number)
    if signature is None:
        return left
    needed = _needed(galley, place, rows)
    begins = (page.used if line else page.begin(matter)) + left + max(matter.after, signature.before)
    return left if math.ceil(begins) + needed <= page.rows or needed + CARRIED > rows else left - CARRIED


def _signature(galley: ReadMatter, number: int) -> tuple[int, Matter | None]:
    """What signs some matter, with its number; None if nothing does."""
    following = number + 1
    while (matter := galley[following]) is not None and matter.role is Role.PLATE:
        following += 1
    return following, matter if matter is not None and matter.signs else None


def _needed(galley: ReadMatter, number: int, rows: int) -> int:
    """The least rows that some matter must find, for its beginning and for what must not be parted from it."""
    needed, after = 0.0, 0.0
    while (matter := galley[number]) is not None:
        if matter.role is not Role.PLATE:
            needed += (max(after, matter.before) if needed else 0) + _fewest(matter, rows)
            whole = len(matter.lines) < matter.together + CARRIED and rows >= FEWEST_ROWS
            stays = matter.stays or (whole and _signature(galley, number)[1])
            if not stays or needed >= rows:  # more than a page is a page: thousands of heads need not be looked through
                break
            after = matter.after
        number += 1
    return min(math.ceil(needed), rows)


def _whole(matter: Matter, rows: int) -> bool:
    """Whether some matter stands on one page: all headings do that a page has room for."""
    return matter.rows != len(matter.lines) or (matter.role is Role.HEADING and matter.rows <= rows)


def _fewest(matter: Matter, rows: int) -> int:
    """How many lines of some matter must stand together at its beginning."""
    count = len(matter.lines)
    if _whole(matter, rows):
        return matter.rows
    least = matter.together if rows >= FEWEST_ROWS else 1
    # of three lines neither one nor two may stand alone
    return count if count <= least + (rows >= FEWEST_ROWS) else least


def _share(matter: Matter, start: int, room: int, rows: int) -> int:
    """How many lines go on this page: as many as there is room for, but not all but one, and no half verse."""
    left = len(matter.lines) - start
    if left <= room:
        return left
    take = room - 1 if left - room == 1 and room > _fewest(matter, rows) and rows >= FEWEST_ROWS else room
    shorter = next((take - fewer for fewer in range(take - 1) if start + take - fewer not in matter.bound), take)
    return max(1, shorter)
