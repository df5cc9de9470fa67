"""The search: fill areas one after the other by straight edge-to-edge cuts, keeping the best few layouts.

A layout in the making is a stack of empty rectangles and the items left. A block is put into a corner of the
top rectangle, which is then cut along the block's edge, by the shorter of the two cuts; the two rectangles
that stay empty come on top of the stack. (Trying the longer cut as well did worse on the published cases: a
long column hides its waste for long, so such layouts looked good for too long.) A rectangle that no item
left fits into is waste. Layouts are judged by waste for the area they have placed; of layouts with the same
items left and the same empty rectangles one is kept. Since every rectangle comes from a straight cut through
another one, every layout can be cut with knife and steel rule.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from typing import NamedTuple

from .blocks import Block, Kinds, Size
from .ranking import Ranking
from .trace import Lie, Move, Stack, trace
from .work import Work

__all__ = ["Filler", "Manner"]


class Manner(NamedTuple):
    """How to search: layouts kept, blocks tried in each, how much placed area counts against waste, and how
    far chance may shift the ranking of blocks."""

    kept: int
    tried: int
    bias: float
    chance: float = 0.0


class _Layout(NamedTuple):
    """A layout in the making; of low `worth` are those that waste little for what they have placed."""

    worth: float
    left: int
    stack: Stack
    placed: int
    move: Move | None


class Filler:
    """Fills areas with one set of blocks, again and again in different manners."""

    def __init__(self, kinds: Kinds, blocks: Sequence[Block]) -> None:
        self.kinds = kinds
        self._ranking = Ranking(kinds, blocks)

    def fill(self, areas: Sequence[Size], manner: Manner, work: Work, luck: random.Random) -> list[Lie] | None:
        """Place all items in the areas, filled in their order; None when this manner does not find a way."""
        full, all_area = self.kinds.full, self.kinds.area
        room = sum(width * height for width, height in areas)
        stack: Stack | None = None
        for width, height in reversed(areas):
            stack = self._on_top(width, height, full, stack)
        if room < all_area or stack is None:
            return None
        self._ranking.shuffle(manner.chance, luck)
        # without a handicap, a layout with one small piece and no waste would beat all others
        handicap = manner.bias * min(max(room - all_area, all_area // 100), all_area // 20)
        layouts = [_Layout(0.0, full, stack, 0, None)]
        while layouts and not work.over:
            grown: dict[tuple[int, Stack], _Layout] = {}
            for layout in layouts:
                last = self._grow(layout, manner.tried, room + handicap, grown)
                if last:
                    return trace(areas, last)
            layouts = sorted(grown.values(), key=lambda layout: layout.worth)[: manner.kept]
            work.spend(self._ranking.steps)
            self._ranking.steps = 0
        return None

    def _grow(self, layout: _Layout, tried: int, room: float, grown: dict[tuple[int, Stack], _Layout]) -> Move | None:
        """Add what a layout can become to `grown`; return the last move if one completes it."""
        _, left, (width, height, below, _), placed, before = layout
        upright = width >= height
        blocks = self._ranking.best(width, height, left, tried)
        self._ranking.steps += len(blocks)
        for block in blocks:
            wide, high, area, code = block[:4]
            rest, total = left - code, placed + area
            move = Move(before, layout.stack, block, upright)
            if not rest:
                return move
            if upright:
                stack = self._on_top(width - wide, height, rest, below)
                stack = self._on_top(wide, height - high, rest, stack)
            else:
                stack = self._on_top(width, height - high, rest, below)
                stack = self._on_top(width - wide, high, rest, stack)
            while stack and not self._ranking.any_fits(stack[0], stack[1], rest):
                stack = stack[2]
            # waste is what is neither placed nor empty; the empty rectangles must hold all that is left
            if not stack or stack[3] < self.kinds.area - total:
                continue
            worth = (room - total - stack[3]) / total
            known = grown.get((rest, stack))
            if known is None or worth < known.worth:
                grown[rest, stack] = _Layout(worth, rest, stack, total, move)
        return None

    def _on_top(self, width: int, height: int, left: int, below: Stack | None) -> Stack | None:
        """A stack with another rectangle, unless that is waste."""
        if not self._ranking.any_fits(width, height, left):
            return below
        return (width, height, below, width * height + (below[3] if below else 0))
