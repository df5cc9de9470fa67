"""Outlines of what is cut out: chords that keep to their curves, regions with holes, and print spread around them."""

from __future__ import annotations

from itertools import pairwise
from math import cos, dist, hypot, pi, radians, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.geometry import Path, Point, Rect
from bookmaker.ground.outlines import arc, area_within, circle, flattened, region, rounded, spread

CURVE_ERROR = 0.005


def winding(path: Path, at: Point) -> int:
    """How often a path runs around a point, by the crossings of a ray (Sunday, 2001)."""
    count, start, last = 0, Point(0, 0), Point(0, 0)
    for kind, *values in path.commands:
        to = start if kind == "Z" else Point(*map(float, values))
        if kind == "M":
            start = last = to
            continue
        left = (to.x - last.x) * (at.y - last.y) - (at.x - last.x) * (to.y - last.y)
        count += (last.y <= at.y < to.y and left > 0) - (to.y <= at.y < last.y and left < 0)
        last = to
    return count


@given(radius=st.floats(0.05, 300))
def test_a_circle_has_its_size_and_its_chords_keep_to_it(radius: float) -> None:
    corners = circle(Point(3, -7), radius)
    assert Rect.around(corners).size == pytest.approx((2 * radius, 2 * radius), rel=1e-9)
    for one, other in pairwise([*corners, corners[0]]):
        middle = Point((one.x + other.x) / 2, (one.y + other.y) / 2)
        assert dist(one, Point(3, -7)) == pytest.approx(radius, rel=1e-9)
        assert radius - dist(middle, Point(3, -7)) <= CURVE_ERROR + 1e-9
    assert 0 < pi * radius**2 - area_within(corners) <= 2 * pi * radius * CURVE_ERROR


@given(start=st.floats(-360, 360), sweep=st.floats(-350, 350), radius=st.floats(0.1, 100))
def test_an_arc_begins_and_ends_where_it_is_told(start: float, sweep: float, radius: float) -> None:
    corners = arc(Point(0, 0), radius, start, start + sweep)
    for at, turn in ((corners[0], start), (corners[-1], start + sweep)):
        assert at == pytest.approx((radius * cos(radians(turn)), radius * sin(radians(turn))), abs=1e-9)


@given(width=st.floats(10, 80), height=st.floats(10, 80), radius=st.floats(0.1, 5))
def test_rounded_corners_take_what_geometry_says(width: float, height: float, radius: float) -> None:
    """A square of the radius loses 1 - π/4 of its area: four corners of 2 mm take 3.43 mm²."""
    corners = rounded(Rect(0, 0, width, height).corners, radius)
    assert Rect.around(corners) == Rect(0, 0, width, height)
    lost = width * height - area_within(corners)
    assert (4 - pi) * radius**2 <= lost <= (4 - pi) * radius**2 + 2 * pi * radius * CURVE_ERROR


def test_inward_corners_are_rounded_too() -> None:
    ell = (Point(0, 0), Point(20, 0), Point(20, 10), Point(10, 10), Point(10, 20), Point(0, 20))
    corners = rounded(ell, 2)
    # five corners outward and one inward, which gives back what one of them takes
    assert area_within(corners) == pytest.approx(300 - 4 * (1 - pi / 4) * 4, abs=0.08)


def test_cubic_curves_are_followed() -> None:
    """A circle of four cubic curves is true to 0.03 % of its radius."""
    for corner in flattened(Path.circle(Point(0, 0), 20)):
        assert abs(hypot(*corner) - 20) <= 20 * 0.0003
    for one, other in pairwise(flattened(Path.circle(Point(0, 0), 20))):
        assert 20 - hypot((one.x + other.x) / 2, (one.y + other.y) / 2) <= CURVE_ERROR + 20 * 0.0003


SHAPES = (
    (Rect(0, 0, 30, 20).corners, ()),
    (rounded(Rect(0, 0, 30, 20).corners, 4), (circle(Point(10, 10), 3),)),
    (
        (Point(0, 0), Point(30, 0), Point(30, 20), Point(22, 8), Point(10, 20)),
        ((Point(12, 4), Point(20, 4), Point(16, 9)),),
    ),
    ((Point(0, 0), Point(0, 20), Point(30, 20)), (circle(Point(9, 14), 2)[::-1],)),
)


def distance(at: Point, edges: list[tuple[Point, Point]]) -> float:
    """From a point to the nearest of several straight lines."""
    found = []
    for start, end in edges:
        dx, dy = end.x - start.x, end.y - start.y
        along = ((at.x - start.x) * dx + (at.y - start.y) * dy) / (dx * dx + dy * dy)
        along = min(1.0, max(0.0, along))
        found.append(dist(at, (start.x + dx * along, start.y + dy * along)))
    return min(found)


def holds(edges: list[tuple[Point, Point]], at: Point) -> bool:
    """Whether a point lies within some edges: a ray from it crosses them an odd number of times."""
    crossed = [
        start.x + (at.y - start.y) * (end.x - start.x) / (end.y - start.y) > at.x
        for start, end in edges
        if (start.y <= at.y) != (end.y <= at.y)
    ]
    return sum(crossed) % 2 == 1


@pytest.mark.parametrize("shape", SHAPES)
@given(x=st.floats(-4, 34), y=st.floats(-4, 24))
def test_a_region_is_what_a_ray_says_and_its_bleed_lies_around_it(
    shape: tuple[tuple[Point, ...], tuple[tuple[Point, ...], ...]], x: float, y: float
) -> None:
    """Whichever way the corners run; at sharp corners bleed reaches further out than beside edges."""
    outline, holes = shape
    at, bleed = Point(x, y), 1.5
    around = list(pairwise([*outline, outline[0]]))
    edges = around + [edge for hole in holes for edge in pairwise([*hole, hole[0]])]
    away, within = distance(at, edges), holds(edges, at)
    if away < 1e-6:
        return
    assert (winding(region(outline, holes), at) != 0) == within
    inked = winding(spread(outline, holes, bleed), at) != 0
    if within or away < bleed - 1e-6:
        assert inked
    elif away > bleed * (4 if not holds(around, at) else 1) + 1e-6:
        assert not inked


def test_the_bleed_of_a_rectangle_is_a_larger_rectangle() -> None:
    assert spread(Rect(0, 0, 5, 7).corners, (), 2) == Path.rectangle(Rect(-2, -2, 9, 11))
