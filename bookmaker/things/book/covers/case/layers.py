"""What a case adds to the block, layer by layer, and what is cut for it by hand.

The paste under the covering is not counted, T + 2(B + c): board and covering drink it up.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from .....paper.stock import Stock
from .....paper.thickness import Layer
from .....sheets.cutting import CutPart
from .keys import CaseKeys
from .sizes import Sizes

__all__ = ["board_layers", "cut_list", "endpaper_layers", "thickest_covering"]


def endpaper_layers(entry: CaseKeys, stocks: Mapping[str, Stock]) -> Iterator[Layer]:
    """At each end a pastedown and a flyleaf, one film under the pastedown and one where the flyleaf is tipped on."""
    if entry.endpapers:
        stock = stocks[entry.endpapers]
        # no film is laid over what is glued down within the boards
        yield Layer("endpapers, pastedowns and flyleaves", 4, stock.caliper, stock.name)
        yield Layer("glue films of the endpapers", 4, stock.glue)


def board_layers(entry: CaseKeys, stocks: Mapping[str, Stock]) -> Iterator[Layer]:
    """Both boards and the covering on them; where sides lap over a spine piece, both lie there."""
    boards = stocks[entry.boards]
    yield Layer("boards", 2, boards.caliper, boards.name)
    if entry.binding == "full" or entry.spine_stock is None:
        yield from _sheets("covering", 2, stocks[entry.stock])
    else:
        yield from _sheets("spine piece", 2, stocks[entry.spine_stock])
        yield from _sheets("sides, where they lap over it", 2, stocks[entry.stock])


def _sheets(what: str, count: int, stock: Stock) -> Iterator[Layer]:
    yield Layer(what, count, stock.caliper, stock.name)
    if stock.film:
        yield Layer(f"film over {what.partition(',')[0]}", count, stock.film)


def thickest_covering(entry: CaseKeys, sizes: Sizes) -> tuple[float, float]:
    """How thick the covering lies on the edges of the boards, in mm: at head and tail, and at the fore-edge."""
    lapped = sizes.side + sizes.back
    if entry.binding == "full":
        return sizes.side, sizes.side
    return lapped, lapped if entry.binding == "half" else sizes.side


def cut_list(entry: CaseKeys, sizes: Sizes) -> Iterator[CutPart]:
    """Two boards and a stiffener, grain along the spine."""
    width, height = sizes.boards
    yield CutPart("board", entry.boards, height, width, sizes.board, 2)
    if sizes.stiffener:
        yield CutPart("stiffener", entry.stiffener_stock or entry.boards, height, sizes.spine, sizes.stiffener)
