"""A finished thing as the shelf sees it: how wide, high and deep it is, and how far that may be off."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import hypot
from typing import NamedTuple

from ..paper.thickness import CUTTING_TOLERANCE
from .stance import UPRIGHT, Stance, Way

__all__ = ["Side", "Standing", "Uncertainty", "root_sum_square", "spread", "summed"]


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

    def times(self, slope: float) -> Uncertainty:
        """That of a length of which every part changes so many times as much."""
        slopes = {name: slope * one for name, one in self.slopes.items()}
        return Uncertainty(slopes, slope * self.own, tuple(slope * error for error in self.of_parts))

    def spread(self, tolerances: Mapping[str, float]) -> tuple[float, float]:
        """All errors one way, and root-sum-square, ± mm, for the tolerance of each stock's caliper."""
        return spread([self], tolerances)


class Side(NamedTuple):
    """A length in mm, and how far it may be off."""

    length: float
    error: Uncertainty


@dataclass(frozen=True, slots=True)
class Standing:
    """A finished thing on a shelf: outer sides in mm, and how far its thickness may be off.

    `thing` is its id, `title` what messages call it. `cut` is how far its height and its depth may be off, ± mm. A
    thing in a stack lies in it; else it stands as its `stance` is.
    """

    thing: str
    title: str
    thickness: float
    height: float
    depth: float
    uncertainty: Uncertainty
    stack: str | None = None
    cut: float = CUTTING_TOLERANCE
    stance: Stance = UPRIGHT

    @property
    def across(self) -> Side:
        """What it takes of the width of its space by itself, before it leans.

        A book of 20 × 15 × 4 mm takes 4 mm, 15 with its front to the room, 20 lying, 34 open: its covers and its spine.
        """
        match self.stance.way:
            case Way.SPINE:
                return self._thick
            case Way.LYING:
                return self._high
            case Way.OPEN:
                error = summed([self.uncertainty, Uncertainty({}, self.cut, (self.cut,))])
                return Side(2 * self.depth + self.thickness, error)
            case Way.FRONT | Way.BACK:
                return self._deep

    @property
    def up(self) -> Side:
        """What it takes of the height of its space, before it leans."""
        if self.stance.opened:
            half = max(self.stance.opened.left, self.stance.opened.right)
            return Side(half, self.uncertainty.times(half / self.thickness))
        return self._thick if self.stance.way is Way.LYING else self._high

    @property
    def out(self) -> Side:
        """How far its front is from what is behind it, such as the back of its space."""
        match self.stance.way:
            case Way.FRONT | Way.BACK:
                length, error = self._thick
            case Way.OPEN:
                length, error = self._high
            case Way.SPINE | Way.LYING:
                length, error = self._deep
        return Side(length + self.stance.pulled_out, error)

    @property
    def _thick(self) -> Side:
        return Side(self.thickness, self.uncertainty)

    @property
    def _high(self) -> Side:
        return Side(self.height, Uncertainty({}, self.cut))

    @property
    def _deep(self) -> Side:
        return Side(self.depth, Uncertainty({}, self.cut))

    def fallen(self, degrees: float) -> Standing:
        """The same once it leans so far as there is room, if it falls."""
        return replace(self, stance=self.stance.fallen(degrees)) if self.stance.falls else self


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
