"""Rectangles into rectangles, row after row; knows nothing of books. All lengths are mm."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

__all__ = ["Bin", "DoesNotFit", "Item", "Placed", "pack_rows"]

ROUNDING = 1e-9
"""Lengths that differ by less than this many mm count as equal: sums of decimal fractions are never exact."""


@dataclass(frozen=True, slots=True)
class Item:
    """A rectangle to be placed once. Items of one `group` lie together where their heights are alike."""

    key: str
    width: float
    height: float
    may_turn: bool
    group: str = ""

    def ways(self) -> list[tuple[float, float, bool]]:
        """The ways it may lie, the lower one first: width, height, and whether that is a quarter turn.

        >>> Item("a", 2, 3, may_turn=True).ways()
        [(3, 2, True), (2, 3, False)]
        """
        upright, turned = (self.width, self.height, False), (self.height, self.width, True)
        return sorted([upright, turned] if self.may_turn else [upright], key=lambda way: way[1])


@dataclass(frozen=True, slots=True)
class Bin:
    """One printable area."""

    width: float
    height: float

    def takes(self, width: float, height: float) -> bool:
        """Whether a rectangle of this size lies inside."""
        return width <= self.width + ROUNDING and height <= self.height + ROUNDING


@dataclass(frozen=True, slots=True)
class Placed:
    """Where an item lies: number of the bin (from 0), lower left corner, and its size as it lies there."""

    key: str
    bin: int
    x: float
    y: float
    width: float
    height: float
    turned: bool


class DoesNotFit(Exception):  # noqa: N818 - it reads as a sentence where it is caught
    """Items that fit no bin in any way they may lie; `keys` names them, `bin` is the area offered."""

    def __init__(self, items: Sequence[Item], area: Bin) -> None:
        self.keys = tuple(item.key for item in items)
        self.bin = area
        sizes = ", ".join(f"{item.key} ({item.width:g} × {item.height:g} mm)" for item in items)
        super().__init__(f"larger than {area.width:g} × {area.height:g} mm: {sizes}")


@dataclass(slots=True)
class _Row:
    """A row being filled: its height, and how far it is filled from the left, the last gap included."""

    bin: int
    y: float
    height: float
    filled: float = 0.0


class _Rows:
    """All rows so far, stacked in bins of one size."""

    def __init__(self, area: Bin, gap: float) -> None:
        self.area, self.gap = area, gap
        self.stacked: list[float] = []
        self.rows: list[_Row] = []

    def place(self, item: Item) -> Placed:
        """Put an item at the end of the first row with room, or open a row for it."""
        for row in self.rows:
            for width, height, turned in item.ways():
                if height <= row.height + ROUNDING and self.area.takes(row.filled + width, height):
                    return self._append(row, item.key, width, height, turned)
        width, height, turned = next(way for way in item.ways() if self.area.takes(way[0], way[1]))
        return self._append(self._new_row(height), item.key, width, height, turned)

    def _new_row(self, height: float) -> _Row:
        """A row on the first bin with room above its rows, or on a new bin."""
        number = next((n for n, y in enumerate(self.stacked) if self.area.takes(0.0, y + height)), len(self.stacked))
        if number == len(self.stacked):
            self.stacked.append(0.0)
        row = _Row(number, self.stacked[number], height)
        self.stacked[number] += height + self.gap
        self.rows.append(row)
        return row

    def _append(self, row: _Row, key: str, width: float, height: float, turned: bool) -> Placed:
        placed = Placed(key, row.bin, row.filled, row.y, width, height, turned)
        row.filled += width + self.gap
        return placed


def pack_rows(items: Sequence[Item], area: Bin, gap: float) -> tuple[Placed, ...]:
    """Place every item, row after row, in as many bins of size `area` as it takes.

    Items are taken by falling height, as they lie flat; items of one height by width, then by group, then as
    given. `gap` is the knife room in mm between neighbours; none is needed at a bin's edge. Keys must differ.
    The result has the order of `items`.

    Raises:
        DoesNotFit: with all items that are larger than `area`, whichever way they may lie.

    >>> [(spot.x, spot.y) for spot in pack_rows([Item(k, 6, 4, False) for k in "abc"], Bin(14, 9), 1)]
    [(0.0, 0.0), (7.0, 0.0), (0.0, 5.0)]
    """
    too_large = [item for item in items if not any(area.takes(width, height) for width, height, _ in item.ways())]
    if too_large:
        raise DoesNotFit(too_large, area)
    rows = _Rows(area, gap)
    spots = {item.key: rows.place(item) for item in sorted(items, key=_falling)}
    return tuple(spots[item.key] for item in items)


def _falling(item: Item) -> tuple[float, float, str]:
    """Sorts the highest first, as they lie flat, among these the widest, and then by group."""
    width, height, _ = item.ways()[0]
    return -height, -width, item.group
