"""Thickness as the sum of its layers, with what each layer owes to which stock.

The trade's reckoning in one type: a block is so many sheets and so many films of glue; its error is that
of the stock, shared by all sheets, and that of the hands.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

__all__ = ["ASSEMBLY_TOLERANCE", "CUTTING_TOLERANCE", "READING_TOLERANCE", "Layer", "Thickness"]

ASSEMBLY_TOLERANCE = 0.15
"""Error of gluing and folding one book, ± mm (common practice, no published source)."""


CUTTING_TOLERANCE = 0.2
"""Error of one side cut to its marks with knife and steel rule, a little askew perhaps, ± mm (common practice)."""

READING_TOLERANCE = 0.05
"""Error of a caliper gauge on a soft book, ± mm (common practice, no published source)."""


@dataclass(frozen=True, slots=True)
class Layer:
    """`count` times something `caliper` mm thick.

    `stock` names the stock whose error it shares, if any; `films` the films of glue, as `glue.films_of`
    calls them.
    """

    what: str
    count: float
    caliper: float
    stock: str = ""
    films: str = ""

    @property
    def total(self) -> float:
        """All of them together, in mm."""
        return self.count * self.caliper


@dataclass(frozen=True, slots=True)
class Thickness:
    """A stack of layers, or what was measured on the real thing, which overrides their sum."""

    layers: tuple[Layer, ...]
    measured: float | None = None

    @property
    def computed(self) -> float:
        """The sum of the layers in mm.

        >>> Thickness((Layer("panels", 50, 0.075), Layer("glue films", 26, 0.015))).computed
        4.14
        """
        return round(sum(layer.total for layer in self.layers), 9)

    @property
    def value(self) -> float:
        """The thickness to work with, in mm."""
        return self.computed if self.measured is None else self.measured

    @property
    def counts(self) -> dict[str, float]:
        """How many sheets of each stock and films of each glue lie in the stack."""
        shares: dict[str, float] = {}
        for layer in self.layers:
            if source := layer.stock or layer.films:
                shares[source] = shares.get(source, 0.0) + layer.count
        return shares

    @property
    def sensitivities(self) -> dict[str, float]:
        """∂thickness/∂caliper by stock and by adhesive: how many sheets or films lie in the stack; none if measured."""
        return self.counts if self.measured is None else {}

    def under(self, *layers: Layer) -> Thickness:
        """This stack, taken as it is known, with more layers on it."""
        below = self.layers if self.measured is None else (Layer("as measured", 1, self.measured),)
        return Thickness((*below, *layers))

    def as_measured(self, measured: float | None) -> Thickness:
        """The same stack with a measured value."""
        return replace(self, measured=measured)
