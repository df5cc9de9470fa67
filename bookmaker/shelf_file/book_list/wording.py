"""What is to be done about a problem with a book of a table: its columns and cells, not keys and groups."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from ...ground.problems import Problem
from ..yaml_tree import Tree

__all__ = ["for_a_table", "told_of_tables"]

IN_A_COLUMN = ", in a column of the table or under defaults"

CHANGED = re.compile(
    r"[0-9]{1,2}[. /-]+[^\W\d_]{3,9}\.?(?:[ -][0-9]{2,4})?"  # 01. Feb, 2-Jan, 3/Mar 26
    r"|[^\W\d_]{3,9}\.?[ -][0-9]{1,4}"  # Feb-26
    r"|[0-9]{1,4}[./-][0-9]{1,2}[./-][0-9]{1,4}"  # 2026-02-01, 01.02.2026
    r"|[0-9]+(?:[.,][0-9]+)?[eE][+-]?[0-9]+"  # 1.5E+02
)
"""What spreadsheets make of 1/2, 1-8 or 150, which they take for dates or large numbers."""


def for_a_table(problem: Problem, cell: str | None) -> Problem:
    """A problem with a book of a table; `cell` is the text it is about, None where the book leaves that out."""
    remedy = problem.remedy
    if cell is None:
        remedy += IN_A_COLUMN
    elif CHANGED.fullmatch(cell):
        remedy = f"spreadsheets take 1/2 for a date, and large numbers for powers: set the column to text, and {remedy}"
    return replace(problem, remedy=remedy)


def told_of_tables(problems: Iterable[Problem], shelf: Tree) -> Iterator[Problem]:
    """The same problems, but what every book of a table lacks is told once, at the first of them."""
    books = shelf.child("books")
    lines = Counter(book.place.file for book in books.value) if books and isinstance(books.value, list) else Counter()
    alike: dict[tuple[str, str], list[Problem]] = {}
    for problem in problems:
        if problem.place and problem.called and problem.remedy.endswith(IN_A_COLUMN):
            lacking = problem.message.removeprefix(problem.called)
            alike.setdefault((problem.place.file, lacking), []).append(problem)
        else:
            yield problem
    for (file, lacking), some in alike.items():
        of_all = replace(some[0], message=f"every book of this table{lacking}", called="")
        yield from (of_all,) if 1 < len(some) == lines[file] else some
