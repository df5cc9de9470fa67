"""Problems with books of a table in the words of tables: of columns and lines, not of keys and groups."""

from __future__ import annotations

import re
from dataclasses import replace

from ...ground.problems import Problem
from .columns import column_name

__all__ = ["in_words_of_tables"]

OF_A_BOOK = re.compile(r"books\[[0-9]+\]((?:\.\w+)*)")
"""How a message begins that tells of a field of a book."""

CHANGED = re.compile(
    r"[0-9]{1,2}[. /-]+[^\W\d_]{3,9}\.?(?:[ -][0-9]{2,4})?"  # 01. Feb, 2-Jan, 3/Mar 26
    r"|[^\W\d_]{3,9}\.?[ -][0-9]{1,4}"  # Feb-26
    r"|[0-9]{1,4}[./-][0-9]{1,2}[./-][0-9]{1,4}"  # 2026-02-01, 01.02.2026
    r"|[0-9]+(?:[.,][0-9]+)?[eE][+-]?[0-9]+"  # 1.5E+02
)
"""What spreadsheets make of 1/2, 1-8 or 150, which they take for dates or large numbers."""


def in_words_of_tables(problem: Problem, cell: str | None) -> Problem:
    """A problem with a book of a table; `cell` is the text it is about, None where the book leaves that out."""
    begun = OF_A_BOOK.match(problem.message)
    if not begun:
        return problem
    named, rest = column_name(begun[1].removeprefix(".")) or "this book", problem.message[begun.end() :]
    remedy = problem.remedy
    if cell is None:
        remedy += ", in a column of the table or under defaults"
    elif CHANGED.fullmatch(cell):
        remedy = f"spreadsheets take 1/2 for a date, and large numbers for powers: set the column to text, and {remedy}"
    return replace(problem, message=named + rest, remedy=remedy)
