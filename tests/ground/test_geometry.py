"""Transforms and the boxes around paths: laws."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bookmaker.ground.geometry import Path, Point, Rect, Transform, polygon

numbers = st.floats(-50, 50)
points = st.builds(Point, numbers, numbers)
transforms = st.builds(Transform, *[st.floats(-4, 4)] * 4, numbers, numbers)


@given(transforms, points)
def test_the_inverse_takes_every_point_back(transform: Transform, point: Point) -> None:
    assume(abs(transform.a * transform.d - transform.b * transform.c) > 0.01)
    assert transform.inverse.apply(transform.apply(point)) == pytest.approx(point, abs=1e-6)
    assert transform.apply(transform.inverse.apply(point)) == pytest.approx(point, abs=1e-6)


def test_what_is_flattened_does_not_come_back() -> None:
    with pytest.raises(ZeroDivisionError):
        _ = Transform.stretch(0, 2).inverse


@given(st.lists(points, min_size=1, max_size=6))
def test_the_box_of_a_path_holds_all_its_points_and_touches_them(corners: list[Point]) -> None:
    box = polygon(corners).bounds
    assert all(box.contains(Rect(*corner, 0, 0)) for corner in corners)
    assert (box.x, box.y) == (min(x for x, _ in corners), min(y for _, y in corners))
    assert (box.right, box.top) == pytest.approx((max(x for x, _ in corners), max(y for _, y in corners)))


def test_the_box_of_a_curve_holds_its_handles() -> None:
    curve = Path((("M", 1.0, 1.0), ("C", 0.0, 5.0, 9.0, 2.0, 4.0, 1.0), ("Z",)))
    assert curve.bounds == Rect(0, 1, 9, 4)
