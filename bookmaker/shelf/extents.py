"""How many pages each book has, where its block leaves that to the inside.

This comes before everything that depends on thickness: the pages settle the block, the block the spine, the
spine the cover and the shelf. The inside needs only the size of the page to tell.
"""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import replace

from ..ground.problems import Problem
from ..shelf_file.fields.entry import named
from ..things.book.entry import BookEntry
from ..things.book.pages.inside import LoadedInside
from ..things.book.pages.written import parts_of
from ..typesetting.page import BookWords, PageFrame
from .entries import ShelfSpec

__all__ = ["page_frame", "settled"]

FEWEST_PAGES = 2


def page_frame(spec: ShelfSpec, book: BookEntry, pages: int) -> PageFrame:
    """The pages of a book, to be filled."""
    page = book.page_size(spec.scale)
    return PageFrame(
        width=page.width,
        height=page.height,
        pages=pages,
        right_to_left=book.right_to_left,
        resolution_dpi=spec.printed_by(next((name for _, name in named(book.block, "stock")), "")).resolution,
        book=BookWords(book.title, book.author or "", spec.shelf, book.language),
        bleed=book.block.trimmed,
        step=book.block.step,
        asked=book.block.asked_pages,
    )


def settled(
    spec: ShelfSpec, insides: Sequence[LoadedInside], unread: Container[object]
) -> tuple[ShelfSpec, list[Problem]]:
    """The shelf with the number of pages of every book, and the books that nobody gives a number of pages.

    `insides` is what was read for each book, `unread` are the numbers of those that could not be read. What
    stays open is planned with two pages, so that everything else that is wrong can be said too.
    """
    books: list[BookEntry] = []
    problems: list[Problem] = []
    for number, (book, inside) in enumerate(zip(spec.books, insides, strict=True)):
        if not book.block.is_open:
            books.append(book)
            continue
        pages = None if number in unread else inside.extent(page_frame(spec, book, 0))
        if pages is None and number not in unread:
            problems.append(_unsettled(number, book, inside.why_open(page_frame(spec, book, 0))))
        books.append(book.model_copy(update={"block": book.block.with_pages(pages or FEWEST_PAGES)}))
    return spec.model_copy(update={"books": tuple(books)}), problems


def _unsettled(number: int, book: BookEntry, why: Problem | None) -> Problem:
    if why:
        return replace(why, field=("books", number, "inside", *why.field))
    if any(part.is_open for part in parts_of(book.inside)):
        return Problem(
            "neither the size of type nor the number of pages is settled",
            "write pages: in the block, or a size of type in place of fit",
            field=("books", number, "block"),
        )
    return Problem(
        "the block has no pages, and its inside does not tell how many it needs",
        "write pages: 48, say",
        field=("books", number, "block"),
    )
