"""From the search's units back to items and millimetres."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from .blocks import UNITS, Kinds
from .items import Item, Placed
from .trace import Lie

__all__ = ["places_of"]


def places_of(lies: Iterable[Lie], kinds: Kinds, items: Sequence[Item]) -> tuple[Placed, ...]:
    """Give every lie an item of its kind, in the order of `items`; the result has that order too."""
    waiting = [iter(members) for members in kinds.items]
    spots: dict[str, Placed] = {}
    for lie in sorted(lies, key=lambda lie: (lie.area, lie.y, lie.x)):
        item = next(waiting[lie.kind])
        # which way round it lies is known by the side it shows, gap between pieces and rounding aside
        wide = (lie.width > lie.height) == (item.width > item.height)
        width, height = (item.width, item.height) if wide else (item.height, item.width)
        spots[item.key] = Placed(item.key, lie.area, lie.x / UNITS, lie.y / UNITS, width, height, not wide)
    return tuple(spots[item.key] for item in items)
