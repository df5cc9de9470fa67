"""Off-cuts that no piece fits on, and which concertinas would, if their strips were shorter."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from ..ground.problems import Problem, Severity, ShelfFileError
from ..ground.units import print_mm
from ..paper.stock import Stock
from ..sheets.lying import takes
from ..sheets.piece import Piece
from ..things.book.blocks.block import BlockEntry
from .plan import BookPlan, ShelfPlan

__all__ = ["useless_off_cuts"]

SHORTEST = 4
"""Panels of the shortest strip that a concertina may ask for."""

MOST_NAMED = 3
"""So many books are named; more would be noise."""


def useless_off_cuts(plan: ShelfPlan, pieces: Collection[Piece]) -> Iterator[Problem]:
    """A note for each off-cut that is too small for any of the pieces; the remedy says if shorter strips would fit."""
    for stock in plan.stocks.values():
        mine = [piece for piece in pieces if piece.flat.stock == stock.name]
        owners = {piece.book for piece in mine}
        books = [book for book in plan.books if book.number in owners]
        for off_cut in stock.off_cuts if mine else ():
            if not any(takes(off_cut, piece.flat) for piece in mine):
                yield _useless(off_cut, _shorter(books, off_cut, plan))


def _useless(off_cut: Stock, shorter: str) -> Problem:
    room = off_cut.usable
    return Problem(
        f"the {off_cut.sheet.name} off-cut of {off_cut.name} is smaller than any piece: with its margins and notes "
        f"it has room for {print_mm(room.width, 1)} × {print_mm(room.height, 1)}",
        f"keep it for smaller pieces, and take it out of off_cuts{shorter}",
        severity=Severity.NOTE,
        field=("stocks", off_cut.name, "off_cuts"),
    )


def _shorter(books: Collection[BookPlan], off_cut: Stock, plan: ShelfPlan) -> str:
    """The longest strips that would fit on an off-cut, and the books they are of; empty if none would."""
    found = {book.name: panels for book in books if (panels := _panels(book, off_cut, plan))}
    if not found:
        return ""
    longest = max(found.values())
    named = [name for name, panels in found.items() if panels == longest]
    some = ", ".join(named[:MOST_NAMED]) + (" or another" if len(named) > MOST_NAMED else "")
    return f"; or write longest_strip: {longest} in the block of {some}"


def _panels(book: BookPlan, off_cut: Stock, plan: ShelfPlan) -> int:
    """Panels of the longest strips of a book that all fit on an off-cut, an even number; 0 if there are none such.

    The block is worked out anew for each: what a strip takes besides its panels, its joint says.
    """
    most = int(max(off_cut.usable.size) / book.page.width) // 2 * 2
    for panels in range(most, SHORTEST - 1, -2):
        shorter = book.entry.block.in_strips(off_cut.name, panels)
        if shorter and _fits(book, shorter, off_cut, plan):
            return panels
    return 0


def _fits(book: BookPlan, shorter: BlockEntry, off_cut: Stock, plan: ShelfPlan) -> bool:
    try:
        block = shorter.plan(book.page, plan.stocks, right_to_left=book.entry.right_to_left)
    except ShelfFileError:
        return False
    return all(takes(off_cut, flat) for flat in block.flats)
