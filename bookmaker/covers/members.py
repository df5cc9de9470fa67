"""Which books stand in which slipcase: names that the maker wrote, found on the list of books."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from ..errors import FieldPath, Problem, near_match
from ..quantities import show
from .slipcase import SlipcaseEntry

__all__ = ["Listed", "members", "membership_problems", "space_of"]


@dataclass(frozen=True, slots=True)
class Listed:
    """A book on the list, as far as a slipcase cares."""

    title: str
    space: str | None = None
    stack: str | None = None


def members(entry: SlipcaseEntry, books: Sequence[Listed]) -> tuple[int, ...]:
    """The numbers, from 0, of the books of a slipcase; a name that no book or more than one answers to is left out."""
    found = (_answering(name, books) for name in entry.books)
    return tuple(numbers[0] for numbers in found if len(numbers) == 1)


def space_of(entry: SlipcaseEntry, books: Sequence[Listed]) -> str | None:
    """Where a slipcase stands: as it says, or as its books say."""
    if entry.space is not None:
        return entry.space
    return next((space for number in members(entry, books) if (space := books[number].space)), None)


def membership_problems(slipcases: Mapping[str, SlipcaseEntry], books: Sequence[Listed]) -> Iterator[Problem]:
    """Everything that is wrong with the names under the slipcases; fields count from the shelf."""
    taken: dict[int, str] = {}
    for name, entry in slipcases.items():
        for index, written in enumerate(entry.books):
            field = ("slipcases", name, "books", index)
            numbers = _answering(written, books)
            if len(numbers) != 1:
                yield _not_one_book(written, numbers, books, field)
            elif numbers[0] in taken:
                yield _taken(books[numbers[0]].title, taken[numbers[0]], name, field)
            else:
                taken[numbers[0]] = name
                yield from _stacked(books[numbers[0]], field)
        yield from _different_spaces(name, entry, books)


def _answering(name: str, books: Sequence[Listed]) -> list[int]:
    """The books of this title; if there are none, the book of this number."""
    titled = [number for number, book in enumerate(books) if book.title.casefold() == name.casefold()]
    if not titled and name.isascii() and name.isdigit() and 1 <= int(name) <= len(books):
        return [int(name) - 1]
    return titled


def _not_one_book(written: str, numbers: Sequence[int], books: Sequence[Listed], field: FieldPath) -> Problem:
    if numbers:
        choice = " or ".join(str(number + 1) for number in numbers)
        return Problem(
            f"{len(numbers)} books are called {show(written)!r}", f"write a number instead: {choice}", field=field
        )
    meant = near_match(written, [book.title for book in books])
    remedy = f"did you mean {meant!r}?" if meant else f"write a title, or a number from 1 to {len(books)}"
    return Problem(f"there is no book {show(written)!r} on the list", remedy, field=field, value=written)


def _taken(title: str, by: str, name: str, field: FieldPath) -> Problem:
    if by == name:
        return Problem(f"{title} is listed twice", "list each book once", field=field)
    return Problem(f"{title} stands in two slipcases, {by} and {name}", "take it out of one of them", field=field)


def _stacked(book: Listed, field: FieldPath) -> Iterator[Problem]:
    if book.stack:
        yield Problem(
            f"{book.title} lies in the stack {book.stack} and stands in a slipcase",
            "take its stack away, or take it out of the slipcase",
            field=field,
        )


def _different_spaces(name: str, entry: SlipcaseEntry, books: Sequence[Listed]) -> Iterator[Problem]:
    if entry.space is not None:
        return
    spaces = list(dict.fromkeys(space for number in members(entry, books) if (space := books[number].space)))
    if len(spaces) > 1:
        yield Problem(
            f"the books of {name} name different spaces: {', '.join(spaces)}",
            f"write where the box stands, such as space: {spaces[0]}",
            field=("slipcases", name),
        )
