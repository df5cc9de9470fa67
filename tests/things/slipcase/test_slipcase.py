"""The slipcase: its net, folded in code, closes around its books with the room that was promised."""

from __future__ import annotations

from itertools import combinations, pairwise
from math import pi
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from bookmaker.ground.geometry import Axis, Point, Rect
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.stock import USUAL, Stock
from bookmaker.paper.stock_entry import Grain
from bookmaker.sheets.flat import Flat, FoldKind, Panel, Role
from bookmaker.shelf_file.book_names import BookName
from bookmaker.things.slipcase.family import SLIPCASES
from bookmaker.things.slipcase.plan import Slipcase, SlipcaseEntry, SlipcasePlan, plan_slipcase
from bookmaker.things.standing import Standing, Uncertainty
from bookmaker.things.terms import Terms
from tests.kit.flats import edges_of
from tests.kit.folding import Space, Turn, inner, outer, panel_of, turned_down

GLUE = 0.03
NEAR = 0.01
"""No wall is off by more, in mm."""

ROWS = st.lists(st.tuples(st.floats(1, 12), st.floats(10, 40), st.floats(8, 30)), min_size=1, max_size=8)
CALIPERS = st.floats(0.1, 0.8)
CLEARANCES = st.floats(0, 2)


def card(caliper: float) -> Stock:
    return Stock("card", caliper, 0.0, 0.01, GLUE, Grain.LONG, FORMATS["A3"], Rect(5, 5, 287, 410))


def row(books: list[tuple[float, float, float]]) -> list[Standing]:
    return [
        Standing(
            f"{number}", f"Book {number}", thickness, height, depth, Uncertainty({"page": 50.0, "card": 2.0}, 0.15)
        )
        for number, (thickness, height, depth) in enumerate(books)
    ]


def boxed(books: list[tuple[float, float, float]], caliper: float = 0.3, **keys: Any) -> SlipcasePlan:
    """The box around books of these thicknesses, heights and depths."""
    entry = SlipcaseEntry(books=("1",), stock="card", **keys)
    box = Slipcase(id="set", family=SLIPCASES, entry=entry, name=BookName("set"))
    page = Stock("page", 0.075, 0, 0.0075, GLUE, Grain.LONG, FORMATS["A4"], Rect(5, 5, 200, 287))
    stocks = {"page": page, "card": card(caliper)}
    try:
        return plan_slipcase(box, row(books), "upper", Terms("Shelf", 12, USUAL, stocks, 300))
    except ShelfFileError:
        assume(False)
        raise


class Folded:
    """A net folded up: the back stays where it is, everything else turns down from it."""

    def __init__(self, flat: Flat, caliper: float) -> None:
        self.flat, self.caliper = flat, caliper
        back = panel_of(flat, Role.BACK).rect
        self.back = back
        sides = {
            Role.RIGHT: turned_down("y", back.x, -1, caliper),
            Role.LEFT: turned_down("y", back.right, +1, caliper),
        }
        self.turns: dict[Role, Turn] = {
            Role.BACK: lambda point: point,
            Role.TOP: turned_down("x", back.top, +1, caliper),
            Role.BOTTOM: turned_down("x", back.y, -1, caliper),
            **sides,
        }
        self.sides = sides

    def tabs(self, *, above: bool) -> list[tuple[Space, Space]]:
        """The tabs at the head or at the tail, as plates without what their folds take."""
        return [
            self.tab(panel, above)
            for panel in self.flat.panels
            if panel.role is Role.TAB and (panel.rect.y > self.back.centre.y) == above
        ]

    def tab(self, panel: Panel, above: bool) -> tuple[Space, Space]:
        """A tab as a plate: it is folded from its side, and its side from the back."""
        rect, take = panel.rect, pi / 8 * self.caliper
        side = self.sides[Role.LEFT if rect.x > self.back.centre.x else Role.RIGHT]
        fold = turned_down("x", rect.y if above else rect.top, +1 if above else -1, self.caliper)
        flat = rect.grown(0, -take, 0, 0) if above else rect.grown(0, 0, 0, -take)
        return self.plate(lambda point: side(fold(point)), list(flat.corners))

    def wall(self, role: Role) -> tuple[Space, Space]:
        """A wall as a plate."""
        return self.plate(self.turns[role], self.straight(role))

    def plate(self, turn: Turn, corners: list[Point]) -> tuple[Space, Space]:
        """The box in space that a plate between these corners fills, as its lowest and its highest corner."""
        points = [turn(face(point, self.caliper)) for point in corners for face in (inner, outer)]
        low, high = (Space(*(side(values) for values in zip(*points, strict=True))) for side in (min, max))
        return low, high

    def straight(self, role: Role) -> list[Point]:
        """The corners of a wall between its folds, as the outline has them, without what the folds take of it."""
        take = pi / 8 * self.caliper
        rect = panel_of(self.flat, role).rect
        free = self.free_top(role) if role in (Role.LEFT, Role.RIGHT) else None
        match role:
            case Role.BACK:
                rect = rect.grown(-take)
            case Role.RIGHT:
                rect = rect.grown(0, 0, -take, 0)
            case Role.LEFT:
                rect = rect.grown(-take, 0, 0, 0)
            case Role.TOP:
                rect = rect.grown(0, -take, 0, 0)
            case Role.BOTTOM:
                rect = rect.grown(0, 0, 0, -take)
        if free is not None:  # a side reaches up between its tabs, where the outline says
            rect = Rect(rect.x, self.flat.size.height - free, rect.width, 2 * free - self.flat.size.height)
        return list(rect.corners)

    def free_top(self, side: Role) -> float:
        """How high on the flat the upper edge of a side lies where no tab is folded from it."""
        rect = panel_of(self.flat, side).rect
        front = rect.x if side is Role.RIGHT else rect.right
        (found,) = {
            round(a.y, 6)
            for a, b in edges_of(self.flat.outline)
            if a.y == b.y and front in (a.x, b.x) and a.y > self.back.centre.y
        }
        return found


