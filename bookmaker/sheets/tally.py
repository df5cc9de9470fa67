"""What the pieces of a stock take: whole sheets, off-cuts, and what is left of the last sheet."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from ..ground.geometry import Size
from ..paper.stock import SMALLEST_AREA, Stock
from .packing import Nesting

__all__ = ["Tally", "tally_of", "together"]


@dataclass(frozen=True, slots=True)
class Tally:
    """What the pieces of a stock take: whole sheets and off-cuts.

    No layout takes fewer whole sheets than `least`; `row_sheets` is what laying the pieces in simple rows
    would take. `used` is the share of the printable area of all sheets used that pieces with their marks take.
    `rest` is what one cut leaves of the last whole sheet, if it is large enough to be an off-cut, in whole mm.
    """

    stock: str
    sheets: int
    off_cuts: int
    least: int
    row_sheets: int
    used: float
    rest: Size | None = None

    @property
    def saved(self) -> int:
        """Sheets saved against simple rows; none where the maker asked for an order that costs some."""
        return max(0, self.row_sheets - self.sheets)


def tally_of(stock: Stock, nesting: Nesting) -> Tally:
    used = {spot.bin for spot in nesting.placed}
    return Tally(
        stock=stock.name,
        sheets=nesting.sheets,
        off_cuts=sum(number < len(stock.off_cuts) for number in used),
        least=nesting.bound,
        row_sheets=nesting.row_sheets,
        used=nesting.used_share,
        rest=_rest(stock, nesting),
    )


def together(runs: Sequence[Tally]) -> Tally:
    """The runs of one stock as one; what is left is what its first run leaves.

    Of two sheets that are used to 0.9 and one used to 0.3 the pieces take 0.7.
    """
    papers = [run.sheets + run.off_cuts for run in runs]
    return Tally(
        stock=runs[0].stock,
        sheets=sum(run.sheets for run in runs),
        off_cuts=sum(run.off_cuts for run in runs),
        least=sum(run.least for run in runs),
        row_sheets=sum(run.row_sheets for run in runs),
        used=sum(run.used * count for run, count in zip(runs, papers, strict=True)) / sum(papers),
        rest=runs[0].rest,
    )


def _rest(stock: Stock, nesting: Nesting) -> Size | None:
    last = len(stock.off_cuts) + nesting.sheets - 1
    if not nesting.sheets:
        return None
    reach = max(spot.y + spot.height for spot in nesting.on(last)) + nesting.gap / 2
    width, height = stock.sheet.size
    left = math.floor(height - stock.usable.y - reach)
    taken = height - stock.usable.height
    return Size(width, left) if left - taken >= SMALLEST_AREA else None
