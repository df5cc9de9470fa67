"""Whether a part of a cover fits the sheet of its stock."""

from __future__ import annotations

from collections.abc import Iterator

from ..errors import FieldPath, Problem
from ..flat import Axis, Flat
from ..stock import Stock
from ..units import print_mm

__all__ = ["too_large"]


def too_large(what: str, flat: Flat, stock: Stock, field: FieldPath) -> Iterator[Problem]:
    """One problem if a flat with its bleed is larger than the room on its stock's sheet; `what` says the part."""
    width, height = (side + 2 * flat.bleed for side in flat.size)
    openings = stock.openings(flat.grain)
    if any(width <= room.width + 1e-6 and height <= room.height + 1e-6 for room in openings):
        return
    room = openings[0]
    along = " with its grain along the spine" if flat.grain is Axis.Y else ""
    yield Problem(
        f"{what} is {print_mm(width, 1)} × {print_mm(height, 1)}{' with its bleed' if flat.bleed else ''}, but the "
        f"{stock.sheet.name} sheet of {stock.name} has room for "
        f"{print_mm(room.width, 1)} × {print_mm(room.height, 1)}{along}",
        "write a smaller book, a larger sheet, or the other grain",
        field=field,
    )
