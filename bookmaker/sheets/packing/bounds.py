"""What no packing can beat: lower bounds on bins and on the height of a strip.

By area alone, and by dual feasible functions: sizes are replaced by others so that whatever fits a bin still
has at most the bin's area. S. P. Fekete and J. Schepers, "A general framework for bounds for
higher-dimensional orthogonal packing problems", Mathematical Methods of Operations Research 60 (2004),
311-329 (recalled, not re-read; the tests check the bounds against packings).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable

from .blocks import Kinds, Size

__all__ = ["area_bound", "bin_bound", "rows_bound", "strip_bound"]

Weight = Callable[[int], float]
"""A length as a share of the bin's, by one of the functions."""

MOST_PARTS = 12
"""The rounding function is tried for so many equal pieces along a side: a sheet holds about ten strips."""

THRESHOLDS = 8
"""How many thresholds of the cutting-off function are tried along each side."""


def area_bound(kinds: Kinds, given: Iterable[Size], whole: Size) -> int:
    """Fewest whole bins by area, when the bins `given` are to hand as well."""
    missing = kinds.area - sum(width * height for width, height in given)
    return max(0, -(-missing // (whole[0] * whole[1])))


def bin_bound(kinds: Kinds, whole: Size) -> int:
    """Fewest bins.

    Three pieces just over half a bin wide and high need three bins, though their area would need one.
    """
    across, along = _weights(kinds, whole[0]), _weights(kinds, whole[1])
    most = max(
        sum(
            len(members) * min(f(w) * g(h) for w, h in ways if w <= whole[0] and h <= whole[1])
            for members, ways in zip(kinds.items, kinds.ways, strict=True)
        )
        for f in across
        for g in along
    )
    return math.ceil(most - 1e-6)


def rows_bound(kinds: Kinds, others: Iterable[Size], width: int) -> int:
    """Least height taken up in a bin of a width, in units: rows of the pieces for which the `others` have no room.

    No bin holds more pieces than it would if all were as narrow as the narrowest and as low as the lowest. Of 21
    strips, 26 mm high and too wide to lie beside each other, two sheets 275 mm high hold 20: the last takes 26 mm.
    """
    narrowest, lowest = (min(way[side] for ways in kinds.ways for way in ways) for side in (0, 1))
    held = sum((wide // narrowest) * (high // lowest) for wide, high in others)
    left = max(0, sum(map(len, kinds.items)) - held)
    return -(-left // (width // narrowest)) * lowest


def strip_bound(kinds: Kinds, width: int) -> int:
    """Least height of a strip, in units."""
    fitting = [[way for way in ways if way[0] <= width] for ways in kinds.ways]
    tallest = max(min(h for _, h in ways) for ways in fitting)
    most = max(
        sum(len(members) * min(f(w) * h for w, h in ways) for members, ways in zip(kinds.items, fitting, strict=True))
        for f in _weights(kinds, width)
    )
    return max(tallest, math.ceil(most * (1 - 1e-12)))


def _weights(kinds: Kinds, length: int) -> list[Weight]:
    sides = sorted({side for ways in kinds.ways for way in ways for side in way if 2 * side <= length})
    step = max(1, len(sides) // THRESHOLDS)
    return [
        lambda x: x / length,
        *(_rounded_to(parts, length) for parts in range(1, MOST_PARTS + 1)),
        *(_cut_off_at(side, length) for side in sides[::step]),
    ]


def _rounded_to(parts: int, length: int) -> Weight:
    """More than 1/(parts + 1) of the length counts as 1/parts, and so on; exact multiples stay as they are."""

    def weight(x: int) -> float:
        whole, rest = divmod((parts + 1) * x, length)
        return whole / parts if rest else x / length

    return weight


def _cut_off_at(threshold: int, length: int) -> Weight:
    """What leaves less than the threshold beside it counts as the whole, what is less than it as nothing."""

    def weight(x: int) -> float:
        if x > length - threshold:
            return 1.0
        return 0.0 if x < threshold else x / length

    return weight
