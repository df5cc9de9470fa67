"""Marbled edges, made as marblers make them: drop by drop on a bath, then drawn with a stylus.

All books are dipped in one bath, which repeats every few millimetres. Each dips another place, in other paints,
through other waves of the stylus, so that nobody sees it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from math import ceil, floor, pi, sin, sqrt
from random import Random

from ....ground.art import Filled
from ....ground.drawing import Colour
from ....ground.geometry import Point, Rect, polygon
from ..bath import BATH, floating
from .strip import EdgeArt, Layout

__all__ = ["marbled"]

DROPS, RADII = 85, (0.9, 0.3)
"""How many drops, and the radii of the first and of the last in mm: spots of 22 to 7 mm on the full-size book."""

LARGEST = 1500.0
"""The area in mm² to which spots keep their size; on larger edges they grow."""

CREAM = Colour.from_hex("#efe3c8")
PAINTS = tuple(map(Colour.from_hex, ("#35598a", "#a4402f", "#cf9f45", "#5c7a63", "#7a2d33")))
VEIN = Colour.from_hex("#1f2a3c")


def marbled(layout: Layout) -> EdgeArt:
    """Spots of four paints, one of them cream, on a dark bath."""
    return EdgeArt(layout.area, VEIN, partial(_spots, layout))


def _spots(layout: Layout) -> Iterator[Filled]:
    """Every drop of the bath, wherever it repeats within the area, as it lies after the stylus has gone through."""
    area, chance = layout.area, layout.chance()
    paints = (CREAM, *chance.sample(PAINTS, 3))
    scale = max(1.0, sqrt(area.width * area.height / LARGEST))
    stylus = _stylus(chance, scale)
    dipped = Point(chance.uniform(0, BATH), chance.uniform(0, BATH))
    seen = area.grown(BATH * scale / 2)
    for outline in floating("bath", DROPS, *RADII):
        for place in _repeats(dipped, seen, scale):
            spot = [stylus(Point(place.x + x * scale, place.y + y * scale)) for x, y in outline]
            paint = chance.choice(paints)
            if area.overlaps(Rect.around(spot)):
                yield Filled(polygon(spot), paint)


def _repeats(dipped: Point, seen: Rect, scale: float) -> list[Point]:
    """Where the corners of the bath lie that reach into what is seen."""
    side = BATH * scale
    across = range(floor((seen.x - dipped.x) / side), ceil((seen.right - dipped.x) / side))
    up = range(floor((seen.y - dipped.y) / side), ceil((seen.top - dipped.y) / side))
    return [dipped.plus(column * side, row * side) for row in up for column in across]


def _stylus(chance: Random, scale: float) -> Callable[[Point], Point]:
    """A stylus drawn through the bath in slow waves, across and along."""
    reach, length = scale * chance.uniform(0.35, 0.6), scale * chance.uniform(2.2, 3.6)
    start, shift = chance.uniform(0, 2 * pi), chance.uniform(0, 2 * pi)

    def drawn(point: Point) -> Point:
        x = point.x + reach * sin(2 * pi * point.y / length + start)
        return Point(x, point.y + reach * 0.7 * sin(2 * pi * x / (1.7 * length) + shift))

    return drawn
