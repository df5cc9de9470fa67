"""Ask for less and less until no way is found: the loop around the search."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from .beam import Filler, Manner
from .blocks import Kinds, Size, make_blocks
from .trace import Lie
from .work import Work

__all__ = ["Fillers", "Goal", "improve"]

MANNERS = (
    (1, Manner(20, 8, 0.5)),
    (2, Manner(20, 10, 0.3)),
    (2, Manner(20, 10, 1.0)),
    (3, Manner(20, 12, 0.5)),
)
"""Depth of the blocks, and how to search with them; found by trial on the published cases."""

WASTE = 0.02
"""What a block of joined items may waste, as a share of its area."""

WIDEST = 10_000.0
"""No search keeps more ways open than this; where passes are short, rounds would widen it without end."""

GROWTH = 1.5
"""Every round keeps this many times more layouts than the one before."""

CHANCE = 0.15
"""How far chance shifts the ranking of blocks, from the second round on."""

PAIRS = 300_000
"""Pairs of block and item looked at for joining, at most."""


class Fillers:
    """One filler for every depth of blocks, made when first asked for."""

    def __init__(self, kinds: Kinds, largest: Size) -> None:
        self.kinds, self.largest = kinds, largest
        self._made: dict[int, Filler] = {}

    def of_depth(self, depth: int) -> Filler:
        """The filler whose blocks join up to so many items."""
        if depth not in self._made:
            limit = max(50, PAIRS // (2 * len(self.kinds.ways)))
            blocks = make_blocks(self.kinds, self.largest, depth, WASTE, min(limit, 4000))
            self._made[depth] = Filler(self.kinds, blocks)
        return self._made[depth]


@dataclass(frozen=True, slots=True)
class Goal:
    """What is to be made small: a count of bins, or a height in units.

    `areas` gives the areas that a value allows, `measure` the value a layout really has. Values below `bound`
    are impossible, those that differ by less than `step` not worth the work.
    """

    bound: int
    step: int
    areas: Callable[[int], Sequence[Size]]
    measure: Callable[[Sequence[Lie]], int]


def improve(goal: Goal, best: int, fillers: Fillers, work: Work, luck: random.Random) -> tuple[int, list[Lie] | None]:
    """Search for a value below `best`; return the least found and its layout, None if nothing was found.

    The first round halves what is open, the later ones, wider and led by chance, ask for one step less.
    """
    found: list[Lie] | None = None
    # many pieces make long passes: these start with a narrower search, so that all manners have their turn
    kept = max(3.0, min(20.0, 1000 / len(fillers.kinds.ways)))
    chance = 0.0
    while best - goal.step >= goal.bound and not work.over:
        for depth, usual in MANNERS:
            manner = usual._replace(kept=int(kept), chance=chance)
            low = max(goal.bound, best - goal.step) if chance else goal.bound
            while low <= best - goal.step and not work.over:
                wanted = low + (best - goal.step - low) // 2 // goal.step * goal.step
                lies = fillers.of_depth(depth).fill(goal.areas(wanted), manner, work, luck)
                work.spend(1)
                if lies is None:
                    low = wanted + goal.step
                    continue
                best, found = goal.measure(lies), lies
                low = max(goal.bound, best - goal.step) if chance else low
        kept, chance = min(kept * GROWTH, WIDEST), CHANCE
    return best, found
