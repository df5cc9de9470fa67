"""The chance that several lengths keep to their limits at once, when some of their errors are shared.

A tolerance is two standard deviations. Given what is shared, calipers and films of glue, the lengths err apart from one
another; so the chance is the mean, over what is shared, of the product of their own chances.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import hypot, prod, sqrt
from statistics import NormalDist, fmean

from .standing import Uncertainty

__all__ = ["USUAL_CHANCE", "Spare", "chance_of", "coverage", "greatest"]

NORMAL = NormalDist()

USUAL_CHANCE = NORMAL.cdf(2)
"""Two standard deviations to spare, 97.7 %: a length that is a tolerance short of its limit fits as surely as that."""

SURE = 6.0
"""What has so many standard deviations to spare is as good as certain."""

POINTS = 1024
"""Points at which what is shared is looked at; the chance is then true to a thousandth."""


@dataclass(frozen=True, slots=True)
class Spare:
    """What a length has to spare, in mm, negative if it lacks it, and how far that may be off."""

    length: float
    uncertainty: Uncertainty

    def tolerance(self, tolerances: Mapping[str, float]) -> float:
        """± mm, two standard deviations."""
        return self.uncertainty.spread(tolerances)[1]

    def chance(self, tolerances: Mapping[str, float]) -> float:
        """The chance that it fits by itself: Φ(spare/σ). Noise of floats decides nothing.

        0.2 mm to spare, ± 0.4 mm, which are two standard deviations, fit with Φ(1): 84 %.
        """
        return _phi(self.length, self.tolerance(tolerances) / 2)


def coverage(chance: float) -> float:
    """By how many tolerances a length must fall short of its limit to fit with a chance: half of Φ⁻¹."""
    return NORMAL.inv_cdf(chance) / 2


def chance_of(spares: Sequence[Spare], tolerances: Mapping[str, float]) -> float:
    """The chance that all fit."""
    alone = [spare.chance(tolerances) for spare in spares]
    open_ones = [
        spare for spare, chance in zip(spares, alone, strict=True) if chance < NORMAL.cdf(SURE)
    ]  # what is certain need not be looked at
    if not all(alone) or len(open_ones) < 2:
        return min(alone, default=1.0)
    sources = sorted({name for spare in open_ones for name in spare.uncertainty.slopes})
    leans = [
        [spare.uncertainty.slopes.get(name, 0.0) * tolerances[name] / 2 for name in sources] for spare in open_ones
    ]
    own = [hypot(*spare.uncertainty.errors) / 2 for spare in open_ones]
    return fmean(
        prod(
            _phi(spare.length - sum(lean * z for lean, z in zip(slopes, shared, strict=True)), error)
            for spare, slopes, error in zip(open_ones, leans, own, strict=True)
        )
        for shared in _normal_points(len(sources))
    )


def _phi(spare: float, deviation: float) -> float:
    if deviation < 1e-9:
        return 1.0 if spare >= -1e-9 else 0.0
    return NORMAL.cdf(spare / deviation)


def _normal_points(dimensions: int) -> list[tuple[float, ...]]:
    """Points spread evenly under a normal law: additive recurrence on powers of the root of x^(d+1) = x + 1."""
    root = 2.0
    for _ in range(30):
        root = (1 + root) ** (1 / (dimensions + 1))
    steps = [root ** -(axis + 1) for axis in range(dimensions)]
    return [tuple(NORMAL.inv_cdf((0.5 + step * (n + 1)) % 1 or 0.5) for step in steps) for n in range(POINTS)]


def greatest(lengths: Sequence[float], tolerances: Sequence[float]) -> tuple[float, float]:
    """The mean and the tolerance of the greatest of lengths that err apart, ± two standard deviations.

    Two at a time, taken as normal again (C. E. Clark, "The greatest of a finite set of random variables", Operations
    Research 9, 1961). Of two that are 20 mm ± 0.2 mm each the greater is 20.056 mm on average: 20 + 0.1/√π.
    """
    mean, deviation = lengths[0], tolerances[0] / 2
    for other, tolerance in zip(lengths[1:], tolerances[1:], strict=True):
        mean, deviation = _greater(mean, deviation, other, tolerance / 2)
    return mean, 2 * deviation


def _greater(one: float, its: float, other: float, others: float) -> tuple[float, float]:
    apart = hypot(its, others)
    if apart < 1e-9:
        return max(one, other), max(its, others)
    alpha = (one - other) / apart
    share, density = NORMAL.cdf(alpha), NORMAL.pdf(alpha)
    mean = one * share + other * (1 - share) + apart * density
    square = (one**2 + its**2) * share + (other**2 + others**2) * (1 - share) + (one + other) * apart * density
    return mean, sqrt(max(0.0, square - mean**2))
