"""What a book tells its maker: what it is, its sizes, how its block, its cover and its jacket are made."""

from __future__ import annotations

from collections.abc import Iterator

from ...ground.geometry import Size
from ...ground.quantities import counted
from ..making import Bench, Chapter, Making
from ..thing import Around
from ..wording import sides, thick
from .plan import BookPlan
from .steps.jacket import jacket_making
from .steps.job import BookJob

__all__ = ["book_chapter"]


def book_chapter(book: BookPlan, bench: Bench, around: Around) -> Chapter:
    """Everything about one book."""
    job = BookJob(bench, around.called([book.id]), book.page, book.entry.right_to_left, book.block, book.cover)
    makings = tuple(_makings(book, job))
    kin = "" if book.block.pages else "Dummies"
    return Chapter(around.printed(book.id), _about(book, around), makings, tuple(_sizes(book, around)), kin)


def _makings(book: BookPlan, job: BookJob) -> Iterator[Making]:
    """Part by part, in the order of the work."""
    yield book.entry.block.making(job)
    yield book.entry.cover.making(job)
    if book.jacket:
        yield jacket_making(job, book.jacket, book.thickness)


def _about(book: BookPlan, around: Around) -> str:
    """Its author, how it is made, where it stands."""
    block, cover = book.block, book.cover
    parts = [f"by {book.entry.author}"] if book.entry.author else []
    pages = f"{block.kind} of {counted(block.pages, 'page')}" if block.pages else f"{block.kind} block"
    parts.append(f"{pages} in a {cover.kind}" + (" with a jacket" if book.jacket else ""))
    holder = around.holder_of(book.id)
    if holder:
        parts.append(f"stands in the {holder.family.noun} {holder.name}")
    elif book.entry.space:
        lies = f" in the stack {book.entry.stack}" if book.entry.stack else ""
        parts.append(f"{'lies' if lies else 'stands'} in {book.entry.space}{lies}")
    text = f"{'; '.join(parts)}."
    if book.entry.right_to_left:
        text += (
            " It reads from right to left: with the front up the spine is on the right. Its sheets are already "
            "mirrored."
        )
    return text[0].upper() + text[1:]


def _sizes(book: BookPlan, around: Around) -> Iterator[tuple[str, str]]:
    _, likely = book.standing.uncertainty.spread(around.terms.tolerances)
    yield "page", sides(book.page)
    yield "block by itself", thick(book.block.bare.value)
    yield "spine, flat", thick(book.cover.spine)
    yield "book thick", thick(book.thickness.value)
    yield "likely ±", thick(likely)
    yield "book deep × high", sides(Size(book.depth, book.height))
