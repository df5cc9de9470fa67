"""How far apart two colours look: CIEDE2000 in CIELAB, and the plainer distance in Oklab.

Sources: IEC 61966-2-1 (sRGB to XYZ, white D65); CIE 15 (XYZ to CIELAB); G. Sharma, W. Wu and E. N. Dalal, "The
CIEDE2000 Color-Difference Formula", Color Research and Application 30/1 (2005); B. Ottosson, "A perceptual color space
for image processing" (2020).
"""

from __future__ import annotations

from functools import lru_cache
from math import atan2, cbrt, cos, degrees, exp, hypot, radians, sin, sqrt
from typing import NamedTuple

from ..drawing import Colour

__all__ = ["Lab", "ciede2000", "difference", "lab_of", "oklab_of", "oklab_of_xyz"]

D65 = (0.95047, 1.0, 1.08883)
"""The white of sRGB in XYZ."""


class Lab(NamedTuple):
    """A colour by its lightness and two opponent hues: green to red, blue to yellow."""

    lightness: float
    a: float
    b: float

    def distance(self, other: Lab) -> float:
        """The straight distance of two colours."""
        return hypot(*(one - another for one, another in zip(self, other, strict=True)))


def _linear(colour: Colour) -> tuple[float, ...]:
    return tuple(part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in colour)


@lru_cache(maxsize=4096)
def lab_of(colour: Colour) -> Lab:
    """An sRGB colour in CIELAB under D65; lightness from 0 to 100.

    >>> [round(part, 1) for part in lab_of(Colour(1.0, 0.0, 0.0))]
    [53.2, 80.1, 67.2]
    """
    red, green, blue = _linear(colour)
    xyz = (
        0.4124564 * red + 0.3575761 * green + 0.1804375 * blue,
        0.2126729 * red + 0.7151522 * green + 0.0721750 * blue,
        0.0193339 * red + 0.1191920 * green + 0.9503041 * blue,
    )
    x, y, z = (
        cbrt(part) if part > 216 / 24389 else (24389 / 27 * part + 16) / 116
        for part in (value / white for value, white in zip(xyz, D65, strict=True))
    )
    return Lab(116 * y - 16, 500 * (x - y), 200 * (y - z))


def oklab_of(colour: Colour) -> Lab:
    """An sRGB colour in Oklab; lightness from 0 to 1.

    >>> [round(part, 4) for part in oklab_of(Colour(1.0, 0.0, 0.0))]
    [0.628, 0.2249, 0.1258]
    """
    red, green, blue = _linear(colour)
    return _from_cones(
        0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue,
        0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue,
        0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue,
    )


def oklab_of_xyz(x: float, y: float, z: float) -> Lab:
    """A colour given in XYZ under D65 in Oklab.

    >>> [round(part, 3) for part in oklab_of_xyz(0.0, 1.0, 0.0)]
    [0.922, -0.671, 0.263]
    """
    return _from_cones(
        0.8189330101 * x + 0.3618667424 * y - 0.1288597137 * z,
        0.0329845436 * x + 0.9293118715 * y + 0.0361456387 * z,
        0.0482003018 * x + 0.2643662691 * y + 0.6338517070 * z,
    )


def _from_cones(long: float, middle: float, short: float) -> Lab:
    long, middle, short = cbrt(long), cbrt(middle), cbrt(short)
    return Lab(
        0.2104542553 * long + 0.7936177850 * middle - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * middle + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * middle - 0.8086757660 * short,
    )


def difference(one: Colour, other: Colour) -> float:
    """How far apart two sRGB colours look by CIEDE2000: about 1 is just seen, black and white are 100 apart."""
    return ciede2000(lab_of(one), lab_of(other))


def ciede2000(one: Lab, other: Lab) -> float:
    """The difference of two colours by CIEDE2000 with kL = kC = kH = 1.

    >>> round(ciede2000(Lab(50.0, 2.6772, -79.7751), Lab(50.0, 0.0, -82.7485)), 4)
    2.0425
    """
    mean_chroma = (hypot(one.a, one.b) + hypot(other.a, other.b)) / 2
    stretch = 1 + (1 - sqrt(_share(mean_chroma))) / 2
    (chroma_1, hue_1), (chroma_2, hue_2) = (_chroma_and_hue(colour, stretch) for colour in (one, other))
    neutral = chroma_1 * chroma_2 == 0
    turn = 0.0 if neutral else (hue_2 - hue_1 + 180) % 360 - 180
    if not neutral and hue_2 - hue_1 in (180, -540):
        turn = 180.0
    hue = _mean_hue(hue_1, hue_2, neutral=neutral)
    lightness, chroma = (one.lightness + other.lightness) / 2, (chroma_1 + chroma_2) / 2
    by_lightness = (other.lightness - one.lightness) / _lightness_weight(lightness)
    by_chroma = (chroma_2 - chroma_1) / (1 + 0.045 * chroma)
    by_hue = 2 * sqrt(chroma_1 * chroma_2) * sin(radians(turn / 2)) / (1 + 0.015 * chroma * _hue_weight(hue))
    rotation = -2 * sqrt(_share(chroma)) * sin(radians(60 * exp(-(((hue - 275) / 25) ** 2))))
    return sqrt(by_lightness**2 + by_chroma**2 + by_hue**2 + rotation * by_chroma * by_hue)


def _share(chroma: float) -> float:
    return chroma**7 / (chroma**7 + 25.0**7)


def _chroma_and_hue(colour: Lab, stretch: float) -> tuple[float, float]:
    a = colour.a * stretch
    return hypot(a, colour.b), degrees(atan2(colour.b, a)) % 360 if a or colour.b else 0.0


def _mean_hue(one: float, other: float, *, neutral: bool) -> float:
    total = one + other
    if neutral:
        return total
    if abs(one - other) <= 180:
        return total / 2
    return (total + 360) / 2 if total < 360 else (total - 360) / 2


def _lightness_weight(lightness: float) -> float:
    off = (lightness - 50) ** 2
    return 1 + 0.015 * off / sqrt(20 + off)


def _hue_weight(hue: float) -> float:
    return (
        1
        - 0.17 * cos(radians(hue - 30))
        + 0.24 * cos(radians(2 * hue))
        + 0.32 * cos(radians(3 * hue + 6))
        - 0.20 * cos(radians(4 * hue - 63))
    )
