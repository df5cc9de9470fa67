"""Related pieces together: pieces change places, without any cut moving, until their groups lie close."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ..geometry import Rect
from .cuts import take_apart
from .items import ROUNDING, Bin, Item, Placed

__all__ = ["gather", "scatter", "spread"]

TRIALS = 20_000
"""Exchanges looked at, at most."""

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
    """The same layout after exchanges that bring groups on fewer bins, or closer together on a bin."""
    seats = _seats(placed, items, bins, gap)
    trials = 0
    better = len({item.group for item in items.values()} - {""}) > 1
    while better and trials < TRIALS:
        better = False
        for number, first in enumerate(seats):
            for second in seats[:number]:
                if first.item.group == second.item.group:
                    continue
                trials += 1
                better |= _exchange(first, second, seats)
            if trials >= TRIALS:
                break
    spots = {seat.spot.key: seat.spot for seat in seats}
    return tuple(spots.get(spot.key, spot) for spot in placed)


def _exchange(first: _Seat, second: _Seat, seats: Sequence[_Seat]) -> bool:
    """Let two pieces change places if both fit and their groups lie closer then."""
    there, here = second.takes(first.item), first.takes(second.item)
    if there is None or here is None:
        return False
    groups = {first.item.group, second.item.group} - {""}
    concerned = [seat for seat in seats if seat.item.group in groups]
    before = _closeness(concerned)
    old = first.spot, second.spot
    first.spot, second.spot = here, there
    first.item, second.item = second.item, first.item
    # a piece without a group joins or leaves the seats looked at together with its partner
    concerned = [seat for seat in seats if seat.item.group in groups]
    after = _closeness(concerned)
    if after[0] < before[0] or (after[0] == before[0] and after[1] < before[1] - GAIN):
        return True
    first.spot, second.spot = old
    first.item, second.item = second.item, first.item
    return False


def _closeness(seats: Sequence[_Seat]) -> tuple[int, float]:
    items = {seat.spot.key: seat.item for seat in seats}
    spots = [seat.spot for seat in seats]
    return spread(spots, items), scatter(spots, items)


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
