"""The bath of a marbler: colour falls on it drop by drop, and every drop pushes aside what floats there already.

Paint keeps its area, so a point P at a distance d from the middle C of a drop of radius r goes to
C + (P − C)·√(1 + r²/d²): the area within, πd², grows by the drop's πr².
"""

from __future__ import annotations

from functools import cache
from math import cos, pi, sin, sqrt
from random import Random

from ...ground.geometry import Point

__all__ = ["BATH", "floating", "pushed"]

BATH = 9.0
"""Side of the square after which the bath repeats, in mm."""

REACH = 4.0
"""A drop moves what lies within so many of its radii; beyond, it would be by less than an eighth of one."""


@cache
def floating(seed: str, count: int, first: float, last: float, corners: int = 14) -> tuple[tuple[Point, ...], ...]:
    """The outlines of so many drops when the last one has fallen, in the order in which they fell.

    `first` and `last` are their radii in mm, those between of sizes between. Where they have more area than the bath,
    what falls first is drawn out into veins. With 14 `corners` a drop of 0.9 mm is drawn true to 0.023 mm.
    """
    chance = Random(seed)
    drops: list[list[Point]] = []
    for number in range(count):
        centre = Point(chance.uniform(0, BATH), chance.uniform(0, BATH))
        radius = (first + (last - first) * number / count) * chance.uniform(0.75, 1.25)
        drops = [_moved(drop, centre, radius) for drop in drops]
        angles = [2 * pi * corner / corners for corner in range(corners)]
        drops.append([centre, *(centre.plus(radius * cos(angle), radius * sin(angle)) for angle in angles)])
    return tuple(tuple(outline) for _, *outline in drops)


def _moved(drop: list[Point], centre: Point, radius: float) -> list[Point]:
    """A drop, given by its middle and its outline, when another falls, the nearest of those the bath repeats."""
    middle = drop[0]
    nearest = Point(
        centre.x + BATH * round((middle.x - centre.x) / BATH), centre.y + BATH * round((middle.y - centre.y) / BATH)
    )
    if max(abs(middle.x - nearest.x), abs(middle.y - nearest.y)) > REACH * radius:
        return drop
    return pushed(drop, nearest, radius)


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
