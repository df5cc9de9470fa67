"""The jacket: folded in code around the covered book it fits it, and its flaps reach in as far as was promised."""

from __future__ import annotations

from math import pi
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from bookmaker import check
from bookmaker.ground.geometry import Axis, Point, Rect
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.stock import Stock
from bookmaker.paper.stock_entry import Grain
from bookmaker.paper.thickness import Layer, Thickness
from bookmaker.sheets.flat import FoldKind, Role
from bookmaker.things.book.covers.cover_plan import CoverPlan
from bookmaker.things.book.covers.jacket import Jacket, JacketPlan
from tests.kit.by_kind import drafts_of
from tests.kit.folding import Space, Turn, inner, outer, turned_down
from tests.kit.recording import record
from tests.kit.shelves import made

PAPER, FILM = 0.1, 0.03
C = PAPER + FILM
STOCK = Stock("paper", PAPER, FILM, 0.01, 0.03, Grain.LONG, FORMATS["A3"], Rect(5, 5, 287, 410))


def covered(thickness: float, height: float, depth: float, edge: float) -> CoverPlan:
    """A covered book that is known by its outer size alone."""
    layers = (Layer("book", 1, thickness),)
    return CoverPlan("any", thickness, Thickness(layers), height, depth, flats=(), edge=edge)


COVERS = st.builds(covered, st.floats(0.8, 30), st.floats(8, 60), st.floats(8, 45), st.floats(0.1, 1.6))


def jacket(cover: CoverPlan, flap: float | None = None, *, right_to_left: bool = False) -> JacketPlan:
    return Jacket(stock="paper", flap=flap).plan(cover, {"paper": STOCK}, right_to_left=right_to_left)


def lines(plan: JacketPlan) -> list[float]:
    """The folds from the left."""
    return sorted(fold.start.x for fold in plan.flat.folds)


def folded_right(plan: JacketPlan, edge: float) -> tuple[Turn, Turn]:
    """From the flat to the folded jacket, seen from above with its spine to the front: right side, right flap."""
    spine_fold, flap_fold = lines(plan)[2:]
    side = turned_down("y", spine_fold, +1, C)
    bend = turned_down("y", flap_fold, +1, C, 180, edge / 2)
    return side, lambda point: side(bend(point))


@given(cover=COVERS, share=st.floats(0.4, 0.9))
def test_folded_it_fits_the_covered_book(cover: CoverPlan, share: float) -> None:
    flap = max(3.0, share * (cover.depth - cover.edge))
    plan = jacket(cover, flap)
    side, turned_in = folded_right(plan, cover.edge)
    left, right = lines(plan)[1:3]
    flat_spine = [left + pi / 8 * C, right - pi / 8 * C]  # a right angle takes π/4·c, half of it from the spine
    assert flat_spine[1] - flat_spine[0] == pytest.approx(cover.thickness.value, abs=0.01)

    # The inner face of the side lies against the cover: it begins at the spine and is straight to the fore-edge.
    straight = [right + pi / 8 * C, lines(plan)[3] - pi * (cover.edge + C) / 4]
    begins, ends = (side(inner(Point(x, 0), C)) for x in straight)
    assert begins.x == pytest.approx(flat_spine[1], abs=0.01)
    assert ends.x == pytest.approx(begins.x, abs=1e-9)
    assert begins.z == pytest.approx(-C / 2, abs=0.01)
    assert begins.z - ends.z == pytest.approx(cover.depth, abs=0.01)

    # The flap lies inside the side, which fits between, and reaches in from the fore-edge by what was asked for.
    starts = turned_in(inner(Point(lines(plan)[3] + pi * (cover.edge + C) / 4, 0), C))
    reaches = turned_in(inner(Point(plan.flat.size.width, 0), C))
    assert begins.x - starts.x == pytest.approx(cover.edge, abs=0.01)
    assert starts.z == pytest.approx(ends.z, abs=0.01)
    assert reaches.z - starts.z == pytest.approx(flap, abs=0.01)
    assert reaches.z < begins.z  # short of the spine

    # Outside: from the printed face of the spine to the outermost point of the round fold.
    half_way = turned_down("y", lines(plan)[3] - pi * (cover.edge + C) / 8, +1, C, 90, cover.edge / 2)
    foremost = side(half_way(outer(Point(lines(plan)[3], 0), C)))
    assert C / 2 - foremost.z == pytest.approx(cover.depth + cover.edge / 2 + 2 * C, abs=0.02)
    assert plan.depth == pytest.approx(cover.depth + cover.edge / 2 + 2 * C, abs=1e-9)


