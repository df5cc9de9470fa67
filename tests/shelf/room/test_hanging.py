"""Rows, grids and salon hangs as laws over random sizes."""

from __future__ import annotations

from itertools import combinations, pairwise

from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from bookmaker.ground.geometry import Point, Rect, Size
from bookmaker.shelf.room.hanging import EYE_LEVEL, USUAL_GAP, grid, row, salon

SIDES = st.floats(5, 60)
SIZES = st.lists(st.builds(Size, SIDES, SIDES), min_size=1, max_size=12)


@given(SIZES, st.floats(60, 180))
def test_a_row_hangs_on_one_centre_line_with_even_gaps_at_the_ends_too(sizes: list[Size], centre: float) -> None:
    whole = sum(size.width for size in sizes) + 50
    rects = row(sizes, 10, 10 + whole, centre, None)
    edges = [10, *(edge for rect in rects for edge in (rect.x, rect.right)), 10 + whole]
    gaps = [after - before for before, after in zip(edges[::2], edges[1::2], strict=True)]
    assert all(rect.centre.y == approx(centre) for rect in rects)
    assert gaps == approx([50 / (len(sizes) + 1)] * len(gaps))


@given(SIZES, st.floats(0, 20))
def test_a_row_with_a_gap_is_in_the_middle_of_its_stretch(sizes: list[Size], gap: float) -> None:
    rects = row(sizes, 0, 900, 120, gap)
    assert rects[0].x == approx(900 - rects[-1].right)
    assert all(after.x - before.right == approx(gap) for before, after in pairwise(rects))


@given(SIZES, st.integers(1, 5), st.floats(0, 20))
def test_no_two_of_a_grid_are_nearer_than_the_gap_and_columns_share_their_middle(
    sizes: list[Size], columns: int, gap: float
) -> None:
    rects = grid(sizes, columns, Point(300, 120), gap)
    assert [rect.size for rect in rects] == [approx(size) for size in sizes]
    for at, rect in enumerate(rects):
        assert rect.centre.x == approx(rects[at % columns].centre.x)
        assert rect.centre.y == approx(rects[at - at % columns].centre.y)
    for one, other in combinations(rects, 2):
        assert not one.grown(gap / 2).overlaps(other.grown(gap / 2), 1e-6)


@given(SIZES, st.floats(2, 12))
def test_a_salon_hang_keeps_the_gap_stays_in_its_room_and_hangs_together(sizes: list[Size], gap: float) -> None:
    room = Rect(40, 0, 700, 500)
    rects = [rect for rect in salon(sizes, room, Point(390, 250), gap) if rect]
    assert [rect.size for rect in rects] == [approx(size) for size in sizes]
    assert all(room.contains(rect, 1e-6) for rect in rects)
    grown = [rect.grown(gap / 2) for rect in rects]
    assert not any(one.overlaps(other, 1e-6) for one, other in combinations(grown, 2))
    reached, waiting = grown[:1], grown[1:]
    while near := [rect for rect in waiting if any(rect.grown(1e-6).overlaps(other, 0) for other in reached)]:
        reached += near
        waiting = [rect for rect in waiting if rect not in near]
    assert not waiting, "each is a gap away from a neighbour"
    whole = Rect.around([corner for rect in rects for corner in rect.corners])
    assert whole.centre == (approx(390), approx(250))


def test_what_finds_no_room_in_a_salon_hang_is_left_out() -> None:
    sizes = [Size(30, 30), Size(90, 90), Size(30, 40)]
    found = salon(sizes, Rect(0, 0, 100, 100), Point(50, 50), 4)
    assert found[1] and found[0] is None and found[2] is None


def test_the_usual_heights_and_gaps_are_those_of_who_hangs_pictures() -> None:
    # 145 to 150 cm to the centre of a picture, 3 to 6 inches between two: common practice, no source
    assert 1450 <= EYE_LEVEL <= 1500 and 76 <= USUAL_GAP <= 153
