"""A room with walls and a desk, the whole way: places, faults with their places, plan.json, outlines to try it out."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pypdfium2
import pytest
from pytest import approx

from bookmaker import check, make
from bookmaker.ground.problems import ShelfFileError
from bookmaker.sheets.layout import lay_out
from bookmaker.shelf.wishes import Wishes
from bookmaker.workshop import Workshop
from bookmaker.writers.room.mock_up import mock_up_pieces, plain_paper
from tests.kit.shelves import written

ROOM = """\
shelf: The Pilot's Parlour
stocks:
  card: {caliper: 300 um, grain: long}
  photo: {caliper: 200 um, grain: long}
spaces:
  case: {width: 90 mm, height: 40 mm, depth: 25 mm, place: {on: north wall, left: 10 mm, foot: 60 mm}}
surfaces:
  north wall:
    width: 420 mm
    height: 230 mm
    hook: 4 mm
    groups:
      - {pattern: row, things: [harbour, keeper], gap: 8 mm, start: 110 mm}
  desk: {width: 120 mm, depth: 60 mm}
things:
  - {id: harbour, kind: frame, stock: photo, width: 40 mm, height: 30 mm}
  - {id: keeper, kind: frame, stock: photo, width: 20 mm, height: 25 mm}
  - id: chart
    kind: frame
    stock: photo
    width: 15 mm
    height: 20 mm
    place: {on: north wall, middle: 60 mm, centre: 150 mm}
  - id: tea
    kind: lidded box
    stock: card
    inside: {length: 20 mm, width: 12 mm, height: 9 mm}
    place: {on: desk, right: 5 mm, back: 4 mm}
books:
  - title: Tides
    space: case
    size: {height: 20 mm, width: 15 mm}
    block: {kind: dummy, thickness: 4 mm}
    cover: {kind: wrap, stock: photo}