def overlap(one: tuple[Space, Space], other: tuple[Space, Space]) -> float:
    """How deep two boxes reach into each other, by the shortest way out."""
    (low, high), (from_, to) = one, other
    return min(min(high[axis], to[axis]) - max(low[axis], from_[axis]) for axis in range(3))


WALLS = (Role.BACK, Role.LEFT, Role.RIGHT, Role.TOP, Role.BOTTOM)


@given(books=ROWS, caliper=CALIPERS, clearance=CLEARANCES, thumb=st.booleans())
def test_folded_up_the_walls_meet_around_the_promised_room(
    books: list[tuple[float, float, float]], caliper: float, clearance: float, thumb: bool
) -> None:
    plan = boxed(books, caliper, clearance=clearance, thumb_cut=thumb)
    folded = Folded(plan.flat, caliper)
    walls = {role: folded.wall(role) for role in WALLS}
    heads, tails = folded.tabs(above=True), folded.tabs(above=False)
    left, right, inside = walls[Role.RIGHT][1].x, walls[Role.LEFT][0].x, walls[Role.BACK][0].z

    # The room: between the sides, between the tabs, and from the inside of the back to the front edges.
    width = sum(thickness for thickness, _, _ in books) + clearance
    height = max(height for _, height, _ in books) + clearance
    depth = max(depth for _, _, depth in books) + clearance
    assert plan.inside == pytest.approx((width, height, depth))
    assert right - left == pytest.approx(width, abs=NEAR)
    assert min(low.y for low, _ in heads) - max(high.y for _, high in tails) == pytest.approx(height, abs=NEAR)
    for role in (Role.LEFT, Role.RIGHT, Role.TOP, Role.BOTTOM):
        assert inside - walls[role][0].z == pytest.approx(depth, abs=NEAR)
        assert walls[role][1].z == pytest.approx(inside, abs=NEAR)

    # Top and bottom lie over the tabs and their glue, and over the edges of the sides out to their faces.
    top, bottom = walls[Role.TOP][0].y, walls[Role.BOTTOM][1].y
    assert [top - high.y for _, high in heads] == pytest.approx([GLUE] * 2, abs=NEAR)
    assert [low.y - bottom for low, _ in tails] == pytest.approx([GLUE] * 2, abs=NEAR)
    for role in (Role.TOP, Role.BOTTOM):
        assert walls[role][0].x == pytest.approx(walls[Role.RIGHT][0].x, abs=NEAR)
        assert walls[role][1].x == pytest.approx(walls[Role.LEFT][1].x, abs=NEAR)
    for role in (Role.LEFT, Role.RIGHT, Role.BACK):
        assert (walls[role][0].y, walls[role][1].y) == pytest.approx((bottom, top), abs=NEAR)
    assert (walls[Role.BACK][0].x, walls[Role.BACK][1].x) == pytest.approx((left, right), abs=NEAR)

    # No two lie in one place, and the outside is what the plan says.
    plates = [*walls.values(), *heads, *tails]
    assert max(overlap(one, other) for one, other in combinations(plates, 2)) <= NEAR
    lows, highs = zip(*plates, strict=True)
    outside = [max(high[axis] for high in highs) - min(low[axis] for low in lows) for axis in range(3)]
    assert plan.outside == pytest.approx(outside, abs=NEAR)