@given(cover=COVERS)
def test_the_flat_is_symmetrical_and_as_high_as_the_cover(cover: CoverPlan) -> None:
    plan = jacket(cover)
    flat = plan.flat
    assert [panel.role for panel in flat.panels] == [Role.FLAP, Role.BACK, Role.SPINE, Role.FRONT, Role.FLAP]
    assert flat.size.height == plan.height == cover.height
    assert [panel.rect.right for panel in flat.panels[:-1]] == pytest.approx(lines(plan))
    widths = [panel.rect.width for panel in flat.panels]
    assert widths == pytest.approx(widths[::-1])
    assert sum(widths) == pytest.approx(flat.size.width)
    assert plan.spine == pytest.approx(cover.thickness.value + pi / 4 * C)
    assert plan.flap == pytest.approx(max(3, cover.depth / 2))
    assert {fold.kind for fold in flat.folds} == {FoldKind.MOUNTAIN}
    assert {(fold.start.y, fold.end.y) for fold in flat.folds} == {(0, cover.height)}
    assert flat.grain is Axis.Y
    # two layers outside, two flaps inside, each with its film
    assert plan.thickness.value == pytest.approx(cover.thickness.value + 4 * C)
    assert plan.thickness.sensitivities == {"paper": 4}


def test_a_right_to_left_book_has_its_jacket_mirrored() -> None:
    cover = covered(5, 21, 15, 0.21)
    usual, mirrored = (jacket(cover, right_to_left=flag).flat for flag in (False, True))
    assert [panel.role for panel in mirrored.panels] == [panel.role for panel in usual.panels][::-1]
    assert [panel.rect for panel in mirrored.panels] == [panel.rect for panel in usual.panels]


@pytest.mark.parametrize(
    ("flap", "message"),
    [
        (2.9, "a flap of 2.9 mm does not hold the jacket; write 3 mm to 14.7 mm"),
        (14.8, "a flap of 14.8 mm is wider than the side it lies behind, which is 14.79 mm; write 3 mm to 14.7 mm"),
    ],
)
def test_flaps_that_do_not_hold_or_have_no_room_are_refused(flap: float, message: str) -> None:
    cover = covered(5, 21, 15, 0.21)
    with pytest.raises(ShelfFileError) as refusal:
        jacket(cover, flap)
    assert str(refusal.value) == message
    assert [problem.field for problem in refusal.value.problems] == [("jacket", "flap")]
    assert jacket(cover, 3.0).flap == 3.0
    assert jacket(cover, 14.7).flap == 14.7


def test_a_side_without_room_for_a_flap_wears_no_jacket() -> None:
    with pytest.raises(ShelfFileError) as refusal:
        jacket(covered(1, 8, 3.1, 0.21))
    assert str(refusal.value) == (
        "a flap needs 3 mm to hold, but there are 2.89 mm behind the side; leave the jacket out, or write a wider book"
    )


@pytest.mark.parametrize(
    ("depth", "remedy"),
    [
        (130, "give paper the sheet tabloid and grain: short, or make it smaller"),
        (200, "give paper a sheet of at least 622.7 mm × 239.4 mm and grain: short, or make it smaller"),
    ],
)
def test_a_jacket_larger_than_its_sheet_says_what_sheet_would_do(depth: float, remedy: str) -> None:
    with pytest.raises(ShelfFileError) as refusal:
        jacket(covered(5, 210, depth, 0.21))
    (problem,) = refusal.value.problems
    assert (problem.field, problem.remedy) == (("jacket", "stock"), remedy)


