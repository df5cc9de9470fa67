"""What can be wrong, said so that a maker can put it right.

    BookmakerError              anything bookmaker refuses on purpose; carries one or more problems
    ├── ShelfFileError          the shelf file, or a file it names, cannot be used
    ├── OutputError             the place to write to cannot be used
    └── CommandError            the command line asks for something that is not there

A `Problem` keeps its parts (where, what, the value, the limit, the remedy) and builds its text from
them. Problems that do not stop the work, such as a picture that prints too coarse, travel in the same
form with a milder severity.

A part that finds a problem knows where it is within that part, and no more. Whoever holds the part says so with
`within`, `gathered` or `Problem.about`; the file and the line are added once, where the shelf file was read.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
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
    "gathered",
    "near_match",
    "show_field",
    "within",
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
    """One thing that is wrong, where it is, and what to write or do instead.

    `field` counts from the entry of the `thing` with that id, or, where it is about none, from the whole shelf.
    `by_itself` is what is wrong whatever takes it, such as the name of a stock that is not there: where several
    things take it from one place, it is told once, of that place.
    """

    message: str
    remedy: str = ""
    severity: Severity = Severity.ERROR
    field: FieldPath = ()
    place: Place | None = None
    value: str = ""
    limit: str = ""
    thing: str = ""
    by_itself: bool = False

    def at(self, place: Place) -> Problem:
        """The same problem, tied to a place in a file."""
        return replace(self, place=place)

    def about(self, thing: str) -> Problem:
        """The same problem, of the thing with this id."""
        return replace(self, thing=thing)

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


def within(field: FieldPath, problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Problems of a part, told of what it is a part of, where it stands in that field.

    >>> within(("block",), [Problem("too wide", field=("tab",))])[0].field
    ('block', 'tab')
    """
    return tuple(replace(problem, field=(*field, *problem.field)) for problem in problems)


@contextmanager
def gathered(problems: list[Problem], *field: str | int) -> Iterator[None]:
    """What a part of the work refuses is added to the problems, told of that field, and work goes on after it."""
    try:
        yield
    except ShelfFileError as refusal:
        problems += within(field, refusal.problems)


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