@given(books=ROWS, caliper=CALIPERS)
def test_tabs_lie_under_the_panel_they_are_glued_to_and_beside_each_other(
    books: list[tuple[float, float, float]], caliper: float
) -> None:
    plan = boxed(books, caliper)
    folded = Folded(plan.flat, caliper)
    for role, above in ((Role.TOP, True), (Role.BOTTOM, False)):
        wall, (one, other) = folded.wall(role), folded.tabs(above=above)
        for low, high in (one, other):
            assert high.x - low.x >= 3 - 1e-9
            for axis in (0, 2):
                assert wall[0][axis] <= low[axis] + 1e-9
                assert high[axis] <= wall[1][axis] + 1e-9
            # they keep away from the opening and from the back
            assert low.z >= wall[0].z + 1
            assert high.z <= wall[1].z - 1
        assert overlap(one, other) <= 1e-9


@given(books=ROWS, caliper=CALIPERS, thumb=st.booleans())
def test_the_outline_is_simple_and_runs_counter_clockwise(
    books: list[tuple[float, float, float]], caliper: float, thumb: bool
) -> None:
    flat = boxed(books, caliper, thumb_cut=thumb).flat
    edges = edges_of(flat.outline)
    assert sum(a.x * b.y - b.x * a.y for a, b in edges) > 0
    assert all(a != b for a, b in edges)
    for (i, one), (j, other) in combinations(enumerate(edges), 2):
        if j - i > 1 and (i, j) != (0, len(edges) - 1):
            assert not crossing(*one, *other)
    assert min(flat.outline).x == 0
    assert min(point.y for point in flat.outline) == 0
    assert {fold.kind for fold in flat.folds} == {FoldKind.MOUNTAIN}
    assert len(flat.folds) == 8
    assert flat.grain is Axis.Y


def crossing(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two edges cross."""

    def turn(p: Point, q: Point, r: Point) -> float:
        return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)

    return turn(a, b, c) * turn(a, b, d) < -1e-12 and turn(c, d, a) * turn(c, d, b) < -1e-12


def test_net_by_hand() -> None:
    """Derived for a book of 9.7 × 24.7 × 16.7 with clearance 0.3 in card of 0.3 mm, glue 0.03: room 10 × 25 × 17.

    Outside 10 + 0.6; 25 + 2 · (0.3 + 0.33); 17 + 0.3. Back between folds 10 + π/4 · 0.3 = 10.2356 by
    25 + 2 · 0.33 + 0.2356 = 25.8956; a side 17 + π/8 · 0.3 = 17.1178; the top 10.6 wide.
    """
    plan = boxed([(9.7, 24.7, 16.7)], clearance=0.3)
    assert plan.outside == pytest.approx((10.6, 26.26, 17.3))
    assert panel_of(plan.flat, Role.BACK).rect.size == pytest.approx((10.2356, 25.8956), abs=1e-4)
    assert panel_of(plan.flat, Role.LEFT).rect.width == pytest.approx(17.1178, abs=1e-4)
    assert panel_of(plan.flat, Role.TOP).rect.size == pytest.approx((10.6, 17.1178), abs=1e-4)
    assert plan.flat.size == pytest.approx((10.2356 + 2 * 17.1178, 25.8956 + 2 * 17.1178), abs=1e-4)


def test_a_thumb_cut_is_a_half_circle_within_a_hundredth() -> None:
    plain, cut = boxed([(9.7, 24.7, 16.7)]).flat, boxed([(9.7, 24.7, 16.7)], thumb_cut=True).flat
    arcs = [point for point in cut.outline if point not in plain.outline]
    right = [point for point in arcs if point.x > cut.size.width / 2]
    assert len(right) * 2 == len(arcs)
    centre, radius = Point(cut.size.width, cut.size.height / 2), 5.0  # a fifth of the height of the room
    for point in right:
        assert ((point.x - centre.x) ** 2 + (point.y - centre.y) ** 2) ** 0.5 == pytest.approx(radius)
    for a, b in pairwise(right):
        middle = Point((a.x + b.x) / 2, (a.y + b.y) / 2)
        assert radius - ((middle.x - centre.x) ** 2 + (middle.y - centre.y) ** 2) ** 0.5 <= NEAR
    assert (right[0], right[-1]) == (pytest.approx(centre.plus(0, -radius)), pytest.approx(centre.plus(0, radius)))
