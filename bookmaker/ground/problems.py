"""What can be wrong, said so that a maker can put it right.

    BookmakerError              anything bookmaker refuses on purpose; carries one or more problems
    ├── ShelfFileError          the shelf file, or a file it names, cannot be used
    ├── OutputError             the place to write to cannot be used
    └── CommandError            the command line asks for something that is not there

A `Problem` keeps its parts (where, what, the value, the limit, the remedy) and builds its text from
them. Problems that do not stop the work, such as a picture that prints too coarse, travel in the same
form with a milder severity.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum

__all__ = [
    "BookmakerError",
    "CommandError",
    "FieldPath",
    "OutputError",
    "Place",
    "Problem",
    "Severity",
    "ShelfFileError",
    "near_match",
    "show_field",
]

FieldPath = tuple[str | int, ...]
"""Where a value stands in the shelf file: ``("books", 2, "block", "pages")``."""


class Severity(StrEnum):
    """How bad a problem is: an error spoils the shelf, a warning spoils its looks, a note informs."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Place:
    """A spot in a text file; line and column count from 1, 0 means the file as a whole."""

    file: str
    line: int = 0
    column: int = 0
    source: str = ""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong, where it is, and what to write or do instead."""

    message: str
    remedy: str = ""
    severity: Severity = Severity.ERROR
    field: FieldPath = ()
    place: Place | None = None
    value: str = ""
    limit: str = ""

    def at(self, place: Place) -> Problem:
        """The same problem, tied to a place in a file."""
        return replace(self, place=place)

    def __str__(self) -> str:
        where = f"{self.place}: " if self.place else ""
        what = f"{self.message}; {self.remedy}" if self.remedy else self.message
        return where + what


@dataclass(eq=False)
class BookmakerError(Exception):
    """A refusal with everything that is wrong, all at once."""

    problems: Sequence[Problem] = field(default_factory=tuple)

    def __str__(self) -> str:
        return "\n".join(str(problem) for problem in self.problems)


class ShelfFileError(BookmakerError):
    """The shelf file, or a file it names, cannot be used."""


class OutputError(BookmakerError):
    """The place to write to cannot be used."""


class CommandError(BookmakerError):
    """The command line asks for something that is not there."""


NEAR = 0.65
"""How like two names must be, from 0 to 1: less makes a guess of any word that has a few of the letters."""


def near_match(written: str, known: Iterable[str]) -> str:
    """The known name that `written` was probably meant to be, or an empty string.

    >>> near_match("spin_title", ["spine_title", "ink"])
    'spine_title'
    """
    folded = {name.casefold().replace("-", "_").replace(" ", "_"): name for name in known}
    wanted = written.casefold().replace("-", "_").replace(" ", "_")
    found = difflib.get_close_matches(wanted, list(folded), n=1, cutoff=NEAR)
    return folded[found[0]] if found else ""


def show_field(path: FieldPath) -> str:
    """A field path as people read it; books are counted from 1.

    >>> show_field(("books", 2, "block", "pages"))
    'books[3].block.pages'
    """
    text = ""
    for part in path:
        text += f"[{part + 1}]" if isinstance(part, int) else f".{part}" if text else str(part)
    return text