SHELF = """\
shelf: Jackets
stocks:
  laid: {caliper: 75 um, glue: 15 um, grain: long}
  card: {caliper: 160 um, film: 50 um, grain: long}
  smooth: {caliper: 100 um, film: 20 um, grain: long}
spaces:
  upper: {width: 60 mm, height: 27 mm, depth: 22 mm}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: accordion, stock: laid, pages: 48}
  cover: {kind: wrap, stock: card}
  space: upper
books:
  - title: Bare
  - title: Clad
    jacket: {stock: smooth, flap: 6 mm}
  - title: Clad Otherwise
    direction: right-to-left
    jacket: {stock: smooth, design: {colour: "#223344"}}
"""


def test_the_shelf_reckons_with_the_jacket(tmp_path: Path) -> None:
    """4.14 + 2 · 0.21 = 4.56 covered; + 4 · 0.12 = 5.04; deep 15.21 + 0.105 + 0.24; errors 4 sheets more."""
    plan, _ = made(SHELF, tmp_path)
    bare, clad, _ = plan["books"]
    assert bare["overall_mm"] == {"thickness": 4.56, "height": 21.0, "depth": 15.21}
    assert clad["overall_mm"] == {"thickness": 5.04, "height": 21.0, "depth": 15.555}
    assert plan["spaces"][0]["used_mm"] == pytest.approx(4.56 + 2 * 5.04)
    worst = 50 * 0.0075 + 26 * 0.005 + 2 * 0.016 + 0.15
    assert (bare["all_one_way_mm"], clad["all_one_way_mm"]) == pytest.approx((worst, worst + 4 * 0.01))


def test_the_jacket_is_a_piece_of_its_book(tmp_path: Path) -> None:
    plan, _ = made(SHELF, tmp_path)
    pieces = [piece for sheet in plan["sheets"] for piece in sheet["pieces"] if piece["kind"] == "jacket"]
    assert [(piece["id"], piece["book"]) for piece in pieces] == [("clad-jacket-1", 1), ("clad-otherwise-jacket-1", 2)]
    assert {sheet["stock"] for sheet in plan["sheets"] for piece in sheet["pieces"] if piece in pieces} == {"smooth"}
    assert [panel["role"] for panel in pieces[1]["panels"]] == ["flap", "front", "spine", "back", "flap"]


def test_a_jacket_shows_its_own_design_or_that_of_its_book(tmp_path: Path) -> None:
    Image.new("RGB", (400, 560)).save(tmp_path / "book.png")
    Image.new("RGB", (400, 560)).save(tmp_path / "jacket.png")
    text = SHELF.replace("    jacket:", "    design: {front_picture: book.png}\n    jacket:").replace(
        'colour: "#223344"', "front_picture: jacket.png"
    )
    (tmp_path / "shelf.yaml").write_text(text, encoding="utf-8")
    shown = {
        piece.id: [mark.picture.path.name for mark in record(piece.art).pictures]
        for draft in drafts_of(check(tmp_path / "shelf.yaml"))
        for piece in draft.pieces
    }
    assert (shown["clad-wrap-1"], shown["clad-jacket-1"]) == (["book.png"], ["book.png"])
    assert (shown["clad-otherwise-wrap-1"], shown["clad-otherwise-jacket-1"]) == (["book.png"], ["jacket.png"])


def test_problems_of_a_jackets_design_are_told_of_the_jacket(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(SHELF.replace('colour: "#223344"', "front_picture: none.png"), encoding="utf-8")
    with pytest.raises(ShelfFileError) as refusal:
        check(path)
    assert str(refusal.value) == (
        "shelf.yaml:19:53: there is no picture none.png; write its path as seen from the folder of the shelf file"
    )


def test_the_folding_itself() -> None:
    """A right angle brings what lay one millimetre past the fold one millimetre down."""
    turn = turned_down("y", 10, +1, 0.2)
    begins = 10 + pi / 4 * 0.2 / 2
    end, further = (turn(Space(begins + step, 0, -0.1)) for step in (0.0, 1.0))
    assert end == pytest.approx((10 - pi / 4 * 0.2 / 2, 0, -0.1))
    assert further == pytest.approx((end.x, 0, -1.1))
