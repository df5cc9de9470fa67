"""The wrap: a flat that is the sum of its parts, and that encloses the block when it is folded in code."""

from __future__ import annotations

from collections.abc import Callable
from itertools import combinations
from math import dist, pi, sqrt

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bookmaker.ground.geometry import Point, Rect, Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.stock import Stock
from bookmaker.paper.stock_entry import Grain
from bookmaker.sheets.flat import Flat, FoldKind, Panel, Role
from bookmaker.things.book.covers.cover_plan import CoverPlan
from bookmaker.things.book.covers.wrap import Wrap
from tests.kit.flats import block_of, panel, signed_area

PAPER, FILM = 0.16, 0.05
C = PAPER + FILM
CARD = Stock("card", PAPER, FILM, 0.016, 0.03, Grain.LONG, FORMATS["A3"], Rect(5, 5, 287, 410))

SIDES = st.tuples(st.floats(8, 40), st.floats(8, 60))
TURNS = st.just(0.0) | st.floats(2, 10)


def wrap(
    page: tuple[float, float], thickness: float, turn_in: float = 0, head: float = 0, square: float = 0
) -> CoverPlan:
    entry = Wrap(stock="card", turn_in=float(turn_in), head_turn_in=float(head), square=float(square))
    block = block_of(thickness)
    try:
        return entry.plan(Size(*page), block, {"card": CARD}, right_to_left=False)
    except ShelfFileError:
        assume(False)
        raise


Polygon = list[Point]


def halved(polygon: Polygon, side: Callable[[Point], float]) -> Polygon:
    """The part of a polygon where `side`, which is linear, is not negative (Sutherland and Hodgman)."""
    kept: Polygon = []
    for p, q in zip(polygon, polygon[1:] + polygon[:1], strict=True):
        at_p, at_q = side(p), side(q)
        if at_p >= 0:
            kept.append(p)
        if at_p * at_q < 0:
            share = at_p / (at_p - at_q)
            kept.append(Point(p.x + (q.x - p.x) * share, p.y + (q.y - p.y) * share))
    return kept


def common(one: Polygon, other: Polygon) -> float:
    """The area two convex polygons share."""
    kept = one
    around = other if signed_area(other) > 0 else other[::-1]
    for a, b in zip(around, around[1:] + around[:1], strict=True):
        if dist(a, b) > 1e-9:  # two corners in one place bound nothing
            kept = halved(kept, lambda p, a=a, b=b: (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x))
    return abs(signed_area(kept)) if kept else 0.0


def clip_to(outline: Polygon, rect: Rect) -> Polygon:
    """The part of an outline within a rectangle."""
    kept = outline
    for axis, limit, sign in ((0, rect.x, 1), (0, rect.right, -1), (1, rect.y, 1), (1, rect.top, -1)):
        kept = halved(kept, lambda p, axis=axis, limit=limit, sign=sign: sign * (p[axis] - limit))
    return kept


def folded_in(flat: Flat, turn_in: Panel) -> Polygon:
    """A turn-in's own shape, mirrored at the fold beside it."""
    shape = clip_to(list(flat.outline), turn_in.rect)
    face = panel(flat, Role.BACK) if turn_in.rect.centre.x < panel(flat, Role.SPINE).x else panel(flat, Role.FRONT)
    if turn_in.rect.right <= face.x + 1e-9:
        return [Point(2 * face.x - p.x, p.y) for p in shape]
    if turn_in.rect.x >= face.right - 1e-9:
        return [Point(2 * face.right - p.x, p.y) for p in shape]
    edge = face.y if turn_in.rect.top <= face.y + 1e-9 else face.top
    return [Point(p.x, 2 * edge - p.y) for p in shape]


@given(page=SIDES, thickness=st.floats(0.5, 30), turn_in=TURNS, head=TURNS, square=st.floats(0, 1))
def test_the_flat_is_the_sum_of_its_parts(
    page: tuple[float, float], thickness: float, turn_in: float, head: float, square: float
) -> None:
    cover = wrap(page, thickness, turn_in, head, square)
    flat = cover.flats[0]
    side = page[0] + square + pi / 8 * C + (pi / 4 * C if turn_in else 0)
    assert cover.spine == pytest.approx(thickness + pi / 4 * C)
    assert flat.size.width == pytest.approx(2 * (turn_in + side) + cover.spine)
    assert panel(flat, Role.FRONT).width == pytest.approx(side)
    face = page[1] + 2 * square + (2 * pi / 4 * C if head else 0)
    assert flat.size.height == pytest.approx(face + 2 * head)
    assert all(fold.kind is FoldKind.MOUNTAIN for fold in flat.folds)
    assert len(flat.folds) == 2 + (2 if turn_in else 0) + (4 if head else 0)
    assert cover.thickness.value == pytest.approx(thickness + (4 * C + 2 * CARD.glue if turn_in or head else 2 * C))


