"""The best that a general-purpose packing library finds, for comparison in the same run.

rectpack (Apache-2.0) is favoured: every one of its methods, those that ignore straight cuts included, tries every
order of the pieces and every height from the proved optimum upwards, and the best of all counts.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence

import rectpack

__all__ = ["METHODS", "ORDERS", "STRAIGHT", "best_of_library"]

COMPLETE = re.compile(
    "Guillotine(Bssf|Blsf|Baf)(Sas|Las|Slas|Llas|Minas|Maxas)|MaxRects(Bl|Bssf|Baf|Blsf)|Skyline(Bl|Mwfl?)(Wm)?"
)
METHODS = [getattr(rectpack, name) for name in sorted(vars(rectpack)) if COMPLETE.fullmatch(name)]
STRAIGHT = [method for method in METHODS if method.__name__.startswith("Guillotine")]
"""Those that cut straight from edge to edge, as ours does."""
ORDERS = [getattr(rectpack, name) for name in sorted(vars(rectpack)) if name.startswith("SORT_")]


def holds_all(sides: Sequence[tuple[int, int]], width: int, height: int, method: type, order: object) -> bool:
    """Whether one method with one order places all pieces in one rectangle."""
    packer = rectpack.newPacker(mode=rectpack.PackingMode.Offline, pack_algo=method, sort_algo=order, rotation=True)
    for side in sides:
        packer.add_rect(*side)
    packer.add_bin(width, height)
    packer.pack()
    return len(packer.rect_list()) == len(sides)


def best_of_library(
    sides: Sequence[tuple[int, int]], width: int, optimum: int, methods: Sequence[type] = METHODS
) -> int:
    """The least height at which any method with any order places all pieces."""
    return next(
        height
        for height in itertools.count(optimum)
        if any(holds_all(sides, width, height, method, order) for method in methods for order in ORDERS)
    )
