"""How a maker names one of the books: by its title, or by its number in the list."""

from __future__ import annotations

from collections.abc import Sequence

from .errors import near_match
from .quantities import show

__all__ = ["UnknownBook", "find_book"]


class UnknownBook(ValueError):  # noqa: N818 - it reads as a sentence where it is caught
    """No book, or more than one, goes by a name; `remedy` says what to write instead."""

    def __init__(self, message: str, remedy: str) -> None:
        super().__init__(message)
        self.message, self.remedy = message, remedy


def find_book(wanted: str, titles: Sequence[str]) -> int:
    """The index of the book with this title, or with this number from 1; a title goes before a number.

    >>> find_book("2", ["Salt", "Fog"]), find_book("salt", ["Salt", "Fog"])
    (1, 0)

    Raises:
        UnknownBook: there is none, or several have the title.
    """
    name = " ".join(wanted.split()).casefold()
    found = [index for index, title in enumerate(titles) if title.casefold() == name]
    if len(found) == 1:
        return found[0]
    if found:
        numbers = " or ".join(str(index + 1) for index in found)
        raise UnknownBook(f"{len(found)} books are called {show(wanted)!r}", f"write its number instead: {numbers}")
    if name.isascii() and name.isdigit() and 1 <= int(name[:9]) <= len(titles):
        return int(name) - 1
    meant = near_match(wanted, titles)
    raise UnknownBook(
        f"there is no book {show(wanted)!r}",
        f"did you mean {meant!r}?" if meant else f"write a title, or a number from 1 to {len(titles)}",
    )
