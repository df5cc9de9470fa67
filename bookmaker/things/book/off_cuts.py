"""Accordions on off-cuts that are too small for their strips: how short these would have to be."""

from __future__ import annotations

from collections.abc import Mapping

from ...ground.geometry import Size
from ...ground.problems import ShelfFileError
from ...paper.stock import Stock
from ...sheets.packing_items import takes
from ..answers import Advice
from .blocks.block import BlockEntry
from .entry import BookEntry

__all__ = ["shorter_strips"]

SHORTEST = 4
"""Panels of the shortest strip that an accordion may ask for."""


def shorter_strips(book: BookEntry, page: Size, off_cut: Stock, stocks: Mapping[str, Stock]) -> Advice | None:
    """The longest strips of a book, an even number of panels, that all fit on an off-cut; None if there are none such.

    The block is worked out anew for each: what a strip takes besides its panels, its joint says.
    """
    most = int(max(off_cut.usable.size) / page.width) // 2 * 2
    for panels in range(most, SHORTEST - 1, -2):
        shorter = book.block.in_strips(off_cut.name, panels)
        if shorter and _fits(book, shorter, page, off_cut, stocks):
            return Advice(f"longest_strip: {panels} in the block", panels)
    return None


def _fits(book: BookEntry, shorter: BlockEntry, page: Size, off_cut: Stock, stocks: Mapping[str, Stock]) -> bool:
    try:
        block = shorter.plan(page, stocks, right_to_left=book.right_to_left)
    except ShelfFileError:
        return False
    return all(takes(off_cut, flat) for flat in block.flats)
