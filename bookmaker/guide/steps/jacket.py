"""The steps of a loose jacket."""

from __future__ import annotations

from collections.abc import Iterator

from ...sheets.flat import Flat, Role
from ..cover_views import jacket_view
from ..job import BookJob, Making, Measure
from ..scale_drawings import flat_figure
from ..wording import listed, long, sides, thick
from .shared import FOLDING, KNIFE, SCORING, filming, printing, row_written

__all__ = ["making"]


def making(job: BookJob) -> Making:
    """The jacket scored, cut and folded around the finished book."""
    book = job.book
    jacket = book.jacket
    assert jacket is not None  # this module is for books that wear one
    return Making(
        heading="The jacket",
        steps=tuple(_steps(job, jacket.flat)),
        figures=(
            jacket_view(
                book.cover.depth,
                book.cover.thickness.value,
                jacket.flap,
                job.room,
                right_to_left=book.entry.right_to_left,
            ),
            flat_figure(jacket.flat, job.room, "The jacket"),
        ),
        tools=(*KNIFE, *SCORING, *FOLDING),
        measures=(_measure(job),),
    )


def _measure(job: BookJob) -> Measure:
    book = job.book
    row = row_written(job.called)
    return Measure("the book in its jacket, in a row", book.thickness.computed, row, book.measured)


def _steps(job: BookJob, flat: Flat) -> Iterator[str]:
    book = job.book
    jacket = book.jacket
    assert jacket is not None  # this module is for books that wear one
    yield (
        "Make the jacket when the covered book is finished and dry. It should be "
        f"{thick(book.cover.thickness.value)} thick. If it is more than 0.1 mm off, correct the measured_thickness of "
        "its block by as much and run make again."
    )
    yield printing(job, "jacket")
    yield from filming(job, flat)
    folds = [f"{fold.start.x:.1f}" for fold in sorted(flat.folds, key=lambda fold: fold.start.x)]
    spine = next(panel.rect.width for panel in flat.panels if panel.role is Role.SPINE)
    yield (
        f"Score the four folds: they lie {listed(folds)} mm from the left edge, the two in the middle {long(spine)} "
        f"apart for the spine. Cut the jacket out from mark to mark, {sides(flat.size)} high and wide."
    )
    yield (
        "Fold all four away from the print: they are mountains. Lay the spine of the book between the two inner "
        "folds, close both sides over the cover, and fold the flaps in around the fore-edges; they reach in "
        f"{long(jacket.flap)}. Do not press the folds of the flaps sharp before they are on the book: they are "
        "round."
    )
    yield "A jacket is not glued. Press the book in its jacket overnight, and it will keep its shape."
    yield (
        f"The book in its jacket is {thick(book.thickness.value)} thick, {long(book.height)} high and "
        f"{long(book.depth)} deep."
    )
