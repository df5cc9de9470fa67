"""Things that stand in a row, for tests: how thick, how high, how they stand."""

from __future__ import annotations

from bookmaker.shelf.placing.places import Place, places_of
from bookmaker.things.stance import Stance
from bookmaker.things.standing import Standing, Uncertainty

__all__ = ["UNSURE", "place_of", "thing"]

UNSURE = Uncertainty({"paper": 40.0}, 0.1)
"""Of forty leaves, and of the gluing."""


def thing(thickness: float, height: float, name: str = "a", *, stance: Stance = Stance()) -> Standing:  # noqa: B008 - a frozen value
    """A book of 14 mm from spine to fore-edge."""
    return Standing(name, name.upper(), thickness, height, 14.0, UNSURE, cut=0.2, stance=stance)


def place_of(thickness: float, height: float, name: str = "a", *, lean: float = 0.0, falls: int = 0) -> Place:
    """One that stands by itself."""
    (place,) = places_of([thing(thickness, height, name, stance=Stance(lean=lean, falls=falls))])
    return place
