"""Rows of finished books that were measured side by side: each book takes its share of what the gauge said."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import sqrt

from ..paper.thickness import READING_TOLERANCE
from ..shelf_file.book_names import BookName, find_books
from ..things.book.plan import BookPlan
from .entries import MeasuredRowEntry

__all__ = ["MeasuredRow", "as_measured", "measured_row"]


@dataclass(frozen=True, slots=True)
class MeasuredRow:
    """Finished books measured side by side: their numbers from 0, and how thick they are together, in mm."""

    books: tuple[int, ...]
    thickness: float


def measured_row(entry: MeasuredRowEntry, books: Sequence[BookName]) -> MeasuredRow:
    """The row with its books found by name; `cross_check` has refused unknown ones."""
    return MeasuredRow(tuple(number for name in entry.books for number in find_books(name, books)), entry.thickness)


def as_measured(books: Mapping[int, BookPlan], rows: Iterable[MeasuredRow]) -> dict[int, BookPlan]:
    """The books with their shares: the difference is spread by thickness, the error of the reading evenly.

    Books of 4 and 8 mm that measure 12.6 mm together are taken as 4.2 and 8.4 mm.
    """
    measured = dict(books)
    for row in rows:
        computed = sum(books[number].thickness.value for number in row.books)
        error = READING_TOLERANCE / sqrt(len(row.books))
        for number in row.books:
            share = books[number].thickness.value * row.thickness / computed
            measured[number] = replace(books[number], measured=share, measured_error=error)
    return measured
