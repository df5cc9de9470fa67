"""Dry films of glue: how thick they usually are, what they are made of, and how far they may be off."""

from __future__ import annotations

from ..ground.thin import print_caliper
from ..ground.told import Units, told_in
from .thickness import Layer

__all__ = ["FILM_SHARE", "GLUES", "films_of", "glue_called", "glue_films"]

GLUES = {"spray": 0.015, "glue stick": 0.02, "paste": 0.03, "pva": 0.03, "double-sided film": 0.075}
"""Usual thickness of dry glue films in mm (common practice, no published source)."""

CALLED = {
    GLUES["spray"]: "spray adhesive",
    GLUES["glue stick"]: "glue stick",
    GLUES["paste"]: "paste or PVA",
    GLUES["double-sided film"]: "double-sided film",
}

FILM_SHARE = 1 / 3
"""A hand lays a film so much thinner or thicker than it means to, ± as a share (common practice, no source)."""


def glue_called(film: float) -> str:
    """What a dry film of glue so many mm thick is made of.

    >>> glue_called(0.015), glue_called(0.03), glue_called(0.025)
    ('spray adhesive', 'paste or PVA', 'glue (a dry film of 0.025 mm)')
    """
    return CALLED.get(film) or f"glue (a dry film of {print_caliper(film)})"


def films_of(film: float) -> str:
    """What the error of films goes by that are laid with one adhesive: all books glued with it share it."""
    with told_in(Units.MILLIMETRES):  # what it goes by is not told
        return f"films of {glue_called(film)}"


def glue_films(what: str, count: float, film: float) -> Layer:
    """Films of one adhesive in a stack."""
    return Layer(what, count, film, films=films_of(film))
