"""The covers of a whole shelf settled side by side, so that no two neighbours have the same colour."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from .designs import settled
from .plan import BookPlan

__all__ = ["dressed"]


def dressed(books: Sequence[BookPlan]) -> tuple[BookPlan, ...]:
    """The books with a ground colour for every drawn cover.

    Neighbours are books that follow one another in the shelf file and stand in the same space.
    """
    designs = settled([(book.entry.design, book.words, book.entry.space) for book in books])
    return tuple(
        replace(book, entry=book.entry.model_copy(update={"design": design}))
        for book, design in zip(books, designs, strict=True)
    )
