"""The case: folded in code around boards, stiffener and block, it leaves the squares that were asked for."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi, sqrt
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Flat, FoldKind, Role
from bookmaker.shelf_file.fields.joints import Joint
from tests.kit.cases import BACK, C, Made, cased, holds
from tests.kit.flats import edges_of, panel, signed_area

XYZ = tuple[float, float, float]


@dataclass(frozen=True)
class Folded:
    """One half of a covering folded around the closed book; x runs from the back to the fore-edge, y is up.

    The block fills 0 … W, −T/2 … T/2, 0 … H; the paper is followed on the face that touches boards and
    stiffener. A fold of a right angle takes up π/4·c of the sheet, which is measured in its middle.
    """

    made: Made
    flat: Flat
    caliper: float
    right_hand: bool

    def along(self, x: float) -> float:
        """From the middle of the spine outwards, on the flat."""
        middle = panel(self.flat, Role.SPINE).centre.x
        return x - middle if self.right_hand else middle - x

    @property
    def board_edge(self) -> float:
        """Where the board begins when the covering is drawn straight from the stiffener to it."""
        joint = next(panel.rect for panel in self.flat.panels if panel.role is Role.JOINT)
        straight = joint.width - pi / 4 * self.caliper
        climbs = (self.made.block + 2 * self.made.board - panel(self.flat, Role.SPINE).width) / 2
        return -self.made.stiffener + sqrt(straight**2 - climbs**2)

    def __call__(self, point: Point) -> XYZ:
        """Where a point of the flat comes to lie."""
        spine, joint, side = (panel(self.flat, role) for role in (Role.SPINE, Role.JOINT, Role.FRONT))
        out = self.along(point.x)
        on_the_board = out - spine.width / 2 - joint.width
        x, y = self.around(on_the_board, side.width, self.board_edge)
        z, inside = self.over(point.y - side.y, side.height)
        return x, self.made.block / 2 if inside else y, z - self.made.square

    def around(self, run: float, width: float, start: float) -> tuple[float, float]:
        """x and y of what lies so far from the board's edge at the joint."""
        assert run >= -1e-9
        top = self.made.block / 2 + self.made.board
        if run <= width:
            return start + run, top
        beyond = run - width - pi / 4 * self.caliper
        if beyond <= self.made.board:
            return start + width, top - max(0.0, beyond)
        return start + width - (beyond - self.made.board - pi / 4 * self.caliper), self.made.block / 2

    def over(self, run: float, height: float) -> tuple[float, bool]:
        """z above the lower edge of the board, and whether it is folded in."""
        folded = self.made.board + pi / 2 * self.caliper
        if run < -folded:
            return -run - folded, True
        if run > height + folded:
            return 2 * height - run + folded, True
        return min(max(run, 0.0), height), False


PAGES = st.tuples(st.floats(9, 60), st.floats(10, 90))
CASES = {
    "page": PAGES,
    "block": st.floats(1.5, 30),
    "board": st.floats(0.35, 2.2),
    "square": st.floats(0.75, 2),
    "turn_in": st.floats(4.5, 8),
    "stiffener": st.sampled_from(["sections and boards", "sections", "none"]),
    "stiffener_stock": st.sampled_from([None, "card"]),
    "rtl": st.booleans(),
}


@given(**CASES)
def test_folded_it_encloses_the_block_with_squares_and_turn_ins(**keys: Any) -> None:
    made = cased(**keys)
    flat = made.part("covering")
    half, high = made.block / 2, made.page.height
    for right_hand in (True, False):
        folded = Folded(made, flat, C, right_hand)
        sign = 1 if right_hand else -1
        middle, spine = panel(flat, Role.SPINE).centre.x, panel(flat, Role.SPINE)
        joint, side = panel(flat, Role.JOINT), panel(flat, Role.FRONT)
        first = middle + sign * (spine.width / 2 + joint.width)
        last = first + sign * side.width
        # the board lies under its panel and stands out by the square on three sides
        assert folded(Point(first, side.y)) == pytest.approx((folded.board_edge, half + made.board, -made.square))
        corner = folded(Point(last, side.top))
        asked = (made.page.width + made.square, half + made.board, high + made.square)
        assert corner == pytest.approx(asked, abs=0.01)
        # the turn-ins lie on the inside of the board as far as board and folds leave of them
        inside = made.turn_in - made.board - pi / 2 * C
        at_fore_edge = folded(Point(last + sign * made.turn_in, side.centre.y))
        assert at_fore_edge[:2] == pytest.approx((asked[0] - inside, half), abs=0.01)
        for y, edge in ((side.y - made.turn_in, -made.square + inside), (side.top + made.turn_in, asked[2] - inside)):
            assert folded(Point(first + sign * side.width / 2, y))[1:] == pytest.approx((half, edge), abs=0.01)
        assert holds(flat, Point(last + sign * made.turn_in, side.centre.y))
    # the back is covered, and where the joint passes its edge it lies outside the block
    begins, spine = Folded(made, flat, C, True).board_edge, panel(flat, Role.SPINE).width
    assert begins == pytest.approx(1.5 * made.board)
    climbed = made.stiffener / (made.stiffener + begins)
    assert spine / 2 * (1 - climbed) + (half + made.board) * climbed >= half - 0.01
    assert made.boards.width == pytest.approx(made.page.width + made.square - 1.5 * made.board)


