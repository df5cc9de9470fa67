"""Matter that is read when it is needed, and where in it a page begins."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable
from typing import NamedTuple

from .foot_notes import NoteLines
from .matter import Matter

__all__ = ["Place", "ReadMatter"]


class ReadMatter:
    """Matter that is read when it is needed, by its number, and may be forgotten from the beginning."""

    def __init__(self, source: Iterable[Matter]) -> None:
        self._source = iter(source)
        self._read: deque[Matter] = deque()
        self._forgotten = 0

    def __getitem__(self, number: int) -> Matter | None:
        read, at = self._read, number - self._forgotten
        while len(read) <= at:
            matter = next(self._source, None)
            if matter is None:
                return None
            read.append(matter)
        return read[at]

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
    over: tuple[NoteLines, ...] = ()
    waiting: tuple[Matter, ...] = ()

    @property
    def pending(self) -> bool:
        """Whether something from the pages before is still to be set."""
        return bool(self.over or self.waiting)
