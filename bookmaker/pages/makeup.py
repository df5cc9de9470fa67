"""Make-up: galleys into pages of equally many lines.

No page ends with the first line of a paragraph and none begins with the last one, as far as pages have room
for that; a heading is not parted from what it heads. A page is left a line short rather than that.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from .matter import Matter
from .passage import Role

__all__ = ["MadePage", "Slot", "make_up"]

FEWEST_ROWS = 5
"""On pages of fewer lines single lines of a paragraph may stand alone."""


class Slot(NamedTuple):
    """Lines `start` to before `end` of some matter, the first of them on a `row` of the page, from 0.

    Matter that is set apart from the text may stand half a row lower.
    """

    matter: Matter
    start: int
    end: int
    row: float


class MadePage(NamedTuple):
    """What stands on a page. `chapter` is the heading it belongs to, `opens` says that one begins on it."""

    slots: tuple[Slot, ...]
    chapter: str = ""
    opens: bool = False

    @property
    def done(self) -> int:
        """How many words of the text are wholly set by the end of this page; -1 if it holds none."""
        return next((slot.matter.lines[slot.end - 1].done for slot in reversed(self.slots) if slot.end), -1)


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

    def put(self, matter: Matter, start: int, end: int, rows: int) -> None:
        """Add lines of some matter."""
        at = self.begin(matter) if start == 0 else self.used
        self.slots.append(Slot(matter, start, end, at))
        self.used, self.after = at + rows, matter.after
        if matter.heading:
            self.chapter = matter.heading
            self.opens = self.opens or at == 0 or matter.opens


def make_up(galley: Iterable[Matter], rows: int) -> Iterator[MadePage]:
    """The pages of a text, one at a time; `rows` is how many lines a page has."""
    page, plates = _Page(rows), list[Matter]()
    for matter, following in _paired(galley):
        if matter.role is Role.PLATE:
            plates.append(matter)
            continue
        if page.slots and (matter.opens or page.room(matter) < _needed(matter, following, rows)):
            yield from _turned(page, plates)
            page = _next(page)
        whole = matter.role is Role.HEADING and matter.rows <= rows
        if whole or matter.rows != len(matter.lines):
            page.put(matter, 0, len(matter.lines), matter.rows)
            continue
        start, count = 0, len(matter.lines)
        while start < count:
            take = _share(matter, start, page.room(matter) if start == 0 else math.floor(page.rows - page.used), rows)
            page.put(matter, start, start + take, take)
            start += take
            if start < count:
                yield from _turned(page, plates)
                page = _next(page)
    if page.slots or plates:
        yield from _turned(page, plates)


def _next(page: _Page) -> _Page:
    following = _Page(page.rows)
    following.chapter = page.chapter
    return following


def _turned(page: _Page, plates: list[Matter]) -> Iterator[MadePage]:
    """The finished page, and the plates that were waiting for it to be full."""
    if page.slots:
        yield MadePage(tuple(page.slots), page.chapter, page.opens)
    for plate in plates:
        yield MadePage((Slot(plate, 0, len(plate.lines), 0),), page.chapter)
    plates.clear()


def _paired(galley: Iterable[Matter]) -> Iterator[tuple[Matter, Matter | None]]:
    """Each piece with the one that follows it."""
    before: Matter | None = None
    for matter in galley:
        if before is not None:
            yield before, matter
        before = matter
    if before is not None:
        yield before, None


def _needed(matter: Matter, following: Matter | None, rows: int) -> int:
    """The least rows that some matter must find, for its beginning and for what must not be parted from it."""
    needed = matter.rows if matter.rows != len(matter.lines) else _fewest(matter, rows)
    if matter.stays and following is not None:
        needed += math.ceil(matter.after) + min(_fewest(following, rows), following.rows)
    return min(needed, rows)


def _fewest(matter: Matter, rows: int) -> int:
    """How many lines of some matter must stand together at its beginning."""
    count = len(matter.lines)
    if matter.rows != count:
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
