"""Spines seen as round: darkest where they turn away, lit once, alike at both sides; nothing of it is printed."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

import pytest

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import WHITE, Art, Colour, luminance
from bookmaker.ground.geometry import Rect
from bookmaker.sheets.flat import Role
from bookmaker.sheets.piece import Piece
from bookmaker.things.draft import Head
from bookmaker.writers.spine_shading import SHADE, head_edge, shading, shadow_on
from tests.kit.flats import flat_of, panel
from tests.kit.recording import Filled, record


def piece_of(thickness: float) -> tuple[Piece, Rect]:
    flat = flat_of(thickness)
    return Piece("a-cover-1", "a", ("A", "cover"), flat, NOTHING), panel(flat, Role.SPINE)


def bars(piece: Piece, seen: Rect, spine: Rect) -> tuple[list[Rect], list[Rect]]:
    """The upright bars of light, and those of shade, by their place."""
    light, shade = list[Rect](), list[Rect]()
    for art in shading(piece, seen, spine):
        for mark in record(art).marks:
            assert isinstance(mark, Filled)
            points = list(mark.path.points())
            boxes = [Rect.around(points[at : at + 4]) for at in range(0, len(points), 4)]
            into = light if mark.colour == WHITE else shade
            into += sorted(box for box in boxes if box.height == pytest.approx(seen.height))
    return light, shade


@pytest.mark.parametrize("thickness", [1.0, 3.0, 9.0])
def test_shade_is_deepest_at_the_edges_and_alike_at_both(thickness: float) -> None:
    piece, spine = piece_of(thickness)
    _, shade = bars(piece, spine, spine)
    left = [bar.width for bar in shade if bar.x < spine.centre.x]
    right = [bar.width for bar in shade if bar.x >= spine.centre.x][::-1]
    assert left == pytest.approx(right, rel=1e-6)
    assert left == sorted(left, reverse=True)
    assert len(left) >= 2
    assert all(spine.grown(1e-6).contains(bar) for bar in shade)


def test_light_falls_on_one_place_left_of_the_middle() -> None:
    piece, spine = piece_of(4.0)
    light, _ = bars(piece, spine, spine)
    brightest = max(light, key=lambda bar: bar.width)
    assert 0.2 < (brightest.x - spine.x) / spine.width < 0.4
    assert max(light).right < spine.centre.x
    assert all(one.right < other.x for one, other in pairwise(light))


def test_joints_are_seen_where_the_book_is_thicker_than_its_spine() -> None:
    piece, spine = piece_of(4.0)
    alone, joined = (bars(piece, seen, spine)[1] for seen in (spine, spine.grown(0.4, 0, 0.4, 0)))
    grooves = [bar for bar in joined if bar.width == pytest.approx(0.07)]
    assert [bar.centre.x for bar in grooves] == pytest.approx([spine.x, spine.right])
    assert not [bar for bar in alone if bar.width == pytest.approx(0.07)]


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
    lower, higher = Rect(0, 0, 3, 15), Rect(0, 0, 3, 25)
    (shade,) = filled([shadow_on(Rect(3, 0, 4, 20), lower)])
    (full,) = filled([shadow_on(Rect(3, 0, 4, 20), higher)])
    assert shade.path.bounds.top <= 15 < full.path.bounds.top <= 20
    points = list(full.path.points())
    widths = [points[at + 1].x - points[at].x for at in range(0, len(points), 4)]
    assert widths == sorted(widths, reverse=True)
    assert full.path.bounds.right < 3.6
