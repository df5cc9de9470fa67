"""Which books stand in which slipcase: names that the maker wrote, found on the list of books."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass

from ...ground.problems import FieldPath, Problem
from ...shelf_file.book_names import BookName, UnknownBook, find_books
from .plan import SlipcaseEntry

__all__ = ["Listed", "members", "membership_problems", "space_of"]


@dataclass(frozen=True, slots=True)
class Listed:
    """A book on the list, as far as a slipcase cares."""

    name: BookName
    space: str | None = None
    stack: str | None = None


def members(entry: SlipcaseEntry, books: Sequence[Listed]) -> tuple[int, ...]:
    """The numbers, from 0, of the books of a slipcase; a name that no book or more than one answers to is left out."""
    names = [book.name for book in books]
    found: list[int] = []
    for name in entry.books:
        with suppress(UnknownBook):
            found += find_books(name, names)
    return tuple(found)


def space_of(entry: SlipcaseEntry, books: Sequence[Listed]) -> str | None:
    """Where a slipcase stands: as it says, or as its books say."""
    if entry.space is not None:
        return entry.space
    return next((space for number in members(entry, books) if (space := books[number].space)), None)


def membership_problems(slipcases: Mapping[str, SlipcaseEntry], books: Sequence[Listed]) -> Iterator[Problem]:
    """Everything that is wrong with the names under the slipcases; fields count from the shelf."""
    taken: dict[int, str] = {}
    names = [book.name for book in books]
    for name, entry in slipcases.items():
        for index, written in enumerate(entry.books):
            field = ("slipcases", name, "books", index)
            try:
                found = find_books(written, names)
            except UnknownBook as unknown:
                yield Problem(unknown.message, unknown.remedy, field=field, value=written)
                continue
            for number in found:
                if number in taken:
                    yield _taken(str(names[number]), taken[number], name, field)
                else:
                    taken[number] = name
                    yield from _stacked(books[number], field)
        yield from _different_spaces(name, entry, books)


def _taken(title: str, by: str, name: str, field: FieldPath) -> Problem:
    if by == name:
        return Problem(f"{title} is listed twice", "list each book once", field=field)
    return Problem(f"{title} stands in two slipcases, {by} and {name}", "take it out of one of them", field=field)


def _stacked(book: Listed, field: FieldPath) -> Iterator[Problem]:
    if book.stack:
        yield Problem(
            f"{book.name} lies in the stack {book.stack} and stands in a slipcase",
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
