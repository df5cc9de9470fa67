"""Colours beside colours: mixing, and how far apart two look."""

from __future__ import annotations

from math import cbrt, hypot

from ....ground.drawing import BLACK, WHITE, Colour

__all__ = ["apart", "darker", "lighter", "mixed"]


def mixed(one: Colour, other: Colour, share: float) -> Colour:
    """A colour between two; `share` of 0 is the first, 1 the second.

    >>> mixed(Colour(0.0, 0.0, 0.0), Colour(1.0, 0.5, 0.0), 0.5)
    Colour(red=0.5, green=0.25, blue=0.0)
    """
    return Colour(*(a + (b - a) * share for a, b in zip(one, other, strict=True)))


def lighter(colour: Colour, share: float) -> Colour:
    """Towards white."""
    return mixed(colour, WHITE, share)


def darker(colour: Colour, share: float) -> Colour:
    """Towards black."""
    return mixed(colour, BLACK, share)


def apart(one: Colour, other: Colour) -> float:
    """How different two colours look: their distance in Oklab (B. Ottosson, 2020), 0 to about 1.

    Black and white are 1 apart; two cloths that nobody confuses are more than 0.1 apart.
    """
    return hypot(*(a - b for a, b in zip(_oklab(one), _oklab(other), strict=True)))


def _oklab(colour: Colour) -> tuple[float, float, float]:
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in colour)
    long: float = cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue)
    middle: float = cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue)
    short: float = cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue)
    return (
        0.2104542553 * long + 0.7936177850 * middle - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * middle + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * middle - 0.8086757660 * short,
    )
