"""Long lists of problems cut short: the same slip in a thousand books is not told a thousand times."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator

from ..ground.problems import Place, Problem

__all__ = ["MOST_OF_A_KIND", "abridged"]

MOST_OF_A_KIND = 20
"""So many problems of a kind are told one by one."""

PARTICULARS = r"'[^']*'|\"[^\"]*\"|\w[\w-]*\.\w+|[0-9][0-9.,]*"
"""What may differ between messages of one kind: what is quoted, names of files, and numbers."""


def abridged(
    problems: Iterable[Problem], most: int = MOST_OF_A_KIND, *, names: Iterable[str] = (), remedy: str = ""
) -> Iterator[Problem]:
    """The first problems of every kind, and behind the last of them, how many more there are; the remedy shows those.

    A kind keeps to one file; what a problem is `called` may differ within it, and `names` as well. What has no
    place is always told.
    """
    particulars = re.compile("|".join([*map(re.escape, sorted(names, key=len, reverse=True)), PARTICULARS]))
    listed = [(problem, _kind(problem, particulars)) for problem in problems]
    counts = Counter(kind for _, kind in listed)
    last = {kind: problem.place.line for problem, kind in listed if problem.place}
    told: Counter[tuple[str, ...]] = Counter()
    for problem, kind in listed:
        told[kind] += 1
        if problem.place is None or told[kind] <= most:
            yield problem
        if problem.place and told[kind] == most < counts[kind]:
            more = f"and {counts[kind] - most} more like {problem.place}, the last of them on line {last[kind]}"
            yield Problem(more, remedy, problem.severity, place=Place(problem.place.file))


def _kind(problem: Problem, particulars: re.Pattern[str]) -> tuple[str, ...]:
    """What problems have in common that are told but once."""
    file = problem.place.file if problem.place else ""
    return (file, problem.severity, particulars.sub("", problem.message.removeprefix(problem.called)))
