"""What is wrong, as it is told on the terminal: by weight, alike ones once, with the line that it is about."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from textwrap import wrap
from typing import TYPE_CHECKING

from ..ground.lost_files import GONE, is_anywhere
from ..ground.problems import BookmakerError, Problem, Severity
from ..ground.quantities import counted
from ..ground.visible import one_line, printable
from .abridged import abridged
from .terminal import room, say

if TYPE_CHECKING:
    from ..shelf.checked import Checked

__all__ = ["by_weight", "message", "outcome", "problems_of", "refuse", "tell"]

LONGEST_SOURCE = 100
"""Characters of a line of the shelf file that are shown under a message."""

SHOWN_AFTER = 40
"""So many characters from the place of the problem on are shown at least, if the line has as many."""

FEW = 3
"""So many problems of a kind are told of a shelf that was worked out; more of them would hide the others."""

WEIGHTS = tuple(Severity)

INDENT = "    "
"""Before the line of the shelf file."""


def by_weight(problems: Iterable[Problem]) -> list[Problem]:
    """Errors first and notes last; among either, what keeps the shelf from fitting, then parts, then pages.

    What is alike in that stands as it came.
    """
    return sorted(problems, key=lambda problem: (WEIGHTS.index(problem.severity), _depth(problem)))


def _depth(problem: Problem) -> int:
    """How far in a problem lies: spaces and boxes, whole books, parts of them, their pages."""
    key, *within = problem.field or ("",)
    if key != "books":
        return 0
    return 3 if "inside" in within else 2 if within[1:] else 1


def tell(checked: Checked, problems: Iterable[Problem], *, wide: bool, quiet: bool) -> None:
    """Say what is wrong with a shelf that was worked out: alike things folded unless all are wanted, no notes if quiet.

    What may differ in what is alike are the names of books and spaces.
    """
    plan = checked.plan
    names = {*(str(one.name) for one in plan.plans.values()), *(space.name for space in plan.spaces)}
    found = by_weight(problem for problem in problems if not (quiet and problem.severity is Severity.NOTE))
    for problem in found if wide else abridged(found, FEW, names=names, remedy="--wide shows all"):
        say(message(problem, room()), err=True)


def refuse(problems: Iterable[Problem]) -> None:
    """Say why something is refused, in the order of the file."""
    for problem in abridged(problems):
        say(message(problem, room()), err=True)


def message(problem: Problem, width: int = 0) -> str:
    """A problem as it stands on the terminal: its place, severity, text and remedy, and the line it is about.

    Lines have at most `width` letters; 0 is any number.
    """
    what = f"{problem.message}; {problem.remedy}" if problem.remedy else problem.message
    severity = "" if problem.severity is Severity.ERROR else f"{problem.severity}: "
    place = f"{one_line(str(problem.place))}: " if problem.place else ""
    text = f"{place}{severity}{printable(what)}"
    lines = [text]
    if width:
        lines = wrap(text, width, subsequent_indent="  ", break_long_words=False, break_on_hyphens=False)
    if problem.place and problem.place.source.strip():
        longest = min(LONGEST_SOURCE, width - len(INDENT)) if width else LONGEST_SOURCE
        lines.append(INDENT + _clipped(problem.place.source, problem.place.column, longest))
    return "\n".join(lines)


def _clipped(source: str, column: int, longest: int) -> str:
    """A line of the shelf file; one that is longer than a terminal shows well is cut, not where the problem is."""
    text = source.strip()
    place = column - 1 - (len(source) - len(source.lstrip()))
    start = max(0, min(place + SHOWN_AFTER, len(text)) - longest)
    shown = text[start : start + longest]
    if start:
        shown = f"…{shown[1:].lstrip()}"
    shown = one_line(shown)
    return shown if start + longest >= len(text) else f"{shown[:-1].rstrip()}…"


def outcome(checked: Checked) -> str:
    """The last line: whether everything is well."""
    counts = {severity: sum(problem.severity is severity for problem in checked.problems) for severity in Severity}
    found = [counted(count, severity) for severity, count in counts.items() if count]
    if not checked.sound:
        return f"the shelf has problems: {', '.join(found)}"
    return f"the shelf is sound ({', '.join(found)})" if found else "the shelf is sound"


def problems_of(trouble: BookmakerError | FileNotFoundError) -> Sequence[Problem]:
    """What a command was given up for. There are libraries that look for the working folder as they are loaded.

    Raises:
        FileNotFoundError: the working folder is there; it is something else.
    """
    if isinstance(trouble, BookmakerError):
        return trouble.problems
    if is_anywhere():
        raise trouble
    return (Problem(*GONE),)
