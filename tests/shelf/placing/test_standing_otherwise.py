"""Books that lean, lie, show their front, lie open: what they take, how they are drawn, what is said of them."""

from __future__ import annotations

import json
from math import cos, radians, sin, tan
from pathlib import Path

import pytest
from jsonschema import validate

from bookmaker.shelf.fit import fit_space
from bookmaker.shelf.space_entry import SpaceEntry
from bookmaker.things.stance import Opened, Stance, Way
from bookmaker.workshop import Checked
from bookmaker.writers.plan_schema import plan_schema
from bookmaker.writers.shelf_front import Shown, fronts
from tests.kit.shelves import checked, made, refused, reported, told
from tests.kit.standing import UNSURE, thing

SHELF = """\
shelf: The Rope Loft
stocks:
  paper: {{caliper: 100 um}}
  card: {{caliper: 150 um}}
spaces:
  loft: {{width: 150 mm, height: 30 mm, depth: 24 mm}}
  sill: {{width: 60 mm, height: 30 mm, depth: 24 mm}}
defaults:
  size: {{height: 20 mm, width: 14 mm}}
  block: {{kind: dummy, thickness: 2.64 mm}}
  cover: {{kind: wrap, stock: card}}
  space: loft
books:
  - {{title: Tides}}
{books}
"""
# 2.64 and two layers of card with two folds in: 3.0 mm thick, 20 high, 14.15 deep


def shelf(*books: str) -> str:
    return SHELF.format(books="\n".join(f"  - {{{book}}}" for book in books))


def shown_of(found: Checked) -> dict[str, Shown]:
    return {one.thing: one for front in fronts(found.plan, found.drafts) for place in front.places for one in place}


@pytest.mark.parametrize(
    ("stance", "width", "height", "depth"),
    [
        (Stance(), 4, 20, 14),
        (Stance(way=Way.FRONT), 14, 20, 4),
        (Stance(way=Way.BACK), 14, 20, 4),
        (Stance(way=Way.LYING), 20, 4, 14),
        (Stance(way=Way.LYING, upside_down=True), 20, 4, 14),
        (Stance(way=Way.OPEN, opened=Opened(6, 1.4, 2.6, 0.5)), 32, 2.6, 20),
        (Stance(pulled_out=2.5), 4, 20, 16.5),
    ],
)
def test_each_way_takes_the_sides_of_a_block_turned_so(
    stance: Stance, width: float, height: float, depth: float
) -> None:
    one = thing(4, 20, stance=stance)
    assert (one.across.length, one.up.length, one.out.length) == pytest.approx((width, height, depth))


def test_errors_go_where_the_thickness_goes() -> None:
    exact = {"paper": 0.0}
    lying, showing = thing(4, 20, stance=Stance(way=Way.LYING)), thing(4, 20, stance=Stance(way=Way.FRONT))
    assert lying.up.error == showing.out.error == thing(4, 20).across.error == UNSURE
    assert lying.across.error.slopes == showing.across.error.slopes == {}
    assert lying.across.error.spread(exact)[1] == showing.across.error.spread(exact)[1] == 0.2
    half = thing(4, 20, stance=Stance(way=Way.OPEN, opened=Opened(6, 1.0, 3.0, 0.5)))
    assert half.up.error.slopes["paper"] == pytest.approx(0.75 * 40)
    assert half.across.error.spread(exact)[1] == pytest.approx((0.1**2 + 2 * 0.2**2) ** 0.5)


def test_a_row_is_fitted_as_it_stands(tmp_path: Path) -> None:
    found = checked(
        shelf(
            "title: Winds, stands: {lean: 15 degrees}",
            "title: Ropes, stands: {shows: front}",
            "title: Knots, stands: {lying: yes}",
        ),
        tmp_path,
    )
    loft, _ = found.plan.spaces
    leaning = 20 * sin(radians(15)) + 3 * cos(radians(15))
    assert loft.used == pytest.approx(3 + leaning + 14.15 + 20, abs=1e-6)
    assert loft.clearance == pytest.approx(4 * 0.2)
    assert loft.verdict == "fits"


def test_the_chance_of_a_leaning_book_under_its_board() -> None:
    """h cos α + t sin α, with as much of each error: 20 × 3 mm at 15° under 20.195 mm is as likely over as under."""
    top = 20 * cos(radians(15)) + 3 * sin(radians(15))
    space = SpaceEntry(width=60.0, height=top, depth=20.0)
    row = [thing(3, 21, "a"), thing(3, 20, "b", stance=Stance(lean=15))]
    fit = fit_space("loft", space.model_copy(update={"height": 22.0}), row, {"paper": 0.0})
    assert fit.probability == pytest.approx(1.0, abs=1e-6)
    alone = fit_space("loft", space, row[1:], {"paper": 0.0})
    assert alone.probability == pytest.approx(0.5, abs=1e-3)
    assert not alone.stands_out


