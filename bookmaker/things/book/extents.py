"""How many pages each book has, where its block leaves that to the inside.

This comes before everything that depends on thickness: the pages settle the block, the block the spine, the
spine the cover and the shelf. The inside needs only the size of the page to tell.
"""

from __future__ import annotations

from dataclasses import replace

from ...ground.problems import Problem, ShelfFileError
from ...ground.told import in_units
from ...shelf_file.fields.entry import named
from ...typesetting.page import BookWords, PageFrame
from ..terms import Terms
from .blocks.block import BlockEntry
from .entry import BookEntry
from .pages.inside import LoadedInside
from .pages.written import parts_of

__all__ = ["misplaced", "page_frame", "settled_block"]

FEWEST_PAGES = 2

MOST_PAGES = 2000
FAR, BESIDE = 9, 3
"""So many steps further a block is planned to see how thick a page is; so many beside a guess are looked at."""


def page_frame(book: BookEntry, terms: Terms, pages: int, look: int) -> PageFrame:
    """The pages of a book, to be filled; what is left to chance on them hangs on its look."""
    page, printed_on = book.page_size(terms.scale), [name for _, name in named(book.block, "stock")][:1]
    return PageFrame(
        width=page.width,
        height=page.height,
        pages=pages,
        right_to_left=book.right_to_left,
        resolution_dpi=terms.resolution(printed_on),
        ink_spread=terms.ink_spread(printed_on),
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
    if (wanted := book.block.wanted_thickness) is not None:
        return book.block.with_pages(_pages_as_thick_as(book, wanted, terms)), ()
    frame = page_frame(book, terms, 0, look)
    pages = None if unread else inside.extent(frame)
    block = book.block.with_pages(pages or FEWEST_PAGES)
    return block, () if unread or pages is not None else (_unsettled(book, inside.why_open(frame)),)


def _pages_as_thick_as(book: BookEntry, wanted: float, terms: Terms) -> int:
    """The number of pages, in the steps that the block has, with which it is nearest to a thickness in mm.

    A page more is as much thicker wherever it is added, but for a section or a sheet that begins: so what the first
    guess gives is looked at with what lies beside it. Where nothing can be planned, that is told later.
    """
    page, step = book.page_size(terms.scale), book.block.step

    def thick(pages: int) -> float:
        block = book.block.with_pages(pages)
        return block.plan(page, terms.stocks, right_to_left=book.right_to_left).thickness.computed

    try:
        few, many = thick(step), thick(FAR * step)
        guess = round((wanted - few) / (many - few) * (FAR - 1)) + 1
        near = [step * steps for steps in range(max(1, guess - BESIDE), min(MOST_PAGES // step, guess + BESIDE) + 1)]
        return min(near or [step], key=lambda pages: abs(thick(pages) - wanted))
    except ShelfFileError:
        return max(FEWEST_PAGES, step)


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
        field=("block", "pages"),
    )


def misplaced(book: BookEntry) -> Problem | None:
    """What keeps a block from filling: a book without a space, in a stack, or not upright; the field is the book's."""
    a_thickness = f"write a thickness such as {in_units('4 mm', '5/32 in')}"
    if book.space is None:
        message = "the block is to fill its space, but the book stands in none"
        remedy = f"add space: with a name from spaces, or {a_thickness}"
    elif book.stack is not None:
        message = "a book in a stack cannot fill its space: the stack takes the height of its longest book"
        remedy = f"leave stack out, or {a_thickness}"
    elif book.stands.otherwise:
        message = f"a book with stands: {book.stands.otherwise} cannot fill its space, which takes books that stand"
        remedy = f"leave stands out, or {a_thickness}"
    else:
        return None
    return Problem(message, remedy, field=("block", "thickness"))
