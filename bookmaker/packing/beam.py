"""The search: fill areas one after the other by straight edge-to-edge cuts, keeping the best few layouts.

A layout in the making is a stack of empty rectangles and the items left. A block is put into a corner of the
top rectangle; what stays empty is cut into two rectangles, in either of two ways, and these come on top of
the stack. A rectangle that no item left fits into is waste. Layouts are judged by waste for the area they
have placed; of layouts with the same items left and the same empty rectangles one is kept. Since every
rectangle comes from a straight cut through another one, every layout can be cut with knife and steel rule.
"""

from __future__ import annotations

import random
from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from typing import NamedTuple

from .blocks import Block, Kinds, Size
from .trace import Lie, Move, Stack, trace
from .work import Work

__all__ = ["Filler", "Manner"]

CHUNK = 40
"""Blocks that are ranked together for an empty rectangle; more are ranked only when these run out."""

REMEMBERED = 5000
"""Rectangles whose ranking is kept, to bound memory."""


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


class _Ranked:
    """The blocks that fit an empty rectangle, best first, as far as they were asked for."""

    __slots__ = ("blocks", "following")

    def __init__(self, blocks: list[Block], following: int) -> None:
        self.blocks = blocks
        self.following = following


class Filler:
    """Fills areas with one set of blocks, again and again in different manners."""

    def __init__(self, kinds: Kinds, blocks: Sequence[Block]) -> None:
        self.kinds = kinds
        self.blocks = blocks
        self.many = kinds.area * MANY / sum(map(len, kinds.items))
        self._falling = [-block.area for block in blocks]
        self._luck = [1.0] * len(blocks)
        self._singles = sorted(kinds.singles(), key=lambda block: block.area)
        self._least = min((min(block.width, block.height) for block in self._singles), default=0)
        self._rising = [single.area for single in self._singles]
        self._ranked: dict[Size, _Ranked] = {}
        self._steps = 0
        self._by_width = sorted((block.width, number) for number, block in enumerate(blocks))
        self._by_height = sorted((block.height, number) for number, block in enumerate(blocks))

    def fill(self, areas: Sequence[Size], manner: Manner, work: Work, luck: random.Random) -> list[Lie] | None:
        """Place all items in the areas, filled in their order; None when this manner does not find a way."""
        full, room = self.kinds.full, sum(width * height for width, height in areas)
        stack: Stack | None = None
        for width, height in reversed(areas):
            stack = self._on_top(width, height, full, stack)
        if room < self.kinds.area or stack is None:
            return None
        self._luck = [1 + manner.chance * luck.random() for _ in self.blocks]
        self._ranked = {}
        layouts = [_Layout(0.0, full, stack, 0, None)]
        while layouts and not work.over:
            grown: dict[tuple[int, Stack], _Layout] = {}
            for layout in layouts:
                last = self._grow(layout, manner, room, grown)
                if last:
                    return trace(areas, last)
            layouts = sorted(grown.values(), key=lambda layout: layout.worth)[: manner.kept]
            work.spend(self._steps)
            self._steps = 0
        return None

    def _grow(self, layout: _Layout, manner: Manner, room: int, grown: dict[tuple[int, Stack], _Layout]) -> Move | None:
        """Add what a layout can become to `grown`; return the last move if one completes it."""
        _, left, (width, height, below, _), placed, before = layout
        all_area = self.kinds.area
        # without this, a layout with one small piece and no waste would beat all others
        handicap = manner.bias * min(max(room - all_area, all_area // 100), all_area // 20)
        for block in self._available(width, height, left, manner.tried):
            wide, high, area, code = block[:4]
            rest, total = left - code, placed + area
            if wide == width or high == height:
                cuts = (True,)
            elif width * height < self.many:
                cuts = (True, False)
            elif height > LONG * width:
                cuts = (False,)
            elif width > LONG * height:
                cuts = (True,)
            else:
                cuts = (True, False)
            for upright in cuts:
                move = Move(before, layout.stack, block, upright)
                if not rest:
                    return move
                self._steps += 1
                stack: Stack | None
                if upright:
                    stack = self._on_top(width - wide, height, rest, below)
                    stack = self._on_top(wide, height - high, rest, stack)
                else:
                    stack = self._on_top(width, height - high, rest, below)
                    stack = self._on_top(width - wide, high, rest, stack)
                while stack and not self._any_fits(stack[0], stack[1], rest):
                    stack = stack[2]
                if not stack or stack[3] < all_area - total:
                    continue
                worth = (room - total - stack[3] + handicap) / total
                known = grown.get((rest, stack))
                if known is None or worth < known.worth:
                    grown[rest, stack] = _Layout(worth, rest, stack, total, move)
        return None

    def _on_top(self, width: int, height: int, left: int, below: Stack | None) -> Stack | None:
        """A stack with another rectangle, unless that is waste."""
        if not self._any_fits(width, height, left):
            return below
        return (width, height, below, width * height + (below[3] if below else 0))

    def _any_fits(self, width: int, height: int, left: int) -> bool:
        """Whether any item left fits into a rectangle."""
        if width < self._least or height < self._least:
            return False
        guards = self.kinds.guards
        guarded = left | guards
        for single in self._singles[: bisect_right(self._rising, width * height)]:
            if single[0] <= width and single[1] <= height and (guarded - single[3]) & guards == guards:
                return True
        return False

    def _available(self, width: int, height: int, left: int, tried: int) -> list[Block]:
        """The best few blocks that fit into a rectangle and are left."""
        guards = self.kinds.guards
        guarded = left | guards
        ranked = self._ranked.get((width, height))
        if ranked is None:
            if len(self._ranked) > REMEMBERED:
                self._ranked.clear()
            ranked = self._ranked[width, height] = self._first_ranked(width, height)
        found: list[Block] = []
        seen = 0
        while True:
            for block in ranked.blocks[seen:]:
                if (guarded - block[3]) & guards == guards:
                    found.append(block)
                    if len(found) == tried:
                        return found
            seen = len(ranked.blocks)
            if not self._rank_more(ranked, width, height):
                return found

    def _first_ranked(self, width: int, height: int) -> _Ranked:
        """Blocks nearly as wide or as high as the rectangle, and the largest others."""
        numbers = _nearest(self._by_width, width) + _nearest(self._by_height, height)
        blocks = {number: self.blocks[number] for number in numbers}
        ranked = _Ranked([], bisect_left(self._falling, -width * height))
        others, ranked.following = self._scan(width, height, ranked.following)
        blocks.update(others)
        ranked.blocks = self._in_order(blocks, width, height)
        return ranked

    def _rank_more(self, ranked: _Ranked, width: int, height: int) -> bool:
        """Rank the next largest blocks; False when there are none."""
        blocks, ranked.following = self._scan(width, height, ranked.following)
        ranked.blocks += self._in_order(blocks, width, height)
        return bool(blocks)

    def _scan(self, width: int, height: int, start: int) -> tuple[dict[int, Block], int]:
        """The next blocks, from a number on, that fit with room on two sides, and the number to go on with."""
        found: dict[int, Block] = {}
        number = start
        for number in range(start, len(self.blocks)):
            block = self.blocks[number]
            if block[0] < width and block[1] < height:
                found[number] = block
                if len(found) == CHUNK:
                    break
        else:
            number = len(self.blocks) - 1
        self._steps += 1 + (number - start) // 50
        return found, number + 1

    def _in_order(self, blocks: dict[int, Block], width: int, height: int) -> list[Block]:
        """The blocks that fit, best first: those that fill a rectangle, with a premium for filling a side."""

        def merit(number: int, block: Block) -> float:
            exact = (
                max(0.0, 1 - CL * (width - block[0]) / width) ** PW
                + max(0.0, 1 - CL * (height - block[1]) / height) ** PW
            )
            return (block[2] / (width * height) + exact / 2) * self._luck[number]

        fitting = [
            (-merit(number, block), number)
            for number, block in blocks.items()
            if block[0] <= width and block[1] <= height
        ]
        return [self.blocks[number] for _, number in sorted(fitting)]


def _nearest(sides: list[tuple[int, int]], length: int) -> list[int]:
    """Numbers of the blocks whose side is at most `length` and nearest to it."""
    end = bisect_left(sides, (length + 1, 0))
    return [number for side, number in sides[max(0, end - NEAR) : end]]


import os

CL = float(os.environ.get("CL", "10"))
PW = float(os.environ.get("PW", "2"))
NEAR = int(os.environ.get("NEAR", "60"))

LONG = float(os.environ.get("LONG", "2"))
MANY = float(os.environ.get("MANY", "12"))
