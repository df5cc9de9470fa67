"""How a piece lies on paper: the room it takes, and the way its grain asks for."""

from __future__ import annotations

from ..ground.geometry import Size
from ..paper.mark_margin import MARK_MARGIN
from ..paper.stock import Stock
from .flat import Flat
from .packing import Bin, Item
from .piece import Piece

__all__ = ["bin_of", "item_of", "lies_turned", "takes"]


def bin_of(stock: Stock) -> Bin:
    """The room on a sheet of a stock."""
    return Bin(*stock.usable.size)


def item_of(piece: Piece, stock: Stock, group: str = "") -> Item:
    """The room a piece takes with its margin, as it lies when its grain is right; those of a group like to be near."""
    width, height = _room(piece.flat, stock)
    return Item(piece.id, width, height, may_turn=_free(piece.flat, stock), group=group)


def lies_turned(piece: Piece, stock: Stock) -> bool:
    """Whether the fibres of the sheet ask for a quarter turn."""
    return _turned(piece.flat, stock)


def takes(stock: Stock, flat: Flat) -> bool:
    """Whether a flat with its margin has room on an empty sheet of a stock."""
    room, paper = _room(flat, stock), bin_of(stock)
    return paper.takes(*room) or (_free(flat, stock) and paper.takes(*room.turned))


def _room(flat: Flat, stock: Stock) -> Size:
    """The room of a flat with its margin, as it lies when its grain is right."""
    upright = MARK_MARGIN.around(flat.size, flat.bleed)
    return upright.turned if _turned(flat, stock) else upright


def _free(flat: Flat, stock: Stock) -> bool:
    """Whether a flat may lie either way."""
    return flat.grain is None or stock.grain_axis is None


def _turned(flat: Flat, stock: Stock) -> bool:
    wanted, given = flat.grain, stock.grain_axis
    return wanted is not None and given is not None and wanted is not given
