"""How a book is made: its block, its cover, and its jacket if it wears one."""

from __future__ import annotations

from collections.abc import Iterator

from ...shelf_file.whereabouts import Whereabouts
from ..making import Bench, Making
from .plan import BookPlan
from .steps.jacket import jacket_making
from .steps.job import BookJob

__all__ = ["book_makings"]


def book_makings(book: BookPlan, bench: Bench, whereabouts: Whereabouts) -> Iterator[Making]:
    """Part by part, in the order of the work."""
    job = BookJob(bench, whereabouts, book.page, book.entry.right_to_left, book.block, book.cover)
    yield book.entry.block.making(job)
    yield book.entry.cover.making(job)
    if book.jacket:
        yield jacket_making(job, book.jacket, book.thickness)
