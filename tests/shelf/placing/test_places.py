"""A row in which some lean: nothing overlaps, everything touches what it leans on, nothing takes room it need not."""

from __future__ import annotations

from itertools import combinations, pairwise
from math import cos, inf, radians, sin

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bookmaker.ground.geometry import Point
from bookmaker.shelf.placing.leaning import FRICTION, holds, least_lean, most_lean
from bookmaker.shelf.placing.places import Place, placed
from bookmaker.shelf.placing.widths import MOST_FALLEN, extent, fallen, width_error
from bookmaker.things.standing import Uncertainty
from tests.kit.standing import place_of

NAMES = "abcdefghij"

THINGS = st.tuples(
    st.floats(1.0, 12.0), st.floats(8.0, 30.0), st.sampled_from([0.0, 0.0, 0.0, 10.0, 20.0, 45.0, -10.0, -20.0])
)
ROWS = st.lists(THINGS, min_size=1, max_size=9).map(
    lambda row: [place_of(*one[:2], NAMES[number], lean=one[2]) for number, one in enumerate(row)]
)


def overlap(one: tuple[Point, ...], other: tuple[Point, ...]) -> float:
    """How deep two convex outlines reach into one another: the least shift that parts them (separating axes)."""
    depth = inf
    for outline in (one, other):
        for start, end in pairwise((*outline, outline[0])):
            along = Point(end.x - start.x, end.y - start.y)
            length = (along.x**2 + along.y**2) ** 0.5
            normal = Point(along.y / length, -along.x / length)
            first, second = ([normal.x * at.x + normal.y * at.y for at in shape] for shape in (one, other))
            depth = min(depth, max(first) - min(second), max(second) - min(first))
    return depth


@given(ROWS, st.sampled_from([0.0, 0.2, 1.0]))
def test_nothing_overlaps_and_all_stand_on_the_board(row: list[Place], play: float) -> None:
    stood = placed(row, play)
    assert [one.place for one in stood] == row
    for one, other in combinations(stood, 2):
        assert overlap(one.outline, other.outline) < 1e-6
    for one in stood:
        assert min(corner.y for corner in one.outline) == pytest.approx(0, abs=1e-9)
        assert min(corner.x for corner in one.outline) > -1e-9
    assert max(one.right for one in stood) <= extent(row) + play * len(row) + 1e-6


@given(ROWS)
def test_what_leans_touches_what_it_leans_on(row: list[Place]) -> None:
    """A hair further left it would be in something, or in the upright."""
    stood = placed(row, 0.2)
    for number, one in enumerate(stood):
        if one.place.lean > 0:
            nearer = [corner.plus(-1e-4, 0) for corner in one.outline]
            into = [overlap(tuple(nearer), other.outline) > 1e-6 for other in stood[:number]]
            assert any(into) or min(corner.x for corner in nearer) < 0


@given(ROWS)
def test_without_leaning_a_row_is_the_sum_of_its_widths(row: list[Place]) -> None:
    upright = [place_of(place.width, place.height, NAMES[number]) for number, place in enumerate(row)]
    assert extent(upright) == pytest.approx(sum(place.width for place in row))
    assert [one.x for one in placed(upright, 0.2)] == pytest.approx(
        [sum(place.width + 0.2 for place in row[:number]) for number in range(len(row))]
    )


@given(ROWS)
def test_the_error_of_a_row_is_what_finite_differences_say(row: list[Place]) -> None:
    """All thicker by what one paper adds: the slope of the whole row."""
    step = 1e-4

    def wide(more: float) -> float:
        return extent(
            [place_of(one.width + 40 * more, one.height, NAMES[at], lean=one.lean) for at, one in enumerate(row)]
        )

    thicker, thinner = (wide(step) - wide(0)) / step, (wide(0) - wide(-step)) / step
    assume(abs(thicker - thinner) < 0.01)  # what touches two others at once has two slopes
    assert width_error(row).slopes["paper"] == pytest.approx(thicker, rel=0.02, abs=0.1)


def test_a_leaning_book_counts_as_far_as_it_takes_more() -> None:
    """20 × 3 mm at 15°: sin 15° of each mm of height, cos 15° of each of thickness."""
    row = [place_of(4, 30, "a"), place_of(3, 20, "b", lean=15)]
    error = width_error(row)
    assert error.slopes["paper"] == pytest.approx(40 * (1 + cos(radians(15))), abs=1e-3)
    own = Uncertainty({}, 0.0, (0.1, 0.1 * cos(radians(15)), 0.2 * sin(radians(15))))
    assert error.spread({"paper": 0.0})[1] == pytest.approx(own.spread({})[1], abs=1e-5)


@given(ROWS, st.floats(0.0, 40.0), st.sampled_from([1, -1]))
def test_what_falls_leans_as_far_as_there_is_room(row: list[Place], room: float, side: int) -> None:
    falling = [*row, place_of(3, 20, "x", falls=side), place_of(4, 25, "y")]
    width = extent(falling) + room
    leant = fallen(falling, width)
    lean = abs(leant[-2].lean)
    assert not any(place.falls for place in leant)
    assert lean <= min(MOST_FALLEN, most_lean(3, 20))
    assert extent(leant) <= width + 1e-6
    if lean < MOST_FALLEN:
        more = [
            place_of(3, 20, "x", lean=side * (lean + 0.01)) if place.things[0].thing == "x" else place
            for place in leant
        ]
        assert extent(more) > width


def may_hold(thickness: float, height: float, lean: float, met: float) -> bool:
    """Whether forces can be found that hold it, with friction no larger than it may be; its weight is 1.

    Its foot is at the origin, its head to the left; `along` is the force of friction at what it leans on.
    """
    sine, cosine = sin(radians(lean)), cos(radians(lean))
    moment = (height * sine - thickness * cosine) / 2
    for step in range(-1000, 1001):
        ratio = FRICTION * step / 1000
        if met >= height * cosine:  # its upper corner against an upright face
            pressed = moment / (height * cosine + ratio * height * sine)
            sideways, carried = pressed, 1 - ratio * pressed
        else:  # its face on an upper corner
            pressed = moment / (met / cosine)
            sideways, carried = pressed * (cosine - ratio * sine), 1 - pressed * (sine + ratio * cosine)
        if pressed >= 0 and carried >= 0 and abs(sideways) <= FRICTION * carried + 1e-9:
            return True
    return False


@given(st.floats(1, 8), st.floats(12, 30), st.floats(2, 70), st.floats(4, 40))
def test_what_holds_can_be_held(thickness: float, height: float, lean: float, met: float) -> None:
    if lean > least_lean(thickness, height) and holds(thickness, height, lean, met):
        assert may_hold(thickness, height, lean, met)


@given(st.floats(1, 8), st.floats(12, 30), st.floats(18, 70))
def test_what_would_slide_cannot_be_held(thickness: float, height: float, lean: float) -> None:
    if lean > least_lean(thickness, height) and not holds(thickness, height, lean - 0.1, inf):
        assert not may_hold(thickness, height, lean + 0.1, inf)
