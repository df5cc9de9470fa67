"""How thick books are on a shelf that was not filled to measure: most middling, some thin, a few thick, none alike."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Sequence
from math import exp
from statistics import NormalDist
from typing import NamedTuple

__all__ = ["Bounds", "natural_wishes"]

SPREAD = 0.3
"""Of the logarithm of thicknesses on a shelf: two of three books differ from the middle by less than a third
(common practice, no published source)."""

HALVINGS = 60


class Bounds(NamedTuple):
    """What something may become, and what it is about to be, if somebody said so."""

    at_least: float
    at_most: float
    about: float | None = None


def natural_wishes(names: Sequence[str], bounds: Sequence[Bounds], total: float) -> list[float]:
    """Thicknesses in a natural spread, their sum the total as far as their bounds let it be.

    Which is thick and which thin hangs on its name alone. Those about which something is said keep to that as long as
    the others can make up for the rest; else they are stretched, all in one proportion.
    """
    quantiles = _quantiles(names)
    weights = [quantile if one.about is None else one.about for one, quantile in zip(bounds, quantiles, strict=True)]
    told = [number for number, one in enumerate(bounds) if one.about is not None]
    free = [number for number, one in enumerate(bounds) if one.about is None]
    wishes = [_within(one, one.about or 0.0) for one in bounds]
    rest = total - sum(wishes[number] for number in told)
    _stretch(wishes, free, weights, bounds, rest)
    short = total - sum(wishes)
    if told and abs(short) > 1e-9:
        _stretch(wishes, told, weights, bounds, total - sum(wishes[number] for number in free))
    return wishes


def _quantiles(names: Sequence[str]) -> list[float]:
    """Of a log-normal distribution, one for each name."""
    ranked = sorted(range(len(names)), key=lambda number: hashlib.sha256(names[number].encode()).digest())
    rank = {number: place for place, number in enumerate(ranked)}
    bell = NormalDist()
    return [exp(SPREAD * bell.inv_cdf((rank[number] + 0.5) / len(names))) for number in range(len(names))]


def _within(bounds: Bounds, length: float) -> float:
    return min(max(length, bounds.at_least), bounds.at_most)


def _stretch(
    wishes: list[float], mine: Sequence[int], weights: Sequence[float], bounds: Sequence[Bounds], total: float
) -> None:
    """Some wishes, put in proportion to their weights and within their bounds, so that they make a total."""
    if not mine:
        return

    def stretched(factor: float) -> dict[int, float]:
        return {number: _within(bounds[number], factor * weights[number]) for number in mine}

    factor = _root(
        lambda factor: sum(stretched(factor).values()), total, max(total, 1.0) / min(weights[n] for n in mine)
    )
    for number, length in stretched(factor).items():
        wishes[number] = length


def _root(rising: Callable[[float], float], wanted: float, highest: float) -> float:
    """Where something that rises reaches a value, between 0 and the highest."""
    low, high = 0.0, highest
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if rising(middle) < wanted else (low, middle)
    return (low + high) / 2
