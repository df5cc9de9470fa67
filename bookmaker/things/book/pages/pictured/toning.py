"""How photographs are toned: the colours of their shadows and of their lights."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from .....ground.drawing import Colour
from .....ground.pictures import Picture
from ...designs.tones import mixed

__all__ = ["Tone", "toned"]

Tone = Literal["sepia", "albumen", "grey", "blue", "as it is"]

TONES: Mapping[str, tuple[Colour, Colour]] = {
    "sepia": (Colour.from_hex("#3a2415"), Colour.from_hex("#f2e3c4")),
    "albumen": (Colour.from_hex("#4a2a33"), Colour.from_hex("#f3e4c6")),
    "grey": (Colour.from_hex("#1c1c1e"), Colour.from_hex("#efeeea")),
    "blue": (Colour.from_hex("#12305c"), Colour.from_hex("#eaf0f2")),
}
"""Shadows and lights of each toning."""

FADED = 0.5
"""So far shadows go towards the lights at the highest degree of age."""


def toned(picture: Picture, tone: Tone, age: float = 0.0) -> Picture:
    """A picture in a tone, its shadows faded with age, which is from 0 to 1."""
    if tone == "as it is":
        return picture
    dark, light = TONES[tone]
    return picture.in_tones(_of_255(mixed(dark, light, FADED * age)), _of_255(light))


def _of_255(colour: Colour) -> tuple[int, int, int]:
    red, green, blue = (round(255 * part) for part in colour)
    return red, green, blue
