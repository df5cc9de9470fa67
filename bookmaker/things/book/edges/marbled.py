"""Marbled edges, made as marblers make them: drop by drop on a bath, then drawn with a stylus.

Every drop pushes aside what floats there already. Paint keeps its area, so a point P at a distance d from the
middle C of a drop of radius r goes to C + (P − C)·√(1 + r²/d²): the area within, πd², grows by the drop's πr².

All books are dipped in one bath, which repeats every few millimetres. Each dips another place, in other paints,
through other waves of the stylus, so that nobody sees it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache, partial
from math import ceil, cos, floor, pi, sin, sqrt
from random import Random

from ....ground.art import Filled
from ....ground.drawing import Colour
from ....ground.geometry import Point, Rect, polygon
from .strip import EdgeArt, Layout

__all__ = ["marbled", "pushed"]

BATH = 9.0
"""Side of the square after which the bath repeats, in mm."""

DROP = (0.9, 0.3)
"""Radii of the first drop and of the last, in mm: spots of 22 to 7 mm on the full-size book."""

DROPS = 85
"""They have a good third more than the area of the bath: what falls first is drawn out into veins."""

CORNERS = 14
"""A drop is drawn with so many corners: at 0.9 mm it is true to 0.023 mm."""

REACH = 4.0
"""A drop moves what lies within so many of its radii; beyond, it would be by less than an eighth of one."""

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
    for outline in _bath():
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


@cache
def _bath() -> tuple[tuple[Point, ...], ...]:
    """The outlines of all drops when the last one has fallen, in the order in which they fell."""
    chance = Random("bath")
    floating: list[list[Point]] = []
    for number in range(DROPS):
        centre = Point(chance.uniform(0, BATH), chance.uniform(0, BATH))
        radius = (DROP[0] + (DROP[1] - DROP[0]) * number / DROPS) * chance.uniform(0.75, 1.25)
        floating = [_moved(drop, centre, radius) for drop in floating]
        angles = [2 * pi * corner / CORNERS for corner in range(CORNERS)]
        floating.append([centre, *(centre.plus(radius * cos(angle), radius * sin(angle)) for angle in angles)])
    return tuple(tuple(outline) for _, *outline in floating)


def _moved(drop: list[Point], centre: Point, radius: float) -> list[Point]:
    """A drop, given by its middle and its outline, when another falls, the nearest of those the bath repeats."""
    middle = drop[0]
    nearest = Point(
        centre.x + BATH * round((middle.x - centre.x) / BATH), centre.y + BATH * round((middle.y - centre.y) / BATH)
    )
    if max(abs(middle.x - nearest.x), abs(middle.y - nearest.y)) > REACH * radius:
        return drop
    return pushed(drop, nearest, radius)


def _stylus(chance: Random, scale: float) -> Callable[[Point], Point]:
    """A stylus drawn through the bath in slow waves, across and along."""
    reach, length = scale * chance.uniform(0.35, 0.6), scale * chance.uniform(2.2, 3.6)
    start, shift = chance.uniform(0, 2 * pi), chance.uniform(0, 2 * pi)

    def drawn(point: Point) -> Point:
        x = point.x + reach * sin(2 * pi * point.y / length + start)
        return Point(x, point.y + reach * 0.7 * sin(2 * pi * x / (1.7 * length) + shift))

    return drawn


def pushed(points: list[Point], centre: Point, radius: float) -> list[Point]:
    """Where the points go when a drop falls.

    >>> pushed([Point(3, 0)], Point(0, 0), 4)
    [Point(x=5.0, y=0.0)]
    """
    moved = []
    for x, y in points:
        dx, dy = x - centre.x, y - centre.y
        by = sqrt(1 + radius * radius / max(1e-9, dx * dx + dy * dy))
        moved.append(Point(centre.x + dx * by, centre.y + dy * by))
    return moved
