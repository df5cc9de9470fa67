"""What is to be done about a problem with a book of a table: its columns and cells, not keys and groups."""

from __future__ import annotations

import re
from dataclasses import replace

from ...ground.problems import Problem

__all__ = ["for_a_table"]

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
        remedy += ", in a column of the table or under defaults"
    elif CHANGED.fullmatch(cell):
        remedy = f"spreadsheets take 1/2 for a date, and large numbers for powers: set the column to text, and {remedy}"
    return replace(problem, remedy=remedy)
