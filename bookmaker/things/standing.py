"""A finished thing as the shelf sees it: how wide, high and deep it is, and how far that may be off."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import hypot

__all__ = ["Standing", "Uncertainty", "root_sum_square", "spread"]


@dataclass(frozen=True, slots=True)
class Uncertainty:
    """How far a length may be off: its slope by stock (mm per mm of caliper) and its own error in mm.

    `of_parts` are the own errors of what it holds, each independent of the others: those of the books in a slipcase.
    """

    slopes: Mapping[str, float]
    own: float
    of_parts: tuple[float, ...] = ()

    @property
    def errors(self) -> tuple[float, ...]:
        """All errors that no other length shares, in mm."""
        return (self.own, *self.of_parts)

    def spread(self, tolerances: Mapping[str, float]) -> tuple[float, float]:
        """Worst case and root-sum-square tolerance, ± mm, for the tolerance of each stock's caliper."""
        return spread([self], tolerances)


@dataclass(frozen=True, slots=True)
class Standing:
    """A finished thing on a shelf, upright or in a stack: outer sides in mm, and how far its thickness may be off.

    `thing` is its id, `title` what messages call it.
    """

    thing: str
    title: str
    thickness: float
    height: float
    depth: float
    uncertainty: Uncertainty
    stack: str | None = None


def root_sum_square(parts: Sequence[float]) -> float:
    """The root of the sum of squares.

    >>> round(root_sum_square([25, 9.7, 2.9, 16.6]), 1)
    31.7
    """
    return hypot(*parts)


def spread(parts: Sequence[Uncertainty], tolerances: Mapping[str, float]) -> tuple[float, float]:
    """Worst case Σ|tolerances|; likely √(Σ_stocks (Σ slopes · tolerance)² + Σ own²)."""
    shared: dict[str, float] = {}
    for part in parts:
        for stock, slope in part.slopes.items():
            shared[stock] = shared.get(stock, 0.0) + slope * tolerances[stock]
    own = [error for part in parts for error in part.errors]
    return sum(map(abs, shared.values())) + sum(own), root_sum_square([*shared.values(), *own])
