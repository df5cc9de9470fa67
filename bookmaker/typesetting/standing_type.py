"""Standing type: what has been set is kept standing, as printers do, in case the same is wanted again.

What is found standing is what would be set: the keys hold all that lines depend on. So nobody needs to know whether
something was set now or before, and whoever keeps more than one edition of a text sets only what differs. Whole
texts that took long to set are kept on disk too, if there is a place for them, for the next run.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from itertools import islice

from ..ground.kept import Kept, digest
from ..ground.kept.disk import KeptOnDisk
from .galleys.made_pages import MadePage
from .lines.set_lines import SetLines
from .set_text_files import code_digest, lines_read, lines_written, number_read, number_written

__all__ = ["LONG", "StandingType", "standing_type"]

LONG = 10_000
"""Words of texts that are worth a file on disk: they take a tenth of a second to set, and a hundredth to read."""

MOST_LETTERS = 8_000_000
"""Letters of all paragraphs that are kept in memory: some 80 MB."""

MOST_NUMBERS = 10_000


class StandingType:
    """Paragraphs that were set, and numbers that were found by setting: of pages, and sizes of type in mm."""

    def __init__(self, disk: KeptOnDisk | None = None) -> None:
        self.paragraphs = Kept[SetLines](MOST_LETTERS, lambda found: sum(len(line.words) for line in found.lines))
        self._numbers = Kept[float](MOST_NUMBERS)
        self._disk = disk
        self._forme: _Forme | None = None
        self._made_up: tuple[Hashable, tuple[MadePage, ...]] = None, ()

    def paragraph(self, key: Hashable, set_it: Callable[[], SetLines]) -> SetLines:
        """A paragraph, set if it does not stand here."""
        forme = self._forme
        if forme is None:
            return self.paragraphs.get(key, set_it)
        name = digest(key)
        return forme.put(name, self.paragraphs.get(key, lambda: forme.old.get(name) or set_it()))

    def pages(self, key: Hashable, most: int, make_up: Callable[[], Iterator[MadePage]]) -> tuple[MadePage, ...]:
        """The first pages of a text, at most so many; the text made up last is found as a whole.

        Not within a block of `text`, for which its paragraphs are set.
        """
        known, pages = self._made_up
        if known == key and self._forme is None:
            return pages[:most]
        pages = tuple(islice(make_up(), most))
        if len(pages) < most:
            self._made_up = key, pages
        return pages

    def number(self, key: Hashable, words: int, find: Callable[[], float]) -> float:
        """Something that is known of a text of so many words once it is set, found if nobody knows."""

        def on_disk() -> float:
            disk = self._disk_for(words)
            name = digest(code_digest(), key) if disk else ""
            kept = disk.get(name) if disk else None
            number = number_read(kept) if kept else None
            if number is None:
                number = find()
                if disk:
                    disk.put(name, number_written(number))
            return number

        return self._numbers.get(key, on_disk)

    @contextmanager
    def text(self, key: Hashable, words: int) -> Iterator[None]:
        """Within the block, the paragraphs of a text of so many words are looked for on disk too, and put there."""
        disk = self._disk_for(words)
        if disk is None:
            yield
            return
        name = digest(code_digest(), key)
        kept = disk.get(name)
        self._forme = forme = _Forme(lines_read(kept) if kept else {})
        try:
            yield
        finally:
            self._forme = None
        if not forme.new.keys() <= forme.old.keys():
            disk.put(name, lines_written(forme.old | forme.new))

    def _disk_for(self, words: int) -> KeptOnDisk | None:
        """The disk, if there is one and it pays for a text of so many words."""
        return self._disk if words >= LONG and self._disk and code_digest() else None

    @contextmanager
    def used(self) -> Iterator[None]:
        """Within the block, what is set is looked for here, and put here."""
        before = _USED.set(self)
        try:
            yield
        finally:
            _USED.reset(before)


class _Forme:
    """The paragraphs of one text: the `old` ones that were found on disk, and the `new` ones that it is set from."""

    def __init__(self, old: Mapping[str, SetLines]) -> None:
        self.old = dict(old)
        self.new: dict[str, SetLines] = {}

    def put(self, name: str, found: SetLines) -> SetLines:
        """Take a paragraph in."""
        self.new[name] = found
        return found


_OF_THE_PROCESS = StandingType()
_USED = ContextVar("standing type", default=_OF_THE_PROCESS)


def standing_type() -> StandingType:
    """The standing type that is used at present: by default what the process has set so far."""
    return _USED.get()
