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
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from enum import StrEnum
from functools import cached_property, lru_cache
from itertools import chain, pairwise

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


VERBS = ("is", "has", "gives", "holds", "lies", "lists", "says", "cannot", "stands", "repeats")
"""Messages that begin so go on from the name of their subject; others stand after a colon."""


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

    Where `subject` is a field, the message says something of that; once that is `named`, the message begins with its
    name, and `called` is what of this tells one thing from another.
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
    subject: FieldPath | None = None
    called: str = ""

    def at(self, place: Place) -> Problem:
        """The same problem, tied to a place in a file."""
        return replace(self, place=place)

    def within(self, field: FieldPath) -> Problem:
        """The same, told of what it is a part of, where it stands in that field."""
        subject = None if self.subject is None else (*field, *self.subject)
        return replace(self, field=(*field, *self.field), subject=subject)

    def about(self, thing: str) -> Problem:
        """The same problem, of the thing with this id."""
        return replace(self, thing=thing)

    def named(self, *names: str) -> Problem:
        """The same with the names of its subject before it: of a thing, and of the field in it.

        >>> Problem("has no stock", subject=("block",)).named("Salt Verses", "block").message
        'Salt Verses: block has no stock'
        >>> Problem("7 is odd", subject=("block", "pages")).named("", "block.pages").message
        'block.pages: 7 is odd'
        """
        joint = " " if self.message.split(maxsplit=1)[0] in VERBS else ": "
        name = ": ".join(filter(None, names))
        return replace(self, message=f"{name}{joint}{self.message}", subject=None, called=names[0])

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
    return tuple(problem.within(field) for problem in problems)


@contextmanager
def gathered(problems: list[Problem], *field: str | int) -> Iterator[None]:
    """What a part of the work refuses is added to the problems, told of that field, and work goes on after it."""
    try:
        yield
    except ShelfFileError as refusal:
        problems += within(field, refusal.problems)


NEAR = 0.65
"""How like two names must be, from 0 to 1: less makes a guess of any word that has a few of the letters."""

MOST_COMPARED, BEST_COMPARED = 100, 12
"""So many names are compared letter by letter; of more, the few that share most pairs of letters that few have."""

FEW_HAVE = 50
"""A pair of letters that more names have tells nothing of any of them."""

LONGEST_NAME = 300
"""What is longer is no name."""


def near_match(written: str, known: Iterable[str], near: float = NEAR) -> str:
    """The known name that `written` was probably meant to be, or an empty string; `near` is how like it must be.

    >>> near_match("spin_title", ["spine_title", "ink"])
    'spine_title'
    """
    names, wanted = _names(tuple(known)), _folded(written[:LONGEST_NAME])
    alike = names.alike(wanted, near)
    found = difflib.get_close_matches(wanted, alike, n=1, cutoff=near) if alike else []
    return names.folded[found[0]] if found else ""


def _folded(name: str) -> str:
    """A name as far as it matters whether it is like another."""
    return name.casefold().replace("-", "_").replace(" ", "_")


def _pairs(name: str) -> Iterable[str]:
    return dict.fromkeys(map("".join, pairwise(name)))


def _letters(name: str) -> Iterator[tuple[str, int]]:
    """The letters of a name, each with how often it stood there before."""
    before: dict[str, int] = {}
    for letter in name:
        times = before[letter] = before.get(letter, -1) + 1
        yield letter, times


class _Names:
    """Names that are looked for, folded, and which of them have a pair of letters."""

    def __init__(self, names: Iterable[str]) -> None:
        self.folded = {_folded(name): name for name in names}

    @cached_property
    def having(self) -> Mapping[str, Sequence[str]]:
        """The names that have a pair of letters."""
        found: dict[str, list[str]] = {}
        for name in self.folded:
            for pair in _pairs(name):
                found.setdefault(pair, []).append(name)
        return found

    @cached_property
    def lettered(self) -> Mapping[tuple[str, int], Sequence[str]]:
        """The names that have a letter for the first time, for the second, and so on."""
        found: dict[tuple[str, int], list[str]] = {}
        for name in self.folded:
            for letter in _letters(name):
                found.setdefault(letter, []).append(name)
        return found

    def alike(self, wanted: str, near: float) -> list[str]:
        """The names that may be so like one; if they are few, all that have enough letters of it in any order."""
        if len(self.folded) <= MOST_COMPARED:
            common = Counter(chain.from_iterable(self.lettered.get(letter, ()) for letter in _letters(wanted)))
            return [name for name, count in common.items() if 2.0 * count / (len(name) + len(wanted)) >= near]
        telling = (self.having.get(pair, ()) for pair in _pairs(wanted))
        shared = Counter(name for names in telling if len(names) <= FEW_HAVE for name in names)
        return [name for name, _ in shared.most_common(BEST_COMPARED)]


@lru_cache(maxsize=32)
def _names(known: tuple[str, ...]) -> _Names:
    """The same names are looked for again and again."""
    return _Names(known)


def show_field(path: FieldPath) -> str:
    """A field path as people read it; books are counted from 1.

    >>> show_field(("books", 2, "block", "pages"))
    'books[3].block.pages'
    """
    text = ""
    for part in path:
        text += f"[{part + 1}]" if isinstance(part, int) else f".{part}" if text else str(part)
    return text
