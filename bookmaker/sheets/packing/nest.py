"""Nesting: fewest bins first, then groups together, then the largest piece of the last bin left over."""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from .blocks import Kinds, areas_in_units, kinds_of
from .bounds import area_bound, bin_bound, rows_bound
from .cuts import Cut, take_apart
from .gather import gather, scatter, spread
from .improve import Fillers, Goal, improve
from .items import Bin, Item, Placed
from .places import places_of
from .rows import pack_rows, rows_by_group
from .trace import Lie
from .work import Work

__all__ = ["NEST_EFFORT", "Nesting", "nest", "sheets_of"]

NEST_EFFORT = 200_000
"""Steps of search by default: 300 different pieces then take about three seconds."""

FOR_SHEETS, FOR_OFF_CUT = 0.75, 0.25
"""Shares of the steps that may go into using fewer bins, and into a large off-cut."""

FINENESS = 200
"""Off-cuts that differ by less than one part in so many of a bin are not told apart."""


@dataclass(frozen=True, slots=True)
class Nesting:
    """Where every item lies, in the order of the items, and how good that is.

    `bins` are all bins that may be numbered in `placed`: the left-overs, used or not, then `sheets` whole ones.
    `row_sheets` is what the simple packing takes; no packing takes less than `area_bound`, which counts area
    alone, nor than `bound`, which also sees that large pieces do not fit beside each other.
    """

    placed: tuple[Placed, ...]
    bins: tuple[Bin, ...]
    gap: float
    sheets: int
    row_sheets: int
    area_bound: int
    bound: int
    steps: int

    @property
    def saved(self) -> int:
        """Sheets saved against the simple packing."""
        return self.row_sheets - self.sheets

    @property
    def used_share(self) -> float:
        """Area of the pieces for the area of the bins they lie in."""
        used = {spot.bin for spot in self.placed}
        room = sum(self.bins[number].width * self.bins[number].height for number in used)
        return sum(spot.width * spot.height for spot in self.placed) / room if room else 1.0

    def on(self, number: int) -> tuple[Placed, ...]:
        """What lies in a bin."""
        return tuple(spot for spot in self.placed if spot.bin == number)

    def cuts(self, number: int) -> tuple[Cut, ...]:
        """Straight edge-to-edge cuts, in order, that take a bin's pieces apart as far as such cuts can."""
        return take_apart(self.on(number), self.bins[number], self.gap)[0]


def nest(
    items: Sequence[Item],
    area: Bin,
    gap: float,
    leftovers: Sequence[Bin] = (),
    *,
    seed: int = 0,
    effort: int = NEST_EFFORT,
    progress: Callable[[float], None] | None = None,
) -> Nesting:
    """Place every item in as few bins of size `area` as the search finds; never more than `pack_rows` takes.

    Arguments as for `pack_rows`. The result depends on these, `seed` and `effort` (in steps) alone. `progress`
    is told the share of the work done, from 0 to 1.

    Raises:
        DoesNotFit: items are larger than `area`, whichever way they may lie.
    """
    work = Work(effort, progress)
    rows = pack_rows(items, area, gap, leftovers)
    row_sheets = sheets_of(rows, len(leftovers))
    found = [rows, *rows_by_group(items, area, gap, leftovers)]
    least = lower = 0
    if items:
        search = _Search(items, area, gap, leftovers, work, random.Random(seed))
        least, lower = search.area_bound, search.bound
        found += search.layouts(min(sheets_of(spots, len(leftovers)) for spots in found))
    by_key = {item.key: item for item in items}
    best = _best(found, by_key, area, gap, leftovers)
    work.finish()
    sheets = sheets_of(best, len(leftovers))
    bins = (*leftovers, *[area] * sheets)
    return Nesting(best, bins, gap, sheets, row_sheets, least, lower, work.done)


def sheets_of(placed: Sequence[Placed], leftovers: int) -> int:
    """Whole bins used; the left-overs have the lower numbers."""
    return max((spot.bin - leftovers + 1 for spot in placed if spot.bin >= leftovers), default=0)


def _best(
    found: Sequence[tuple[Placed, ...]], items: Mapping[str, Item], area: Bin, gap: float, leftovers: Sequence[Bin]
) -> tuple[Placed, ...]:
    """Of the layouts with fewest sheets, with pieces exchanged, the one with groups on fewest of them."""
    fewest = min(sheets_of(spots, len(leftovers)) for spots in found)
    bins = (*leftovers, *[area] * fewest)
    gathered = [gather(spots, items, bins, gap) for spots in found if sheets_of(spots, len(leftovers)) == fewest]

    def merit(spots: tuple[Placed, ...]) -> tuple[int, float, float]:
        last = max((spot.bin for spot in spots), default=0)
        reach = max((spot.y + spot.height for spot in spots if spot.bin == last), default=0.0)
        return spread(spots, items), round(reach, 6), scatter(spots, items)

    return min(gathered, key=merit)


class _Search:
    """The search for one nesting: bins in units, the left-overs first."""

    def __init__(
        self, items: Sequence[Item], area: Bin, gap: float, leftovers: Sequence[Bin], work: Work, luck: random.Random
    ) -> None:
        self.items, self.work, self.luck = items, work, luck
        self.kinds: Kinds = kinds_of(items, gap)
        *self.given, self.whole = areas_in_units([*leftovers, area], gap)
        self.area_bound = area_bound(self.kinds, self.given, self.whole)
        self.bound = self.area_bound if leftovers else bin_bound(self.kinds, self.whole)
        widest = max(size[0] for size in (*self.given, self.whole))
        highest = max(size[1] for size in (*self.given, self.whole))
        self.fillers = Fillers(self.kinds, (widest, highest))

    def layouts(self, sheets: int) -> list[tuple[Placed, ...]]:
        """A layout with fewer sheets than given if one is found, and one with a large off-cut."""
        fewer, lies = improve(self._fewersheets_of(), sheets, self.fillers, self.work.part(FOR_SHEETS), self.luck)
        found = [lies] if lies else []
        if fewer > 0:
            found += self._with_an_off_cut(fewer)
        return [places_of(lies, self.kinds, self.items) for lies in found]

    def _fewersheets_of(self) -> Goal:
        first = len(self.given)
        return Goal(
            bound=self.bound,
            step=1,
            areas=lambda count: [*self.given, *[self.whole] * count],
            measure=lambda lies: max((lie.area - first + 1 for lie in lies if lie.area >= first), default=0),
        )

    def _with_an_off_cut(self, sheets: int) -> list[list[Lie]]:
        """A layout that fills the last sheet from the bottom only as far as it must."""
        full = [*self.given, *[self.whole] * (sheets - 1)]
        width, height = self.whole
        missing = self.kinds.area - sum(w * h for w, h in full)
        lowest = min(h for ways in self.kinds.ways for _, h in ways)
        lowest = max(-(-missing // width), lowest, rows_bound(self.kinds, full, width))

        def reach(lies: Sequence[Lie]) -> int:
            return max((lie.y + lie.height for lie in lies if lie.area == len(full)), default=0)

        goal = Goal(lowest, max(1, height // FINENESS), lambda most: [*full, (width, most)], reach)
        _, lies = improve(goal, height + goal.step, self.fillers, self.work.part(FOR_OFF_CUT), self.luck)
        return [lies] if lies else []
