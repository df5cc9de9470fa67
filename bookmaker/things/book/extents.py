"""How many pages each book has, where its block leaves that to the inside.

This comes before everything that depends on thickness: the pages settle the block, the block the spine, the
spine the cover and the shelf. The inside needs only the size of the page to tell.
"""

from __future__ import annotations

from dataclasses import replace

from ...ground.problems import Problem
from ...shelf_file.fields.entry import named
from ...typesetting.page import BookWords, PageFrame
from ..terms import Terms
from .blocks.block import BlockEntry
from .entry import BookEntry
from .pages.inside import LoadedInside
from .pages.written import parts_of

__all__ = ["page_frame", "settled_block"]

FEWEST_PAGES = 2


def page_frame(book: BookEntry, terms: Terms, pages: int, look: int) -> PageFrame:
    """The pages of a book, to be filled; what is left to chance on them hangs on its look."""
    page = book.page_size(terms.scale)
    return PageFrame(
        width=page.width,
        height=page.height,
        pages=pages,
        right_to_left=book.right_to_left,
        resolution_dpi=terms.resolution([name for _, name in named(book.block, "stock")][:1]),
        book=BookWords(book.title, book.author or "", terms.shelf, book.language, look, book.volume or ""),
        bleed=book.block.trimmed,
        step=book.block.step,
        asked=book.block.asked_pages,
    )


def settled_block(
    book: BookEntry, inside: LoadedInside, terms: Terms, look: int, *, unread: bool
) -> tuple[BlockEntry, tuple[Problem, ...]]:
    """The block with its number of pages, and what keeps anybody from telling it.

    `inside` is what was read, `unread` says that it could not be. What stays open is planned with two
    pages, so that everything else that is wrong can be said too.
    """
    if not book.block.is_open:
        return book.block, ()
    frame = page_frame(book, terms, 0, look)
    pages = None if unread else inside.extent(frame)
    block = book.block.with_pages(pages or FEWEST_PAGES)
    return block, () if unread or pages is not None else (_unsettled(book, inside.why_open(frame)),)


def _unsettled(book: BookEntry, why: Problem | None) -> Problem:
    if why:
        return replace(why, field=("inside", *why.field))
    if any(part.is_open for part in parts_of(book.inside)):
        return Problem(
            "neither the size of type nor the number of pages is settled",
            "write pages: in the block, or a size of type in place of fit",
            field=("block",),
        )
    return Problem(
        "the block has no pages, and its inside does not tell how many it needs",
        "write pages: 48, say",
        field=("block",),
    )
