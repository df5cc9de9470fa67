"""What a fold takes of the length of a stock."""

from __future__ import annotations

from math import pi

__all__ = ["bend_allowance"]


def bend_allowance(angle_deg: float, inside_radius: float, caliper: float, neutral: float = 0.5) -> float:
    """Length of stock a fold takes up, in mm: A·π/180·(R + K·c).

    `neutral` is K: 0 measures on the inner face, ½ in the middle, 1 on the outer face (*Machinery's
    Handbook*, bend allowances). A scored right angle in 0.21 mm stock takes π/4 · 0.21 = 0.165 mm:

    >>> round(bend_allowance(90, 0, 0.21), 3)
    0.165
    """
    return angle_deg * pi / 180 * (inside_radius + neutral * caliper)