def test_what_falls_takes_what_the_others_leave(tmp_path: Path) -> None:
    text = shelf("title: Winds, stands: {lean: until it meets its neighbour}").replace("width: 150", "width: 9")
    loft, _ = checked(text, tmp_path).plan.spaces
    lean = loft.places[1].lean
    assert 3 + 20 * sin(radians(lean)) + 3 * cos(radians(lean)) == pytest.approx(9 - 2 * 0.2, abs=1e-4)
    assert loft.used == pytest.approx(6)
    wide, _ = checked(text.replace("width: 9 mm", "width: 90 mm"), tmp_path).plan.spaces
    assert wide.places[1].lean == 25


def test_a_slipcase_and_a_stack_stand_where_the_first_of_them_is_listed(tmp_path: Path) -> None:
    text = shelf(
        "title: Log I",
        "title: Log II",
        "title: Winds, stack: pile",
        "title: Ropes",
        "title: Knots, stack: pile",
    )
    found = checked(text + "slipcases:\n  logs: {books: [Log I, Log II], stock: card}\n", tmp_path)
    loft, _ = found.plan.spaces
    assert loft.things == ("tides", "slipcase-logs", "winds", "knots", "ropes")
    seen = shown_of(found)
    assert seen["tides"].rect.x < seen["log-i"].rect.x < seen["log-ii"].rect.x < seen["winds"].rect.x
    assert seen["winds"].rect.y > seen["knots"].rect.y == 0


def test_the_picture_shows_what_is_turned_to_the_room(tmp_path: Path) -> None:
    seen = shown_of(
        checked(
            shelf(
                "title: Winds, stands: {lean: 15 degrees}",
                "title: Ropes, stands: {shows: front}",
                "title: Knots, stands: {lying: yes, upside_down: yes}",
                "title: Charts, stands: {open_at: 5}, block: {kind: accordion, stock: paper, pages: 20}",
                "title: Signals, stands: {pulled_out: 2 mm}",
            ),
            tmp_path,
        )
    )
    assert (seen["winds"].lean, seen["winds"].box.width) == (15, pytest.approx(8.0741, abs=1e-3))
    assert seen["ropes"].face
    assert seen["ropes"].face.box.height == pytest.approx(20)
    assert (seen["knots"].lies, seen["knots"].upside_down) == (True, True)
    assert seen["charts"].face
    assert seen["charts"].face.box.size == pytest.approx(seen["charts"].rect.size)
    assert seen["signals"].pulled_out == 2


@pytest.mark.parametrize(("page", "turned"), [(1, 0), (2, 1), (3, 1), (12, 6), (13, 6), (20, 10)])
def test_an_open_book_has_the_leaves_turned_at_the_left(tmp_path: Path, page: int, turned: int) -> None:
    """Ten leaves: a page before which so many are turned; of a book that reads to the left they lie at the right."""
    text = shelf(f"title: Charts, stands: {{open_at: {page}}}, block: {{kind: accordion, stock: paper, pages: 20}}")
    for direction, sides in (("left-to-right", ("left", "right")), ("right-to-left", ("right", "left"))):
        plan = checked(text.replace("title: Charts", f"title: Charts, direction: {direction}"), tmp_path).plan
        standing = plan.plans["charts"].standing
        assert standing
        assert standing.stance.opened
        opened = standing.stance.opened
        leaves = [getattr(opened, side) - opened.cover for side in sides]
        assert leaves[0] / sum(leaves) == pytest.approx(turned / 10)
        assert sum(leaves) + 2 * opened.cover == pytest.approx(standing.thickness)


def test_plan_json_has_the_place_of_each(tmp_path: Path) -> None:
    plan, _ = made(
        shelf(
            "title: Winds, stands: {lean: 15 degrees, towards: right}",
            "title: Ropes, stack: pile",
            "title: Knots, stack: pile",
            "title: Signals, stands: {pulled_out: 2 mm}",
        ),
        tmp_path,
    )
    validate(plan, json.loads(json.dumps(plan_schema())))
    tides, winds, pile, signals = plan["spaces"][0]["places"]
    assert (tides["things"], tides["left_mm"], tides["lean_deg"]) == (["tides"], 0, 0)
    assert (winds["lean_deg"], winds["left_mm"]) == (-15, 3.2)
    assert winds["width_mm"] == pytest.approx(20 * sin(radians(15)) + 3 * cos(radians(15)), abs=1e-3)
    assert (pile["stack"], pile["things"], pile["width_mm"]) == ("pile", ["ropes", "knots"], 20)
    # it hangs over the pile, which is 6 mm high
    assert pile["left_mm"] == pytest.approx(3.2 + 6 * tan(radians(15)) + 3 * cos(radians(15)), abs=1e-3)
    assert signals["pulled_out_mm"] == 2


