"""What a shelf gives to all its things."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from ..paper.eyesight import Legibility
from ..paper.printer_entry import PaperPath
from ..paper.stock import Stock, tolerances_of
from ..paper.stock_entry import Tolerance

__all__ = ["Terms"]


@dataclass(frozen=True, slots=True)
class Terms:
    """What a shelf gives to all its things: its name and scale, its papers and its usual printer.

    `viewing_distance` is from the eye to the page, in mm; `glues` says how far dry films may be off, by
    their thickness.
    """

    shelf: str
    scale: float
    printer: PaperPath
    stocks: Mapping[str, Stock]
    viewing_distance: float
    glues: Mapping[float, Tolerance] = field(default_factory=dict)

    @property
    def tolerances(self) -> Mapping[str, float]:
        """The tolerance of each stock's caliper and of each glue's films, ± mm."""
        return tolerances_of(self.stocks.values(), self.glues)

    def resolution(self, stocks: Iterable[str]) -> float:
        """Dots to the inch of the coarsest printer that some stocks go through."""
        return min((self.stocks[name].printer.resolution for name in stocks), default=self.printer.resolution)

    def letters(self, x_height: float, stocks: Iterable[str]) -> Legibility:
        """Letters of an x-height in mm as they are printed on some stocks, and seen from the viewing distance."""
        return Legibility(x_height, self.resolution(stocks), self.viewing_distance)
