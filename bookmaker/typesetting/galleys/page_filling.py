"""Filling a page: as many lines of a galley as it has room for, and none that must not stand there.

No page ends with the first line of a paragraph and none begins with the last one, as far as pages have room
for that; a heading is not parted from what it heads. A page is left a line short rather than that.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..manuscripts.passage import AFLOAT, Role
from .foot_notes import NO_NOTES, Foot, NoteLines, carried, notes_in
from .made_pages import MadePage, Slot
from .matter import Matter
from .read_matter import Place, ReadMatter

__all__ = ["FilledPage", "filled_page"]

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

    def __init__(self, rows: int, chapter: str, over: Sequence[NoteLines]) -> None:
        self.rows = rows
        self.slots: list[Slot] = []
        self.used = 0.0
        self.after = 0.0
        self.chapter = chapter
        self.opens = False
        self.foot = carried(over, rows) if over else NO_NOTES

    @property
    def begun(self) -> bool:
        """Whether anything stands on it."""
        return bool(self.slots or self.foot.placed)

    @property
    def deep(self) -> float:
        """How many rows are taken; notes at its foot end it, whatever stands over them."""
        return self.rows if self.foot.placed else self.used

    def room(self, matter: Matter) -> int:
        """Rows left for some matter."""
        return math.floor(self.rows - self.foot.rows - self.begin(matter))

    def left(self, matter: Matter, line: int) -> int:
        """How many lines of some matter that is not whole have room, from one of them on, with the notes of each."""
        begin = self.again(matter, line) if line else self.begin(matter)
        most = math.floor(self.rows - self.foot.rows - begin)
        if not matter.notes:
            return most
        end = min(most, len(matter.lines) - line)
        fits = (
            count
            for count in range(end, 0, -1)
            if self.foot.holds(notes_in(matter, line, line + count), self.rows - math.ceil(begin + count))
        )
        count = next(fits, 0)
        return most if count == end else count

    def begin(self, matter: Matter) -> float:
        """The row on which some matter begins.

        What is set apart from the text stands half a row off the grid if it all ends on this page, with text under
        it: then the white over it and under it is alike. Everything else keeps to the grid.
        """
        if not self.slots:
            return min(matter.sink, max(0, self.rows - matter.rows))
        at = self.used + max(self.after, matter.before)
        apart = self.used % 1 > 0 or at + matter.run + matter.before < self.rows - self.foot.rows
        return at if matter.run and apart else math.ceil(at)

    def again(self, matter: Matter, line: int) -> float:
        """The row on which some matter goes on from one of its lines: under the heads of a table, or under figures."""
        return math.ceil(self.used + self.after) + _heads_again(matter, line, self.rows)

    @property
    def parts_a_word(self) -> int:
        """How many lines of the last matter stand over the foot of the page if a word is parted there; else 0."""
        last = self.slots[-1] if self.slots else None
        parts = last and last.end and last.matter.lines[last.end - 1].words.endswith(HYPHENS)
        return last.end if last and parts and last.end < len(last.matter.lines) else 0

    def sink(self, rows: int) -> int:
        """Set all of a page that opens with the head of a chapter lower by some rows; how many these are."""
        opens = self.slots and self.slots[0].matter.sink and not self.foot.placed
        if not (opens and 0 < rows <= MOST_SUNK and self.used % 1 == 0):
            return 0
        self.slots = [slot._replace(row=slot.row + rows) for slot in self.slots]
        self.used += rows
        return rows

    def put(self, matter: Matter, start: int, end: int, rows: int) -> None:
        """Add lines of some matter."""
        at = self.again(matter, start) if start else self.begin(matter)
        self.slots.append(Slot(matter, start, end, at))
        self.used, self.after = at + rows, matter.after
        if matter.notes:
            self.foot = self.foot.filled(notes_in(matter, start, end), self.rows - math.ceil(self.used))
        if matter.heading:
            self.chapter = matter.short or matter.heading
            self.opens = self.opens or at == 0 or matter.opens


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
        return rows - math.ceil(self.page.deep) + self.sunk

    @property
    def pages(self) -> Iterator[MadePage]:
        """The page, if anything stands on it, and its plates."""
        page = self.page
        if page.slots:
            yield MadePage(tuple(page.slots), page.chapter, page.opens, page.foot.slots(page.rows))
        elif page.foot.placed:
            yield MadePage(page.foot.slots(page.foot.alone), page.chapter)
        for plate in self.plates:
            yield MadePage((Slot(plate, 0, len(plate.lines), 0),), self.page.chapter)


def _heads_again(matter: Matter, start: int, rows: int) -> int:
    """How many lines the heads of a table take that goes on from some line on a page of so many rows."""
    heads = matter.rule[0] if matter.rule and start else 0
    return heads if heads + LEAST_UNDER_HEADS <= rows else 0


def filled_page(galley: ReadMatter, place: Place, rows: int, depth: int) -> FilledPage:
    """The page that begins at a place, filled to a depth of so many rows of those it has."""
    page, plates, waiting = _Page(depth, place.chapter, place.over), list[Matter](), list[Matter]()
    for figure in place.waiting:
        _put_or_wait(page, figure, waiting)
    number, line = place.matter, place.line
    while (matter := galley[number]) is not None:
        if matter.role is Role.PLATE:
            plates.append(matter)
        elif matter.role is Role.FIGURE:
            _put_or_wait(page, matter, waiting)
        elif (
            line == 0 and page.begun and (matter.opens or page.room(matter) < _needed(galley, number, rows, page.foot))
        ):
            break
        elif _whole(matter, rows):
            page.put(matter, 0, len(matter.lines), matter.rows)
        else:
            room = page.left(matter, line)
            if room < 1 and page.begun:
                break
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
    following = Place(number, line, page.chapter, page.foot.over, tuple(waiting))
    return FilledPage(page, tuple(plates), following, free, sunk)


def _lacks_room(galley: ReadMatter, number: int, page: _Page, rows: int) -> bool:
    """Whether some matter cannot begin on what is left of a page."""
    matter = galley[number]
    return matter is not None and page.room(matter) < _needed(galley, number, rows, page.foot)


def _put_or_wait(page: _Page, figure: Matter, waiting: list[Matter]) -> None:
    """Set a figure on a page if it has room there, after those that wait for it; else it waits for the next page."""
    room = page.rows - math.ceil(page.begin(figure) + figure.rows)
    if page.begun and (waiting or room < 0 or not page.foot.holds(notes_in(figure, 0, len(figure.lines)), room)):
        waiting.append(figure)
    else:
        page.put(figure, 0, len(figure.lines), figure.rows)


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
    needed = _needed(galley, place, rows, NO_NOTES)
    begins = (page.again(matter, line) if line else page.begin(matter)) + left + max(matter.after, signature.before)
    return (
        left if math.ceil(begins) + needed <= page.rows - page.foot.rows or needed + CARRIED > rows else left - CARRIED
    )


def _signature(galley: ReadMatter, number: int) -> tuple[int, Matter | None]:
    """What signs some matter, with its number; None if nothing does."""
    following = number + 1
    while (matter := galley[following]) is not None and matter.role in AFLOAT:
        following += 1
    return following, matter if matter is not None and matter.signs else None


def _needed(galley: ReadMatter, number: int, rows: int, foot: Foot) -> int:
    """The least rows that some matter must find, for its beginning and for what must not be parted from it.

    With them go those by which notes make the foot of the page deeper.
    """
    needed, after, notes = 0.0, 0.0, list[NoteLines]()
    while (matter := galley[number]) is not None:
        if matter.role not in AFLOAT:
            fewest = _fewest(matter, rows)
            needed += (max(after, matter.before) if needed else 0) + fewest
            if matter.notes:
                notes += notes_in(matter, 0, len(matter.lines) if _whole(matter, rows) else fewest)
            whole = len(matter.lines) < matter.together + CARRIED and rows >= FEWEST_ROWS
            stays = matter.stays or (whole and _signature(galley, number)[1])
            if not stays or needed >= rows:  # more than a page is a page: thousands of heads need not be looked through
                break
            after = matter.after
        number += 1
    if notes:
        needed += foot.least_with(notes) - foot.rows
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
