"""How a maker names a book: by its title and volume, or by its number in the list; and how a whole set."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property

from ..ground.problems import near_match
from ..ground.quantities import MOST_DIGITS, show

__all__ = ["LISTED", "BookName", "BookNames", "UnknownBook", "called_in_list", "find_book", "find_books"]


class UnknownBook(ValueError):  # noqa: N818 - it reads as a sentence where it is caught
    """No book, or more than one, goes by a name; `remedy` says what to write instead."""

    def __init__(self, message: str, remedy: str) -> None:
        super().__init__(message)
        self.message, self.remedy = message, remedy


LISTED = ": bookmaker check lists them"
"""Where somebody finds the names who has not the shelf file before them."""


NEEDS_QUOTES = re.compile(r"""[,\[\]{}]|: |:$| #|^[-?:&*!|>'"%@`#]""")
"""What makes more of a word than text, in a YAML list between [ and ]."""


@dataclass(frozen=True, slots=True)
class BookName:
    """What a book goes by: its title, the number of its volume and its series, empty where it has none."""

    title: str
    volume: str = ""
    series: str = ""

    def __str__(self) -> str:
        return f"{self.title} {self.volume}".rstrip()

    @property
    def in_a_set(self) -> bool:
        """Whether it is one of a set: of several volumes, or of a series."""
        return bool(self.volume or self.series)


class BookNames(tuple[BookName, ...]):
    """The names of all books: each is found without a look at the others, which who asks for many is glad of."""

    @cached_property
    def whole(self) -> Mapping[str, Sequence[int]]:
        """The books by title and volume."""
        return _by(map(str, self))

    @cached_property
    def titled(self) -> Mapping[str, Sequence[int]]:
        """The books by title."""
        return _by(book.title for book in self)

    @cached_property
    def in_series(self) -> Mapping[str, Sequence[int]]:
        """The books by series."""
        return _by(book.series for book in self)

    @cached_property
    def parts(self) -> Mapping[str, str]:
        """The first name that holds something between commas, by that."""
        return {part: name for name in reversed(self.called) for part in name.split(", ") if part != name}

    @cached_property
    def called(self) -> tuple[str, ...]:
        """The names as texts."""
        return tuple(map(str, self))


def _by(names: Iterable[str]) -> Mapping[str, Sequence[int]]:
    found: dict[str, list[int]] = {}
    for index, name in enumerate(names):
        if name:
            found.setdefault(name.casefold(), []).append(index)
    return found


def _spoken(wanted: str) -> str:
    return " ".join(wanted.split()).casefold()


def find_book(wanted: str, books: Sequence[BookName], listed: str = "") -> int:
    """The index of the book with this name, or with this number from 1; a name goes before a number.

    The name is the title, and with the number of the volume where several books have the title. `listed` says
    where names are found, for who cannot be told what was meant.

    >>> find_book("2", [BookName("Salt"), BookName("Fog")]), find_book("fog II", [BookName("Fog", "II")])
    (1, 0)

    Raises:
        UnknownBook: there is none, or several have the title.
    """
    names, spoken = BookNames(books) if not isinstance(books, BookNames) else books, _spoken(wanted)
    found = names.whole.get(spoken) or names.titled.get(spoken, ())
    if len(found) == 1:
        return found[0]
    if found:
        whole = [str(books[index]) for index in found]
        numbers = [str(index + 1) for index in found]
        told_apart = "its number" if len(set(whole)) < len(whole) else "its name"
        remedy = f"write {told_apart} instead: {' or '.join(numbers if told_apart == 'its number' else whole)}"
        raise UnknownBook(f"{len(found)} books are called {show(wanted)!r}", remedy)
    if wanted.isascii() and wanted.isdigit() and len(wanted) < MOST_DIGITS and 1 <= int(wanted) <= len(books):
        return int(wanted) - 1
    raise UnknownBook(f"there is no book {show(wanted)!r}", _meant(wanted, names, listed))


def find_books(wanted: str, books: Sequence[BookName], listed: str = "") -> tuple[int, ...]:
    """The indices of the books of a set, by its series or by the title its volumes share; or one book, as above.

    >>> find_books("Fog", [BookName("Fog", "I"), BookName("Salt"), BookName("Fog", "II")])
    (0, 2)

    Raises:
        UnknownBook: there is none, or several that are no set have the title.
    """
    names, spoken = BookNames(books) if not isinstance(books, BookNames) else books, _spoken(wanted)
    titled = names.titled.get(spoken, ())
    volumes = tuple(index for index in titled if names[index].volume)
    if len(volumes) > 1 and len(volumes) == len({*titled, *names.whole.get(spoken, ())}):
        return volumes
    series = tuple(names.in_series.get(spoken, ()))
    is_name = titled or names.whole.get(spoken)
    return series if series and not is_name else (find_book(wanted, names, listed),)


def called_in_list(numbers: Sequence[int], books: Sequence[BookName]) -> str:
    """How some books, by their indices, are called in a list of the shelf file, so that they are found again.

    By the name of their set, if they are all of it, or else each by its own; a number, which another line above
    would shift, stands only for a book that no name tells from others.

    >>> called_in_list([0, 2], [BookName("Fog", "I"), BookName("Salt"), BookName("Fog", "II")])
    'Fog'
    """
    books = BookNames(books)
    sets = dict.fromkeys(name for number in numbers for name in (books[number].title, books[number].series) if name)
    for name in sets:
        if _finds(name, books) == sorted(numbers):
            return _as_item(name)
    names = [str(books[number]) for number in numbers]
    finds = [_finds(name, books) == [number] for name, number in zip(names, numbers, strict=True)]
    called = zip(numbers, names, finds, strict=True)
    return ", ".join(_as_item(name) if found else str(number + 1) for number, name, found in called)


def _finds(name: str, books: Sequence[BookName]) -> list[int]:
    with suppress(UnknownBook):
        return sorted(find_books(name, books))
    return []


def _as_item(name: str) -> str:
    """A name as it stands between [ and ], in quotes where YAML would take it for something else.

    >>> _as_item("Salt, Rope"), _as_item("Salt")
    ('"Salt, Rope"', 'Salt')
    """
    if NEEDS_QUOTES.search(name) or name.casefold() in ("null", "~"):
        escaped = name.replace("\\", "\\\\").replace('"', '\\"')
        return f'"{escaped}"'
    return name


def _meant(wanted: str, names: BookNames, listed: str) -> str:
    """What to write instead; a title that holds a comma falls apart in a list unless it stands in quotes."""
    whole, titles = names.parts.get(wanted), names.called
    if whole is not None:
        return f'put a title with a comma in quotes: "{whole}"'
    meant = near_match(wanted, titles)
    numbers = f"a number from 1 to {len(titles)}" if len(titles) > 1 else "1"
    return f"did you mean {meant!r}?" if meant else f"write a title, or {numbers}{listed}"
