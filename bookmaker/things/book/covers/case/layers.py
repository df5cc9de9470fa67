"""What a case adds to the block, layer by layer, and what is cut for it by hand.

A gauge reads T + 2(B + c) in the middle; the paste under covering and turn-ins is not counted, for board and covering
drink it up. Along head, tail and fore-edge the turn-ins lie between board and block, c more on each side; boards are
stiff and lie on them, so that is how thick the book stands on the shelf.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from .....paper.glue import GLUES, glue_films
from .....paper.stock import Stock
from .....paper.thickness import Layer
from .....sheets.cutting import CutPart
from ...blocks.block_plan import BlockPlan
from ..cover_layers import sheets_of
from .keys import CaseKeys
from .sizes import Sizes

__all__ = ["board_layers", "cut_list", "endpaper_layers", "layers_on_the_block", "thickest_covering", "turn_ins"]


def endpaper_layers(entry: CaseKeys, stocks: Mapping[str, Stock]) -> Iterator[Layer]:
    """At each end a pastedown and a flyleaf, one film under the pastedown and one where the flyleaf is tipped on."""
    if entry.endpapers:
        stock = stocks[entry.endpapers]
        # no film is laid over what is glued down within the boards
        yield Layer("endpapers, pastedowns and flyleaves", 4, stock.caliper, stock.name)
        yield glue_films("glue films of the endpapers", 4, stock.glue)


def layers_on_the_block(entry: CaseKeys, block: BlockPlan) -> Iterator[Layer]:
    """Paste between boards and a block that has neither endpapers nor ends of its own to paste down."""
    if not entry.endpapers and not block.pastedowns:
        yield glue_films("glue films under the boards", 2, GLUES["paste"])


def turn_ins(entry: CaseKeys, stocks: Mapping[str, Stock]) -> Iterator[Layer]:
    """One turn-in at each side; where sides are apart from the spine piece, it is theirs."""
    yield from sheets_of("turn-ins, between board and block", stocks[entry.stock])


def board_layers(entry: CaseKeys, stocks: Mapping[str, Stock]) -> Iterator[Layer]:
    """Both boards and the covering on them; where sides lap over a spine piece, both lie there."""
    boards = stocks[entry.boards]
    yield Layer("boards", 2, boards.caliper, boards.name)
    if entry.binding == "full" or entry.spine_stock is None:
        yield from sheets_of("covering", stocks[entry.stock])
    else:
        yield from sheets_of("spine piece", stocks[entry.spine_stock])
        yield from sheets_of("sides, where they lap over it", stocks[entry.stock])


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
