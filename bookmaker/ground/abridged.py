"""Long lists of problems cut short: the same slip in a thousand books is not told a thousand times."""

from __future__ import annotations

import re
from collections.abc import Iterable

from .problems import Place, Problem

__all__ = ["MOST_OF_A_KIND", "abridged"]

MOST_OF_A_KIND = 20
"""So many problems of a kind are told one by one."""

PARTICULARS = re.compile(r"'[^']*'|\"[^\"]*\"|[0-9][0-9.,]*")
"""What may differ between messages of one kind: what is quoted, and numbers."""


def abridged(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """The first problems of every kind, and at the end, how many more there are of it; a kind keeps to one file."""
    kinds: dict[tuple[object, ...], list[Problem]] = {}
    told: list[Problem] = []
    for problem in problems:
        file = problem.place.file if problem.place else None
        kind = kinds.setdefault((file, problem.severity, PARTICULARS.sub("", problem.message)), [])
        kind.append(problem)
        if file is None or len(kind) <= MOST_OF_A_KIND:
            told.append(problem)
    return (*told, *(_rest(kind) for (file, *_), kind in kinds.items() if file and len(kind) > MOST_OF_A_KIND))


def _rest(kind: list[Problem]) -> Problem:
    """How many problems of a kind are not told."""
    shown, last = kind[MOST_OF_A_KIND - 1].place, kind[-1].place
    assert shown is not None and last is not None  # only problems with places are cut short
    message = f"and {len(kind) - MOST_OF_A_KIND} more like {shown}, the last of them on line {last.line}"
    return Problem(message, severity=kind[0].severity, place=Place(shown.file))