@pytest.mark.parametrize(
    ("stands", "said"),
    [
        ("lean: 80 degrees", "80 degrees is out of range; write 1 to 60 degrees, or lying: yes for a book that lies"),
        ("lean: a little", "'a little' is not an angle; write it like 15 degrees, or until it meets its neighbour"),
        ("lean: 9 degrees, lying: yes", "has both lean and lying; write one of the two: a book stands in one way"),
        ("shows: back, open_at: 3", "has both shows: back and open_at; write one of the two"),
        ("open_at: 3", "a book without pages does not open; leave open_at out, or write lying: yes"),
    ],
)
def test_what_cannot_be_is_refused(tmp_path: Path, stands: str, said: str) -> None:
    (line,) = [line for line in refused(shelf(f"title: Winds, stands: {{{stands}}}"), tmp_path) if "shelf.yaml" in line]
    assert said in line


def test_an_open_page_that_the_book_does_not_have(tmp_path: Path) -> None:
    text = shelf("title: Charts, stands: {open_at: 25}, block: {kind: accordion, stock: paper, pages: 20}")
    (line, *_) = refused(text, tmp_path)
    assert "the book is to lie open at page 25, and has 20 pages; write a page from 1 to 20" in line


@pytest.mark.parametrize(
    ("book", "said"),
    [
        ("stack: pile, stands: {lean: 15 degrees}", "lies in a stack, and stands with lean; leave one of the two out"),
        ("space: null, stands: {lean: 15 degrees}", "leans, but stands in no space, where nothing holds it"),
        (
            "block: {kind: dummy, thickness: fill}, stands: {lying: yes}",
            "a book with stands: lying cannot fill its space, which takes books that stand",
        ),
    ],
)
def test_what_goes_ill_together_is_refused(tmp_path: Path, book: str, said: str) -> None:
    text = shelf(f"title: Winds, {book}")
    if "null" in book:
        text = text.replace("  space: loft\n", "").replace("space: null, ", "")
    assert said in "\n".join(refused(text, tmp_path))


def test_what_leans_does_not_stand_in_a_slipcase(tmp_path: Path) -> None:
    text = shelf("title: Log I, stands: {lean: 15 degrees}") + "slipcases:\n  logs: {books: [Log I], stock: card}\n"
    assert "has stands: lean and stands in" in "\n".join(refused(text, tmp_path))


@pytest.mark.parametrize(
    ("stands", "said"),
    [
        ("lean: 5 degrees", "Winds would stand up by itself: it leans 5.0°, and is 3 mm thick and 20 mm high"),
        ("lean: 45 degrees", "Winds would slide: it leans 45.0°, and paper on paper holds it up to 39°"),
        (
            "lean: 15 degrees, towards: right",
            "Winds leans to the right in loft, where nothing is that it could lean on",
        ),
    ],
)
def test_what_would_not_stay_is_told(tmp_path: Path, stands: str, said: str) -> None:
    assert said in "\n".join(told(shelf(f"title: Winds, stands: {{{stands}}}"), tmp_path))


def test_what_leans_must_not_turn_over_what_holds_it(tmp_path: Path) -> None:
    """20 × 3 mm at 15° turn over one as high and deep that is thinner than 2.61 mm, unless the upright is beside it."""
    leaning = "title: Winds, stands: {lean: 15 degrees, towards: right}"
    for thickness, falls in (("2.0 mm", True), ("2.4 mm", False)):  # and 0.36 of cover
        text = shelf(leaning, f"title: Ropes, block: {{kind: dummy, thickness: {thickness}}}")
        said = "\n".join(told(text, tmp_path))
        assert ("Winds would push Ropes over" in said) is falls
    narrow = shelf(leaning, "title: Ropes, block: {kind: dummy, thickness: 2.0 mm}").replace(
        "width: 150", "width: 14.2"
    )
    assert "push" not in "\n".join(told(narrow, tmp_path))


def test_what_is_pulled_out_too_far_is_told(tmp_path: Path) -> None:
    report = reported(shelf("title: Winds, stands: {pulled_out: 12 mm}"), tmp_path)
    (problem,) = [one for one in report["problems"] if "deep" in one["message"]]
    assert problem["message"] == "Winds is 2.15 mm too deep for loft, which has 24 mm"
    assert problem["remedy"] == "pull it out 9.8 mm at most, or make the space deeper"
