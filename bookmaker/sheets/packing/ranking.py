"""Which blocks to try in an empty rectangle, best first."""

from __future__ import annotations

import random
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence

from .blocks import Block, Kinds, Size

__all__ = ["Ranking"]

CHUNK = 40
"""Blocks ranked together; more are ranked only when these run out."""

NEAREST = 60
"""Blocks looked at because one of their sides is nearly the rectangle's."""

CLOSE = 0.1
"""A side shorter than the rectangle's by this share of it, or more, earns no premium for filling it."""

REMEMBERED = 5000
"""Rectangles whose ranking is kept, to bound memory."""


class _Ranked:
    """The blocks that fit a rectangle, best first, as far as they were asked for."""

    __slots__ = ("blocks", "following", "known")

    def __init__(self, blocks: list[Block], known: set[int], following: int) -> None:
        self.blocks = blocks
        self.known = known
        self.following = following


class Ranking:
    """Ranks blocks for rectangles. `steps` counts the work, until it is taken away."""

    def __init__(self, kinds: Kinds, blocks: Sequence[Block]) -> None:
        self.steps = 0
        self._guards = kinds.guards
        self._blocks = blocks
        self._falling = [-block.area for block in blocks]
        self._by_width = sorted((block.width, number) for number, block in enumerate(blocks))
        self._by_height = sorted((block.height, number) for number, block in enumerate(blocks))
        self._singles = sorted(kinds.singles(), key=lambda block: min(block.width, block.height))
        self._narrowest = [min(block.width, block.height) for block in self._singles]
        self._luck = [1.0] * len(blocks)
        self._ranked: dict[Size, _Ranked] = {}

    def shuffle(self, chance: float, luck: random.Random) -> None:
        """Forget all rankings, and raise the merit of each block by a random share up to `chance`."""
        self._luck = [1 + chance * luck.random() for _ in self._blocks]
        self._ranked = {}

    def any_fits(self, width: int, height: int, left: int) -> bool:
        """Whether any of the items left fits into a rectangle."""
        guards = self._guards
        guarded = left | guards
        count = bisect_right(self._narrowest, min(width, height))
        for single in self._singles[:count]:
            if single[0] <= width and single[1] <= height and (guarded - single[3]) & guards == guards:
                return True
        self.steps += count // 32
        return False

    def best(self, width: int, height: int, left: int, tried: int) -> list[Block]:
        """The best few blocks that fit into a rectangle and can be made of the items left."""
        guards = self._guards
        guarded = left | guards
        ranked = self._ranked.get((width, height)) or self._first(width, height)
        found: list[Block] = []
        seen = 0
        while True:
            for block in ranked.blocks[seen:]:
                if (guarded - block[3]) & guards == guards:
                    found.append(block)
                    if len(found) == tried:
                        return found
            seen = len(ranked.blocks)
            if not self._more(ranked, width, height):
                return found

    def _first(self, width: int, height: int) -> _Ranked:
        """Blocks about as wide or as high as the rectangle, and the largest others."""
        if len(self._ranked) > REMEMBERED:
            self._ranked.clear()
        known = {*_nearest(self._by_width, width), *_nearest(self._by_height, height)}
        others, following = self._scan(width, height, bisect_left(self._falling, -width * height))
        known.update(others)
        ranked = _Ranked(self._in_order(known, width, height), known, following)
        self._ranked[width, height] = ranked
        return ranked

    def _more(self, ranked: _Ranked, width: int, height: int) -> bool:
        """Rank the next largest blocks; False when there are none."""
        numbers, ranked.following = self._scan(width, height, ranked.following)
        new = [number for number in numbers if number not in ranked.known]
        ranked.blocks += self._in_order(new, width, height)
        return bool(numbers)

    def _scan(self, width: int, height: int, start: int) -> tuple[list[int], int]:
        """Numbers of the next blocks that fit, from a number on, and the number to go on with."""
        found: list[int] = []
        end = len(self._blocks)
        for number in range(start, end):
            block = self._blocks[number]
            if block[0] <= width and block[1] <= height:
                found.append(number)
                if len(found) == CHUNK:
                    end = number + 1
                    break
        self.steps += 1 + (end - start) // 32
        return found, end

    def _in_order(self, numbers: Iterable[int], width: int, height: int) -> list[Block]:
        """The blocks that fit, best first: those that fill the rectangle, with a premium for filling a side."""
        room, luck = width * height, self._luck
        merits: list[tuple[float, int]] = []
        for number in numbers:
            wide, high, area = self._blocks[number][:3]
            if wide <= width and high <= height:
                across = max(0.0, 1 - (width - wide) / (CLOSE * width))
                along = max(0.0, 1 - (height - high) / (CLOSE * height))
                merits.append((-(area / room + (across + along) / 2) * luck[number], number))
        merits.sort()
        self.steps += 1 + len(merits) // 8
        return [self._blocks[number] for _, number in merits]


def _nearest(sides: list[tuple[int, int]], length: int) -> list[int]:
    """Numbers of the blocks whose side is at most `length` and nearest to it."""
    end = bisect_left(sides, (length + 1, 0))
    return [number for _, number in sides[max(0, end - NEAREST) : end]]
