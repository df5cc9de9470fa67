"""How a piece lies on paper: the room it takes, the way its grain asks for, and paper that is too small for any."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from .apron import APRON
from .errors import Problem, Severity
from .flat import Axis
from .packing import Bin, Item
from .piece import Piece
from .stock import Stock
from .units import print_mm

__all__ = ["bin_of", "item_of", "lies_turned", "useless_off_cuts"]

STRIP = "strip"
"""The kind of flat that can be made shorter, and the book then has more of them."""

SHORTEST = 4
"""Panels of the shortest strip that a concertina may ask for."""


def bin_of(stock: Stock) -> Bin:
    """The room on a sheet of a stock."""
    return Bin(*stock.usable.size)


def item_of(piece: Piece, stock: Stock) -> Item:
    """The room a piece takes with its apron, as it lies when its grain is right."""
    width, height = APRON.around(piece.flat.size, piece.flat.bleed)
    if lies_turned(piece, stock):
        width, height = height, width
    free = piece.flat.grain is None or stock.grain_axis is None
    return Item(piece.id, width, height, may_turn=free, group=" ".join(map(str, piece.owner)))


def lies_turned(piece: Piece, stock: Stock) -> bool:
    """Whether the fibres of the sheet ask for a quarter turn."""
    wanted, given = piece.flat.grain, stock.grain_axis
    return wanted is not None and given is not None and wanted is not given


def useless_off_cuts(stock: Stock, pieces: Collection[Piece]) -> Iterator[Problem]:
    """Off-cuts that are too small for any piece; the remedy says if they would take shorter strips."""
    items = [item_of(piece, stock) for piece in pieces]
    for off_cut in stock.off_cuts:
        if any(bin_of(off_cut).takes(width, height) for item in items for width, height, _ in item.ways()):
            continue
        room, panels = off_cut.usable, max((_panels(piece, off_cut) for piece in pieces), default=0)
        shorter = f"; or write longest_strip: {panels} in the block of a book" if panels >= SHORTEST else ""
        yield Problem(
            f"the {off_cut.sheet.name} off-cut of {stock.name} is smaller than any piece: with its margins and notes "
            f"it has room for {print_mm(room.width, 1)} × {print_mm(room.height, 1)}",
            f"keep it for smaller pieces, and take it out of off_cuts{shorter}",
            severity=Severity.NOTE,
            field=("stocks", stock.name, "off_cuts"),
        )


def _panels(piece: Piece, off_cut: Stock) -> int:
    """How many panels of a strip have room on an off-cut: an even number, 0 of a piece that is no strip."""
    flat = piece.flat
    if flat.kind != STRIP:
        return 0
    pairs = (
        int(room.width // (2 * flat.panels[0].rect.width))
        for room in off_cut.openings(Axis.Y)
        if flat.size.height <= room.height
    )
    return 2 * max(pairs, default=0)
