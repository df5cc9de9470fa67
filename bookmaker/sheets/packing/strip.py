"""The lowest strip: all items on an endless strip of a given width, for published cases and paper rolls."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from .blocks import UNITS, Kinds, areas_in_units, kinds_of
from .bounds import strip_bound
from .cuts import Cut, take_apart
from .improve import Fillers, Goal, improve
from .items import Bin, Item, Placed
from .places import places_of
from .rows import pack_rows
from .trace import Lie
from .work import Work

__all__ = ["STRIP_EFFORT", "Strip", "pack_strip"]

STRIP_EFFORT = 300_000
"""Steps of search by default."""

FINENESS = 400
"""Heights that differ by less than one part in so many are not told apart."""


@dataclass(frozen=True, slots=True)
class Strip:
    """Items on a strip: its height in mm, the bound no packing can beat, and how much was searched."""

    placed: tuple[Placed, ...]
    width: float
    height: float
    bound: float
    row_height: float
    gap: float
    steps: int

    def cuts(self) -> tuple[Cut, ...]:
        """Straight edge-to-edge cuts that separate all pieces, in order."""
        return take_apart(self.placed, Bin(self.width, self.height), self.gap)[0]


def pack_strip(
    items: Sequence[Item],
    width: float,
    gap: float = 0.0,
    *,
    seed: int = 0,
    effort: int = STRIP_EFFORT,
    progress: Callable[[float], None] | None = None,
) -> Strip:
    """Place all items on a strip of the given width in mm, as low as the search finds, by straight cuts only.

    The result depends on items, width, gap, seed and effort (in steps) alone. `progress` is told the share of
    the work done.

    Raises:
        DoesNotFit: items are wider than the strip, whichever way they may lie.

    >>> pack_strip([Item(k, 3, 2, True) for k in "abcdef"], 6).height
    6.0
    """
    rows = pack_rows(items, Bin(width, math.inf), gap)
    row_height = max((spot.y + spot.height for spot in rows), default=0.0)
    work = Work(effort, progress)
    bound, placed = 0.0, rows
    if items:
        kinds = kinds_of(items, gap)
        ((inner, tallest),) = areas_in_units([Bin(width, row_height)], gap)
        goal = _goal(kinds, inner)
        bound = goal.bound / UNITS - gap
        _, lies = improve(goal, tallest, Fillers(kinds, (inner, tallest)), work, random.Random(seed))
        placed = places_of(lies, kinds, items) if lies else rows
    work.finish()
    height = max((spot.y + spot.height for spot in placed), default=0.0)
    return Strip(placed, width, height, bound, row_height, gap, work.done)


def _goal(kinds: Kinds, width: int) -> Goal:
    """A low strip; heights are multiples of what divides every side of every item."""
    grain = math.gcd(*(side for ways in kinds.ways for way in ways for side in way))
    bound = -(-strip_bound(kinds, width) // grain) * grain
    step = max(1, bound // FINENESS // grain) * grain

    def measure(lies: Sequence[Lie]) -> int:
        return max(lie.y + lie.height for lie in lies)

    return Goal(bound, step, lambda height: [(width, height)], measure)
