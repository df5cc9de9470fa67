"""A finished thing as the shelf sees it: how wide, high and deep it is, and how far that may be off."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import hypot

from ..paper.thickness import CUTTING_TOLERANCE

__all__ = ["Standing", "Uncertainty", "root_sum_square", "spread", "summed"]


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
        """All errors one way, and root-sum-square, ± mm, for the tolerance of each stock's caliper."""
        return spread([self], tolerances)


@dataclass(frozen=True, slots=True)
class Standing:
    """A finished thing on a shelf, upright or in a stack: outer sides in mm, and how far its thickness may be off.

    `thing` is its id, `title` what messages call it. `cut` is how far its height and its depth may be off, ± mm.
    """

    thing: str
    title: str
    thickness: float
    height: float
    depth: float
    uncertainty: Uncertainty
    stack: str | None = None
    cut: float = CUTTING_TOLERANCE


def root_sum_square(parts: Sequence[float]) -> float:
    """The root of the sum of squares.

    >>> round(root_sum_square([25, 9.7, 2.9, 16.6]), 1)
    31.7
    """
    return hypot(*parts)


def spread(parts: Sequence[Uncertainty], tolerances: Mapping[str, float]) -> tuple[float, float]:
    """All one way Σ|tolerances|; likely √(Σ_stocks (Σ slopes · tolerance)² + Σ own²)."""
    whole = summed(parts)
    shared = [slope * tolerances[name] for name, slope in whole.slopes.items()]
    return sum(map(abs, shared)) + sum(whole.errors), root_sum_square([*shared, *whole.errors])


def summed(parts: Sequence[Uncertainty]) -> Uncertainty:
    """How far lengths laid end to end may be off together: what they share adds up, their own errors stay apart."""
    slopes: dict[str, float] = {}
    for part in parts:
        for name, slope in part.slopes.items():
            slopes[name] = slopes.get(name, 0.0) + slope
    return Uncertainty(slopes, 0.0, tuple(error for part in parts for error in part.errors))
