"""Creep: what folds take up, and how far inner sheets stand out at the fore-edge because of it."""

from __future__ import annotations

from math import pi

__all__ = ["creep", "fold_length"]


def fold_length(caliper: float, folds: int = 1) -> float:
    """What a sheet loses in length when it is folded in half so many times, in mm.

    π·t/6·(2ⁿ + 4)·(2ⁿ − 1) (J. Gallivan's paper-folding formula); a single fold takes π·t:

    >>> round(fold_length(0.1), 4)
    0.3142
    """
    return pi * caliper / 6 * (2.0**folds + 4) * (2.0**folds - 1)


def creep(depth: int, caliper: float) -> float:
    """How far a leaf stands out beyond the outermost one, with so many leaves around it, in mm.

    Nested folds are concentric: each lies one caliper further in, so each half of the sheet spends π/2·t less
    on the way around, half of what one single fold takes up.

    >>> round(creep(3, 0.1), 4)
    0.4712
    """
    return depth * fold_length(caliper) / 2
