"""How a maker names one of the books: by its title, or by its number in the list."""

from __future__ import annotations

from collections.abc import Sequence

from .errors import near_match
from .quantities import MOST_DIGITS, show

__all__ = ["LISTED", "UnknownBook", "find_book"]


class UnknownBook(ValueError):  # noqa: N818 - it reads as a sentence where it is caught
    """No book, or more than one, goes by a name; `remedy` says what to write instead."""

    def __init__(self, message: str, remedy: str) -> None:
        super().__init__(message)
        self.message, self.remedy = message, remedy


LISTED = ": bookmaker check lists them"
"""Where somebody finds the names who has not the shelf file before them."""


def find_book(wanted: str, titles: Sequence[str], listed: str = "") -> int:
    """The index of the book with this title, or with this number from 1; a title goes before a number.

    `listed` says where the names are found, for who cannot be told what was meant.

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
    if name.isascii() and name.isdigit() and len(name) < MOST_DIGITS and 1 <= int(name) <= len(titles):
        return int(name) - 1
    raise UnknownBook(f"there is no book {show(wanted)!r}", _meant(wanted, titles, listed))


def _meant(wanted: str, titles: Sequence[str], listed: str) -> str:
    """What to write instead; a title that holds a comma falls apart in a list unless it stands in quotes."""
    whole = next((title for title in titles if wanted in title.split(", ") and wanted != title), None)
    if whole is not None:
        return f'put a title with a comma in quotes: "{whole}"'
    meant = near_match(wanted, titles)
    numbers = f"a number from 1 to {len(titles)}" if len(titles) > 1 else "1"
    return f"did you mean {meant!r}?" if meant else f"write a title, or {numbers}{listed}"