"""

FROM_TO, WALL = "420 mm to 420 mm", "and north wall"
NOT_AT = "212.5 mm, not at 215 mm, or it would go over the edge of"


def plan_of(folder: Path, text: str = ROOM) -> dict[str, Any]:
    make(written(text, folder), folder / "out", wishes=Wishes(mock_up=True))
    return json.loads((folder / "out" / "plan.json").read_text(encoding="utf-8"))


def said(folder: Path, right: str, wrong: str) -> list[str]:
    """What check says of the room with something else in it: place and message."""
    assert right in ROOM
    try:
        found = check(written(ROOM.replace(right, wrong), folder)).problems
    except ShelfFileError as refusal:
        found = tuple(refusal.problems)
    return [f"{problem.place.line if problem.place else 0}: {problem.message}" for problem in found]


def test_all_of_a_room_is_where_it_was_measured_or_put_by_its_group(tmp_path: Path) -> None:
    wall, desk = plan_of(tmp_path)["surfaces"]
    assert (wall["upright"], wall["size_mm"], desk["upright"], desk["size_mm"]) == (True, [420, 230], False, [120, 60])
    there = {one["thing"] or one["name"]: one for one in (*wall["things"], *desk["things"])}
    assert there["case"]["rect_mm"] == [10, 60, 90, 40] and there["case"]["hook_mm"] is None
    left, low, width, height = there["chart"]["rect_mm"]
    assert (left + width / 2, low + height / 2) == (approx(60), approx(150))
    assert there["chart"]["hook_mm"] == [approx(60), approx(low + height - 4)]
    first, second = there["harbour"]["rect_mm"], there["keeper"]["rect_mm"]
    assert second[0] - (first[0] + first[2]) == approx(8)
    assert (first[0] + second[0] + second[2]) / 2 == approx((110 + 420) / 2)
    # 1475 mm, the usual height of eyes, at 1:12
    assert first[1] + first[3] / 2 == approx(second[1] + second[3] / 2) == approx(1475 / 12, abs=1e-4)
    box = there["tea"]["rect_mm"]
    assert (box[0] + box[2], box[1] + box[3]) == (approx(115), approx(56))


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("on: desk,", "on: dest,", "28: there is no surface 'dest'"),
        ("place: {on: north wall, left", "place: {on: wall, left", "6: there is no surface 'wall'"),
        ("5 mm, back: 4 mm", "5 mm, foot: 4 mm", "28: desk is level, measured from front or back"),
        ("10 mm, foot: 60 mm", "10 mm, back: 60 mm", "6: north wall is a wall, measured from foot or top"),
        ("centre: 150 mm", "centre: 100 mm", "23: chart overlaps case on north wall by 20.05 mm × 12.53 mm"),
        ("middle: 60 mm", "middle: 6 mm", "23: chart is 4.03 mm off the left of north wall"),
        ("middle: 60", "left: 3 mm, middle: 60", "23: chart: place has left and middle along the surface"),
        ("on: desk", "on: north wall", "28: tea, a lidded box, does not hang on a wall as north wall is"),
        ("[harbour, keeper]", "[harbour, keeper, chart]", "13: chart has a place on north wall already"),
        ("[harbour, keeper]", "[harbour, kepper]", "13: nothing is called 'kepper'"),
        ("[harbour, keeper]", "[harbour, keeper, Tides]", "13: Tides stands in the space case"),
        ("start: 110 mm", "start: 370 mm", "13: keeper is 14.05 mm off the right of north wall"),
        (
            "start: 110 mm",
            "start: 420 mm",
            "13: the stretch of this group goes from 420 mm to 420 mm, and north wall is 420 mm wide",
        ),
        (
            "pattern: row",
            "centre: 215 mm, pattern: salon",
            "13: this group has its centre at 212.5 mm, not at 215 mm, or it would go over the edge of north wall",
        ),
        ("width: 40 mm", "width: 40 mn", "16: harbour: width: 'mn' is not a unit of length"),
        ("width: 120 mm, depth: 60 mm", "width: 120 mm", "14: surfaces.desk has neither height nor depth"),
    ],
)
def test_what_cannot_be_is_told_with_its_place(tmp_path: Path, right: str, wrong: str, told: str) -> None:
    assert said(tmp_path, right, wrong) == [told]


def test_a_room_without_faults_has_none(tmp_path: Path) -> None:
    assert said(tmp_path, "hook: 4 mm", "hook: 4 mm") == []


def test_a_thing_that_stands_in_a_space_has_no_place_of_its_own(tmp_path: Path) -> None:
    both = said(tmp_path, "stock: card\n", "stock: card\n    space: case\n")
    assert both == ["29: tea stands in the space case and has a place on desk"]


def test_the_mock_up_has_everything_at_true_size_on_one_sheet(tmp_path: Path) -> None:
    plan_of(tmp_path)
    pdf = pypdfium2.PdfDocument(tmp_path / "out" / "mock-up.pdf")
    assert len(pdf) == 1
    text = pdf[0].get_textpage().get_text_range()
    for name in ("harbour", "keeper", "chart", "tea", "top", "case", "1. Tides"):
        assert name in text
    pen = 0.1
    boxes = [one.get_bounds() for one in pdf[0].get_objects(max_depth=6)]
    sides = [
        ((right - left) / 72 * 25.4 - 2 * pen, (top - low) / 72 * 25.4 - 2 * pen) for left, low, right, top in boxes
    ]
    for wanted in ((90, 40), (45.05, 35.05), (25.05, 30.05)):
        assert any(both == approx(wanted, abs=0.02) or both[::-1] == approx(wanted, abs=0.02) for both in sides)


def test_what_is_larger_than_a_sheet_is_tried_in_parts(tmp_path: Path) -> None:
    large = ROOM.replace("width: 40 mm, height: 30 mm", "width: 180 mm, height: 330 mm, rails: {sold: 900 mm}")
    large = large.replace("photo: {caliper: 200 um, grain: long}", "photo: {caliper: 200 um, grain: long, sheet: A3}")
    make(written(large, tmp_path), tmp_path / "out", wishes=Wishes(mock_up=True))
    text = "".join(
        page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(tmp_path / "out" / "mock-up.pdf")
    )
    assert "part 1 of 2" in text and "part 2 of 2" in text


def test_walls_and_desks_are_drawn_with_the_measures_of_the_plan(tmp_path: Path) -> None:
    wall = plan_of(tmp_path)["surfaces"][0]
    text = pypdfium2.PdfDocument(tmp_path / "out" / "walls-and-desks.pdf")[0].get_textpage().get_text_range()
    for one in wall["things"]:
        for length in (*one["rect_mm"], *(one["hook_mm"] or ())):
            assert f"{length:.1f}" in text


def test_the_room_of_the_demo_is_tried_out_on_three_sheets_at_most() -> None:
    demo = Path(__file__).parents[3] / "demo" / "reading-room.yaml"
    plan = Workshop().planned(demo)
    paper = plain_paper(plan)
    assert not [fault for surface in plan.room for fault in surface.faults]
    assert len(lay_out(mock_up_pieces(plan, paper), {paper.name: paper}, 2.0).sheets) <= 3


def test_a_book_lies_on_a_desk_closed_or_open(tmp_path: Path) -> None:
    closed = ROOM.replace("    space: case\n    size", "    place: {on: desk, left: 0 mm, front: 0 mm}\n    size")
    closed = closed.replace("{kind: dummy, thickness: 4 mm}", "{kind: leaves, stock: photo, pages: 16}")
    opened = closed.replace("    size: {height: 20", "    stands: {open_at: 9}\n    size: {height: 20")
    shut, wide = (check(written(text, tmp_path)).plan.room[1].things[0].rect.size for text in (closed, opened))
    book = check(written(closed, tmp_path)).plan.plans["tides"].standing
    assert book and shut == (book.depth, book.height)
    assert wide == (approx(2 * book.depth + book.thickness), book.height)