@given(page=SIDES, thickness=st.floats(0.5, 30), turn_in=TURNS, head=TURNS, square=st.floats(0, 1))
def test_folded_it_encloses_the_block_with_its_squares(
    page: tuple[float, float], thickness: float, turn_in: float, head: float, square: float
) -> None:
    """A fold of angle A takes A/2 of its arc from each panel: what is left covers the block, to 0.01 mm."""
    flat = wrap(page, thickness, turn_in, head, square).flats[0]
    quarter, half = pi / 2 * C / 2 / 2, pi * C / 2 / 2  # half the middle arc of a right angle, of a full turn
    assert panel(flat, Role.SPINE).width - 2 * quarter >= thickness - 0.01
    for role in (Role.FRONT, Role.BACK):
        face = panel(flat, role)
        assert face.width - quarter - (half if turn_in else 0) >= page[0] + square - 0.01
        assert face.height - (2 * half if head else 0) >= page[1] + 2 * square - 0.01


@given(page=SIDES, thickness=st.floats(0.5, 30), turn_in=st.floats(2, 10), head=st.floats(2, 10))
def test_turn_ins_folded_in_meet_at_the_mitre_and_clear_the_spine(
    page: tuple[float, float], thickness: float, turn_in: float, head: float
) -> None:
    flat = wrap(page, thickness, turn_in, head).flats[0]
    spine = list(panel(flat, Role.SPINE).corners)
    shapes = [folded_in(flat, panel) for panel in flat.panels if panel.role is Role.TURN_IN]
    assert len(shapes) == 6
    for shape in shapes:
        assert abs(signed_area(shape)) > 0.1
        assert common(shape, spine) < 1e-6
        faces = [list(panel(flat, role).corners) for role in (Role.FRONT, Role.BACK)]
        assert sum(common(shape, face) for face in faces) == pytest.approx(abs(signed_area(shape)), abs=1e-6)
    # corners are cut 1.5 calipers away from the corner, so neighbours lap by so much on each side of the mitre
    lap = 2 * 1.5 * C * sqrt(2) * min(turn_in, head)
    fore_edges, heads = shapes[:2], shapes[2:]
    assert common(*fore_edges) < 1e-6
    assert all(common(a, b) < 1e-6 for a, b in combinations(heads, 2))
    laps = [common(a, b) for a in fore_edges for b in heads]
    assert sorted(overlap > 1e-6 for overlap in laps) == [False] * 4 + [True] * 4
    assert max(laps) <= lap


def test_a_flush_cover_is_a_rectangle_that_bleeds_two_millimetres() -> None:
    flat = wrap((15, 21), 4.14).flats[0]
    assert flat.outline == Rect(0, 0, *flat.size).corners
    assert flat.bleed == 2.0


@pytest.mark.parametrize("key", ["turn_in", "head_turn_in"])
@pytest.mark.parametrize("width", [1.0, 10.5])
def test_turn_ins_without_room_are_refused(key: str, width: float) -> None:
    entry = Wrap.model_validate({"stock": "card", key: f"{width} mm"})
    with pytest.raises(ShelfFileError) as refusal:
        entry.plan(Size(15, 21), block_of(4.0), {"card": CARD}, right_to_left=False)
    assert [problem.field for problem in refusal.value.problems] == [("cover", key)]
    assert refusal.value.problems[0].remedy == "write 2 mm to 10 mm, or 0 mm for none"


def test_right_to_left_books_have_the_front_on_the_left() -> None:
    block = block_of(4.0)
    entry = Wrap(stock="card")
    for right_to_left in (False, True):
        flat = entry.plan(Size(15, 21), block, {"card": CARD}, right_to_left=right_to_left).flats[0]
        assert (panel(flat, Role.FRONT).x < panel(flat, Role.SPINE).x) == right_to_left