@given(**CASES)
def test_the_covering_is_the_sum_of_its_parts(**keys: Any) -> None:
    made = cased(**keys)
    flat = made.part("covering")
    widths = [panel.rect.width for panel in flat.panels if panel.role is not Role.TURN_IN]
    assert flat.size.width == pytest.approx(sum(widths) + 2 * made.turn_in)
    assert flat.size.height == pytest.approx(made.page.height + 2 * made.square + 2 * made.turn_in)
    uprights = sorted({fold.start.x for fold in flat.folds if fold.start.x == fold.end.x})
    edges = sorted(panel.rect.x for panel in flat.panels if panel.role is not Role.TURN_IN)
    assert uprights[:-1] == pytest.approx(edges)
    assert len(uprights) == 6
    assert {fold.kind for fold in flat.folds} == {FoldKind.MOUNTAIN}
    left = min(flat.panels, key=lambda panel: panel.rect.x if panel.role in (Role.FRONT, Role.BACK) else 1e9)
    assert left.role is (Role.FRONT if keys["rtl"] else Role.BACK)


@given(**CASES, along=st.floats(0, 1), inward=st.floats(0, 1))
def test_cut_corners_meet_and_show_no_board(along: float, inward: float, **keys: Any) -> None:
    """Around a corner every point of the board's edges and of its inside is covered by one turn-in or the other."""
    made = cased(**keys)
    flat, around = made.part("covering"), made.board + pi / 2 * C
    # as far inwards as the turn-ins lie, as far along the edges as both boards go
    inwards = inward * (made.turn_in - around)
    onwards = along * min(made.boards) / 2
    for corner, right, up in outer_corners(flat):

        def turned_in(u: float, v: float, corner: Point = corner, right: int = right, up: int = up) -> bool:
            """Whether the point u, v inwards of the corner lies under a turn-in folded over either edge."""
            by_the_end = holds(flat, corner.plus(-right * u, up * (v + around)))
            return by_the_end or holds(flat, corner.plus(right * (u + around), -up * v))

        assert turned_in(onwards, inwards)
        assert turned_in(inwards, onwards)
        assert holds(flat, corner.plus(0, up * around))
        assert holds(flat, corner.plus(right * around, 0))
        cuts = [distance(corner, *edge) for edge in edges_of(flat.outline) if slanted(*edge)]
        assert len(cuts) == 4
        assert min(cuts) == pytest.approx(1.5 * (made.board + C))


def outer_corners(flat: Flat) -> list[tuple[Point, int, int]]:
    """The four board corners at the fore-edges of a covering, and which way each points."""
    sides = [panel(flat, Role.FRONT), panel(flat, Role.BACK)]
    left, right = sorted(sides, key=lambda side: side.x)
    return [
        *((Point(left.x, y), -1, up) for y, up in ((left.y, -1), (left.top, 1))),
        *((Point(right.right, y), 1, up) for y, up in ((right.y, -1), (right.top, 1))),
    ]


def slanted(start: Point, end: Point) -> bool:
    return abs(abs(end.x - start.x) - abs(end.y - start.y)) < 1e-6 and abs(end.x - start.x) > 1e-6


def distance(point: Point, start: Point, end: Point) -> float:
    """From a point to the line through two others."""
    dx, dy = end.x - start.x, end.y - start.y
    return abs(dx * (point.y - start.y) - dy * (point.x - start.x)) / sqrt(dx * dx + dy * dy)


PIECED = {**CASES, "binding": st.sampled_from(["quarter", "half"]), "spine_stock": st.just("leather")}


def pieces_of(made: Made, role: Role, lower: bool) -> list[tuple[str, Flat, Point]]:
    """The pieces on one board, each with the point of its flat where the board's outer corner at one end lies.

    The corner is that at the fore-edge, at the tail or at the head.
    """
    spine = made.part("spine piece")
    strip, side = panel(spine, role), panel(made.part(f"{role} side"), role)
    to_the_right = strip.x > panel(spine, Role.SPINE).x

    def outer(face: Rect) -> Point:
        return Point(face.right if to_the_right else face.x, face.y if lower else face.top)

    beyond = (made.boards.width - strip.width) * (1 if to_the_right else -1)
    found = [("spine", spine, outer(strip).plus(beyond, 0)), ("side", made.part(f"{role} side"), outer(side))]
    for flat in made.cover.flats:
        if flat.name == f"{'lower' if lower else 'upper'} {role} corner":
            found.append(("corner", flat, outer(panel(flat, Role.CORNER))))
    return found


