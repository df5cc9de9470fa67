"""The case: a hard cover with a flat back, made apart from the block and hung on it.

Two boards and a stiffener lie under one covering (full binding), or under a spine piece and two sides
(quarter binding), or those and four corners (half binding). The covering is turned in around the boards; the
block's ends, or endpapers, are pasted over the turn-ins.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from .....ground.geometry import Size
from .....ground.problems import ShelfFileError
from .....paper.stock import Stock
from .....sheets.flat import Flat
from .....sheets.sheet_room import flat_too_large
from ...blocks.block_plan import BlockPlan
from ..cover import how_smaller
from ..cover_plan import CoverPlan
from .bare_parts import endpapers, templates
from .checks import folding_problems, problems_of, remarks_on
from .covering import covering
from .keys import CaseKeys
from .layers import board_layers, cut_list, endpaper_layers, layers_on_the_block, thickest_covering, turn_ins
from .quarters import corner_pieces, side_pieces, spine_piece
from .sizes import Sizes, size_up

if TYPE_CHECKING:
    from ....making import Making
    from ...steps.job import BookJob

__all__ = ["Case"]


class Case(CaseKeys):
    """A hard cover: two boards and a stiffener under one covering, or under spine piece, sides and corners."""

    def plan(self, page: Size, block: BlockPlan, stocks: Mapping[str, Stock], *, right_to_left: bool) -> CoverPlan:
        """Work out the case.

        Raises:
            ShelfFileError: with everything that keeps it from being made.
        """
        inner = block.thickness.under(*layers_on_the_block(self, block), *endpaper_layers(self, stocks))
        sizes = size_up(self, page, inner.value, stocks)
        problems = [*problems_of(self, sizes), *folding_problems(self, stocks)]
        parts = () if problems else tuple(_parts(self, sizes, right_to_left))
        less = how_smaller(block.thickness.value, page.width)
        for key, flat in parts:
            problems += flat_too_large(f"the {flat.name}", flat, stocks[flat.stock], ("cover", key), less)
        if problems:
            raise ShelfFileError(problems)
        at_head, at_fore_edge = thickest_covering(self, sizes)
        turned_in = tuple(turn_ins(self, stocks))
        return CoverPlan(
            kind=self.kind,
            spine=sizes.spine,
            thickness=inner.under(*board_layers(self, stocks), *turned_in),
            height=sizes.boards.height + 2 * at_head,
            depth=page.width + sizes.square + sizes.stiffener + sizes.back + at_fore_edge,
            flats=tuple(flat for _, flat in parts),
            edge=sizes.board + 2 * at_fore_edge,
            turned_in=sum(layer.total for layer in turned_in),
            cut_list=tuple(cut_list(self, sizes)),
            notes=tuple(remarks_on(self, sizes, block)),
        )

    def making(self, job: BookJob) -> Making:
        """Boards cut, covered and turned in; the block hung in the case."""
        from ...steps.case import case_making

        return case_making(job, self)


def _parts(entry: CaseKeys, sizes: Sizes, right_to_left: bool) -> Iterator[tuple[str, Flat]]:
    """Everything to print, each with the key that names its stock."""
    if entry.binding == "full" or entry.spine_stock is None:
        yield "stock", covering(sizes, entry.stock, right_to_left=right_to_left)
    else:
        yield "spine_stock", spine_piece(sizes, entry.spine_stock, right_to_left=right_to_left)
        for side in side_pieces(sizes, entry.stock, half=entry.binding == "half", right_to_left=right_to_left):
            yield "stock", side
        if entry.binding == "half":
            for corner in corner_pieces(sizes, entry.spine_stock, right_to_left=right_to_left):
                yield "spine_stock", corner
    if entry.endpapers:
        for endpaper in endpapers(sizes.page, entry.endpapers, right_to_left=right_to_left):
            yield "endpapers", endpaper
    if entry.templates:
        for template in templates(sizes, entry.templates):
            yield "templates", template
