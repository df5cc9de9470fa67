"""Concertinas on off-cuts that are too small for their strips: how short these would have to be."""

from __future__ import annotations

from collections.abc import Mapping

from ...ground.geometry import Size
from ...ground.problems import ShelfFileError
from ...paper.stock import Stock
from ...sheets.lying import takes
from ..thing import Advice
from .blocks import plan_block
from .blocks.concertina import Concertina
from .entry import BookEntry

__all__ = ["shorter_strips"]

SHORTEST = 4
"""Panels of the shortest strip that a concertina may ask for."""


def shorter_strips(book: BookEntry, page: Size, off_cut: Stock, stocks: Mapping[str, Stock]) -> Advice | None:
    """The longest strips of a book, an even number of panels, that all fit on an off-cut; None if there are none such.

    The block is worked out anew for each: what a strip takes besides its panels, its joint says.
    """
    block = book.block
    if not isinstance(block, Concertina) or block.stock != off_cut.name:
        return None
    most = int(max(off_cut.usable.size) / page.width) // 2 * 2
    fits = (panels for panels in range(most, SHORTEST - 1, -2) if _fits(book, page, panels, off_cut, stocks))
    longest = next(fits, None)
    return None if longest is None else Advice(f"longest_strip: {longest} in the block", longest)


def _fits(book: BookEntry, page: Size, panels: int, off_cut: Stock, stocks: Mapping[str, Stock]) -> bool:
    shorter = book.block.model_copy(update={"longest_strip": panels})
    try:
        block = plan_block(shorter, page, stocks, right_to_left=book.right_to_left)
    except ShelfFileError:
        return False
    return all(takes(off_cut, flat) for flat in block.flats)
