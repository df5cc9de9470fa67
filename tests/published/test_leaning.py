"""How wide and how high a leaning book is, how far it may lean, what it takes beside something lower.

From statics and plane geometry, worked by hand for triangles with whole sides; friction of paper on paper, 0.28 to 0.49
at rest, is from *The Physics Factbook* (2005).
"""

from __future__ import annotations

from math import asin, degrees

import pytest

from bookmaker.shelf.placing.leaning import FRICTION, least_lean, most_lean
from bookmaker.shelf.placing.places import Place, placed
from bookmaker.shelf.placing.widths import extent
from tests.kit.standing import UNSURE, place_of, thing


@pytest.mark.parametrize(
    ("thickness", "height", "sine", "width", "top"),
    [
        (5, 25, 0.6, 19.0, 23.0),
        (3, 20, 0.6, 14.4, 17.8),
        (2, 16, 5 / 13, 8.0, 15.538462),
    ],
)
def test_against_something_higher(thickness: float, height: float, sine: float, width: float, top: float) -> None:
    row = [place_of(5, 60), place_of(thickness, height, lean=degrees(asin(sine)))]
    assert extent(row) == pytest.approx(5 + width, abs=1e-6)
    assert row[1].top.length == pytest.approx(top, abs=1e-6)


@pytest.mark.parametrize(
    ("thickness", "height", "neighbour", "tangent", "width", "overhang"),
    [(3, 22, 12, 0.75, 11.4, 4.2), (2, 20, 9, 5 / 12, 5.596154, 3.942308)],
)
def test_over_something_lower(
    thickness: float, height: float, neighbour: float, tangent: float, width: float, overhang: float
) -> None:
    """Width H tan α + t cos α beside it; it hangs over by h sin α - H tan α."""
    lean = degrees(asin(tangent / (1 + tangent**2) ** 0.5))
    low, leaning = placed([place_of(30, neighbour), place_of(thickness, height, lean=lean)], 0.0)
    assert leaning.right - low.right == pytest.approx(width, abs=1e-6)
    assert low.right - min(corner.x for corner in leaning.outline) == pytest.approx(overhang, abs=1e-6)
    assert leaning.met == pytest.approx(neighbour)


@pytest.mark.parametrize(
    ("thickness", "height", "board", "neighbour", "most"),
    [
        (3, 20, 0.3, 0.0, 36.87),
        (3, 20, 0.3, 0.3, 39.997),
        (0, 20, 0.5, 0.0, 45.0),
        (0, 20, 0.3, 0.3, 33.398),
        (4, 16, 0.25, 0.0, 36.87),
    ],
)
def test_how_far_it_may_lean(thickness: float, height: float, board: float, neighbour: float, most: float) -> None:
    assert most_lean(thickness, height, board, neighbour) == pytest.approx(most, abs=2e-3)


def test_it_stands_up_where_its_middle_is_over_its_base() -> None:
    assert least_lean(3, 20) == pytest.approx(8.531, abs=1e-3)
    assert least_lean(4, 16) == pytest.approx(14.036, abs=1e-3)


def test_friction_is_taken_low() -> None:
    assert 0.28 <= FRICTION <= 0.3


def test_a_thing_for_these_tests_is_what_it_says() -> None:
    assert place_of(3, 20) == Place((thing(3, 20),), thing(3, 20).across, thing(3, 20).up)
    assert thing(3, 20).uncertainty == UNSURE
