"""Whether a flat has room on the sheet of its stock, and if it has not, what sheet would do."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ..ground.geometry import Axis, Rect, Size
from ..ground.problems import FieldPath, Problem
from ..ground.units import print_mm
from ..paper.mark_margin import MARK_MARGIN
from ..paper.papers import FORMATS, SheetFormat
from ..paper.stock import Stock
from ..paper.stock_entry import Grain
from .flat import Flat

__all__ = ["flat_too_large", "part_too_large"]

SMALLER = "make it smaller"


def flat_too_large(what: str, flat: Flat, stock: Stock, field: FieldPath, less: str = SMALLER) -> Iterator[Problem]:
    """A problem if a flat with its bleed has no room on its stock's sheet; `what` says which part it is."""
    width, height = (side + 2 * flat.bleed for side in flat.size)
    named = f"{what} with its bleed" if flat.bleed else what
    return part_too_large(named, Size(width, height), stock, flat.grain, field, less)


def part_too_large(
    what: str, size: Size, stock: Stock, grain: Axis | None, field: FieldPath, less: str = SMALLER
) -> Iterator[Problem]:
    """A problem if something of this size has no room on the stock's sheet.

    The remedy names a sheet that would do, and says with `less` what to do instead.
    """
    if _fits(size, grain, stock):
        return
    room = stock.openings(grain)[0]
    along = " with its grain along the folds" if grain is not None and stock.grain_axis is not None else ""
    yield Problem(
        f"{what} is {print_mm(size.width, 1)} × {print_mm(size.height, 1)}, but the {stock.sheet.name} sheet "
        f"of {stock.name} has room for {print_mm(room.width, 1)} × {print_mm(room.height, 1)}{along}",
        f"give {stock.name} {_sheet_that_would_do(size, grain, stock)}, or {less}",
        field=field,
    )


def _fits(size: Size, grain: Axis | None, stock: Stock) -> bool:
    return any(size.width <= room.width + 1e-6 and size.height <= room.height + 1e-6 for room in stock.openings(grain))


def _sheet_that_would_do(size: Size, grain: Axis | None, stock: Stock) -> str:
    """The smallest format by name, with the stock's own grain if it will do, or else two sides."""
    formats = sorted(FORMATS.values(), key=lambda sheet: sheet.size[0] * sheet.size[1])
    other = Grain.SHORT if stock.grain is Grain.LONG else Grain.LONG
    grains = (stock.grain, other) if stock.grain_axis else (stock.grain,)
    for sheet in formats:
        for fibres in grains:
            if _fits(size, grain, _on(stock, sheet, fibres)):
                return f"the sheet {sheet.name}" + (f" and grain: {fibres}" if fibres is not stock.grain else "")
    return _made_to_measure(size, grain, stock)


def _made_to_measure(size: Size, grain: Axis | None, stock: Stock) -> str:
    """The least sheet on which the flat stands upright."""
    wanted, sheet, room = MARK_MARGIN.around(size, 0.0), stock.sheet.size, stock.usable.size
    width, height = wanted.width + sheet[0] - room.width, wanted.height + sheet[1] - room.height
    text = f"a sheet of at least {print_mm(width + 0.05, 1)} × {print_mm(height + 0.05, 1)}"
    if grain is None or stock.grain_axis is None:
        return text
    along = height if grain is Axis.Y else width
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
