"""Whether a flat has room on the sheet of its stock."""

from __future__ import annotations

from ..errors import FieldPath, Problem
from ..flat import Axis
from ..geometry import Size
from ..stock import Stock
from ..units import print_mm

__all__ = ["too_large"]

SLACK = 1e-6


def too_large(what: str, size: Size, stock: Stock, grain: Axis | None, field: FieldPath) -> tuple[Problem, ...]:
    """What is wrong with putting something of this size (its bleed included) on the stock's sheet, if anything."""
    openings = stock.openings(grain)
    if any(size.width <= room.width + SLACK and size.height <= room.height + SLACK for room in openings):
        return ()
    room = openings[0]
    along = " with its grain along the spine" if grain is not None and stock.grain_axis is not None else ""
    return (
        Problem(
            f"{what} is {print_mm(size.width, 1)} × {print_mm(size.height, 1)}, but the {stock.sheet.name} sheet "
            f"of {stock.name} has room for {print_mm(room.width, 1)} × {print_mm(room.height, 1)}{along}",
            "write a smaller book, a larger sheet, or the other grain",
            field=field,
        ),
    )
