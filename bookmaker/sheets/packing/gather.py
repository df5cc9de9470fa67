"""Related pieces together: pieces change places, without any cut moving, until their groups lie close."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, islice

from ...ground.geometry import Rect
from .cuts import take_apart
from .items import ROUNDING, Bin, Item, Placed

__all__ = ["gather", "scatter", "spread"]

ROUNDS = 12
"""How often all pairs of pieces are looked at, at most."""

LOOKS = 400_000
"""Pairs of pieces looked at for all bins together, at most, and pieces looked at for one bin: thousands of pieces
are gathered less well, but in bounded time."""

GAIN = 1e-6
"""Groups that come closer by less than this many mm do so by rounding only."""


def spread(placed: Sequence[Placed], items: Mapping[str, Item]) -> int:
    """On how many bins more than one the groups lie, summed; pieces without a group do not count."""
    bins = {(items[spot.key].group, spot.bin) for spot in placed if items[spot.key].group}
    return len(bins) - len({group for group, _ in bins})


def scatter(placed: Sequence[Placed], items: Mapping[str, Item]) -> float:
    """How far apart the pieces of one group and bin lie: half the outline of each such cluster, in mm."""
    clusters: dict[tuple[str, int], list[Placed]] = {}
    for spot in placed:
        clusters.setdefault((items[spot.key].group, spot.bin), []).append(spot)
    return sum(_half_outline(spots) for (group, _), spots in clusters.items() if group)


def _half_outline(spots: Sequence[Placed]) -> float:
    xs = [spot.x + spot.width / 2 for spot in spots]
    ys = [spot.y + spot.height / 2 for spot in spots]
    return max(xs) - min(xs) + max(ys) - min(ys)


@dataclass(slots=True)
class _Seat:
    """A place in the layout: the room a piece has there, and the piece that has it now."""

    bin: int
    room: Rect
    spot: Placed
    item: Item

    def takes(self, item: Item) -> Placed | None:
        """How the item would lie here."""
        for width, height, turned in item.ways():
            if width <= self.room.width + ROUNDING and height <= self.room.height + ROUNDING:
                return Placed(item.key, self.bin, self.room.x, self.room.y, width, height, turned)
        return None


def gather(placed: Sequence[Placed], items: Mapping[str, Item], bins: Sequence[Bin], gap: float) -> tuple[Placed, ...]:
    """The same layout after exchanges that bring groups on fewer bins, and closer together on a bin."""
    seats = _seats(placed, items, bins, gap)
    _gather_on_bins(seats)
    for number in range(len(bins)):
        _draw_together([seat for seat in seats if seat.bin == number])
    spots = {seat.spot.key: seat.spot for seat in seats}
    moved = tuple(spots.get(spot.key, spot) for spot in placed)
    return min(tuple(placed), moved, key=lambda layout: (spread(layout, items), scatter(layout, items)))


def _gather_on_bins(seats: Sequence[_Seat]) -> None:
    """Exchange pieces of two bins as long as that raises the sum of squares of each group's pieces on a bin."""
    count = Counter((seat.item.group, seat.bin) for seat in seats)

    def gain(group: str, here: int, there: int) -> int:
        return count[group, there] - count[group, here] + 1 if group else 0

    for _ in range(ROUNDS):
        better = False
        for first, second in islice(combinations(seats, 2), LOOKS // ROUNDS):
            one, other = first.item.group, second.item.group
            if first.bin == second.bin or one == other:
                continue
            if gain(one, first.bin, second.bin) + gain(other, second.bin, first.bin) <= 0:
                continue
            if _exchange(first, second):
                count.subtract([(one, first.bin), (other, second.bin)])
                count.update([(one, second.bin), (other, first.bin)])
                better = True
        if not better:
            return


def _draw_together(seats: Sequence[_Seat]) -> None:
    """Exchange pieces of one bin as long as that makes the outlines of their groups smaller."""

    def outlines(*groups: str) -> float:
        members = [[seat.spot for seat in seats if seat.item.group == group] for group in groups if group]
        return sum(map(_half_outline, members))

    for _ in range(ROUNDS):
        better = False
        for first, second in islice(combinations(seats, 2), LOOKS // (1 + len(seats))):
            one, other = first.item.group, second.item.group
            if one == other:
                continue
            before = outlines(one, other)
            if _exchange(first, second):
                if outlines(one, other) < before - GAIN:
                    better = True
                else:
                    _exchange(first, second)
        if not better:
            return


def _exchange(first: _Seat, second: _Seat) -> bool:
    """Let two pieces change places if each fits where the other lies."""
    there, here = second.takes(first.item), first.takes(second.item)
    if there is None or here is None:
        return False
    first.spot, second.spot = here, there
    first.item, second.item = second.item, first.item
    return True


def _seats(placed: Sequence[Placed], items: Mapping[str, Item], bins: Sequence[Bin], gap: float) -> list[_Seat]:
    """A seat for each piece that can be cut free, with the room between the cuts around it."""
    seats: list[_Seat] = []
    for number, area in enumerate(bins):
        _, panels = take_apart([spot for spot in placed if spot.bin == number], area, gap)
        for panel in panels:
            if len(panel.pieces) == 1:
                (spot,) = panel.pieces
                seats.append(_Seat(number, _room(panel.rect, area, gap), spot, items[spot.key]))
    return seats


def _room(panel: Rect, area: Bin, gap: float) -> Rect:
    """The panel less half the gap along every side that is a cut and not the bin's edge."""
    left, bottom = (gap / 2 if panel.x > 0 else 0.0), (gap / 2 if panel.y > 0 else 0.0)
    right = gap / 2 if panel.right < area.width - ROUNDING else 0.0
    top = gap / 2 if panel.top < area.height - ROUNDING else 0.0
    return panel.grown(-left, -bottom, -right, -top)
