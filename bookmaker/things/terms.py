"""What a shelf gives to all its things."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from ..ground.typefaces.strokes import Strokes
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

    def ink_spread(self, stocks: Iterable[str]) -> float:
        """How far ink spreads at every edge, in mm, on that of some stocks on which it spreads most."""
        return max((self.stocks[name].printer.ink_spread for name in stocks), default=self.printer.ink_spread)

    def letters(self, x_height: float, stocks: Iterable[str], strokes: Strokes | None = None) -> Legibility:
        """Letters of an x-height and strokes in mm, printed on some stocks and seen from the viewing distance."""
        on = tuple(stocks)
        return Legibility(x_height, self.resolution(on), self.viewing_distance, strokes, self.ink_spread(on))
