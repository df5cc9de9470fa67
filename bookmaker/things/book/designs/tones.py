"""Colours beside colours: mixing, and how far apart two look."""

from __future__ import annotations

from ....ground.colours.differences import oklab_of
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
    return oklab_of(one).distance(oklab_of(other))