@given(**PIECED, x=st.floats(0, 1), y=st.floats(0, 1))
@settings(max_examples=200)
def test_pieces_cover_what_one_covering_would(x: float, y: float, **keys: Any) -> None:
    made = cased(**keys)
    for role in (Role.FRONT, Role.BACK):
        for lower in (True, False):
            parts = pieces_of(made, role, lower)
            to_the_right = (role is Role.FRONT) != keys["rtl"]
            # u and v run inwards from the corner; the far side is the joint, half the height is enough
            u = -made.turn_in + x * (made.turn_in + made.boards.width)
            v = -made.turn_in + y * (made.turn_in + made.boards.height / 2)
            if u + v < -1.5 * (made.board + BACK) * sqrt(2):
                continue  # cut off with the corner
            on = [
                name
                for name, flat, corner in parts
                if holds(flat, corner.plus(-u if to_the_right else u, v if lower else -v))
            ]
            assert on, (u, v)


@given(**PIECED)
def test_pieces_show_and_lap_as_far_as_asked(**keys: Any) -> None:
    made = cased(**keys, lap=0.8, spine_reach=2.0, corner=2.2)
    spine = made.part("spine piece")
    assert panel(spine, Role.FRONT).width == panel(spine, Role.BACK).width == pytest.approx(2.0)
    assert [panel.rect.width for panel in spine.panels if panel.role is Role.TAB] == pytest.approx([0.8, 0.8])
    assert spine.size.width == pytest.approx(
        2 * (2.8 + panel(spine, Role.JOINT).width) + panel(spine, Role.SPINE).width
    )
    assert Folded(made, spine, BACK, True).board_edge == pytest.approx(1.5 * made.board)
    uprights = sorted(fold.start.x for fold in spine.folds if fold.start.x == fold.end.x)
    joints = [panel.rect for panel in spine.panels if panel.role is Role.JOINT]
    assert uprights == pytest.approx(sorted(x for joint in joints for x in (joint.x, joint.right)))
    sides = [made.part("front side"), made.part("back side")]
    for side, role in zip(sides, (Role.FRONT, Role.BACK), strict=True):
        assert panel(side, role).width == pytest.approx(made.boards.width - 2.0)
        assert Rect.around(side.outline)[:2] == (0, 0)
        if 2.2 + made.turn_in < panel(side, role).width:
            assert side.size.height == pytest.approx(spine.size.height)
    corners = [flat for flat in made.cover.flats if flat.kind == "case corner"]
    assert len(corners) == (4 if keys["binding"] == "half" else 0)
    for corner in corners:
        slants = [edge for edge in edges_of(corner.outline) if slanted(*edge)]
        apart = distance(slants[0][0], *slants[1])
        shown = panel(corner, Role.CORNER).width / sqrt(2)
        assert apart == pytest.approx(1.5 * (made.board + BACK) + shown + 0.8)
    if corners:
        cuts = [edge for edge in edges_of(sides[0].outline) if slanted(*edge)]
        face = panel(sides[0], Role.FRONT)
        outer = face.x if keys["rtl"] else face.right
        assert min(distance(Point(outer, face.y), *cut) for cut in cuts) == pytest.approx(2.2 / sqrt(2))


@given(
    page=st.tuples(st.floats(3, 80), st.floats(3, 80)),
    block=st.floats(0.1, 60),
    board=st.floats(0.05, 3),
    square=st.floats(0.5, 3),
    turn_in=st.floats(3, 14),
    lap=st.floats(0.5, 3),
    spine_reach=st.none() | st.floats(0.5, 20),
    corner=st.none() | st.floats(0.5, 12),
    joint=st.builds(Joint, boards=st.floats(0.1, 6)),
    binding=st.sampled_from(["full", "quarter", "half"]),
    stiffener=st.sampled_from(["sections and boards", "none"]),
    rtl=st.booleans(),
)
@settings(suppress_health_check=[HealthCheck.filter_too_much])
def test_what_is_not_refused_has_sound_shapes(**keys: Any) -> None:
    """Whatever is asked for: outlines run counter-clockwise from the origin, and panels and folds lie within."""
    made = cased(**keys, spine_stock="leather", endpapers="plain", templates="plain")
    for flat in made.cover.flats:
        box = Rect.around(flat.outline)
        assert box[:2] == pytest.approx((0, 0), abs=1e-9)
        assert signed_area(flat.outline) > 0
        assert min(sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2) for a, b in edges_of(flat.outline)) > 0
        for part in flat.panels:
            assert min(part.rect.size) > 0
            assert box.contains(part.rect)
        for fold in flat.folds:
            middle = Point((fold.start.x + fold.end.x) / 2, (fold.start.y + fold.end.y) / 2)
            assert holds(flat, middle)
            assert fold.start != fold.end


