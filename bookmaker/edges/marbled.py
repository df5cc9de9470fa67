"""Marbled edges, made as marblers make them: drop by drop on a bath, then drawn with a stylus.

Every drop pushes aside what floats there already. Paint keeps its area, so a point P at a distance d from the
middle C of a drop of radius r goes to C + (P − C)·√(1 + r²/d²): the area within, πd², grows by the drop's πr².
"""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, cos, pi, sin, sqrt
from random import Random

from ..drawing import Colour
from ..geometry import Point, polygon
from .strip import EdgeArt, Layout

__all__ = ["marbled", "pushed"]

DROP = (0.55, 0.2)
"""Radii of the first drop and of the last, in mm: spots of 13 to 5 mm on the full-size book."""

COVER = 1.5
"""So many times the area of the bath is dropped on it, for some of it leaves the sheet."""

CORNERS = 20
"""A drop is drawn with so many corners: at 0.55 mm it is true to 0.007 mm."""

MOST_DROPS = 400
"""Larger edges get larger drops instead."""

REACH = 6.0
"""A drop moves what lies within so many of its radii; beyond, it would be by less than a twelfth of one."""

VEIN_DOTS = 1.0
"""A drop is drawn so many printer dots smaller than it pushes: the ground shows as veins."""

CREAM = Colour.from_hex("#efe3c8")
PAINTS = tuple(map(Colour.from_hex, ("#35598a", "#a4402f", "#cf9f45", "#5c7a63", "#7a2d33")))
VEIN = Colour.from_hex("#1f2a3c")


def marbled(layout: Layout, colour: Colour) -> EdgeArt:  # noqa: ARG001 (every kind is called alike)
    """Spots of four paints with dark veins between them."""
    chance = layout.chance()
    paints = (CREAM, *chance.sample(PAINTS, 3))
    stylus = _stylus(chance)
    spots = _bath(layout, chance)
    marks = tuple((polygon([stylus(point) for point in spot]), chance.choice(paints)) for spot in spots)
    return EdgeArt(layout.area, VEIN, marks)


def _bath(layout: Layout, chance: Random) -> list[list[Point]]:
    """The outlines of all drops when the last one has fallen."""
    area = layout.area.grown(DROP[0])
    usual = pi * (DROP[0] ** 2 + DROP[0] * DROP[1] + DROP[1] ** 2) / 3
    enough = COVER * area.width * area.height / usual
    count = min(MOST_DROPS, ceil(enough))
    larger = sqrt(enough / count)
    floating: list[tuple[Point, list[Point]]] = []
    for number in range(count):
        centre = Point(chance.uniform(area.x, area.right), chance.uniform(area.y, area.top))
        radius = larger * (DROP[0] + (DROP[1] - DROP[0]) * number / count) * chance.uniform(0.75, 1.25)
        floating = [_moved(drop, centre, radius) for drop in floating]
        floating.append((centre, _circle(centre, max(radius - VEIN_DOTS * layout.dot, radius / 2), chance)))
    return [outline for _, outline in floating]


def _moved(drop: tuple[Point, list[Point]], centre: Point, radius: float) -> tuple[Point, list[Point]]:
    middle, outline = drop
    if max(abs(middle.x - centre.x), abs(middle.y - centre.y)) > REACH * radius:
        return drop
    [middle, *outline] = pushed([middle, *outline], centre, radius)
    return middle, outline


def _circle(centre: Point, radius: float, chance: Random) -> list[Point]:
    turn = chance.random()
    angles = [2 * pi * (corner + turn) / CORNERS for corner in range(CORNERS)]
    return [centre.plus(radius * cos(angle), radius * sin(angle)) for angle in angles]


def _stylus(chance: Random) -> Callable[[Point], Point]:
    """A stylus drawn through the bath in slow waves, along and across."""
    reach, length, start = chance.uniform(0.35, 0.6), chance.uniform(2.2, 3.6), chance.uniform(0, 2 * pi)

    def drawn(point: Point) -> Point:
        x = point.x + reach * sin(2 * pi * point.y / length + start)
        return Point(x, point.y + reach * 0.7 * sin(2 * pi * x / (1.7 * length)))

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
