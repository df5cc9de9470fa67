"""Spines seen as round: darkest where they turn away, lit once, alike at both sides; nothing of it is printed."""

from __future__ import annotations

from itertools import pairwise

import pytest

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import WHITE
from bookmaker.ground.geometry import Rect
from bookmaker.sheets.flat import Role
from bookmaker.sheets.piece import Piece
from bookmaker.writers.spine_shading import shading
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
