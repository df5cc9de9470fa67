"""The simple packing: rows of falling height, each piece in the first row that has room."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from .items import ROUNDING, Bin, Item, Placed, refuse_what_cannot_fit

__all__ = ["pack_rows", "rows_by_group"]


@dataclass(slots=True)
class _Row:
    """A row being filled: its height, and how far it is filled from the left, the last gap included."""

    bin: int
    width: float
    y: float
    height: float
    filled: float = 0.0

    def takes(self, width: float, height: float) -> bool:
        return height <= self.height + ROUNDING and self.filled + width <= self.width + ROUNDING


class _Rows:
    """The rows with room left, and the bins they are stacked in; left-over bins come first and none is mandatory."""

    def __init__(self, items: Sequence[Item], area: Bin, gap: float, leftovers: Sequence[Bin]) -> None:
        self.area, self.gap = area, gap
        self.bins = list(leftovers)
        self.stacked = [0.0] * len(self.bins)
        self.open: list[_Row] = []
        self.narrowest = min((width for item in items for width, _, _ in item.ways()), default=0.0)

    def place(self, item: Item) -> Placed:
        """Put an item at the end of the first row with room, or open a row for it."""
        for row in self.open:
            for width, height, turned in _flat_first(item):
                if row.takes(width, height):
                    return self._append(row, item, width, height, turned)
        for number in self._bins_and_a_new_one():
            area, y = self.bins[number], self.stacked[number]
            for width, height, turned in _flat_first(item):
                if area.takes(width, y + height):
                    row = _Row(number, area.width, y, height)
                    self.open.append(row)
                    self.stacked[number] = y + height + self.gap
                    return self._append(row, item, width, height, turned)
        raise AssertionError("an item that fits an empty bin always finds one")

    def _bins_and_a_new_one(self) -> Iterator[int]:
        yield from range(len(self.bins))
        self.bins.append(self.area)
        self.stacked.append(0.0)
        yield len(self.bins) - 1

    def _append(self, row: _Row, item: Item, width: float, height: float, turned: bool) -> Placed:
        placed = Placed(item.key, row.bin, row.filled, row.y, width, height, turned)
        row.filled += width + self.gap
        if row.filled + self.narrowest > row.width + ROUNDING:
            self.open.remove(row)  # thousands of full rows would be looked at again and again
        return placed


def _flat_first(item: Item) -> list[tuple[float, float, bool]]:
    """The ways an item may lie, the lower one first: low rows waste less."""
    return sorted(item.ways(), key=lambda way: way[1])


def _falling(item: Item) -> tuple[float, float]:
    """Sorts the highest first, as they lie flat, and among these the widest."""
    width, height, _ = _flat_first(item)[0]
    return -height, -width


def pack_rows(items: Sequence[Item], area: Bin, gap: float, leftovers: Sequence[Bin] = ()) -> tuple[Placed, ...]:
    """Place every item, row after row, in as many bins of size `area` as it takes.

    Items are taken by falling height, as they lie flat; items of one height by group, then as given. `gap`
    is the gap between pieces in mm between neighbours; none is needed at a bin's edge. `leftovers` are bins that are
    filled first: they have the numbers 0, 1 … and whole bins follow. Keys must differ. The result
    has the order of `items`.

    Raises:
        DoesNotFit: items are larger than `area`, whichever way they may lie.

    >>> [(spot.x, spot.y) for spot in pack_rows([Item(k, 6, 4, False) for k in "abc"], Bin(14, 9), 1)]
    [(0.0, 0.0), (7.0, 0.0), (0.0, 5.0)]
    """
    refuse_what_cannot_fit(items, area)
    rows = _Rows(items, area, gap, leftovers)
    order = sorted(items, key=lambda item: (*_falling(item), item.group))
    spots = {item.key: rows.place(item) for item in order}
    return tuple(spots[item.key] for item in items)


def rows_by_group(
    items: Sequence[Item], area: Bin, gap: float, leftovers: Sequence[Bin] = ()
) -> list[tuple[Placed, ...]]:
    """Rows again, but one group after the other: in the order given, and the largest group first.

    These layouts may take more bins than `pack_rows`, but each group lies on few of them.

    >>> rows_by_group([Item("a", 6, 4, False)], Bin(14, 9), 1)
    []
    """
    groups: dict[str, list[Item]] = {}
    for item in items:
        groups.setdefault(item.group, []).append(item)
    if len(groups) < 2:
        return []
    by_area = sorted(groups.values(), key=lambda members: -sum(item.width * item.height for item in members))
    found = []
    for order in (list(groups.values()), by_area):
        rows = _Rows(items, area, gap, leftovers)
        spots = {item.key: rows.place(item) for members in order for item in sorted(members, key=_falling)}
        found.append(tuple(spots[item.key] for item in items))
    return found
