"""Spines seen as round: darkest where they turn away, lit once, alike at both sides; nothing of it is printed."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

import pytest

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import WHITE, Art, Colour, luminance
from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Role
from bookmaker.sheets.piece import Piece
from bookmaker.things.draft import Head
from bookmaker.writers.spine_shading import SHADE, head_edge, shading, shadow_on
from tests.kit.flats import flat_of, panel
from tests.kit.recording import Filled, record


def piece_of(thickness: float) -> tuple[Piece, Rect]:
    flat = flat_of(thickness)
    return Piece("a-cover-1", "a", ("A", "cover"), flat, NOTHING), panel(flat, Role.SPINE)


def covered(art: Iterable[Art], at: Point, colour: Colour = SHADE) -> float:
    """How much of a place is covered with a colour, by all veils together."""
    through = 1.0
    for mark in (mark for one in art for mark in record(one).fills if mark.colour == colour):
        points = list(mark.path.points())
        boxes = [Rect.around(points[corner : corner + 4]) for corner in range(0, len(points), 4)]
        if any(box.x <= at.x <= box.right and box.y <= at.y <= box.top for box in boxes):
            through *= 1 - mark.cover
    return 1 - through


def across(piece: Piece, seen: Rect, spine: Rect, colour: Colour = SHADE, *, lit_right: bool = False) -> list[float]:
    """How much is covered from the left edge to the right, halfway up."""
    art = list(shading(piece, seen, spine, lit_right=lit_right))
    return [covered(art, Point(seen.x + seen.width * (k + 0.5) / 100, seen.centre.y), colour) for k in range(100)]


@pytest.mark.parametrize("thickness", [1.0, 3.0, 9.0])
def test_shade_is_deepest_at_the_edges_and_alike_at_both(thickness: float) -> None:
    piece, spine = piece_of(thickness)
    shade = across(piece, spine, spine)
    assert shade == pytest.approx(shade[::-1], abs=1e-9)
    assert shade[:50] == sorted(shade[:50], reverse=True)
    assert 0.5 < shade[0] < 0.62
    assert shade[50] == 0


def test_no_step_of_a_shade_is_seen() -> None:
    """Each veil adds less than a tenth of all light, most of them far less."""
    piece, spine = piece_of(4.0)
    shade = across(piece, spine, spine)
    assert max(abs(one - other) for one, other in pairwise(shade)) < 0.1


@pytest.mark.parametrize("lit_right", [False, True])
def test_light_falls_on_one_place_beside_the_middle(lit_right: bool) -> None:
    piece, spine = piece_of(4.0)
    light = across(piece, spine, spine, WHITE, lit_right=lit_right)
    lit = [at for at, cover in enumerate(light) if cover]
    assert lit == list(range(min(lit), max(lit) + 1))
    assert (min(lit) > 50) if lit_right else (max(lit) < 50)
    assert 0.1 < max(light) < 0.2
    brightest = light.index(max(light))
    assert light[:brightest] == sorted(light[:brightest])


def test_joints_are_seen_where_the_book_is_thicker_than_its_spine() -> None:
    piece, spine = piece_of(4.0)
    middle, seen = spine.centre.y, spine.grown(0.4, 0, 0.4, 0)
    for x in (spine.x, spine.right):
        assert covered(shading(piece, seen, spine), Point(x, middle)) > 0.85
        assert covered(shading(piece, seen, spine), Point(x + 0.06, middle)) < 0.7
        assert covered(shading(piece, spine, spine), Point(x, middle)) < 0.62


def test_head_and_tail_turn_away_too() -> None:
    piece, spine = piece_of(4.0)
    for end in (spine.y + 0.001, spine.top - 0.001):
        assert covered(shading(piece, spine, spine), Point(spine.centre.x, end)) > 0.25


def test_what_is_no_spine_stays_flat() -> None:
    piece, spine = piece_of(4.0)
    assert list(shading(piece, spine.grown(1.0), spine.grown(1.0))) == []


def filled(art: Iterable[Art]) -> list[Filled]:
    return [mark for one in art for mark in record(one).marks if isinstance(mark, Filled)]


def test_leaves_are_seen_behind_the_head_between_the_boards_and_darken_to_the_back() -> None:
    rect, head = Rect(10, 0, 4, 20), Head(Colour.from_hex("#e6dfd0"), Colour.from_hex("#402020"), 0.5)
    drawn = filled(head_edge(head, rect, 15.0))
    seen = Rect.around([corner for one in drawn for corner in one.path.bounds.corners])
    assert (seen.x, seen.right, seen.y) == (rect.x, rect.right, rect.top)
    assert 0.3 < seen.height < 0.8
    boxes = [one for one in drawn if len(list(one.path.points())) == 4]
    boards, leaves = boxes[::2], boxes[1::2]
    assert {round(one.path.bounds.x - rect.x, 6) for one in leaves} == {0.5}
    for row in (boards, leaves):
        tones = [luminance(one.colour) for one in row]
        assert tones == sorted(tones, reverse=True)
    assert luminance(leaves[0].colour) > luminance(boards[0].colour)


def test_no_head_is_seen_higher_than_so_much_and_a_thin_book_has_boards_too() -> None:
    drawn = filled(head_edge(Head(WHITE, SHADE, 2.0), Rect(0, 0, 1.5, 20), 90.0))
    seen = Rect.around([corner for one in drawn for corner in one.path.bounds.corners])
    assert (seen.width, seen.height) == pytest.approx((1.5, 0.8))


def test_the_shadow_of_a_lower_neighbour_ends_below_its_head_and_fades() -> None:
    rect, lower, higher = Rect(3, 0, 4, 20), Rect(0, 0, 3, 15), Rect(0, 0, 3, 25)
    shade, full = (filled(shadow_on(rect, neighbour)) for neighbour in (lower, higher))
    assert max(one.path.bounds.top for one in shade) <= 15
    assert {one.path.bounds.top for one in full} == {20}
    reaches = [one.path.bounds.right for one in full]
    assert reaches == sorted(reaches, reverse=True)
    assert max(reaches) < 3.6
    assert all(0 < one.cover < 0.2 for one in full)


def test_the_upper_end_of_a_shadow_slants_where_the_neighbour_is_a_little_higher() -> None:
    """From a neighbour 0.3 mm higher: level for a quarter of a mm, then down."""
    widest = filled(shadow_on(Rect(3, 0, 4, 20), Rect(0, 0, 3, 20.3)))[0]
    assert [(round(x, 3), round(y, 3)) for x, y in widest.path.points()] == [
        (3, 0), (3.5, 0), (3.5, 19.7), (3.25, 20), (3, 20)]  # fmt: skip
