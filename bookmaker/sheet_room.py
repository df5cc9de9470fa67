"""Whether a flat fits the sheet of its stock, and if it does not, what sheet would do."""

from __future__ import annotations

from dataclasses import replace

from .apron import APRON
from .errors import FieldPath, Problem
from .flat import Axis, Flat
from .geometry import Rect, Size
from .papers import FORMATS, SheetFormat
from .spec.stocks import Grain
from .stock import Stock
from .units import print_mm

__all__ = ["sheet_problem"]


def sheet_problem(flat: Flat, stock: Stock, what: str, field: FieldPath) -> Problem | None:
    """What is wrong if `what`, a flat, is larger than its sheet; the remedy names the smallest sheet that would do."""
    if _fits(flat, stock):
        return None
    width, height = _inked(flat)
    room = stock.openings(flat.grain)[0]
    grain = " with its grain along the folds" if flat.grain and stock.grain_axis else ""
    return Problem(
        f"{what} is {print_mm(width, 1)} × {print_mm(height, 1)} with its bleed, but the {stock.sheet.name} sheet "
        f"of {stock.name} has room for {print_mm(room.width, 1)} × {print_mm(room.height, 1)}{grain}",
        f"give {stock.name} {_sheet_that_would_do(flat, stock)}",
        field=field,
    )


def _inked(flat: Flat) -> Size:
    width, height = flat.size
    return Size(width + 2 * flat.bleed, height + 2 * flat.bleed)


def _fits(flat: Flat, stock: Stock) -> bool:
    width, height = _inked(flat)
    return any(width <= room.width + 1e-6 and height <= room.height + 1e-6 for room in stock.openings(flat.grain))


def _sheet_that_would_do(flat: Flat, stock: Stock) -> str:
    """The smallest format by name, with the stock's own grain if it will do, or else two sides."""
    formats = sorted(FORMATS.values(), key=lambda sheet: sheet.size[0] * sheet.size[1])
    other = Grain.SHORT if stock.grain is Grain.LONG else Grain.LONG
    grains = (stock.grain, other) if stock.grain_axis else (stock.grain,)
    for sheet in formats:
        for grain in grains:
            if _fits(flat, _on(stock, sheet, grain)):
                return f"the sheet {sheet.name}" + (f" and grain: {grain}" if grain is not stock.grain else "")
    return _made_to_measure(flat, stock)


def _made_to_measure(flat: Flat, stock: Stock) -> str:
    """The least sheet on which the flat stands upright."""
    wanted, sheet, room = APRON.around(flat.size, flat.bleed), stock.sheet.size, stock.usable.size
    width, height = wanted.width + sheet[0] - room.width, wanted.height + sheet[1] - room.height
    text = f"a sheet of at least {print_mm(width + 0.05, 1)} × {print_mm(height + 0.05, 1)}"
    if flat.grain is None or stock.grain_axis is None:
        return text
    along = height if flat.grain is Axis.Y else width
    return f"{text} and grain: {Grain.LONG if along >= max(width, height) else Grain.SHORT}"


def _on(stock: Stock, sheet: SheetFormat, grain: Grain) -> Stock:
    """The same stock on another sheet, with the same margins."""
    old, printable = stock.sheet.size, stock.printable
    width, height = sheet.size
    return replace(
        stock,
        sheet=sheet,
        grain=grain,
        printable=Rect(
            printable.x,
            printable.y,
            width - (old[0] - printable.width),
            height - (old[1] - printable.height),
        ),
    )