def test_the_other_hand_is_a_mirror() -> None:
    for binding in ("full", "quarter", "half"):
        keys = {"binding": binding, "spine_stock": "leather", "endpapers": "plain"}
        one, other = cased(**keys), cased(rtl=True, **keys)
        for flat in one.cover.flats:
            twin = other.part(flat.name)
            width = flat.size.width
            assert {(round(width - p.x, 6), round(p.y, 6)) for p in flat.outline} == {
                (round(p.x, 6), round(p.y, 6)) for p in twin.outline
            }
            assert {(panel.role, round(width - panel.rect.right, 6)) for panel in flat.panels} == {
                (panel.role, round(panel.rect.x, 6)) for panel in twin.panels
            }
            assert signed_area(flat.outline) == pytest.approx(signed_area(twin.outline))
            assert signed_area(flat.outline) > 0


def test_endpapers_fold_face_to_face_and_count_at_both_ends() -> None:
    bare, made = cased(), cased(endpapers="plain")
    front, back = made.part("front endpaper"), made.part("back endpaper")
    for flat, roles in ((front, [Role.PASTEDOWN, Role.FLYLEAF]), (back, [Role.FLYLEAF, Role.PASTEDOWN])):
        assert flat.size == (30, 21)
        assert [(panel.role, panel.rect.x) for panel in flat.panels] == list(zip(roles, (0, 15), strict=True))
        assert [(fold.kind, fold.start.x) for fold in flat.folds] == [(FoldKind.VALLEY, 15)]
        assert not flat.dressed
    more = 4 * 0.1 + 4 * 0.03  # four leaves, two films at each end
    assert made.cover.thickness.value - bare.cover.thickness.value == pytest.approx(more)
    assert made.cover.spine - bare.cover.spine == pytest.approx(more)
    assert made.cover.thickness.sensitivities["plain"] == 4


def test_templates_are_the_parts_of_the_cut_list() -> None:
    made = cased(templates="plain", stiffener_stock="card")
    templates = [flat for flat in made.cover.flats if flat.kind == "board template"]
    assert [flat.name for flat in templates] == ["front board", "back board", "stiffener"]
    # lying on their sides: 15 + 0.4 − 1.5 wide, 21 + 0.8 high; 4.14 + 2 wide
    assert [tuple(flat.size) for flat in templates] == [
        pytest.approx((21.8, 13.9)),
        pytest.approx((21.8, 13.9)),
        pytest.approx((21.8, 6.14)),
    ]
    assert [(part.what, part.material, part.count, part.thickness) for part in made.cover.cut_list] == [
        ("board", "board", 2, 1.0),
        ("stiffener", "card", 1, 0.3),
    ]
    assert not any(flat.dressed for flat in templates)
    assert [part.what for part in cased(stiffener="none").cover.cut_list] == ["board"]


@pytest.mark.parametrize(
    ("binding", "thickness", "height", "depth", "edge"),
    [
        # T + 2(B + c) in the middle; H + 2q + 2c; W + q + S + 2c; B + 2c
        ("full", 4.14 + 2 * 1.21, 21.8 + 0.42, 15.4 + 1 + 0.42, 1.42),
        # both papers lie where the side laps over the spine piece
        ("quarter", 4.14 + 2 * 1.34, 21.8 + 0.68, 15.4 + 1 + 0.13 + 0.21, 1.42),
        ("half", 4.14 + 2 * 1.34, 21.8 + 0.68, 15.4 + 1 + 0.13 + 0.34, 1.68),
    ],
)
def test_outer_sizes(binding: str, thickness: float, height: float, depth: float, edge: float) -> None:
    cover = cased(binding=binding, spine_stock="leather").cover
    found = (cover.thickness.value - cover.turned_in, cover.height, cover.depth, cover.edge)
    assert found == pytest.approx((thickness, height, depth, edge))
    # on the shelf it stands as thick as a gauge reads at its edges, where a turn-in lies on each side
    assert cover.turned_in == pytest.approx(2 * 0.21)


def test_what_a_design_dresses() -> None:
    cover = cased(binding="half", spine_stock="leather", endpapers="plain", templates="plain").cover
    assert {flat.kind: flat.dressed for flat in cover.flats} == {
        "case spine": True,
        "case side": True,
        "case corner": True,
        "endpaper": False,
        "board template": False,
    }
    assert {flat.kind: flat.stock for flat in cover.flats} == {
        "case spine": "leather",
        "case side": "cloth",
        "case corner": "leather",
        "endpaper": "plain",
        "board template": "plain",
    }
