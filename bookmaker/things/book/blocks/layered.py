"""Blocks of whole layers: which thicknesses some stocks make, glued on one another, and of how many layers each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, pairwise, product

from ....paper.glue import glue_films
from ....paper.stock import Stock
from ....paper.thickness import Layer

__all__ = ["THICKEST", "Makeup", "makeups"]

THICKEST = 25.0
"""No block of layers is thicker, in mm, unless somebody says so."""

MOST_MAKEUPS = 200_000
"""So many are looked through; with more stocks than four the thinnest are left out."""


@dataclass(frozen=True, slots=True)
class Makeup:
    """So many layers of each stock, the thickest stock first, and how thick they are with the glue between, in mm."""

    counts: tuple[tuple[Stock, int], ...]
    thickness: float

    @property
    def layers(self) -> tuple[Layer, ...]:
        """As they add up: the layers of each stock, and the films of glue between all."""
        films = sum(count for _, count in self.counts) - 1
        glue = self.counts[0][0].glue
        sheets = tuple(
            Layer(f"layers of {stock.name}", count, stock.caliper, stock.name) for stock, count in self.counts
        )
        return (*sheets, glue_films("glue films between layers", films, glue)) if films else sheets


def makeups(stocks: Sequence[Stock], at_least: float, at_most: float) -> tuple[Makeup, ...]:
    """The makeups between two thicknesses in mm, the thinnest first; of those as thick, that of the fewest layers.

    Of thinner stocks there are no more layers than make up for one of the next thicker: three of 1 mm and two of
    0.2 mm, with four films of glue of 0.03 mm, are 3.52 mm.
    """
    found: dict[int, Makeup] = {}
    for one in _all(sorted(dict.fromkeys(stocks), key=lambda stock: -stock.caliper), at_most):
        if at_least - 1e-9 <= one.thickness <= at_most + 1e-9:
            micrometres = round(one.thickness * 1000)
            other = found.get(micrometres)
            if other is None or _count(one) < _count(other):
                found[micrometres] = one
    return tuple(found[thickness] for thickness in sorted(found))


def _all(stocks: Sequence[Stock], at_most: float) -> Iterator[Makeup]:
    glue = stocks[0].glue
    most = [int((at_most + glue) / (stocks[0].caliper + glue) + 1e-9)]
    for thicker, stock in pairwise(stocks):
        most.append(int((thicker.caliper + glue) / (stock.caliper + glue) + 1e-9))
    for counts in islice(product(*(range(count + 1) for count in most)), MOST_MAKEUPS):
        layers = sum(counts)
        if layers:
            sheets = sum(count * stock.caliper for count, stock in zip(counts, stocks, strict=True))
            used = tuple((stock, count) for count, stock in zip(counts, stocks, strict=True) if count)
            yield Makeup(used, round(sheets + (layers - 1) * used[0][0].glue, 6))


def _count(makeup: Makeup) -> int:
    return sum(count for _, count in makeup.counts)
