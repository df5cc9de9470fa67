"""Nesting group by group: the pieces of one group lie on as few bins as they need, in the order given."""

from __future__ import annotations

from collections.abc import Sequence

from .items import Bin, Item, Placed
from .nest import Nesting, nest, sheets_of
from .rows import pack_rows

__all__ = ["GROUP_EFFORT", "nest_by_group"]

GROUP_EFFORT = 2000
"""Steps of search for each question whether a group still fits."""


def nest_by_group(
    items: Sequence[Item], area: Bin, gap: float, leftovers: Sequence[Bin] = (), *, effort: int = GROUP_EFFORT
) -> Nesting:
    """Place the items group after group; a group joins the ones before it only if that takes no further bin.

    Arguments and result as for `nest`, except that `effort` is spent for every group. It may take more bins.

    Raises:
        DoesNotFit: items are larger than `area`, whichever way they may lie.
    """
    rows = pack_rows(items, area, gap, leftovers)
    bounds = nest(items, area, gap, leftovers, effort=0)
    groups: dict[str, list[Item]] = {}
    for item in items:
        groups.setdefault(item.group, []).append(item)
    pile = _Pile(area, gap, leftovers, effort)
    for members in groups.values():
        pile.add(members)
    spots = {spot.key: spot for spot in pile.placed()}
    placed = tuple(spots[item.key] for item in items)
    sheets = sheets_of(placed, len(leftovers))
    bins = (*leftovers, *[area] * sheets)
    row_sheets = sheets_of(rows, len(leftovers))
    return Nesting(placed, bins, gap, sheets, row_sheets, bounds.area_bound, bounds.bound, 0)


class _Pile:
    """Batches of groups, each batch on bins of its own; only the last one is open for more.

    `free` are the left-overs the open batch may use, `kept` those it leaves to later ones.
    """

    def __init__(self, area: Bin, gap: float, leftovers: Sequence[Bin], effort: int) -> None:
        self.area, self.gap, self.effort = area, gap, effort
        self.leftovers = leftovers
        self.free = list(range(len(leftovers)))
        self.kept: list[int] = []
        self.done: list[Placed] = []
        self.used = 0
        self.open: list[Item] = []
        self.batch: Nesting | None = None

    def add(self, members: list[Item]) -> None:
        """Let a group join the open batch, or begin a new batch with it."""
        if self.batch is not None:
            joined = self._nest([*self.open, *members])
            if joined.sheets <= self.batch.sheets:
                self.open += members
                self.batch = joined
                return
            self._close()
        self.open = list(members)
        self.batch = self._begin(self.open)

    def placed(self) -> list[Placed]:
        """Where everything lies."""
        self._close()
        return self.done

    def _begin(self, members: list[Item]) -> Nesting:
        """A group alone: on left-overs if they hold it or save a sheet, or else on whole sheets only."""
        given = self.free
        with_leftovers = self._nest(members)
        if not given or with_leftovers.sheets == 0:
            return with_leftovers
        self.free, self.kept = [], given
        without = self._nest(members)
        if without.sheets <= with_leftovers.sheets:
            return without
        self.free, self.kept = given, []
        return with_leftovers

    def _nest(self, items: list[Item]) -> Nesting:
        return nest(items, self.area, self.gap, [self.leftovers[number] for number in self.free], effort=self.effort)

    def _close(self) -> None:
        """Number the bins of the open batch among all bins."""
        if self.batch is None:
            return
        numbers = [*self.free, *(len(self.leftovers) + self.used + sheet for sheet in range(self.batch.sheets))]
        self.done += [spot.on(numbers[spot.bin]) for spot in self.batch.placed]
        taken = {numbers[spot.bin] for spot in self.batch.placed}
        self.free = [number for number in (*self.kept, *self.free) if number not in taken]
        self.kept = []
        self.used += self.batch.sheets
        self.batch = None
