"""A slipcase stands on the shelf instead of its books: its size, its errors, its piece, what is said of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.drawing import Colour, contrast
from bookmaker.ground.geometry import Rect
from bookmaker.ground.problems import Problem
from bookmaker.sheets.flat import Role
from bookmaker.shelf.fit import fit_space
from bookmaker.shelf.space_entry import SpaceEntry
from tests.kit.by_kind import books_of, box_drafts_of, drafts_of, slipcases_of
from tests.kit.recording import Filled, ink_box, record
from tests.kit.salt_office import shelf
from tests.kit.shelves import checked, errors, made


def test_the_errors_of_the_books_are_those_of_the_box(tmp_path: Path) -> None:
    """By finite differences: how much wider the box becomes for a paper that is a little thicker."""
    plan = checked(shelf(), tmp_path / "0").plan
    (box,) = slipcases_of(plan)
    step = 1.0  # µm
    laid = slipcases_of(checked(shelf(laid=75 + step), tmp_path / "1").plan)[0]
    card_ = slipcases_of(checked(shelf(card_um=200 + step), tmp_path / "2").plan)[0]
    slopes = box.uncertainty.slopes
    assert slopes["laid"] == pytest.approx((laid.outside.width - box.outside.width) / step * 1000)
    assert slopes["card"] == pytest.approx((card_.outside.width - box.outside.width) / step * 1000)
    # two blocks of 50 panels and a jacket of four layers; three covers of two layers and two walls; 26 films in each
    # accordion that was not measured, and two under the ends of that which was
    assert slopes == {"laid": 104, "card": 8, "films of spray adhesive": 54}


def test_the_tolerance_of_a_box_is_that_of_its_row_of_books(tmp_path: Path) -> None:
    """The row without its box, in a space of its own; walls of exact card add nothing."""
    plan = checked(shelf(), tmp_path).plan
    (box,) = slipcases_of(plan)
    exact = {"laid": 0.0075, "card": 0.0, "films of spray adhesive": 0.005}
    row_ = fit_space(
        "row", SpaceEntry(width=60.0, height=60.0, depth=60.0), [book.standing for book in books_of(plan)[:3]], exact
    )
    assert box.uncertainty.spread(exact) == pytest.approx((row_.all_one_way, row_.likely))
    assert row_.all_one_way == pytest.approx(104 * 0.0075 + 54 * 0.005 + 0.15 + 0.15 + 0.2 + 0.05)
    assert row_.likely == pytest.approx(
        ((104 * 0.0075) ** 2 + (54 * 0.005) ** 2 + 0.15**2 + 0.15**2 + 0.2**2 + 0.05**2) ** 0.5
    )


def test_the_box_stands_on_the_shelf_instead_of_its_books(tmp_path: Path) -> None:
    """4.14 + 0.4, + 4 · 0.075 with its jacket, 4.2 + 0.03 + 0.4: 4.54, 4.84 and 4.63 make 14.01; the walls 0.4 more."""
    plan, _ = made(shelf(), tmp_path)
    (box,) = plan["slipcases"]
    assert (box["name"], box["space"]) == ("salt", "upper")
    assert box["books"] == [0, 1, 2]
    # deepest is the book in its jacket: 15.2 + 0.1 + 2 · 0.075
    assert box["inside_mm"] == {"width": 14.31, "height": 21.3, "depth": 15.75}
    assert box["outside_mm"] == {"width": 14.71, "height": 22.16, "depth": 15.95}
    upper, lower = plan["spaces"]
    assert (upper["used_mm"], upper["clearance_mm"], upper["room_left_mm"]) == (14.71, 0.2, 45.09)
    assert upper["tolerance_mm"] == box["tolerance_mm"]
    assert lower["used_mm"] == 4.54
    assert [book["slipcase"] for book in plan["books"]] == ["salt", "salt", "salt", None]


def test_the_net_is_a_piece_that_belongs_to_no_single_book(tmp_path: Path) -> None:
    plan, _ = made(shelf(), tmp_path)
    pieces = [piece for sheet in plan["sheets"] for piece in sheet["pieces"]]
    (net,) = (piece for piece in pieces if piece["kind"] == "slipcase")
    assert (net["id"], net["book"], net["slipcase"]) == ("slipcase-salt-1", None, "salt")
    assert {(piece["book"] is None, piece["slipcase"]) for piece in pieces if piece is not net} == {(False, None)}
    assert sorted(panel["role"] for panel in net["panels"]) == [
        *("back", "bottom", "left", "right", "tab", "tab", "tab", "tab", "top"),
    ]


@pytest.mark.parametrize("grain", ["long", "short"])
def test_the_grain_runs_up_the_box(tmp_path: Path, grain: str) -> None:
    plan, _ = made(shelf().replace("grain: long", f"grain: {grain}"), tmp_path)
    (net,) = (piece for sheet in plan["sheets"] for piece in sheet["pieces"] if piece["kind"] == "slipcase")
    assert net["turned_deg"] == (0 if grain == "long" else 90)  # the sheet is A4, printed upright


def test_a_box_says_where_its_books_stand(tmp_path: Path) -> None:
    moved = checked(shelf().replace("2, 3]", "2, 3], space: lower"), tmp_path).plan
    assert slipcases_of(moved)[0].space == "lower"
    assert [space.things for space in moved.spaces] == [
        (),
        ("slipcase-salt", "pans-and-rakes"),
    ]  # where its first book is listed


def test_a_box_without_a_space_is_made_but_not_fitted(tmp_path: Path) -> None:
    text = shelf().replace("  space: upper\n", "").replace("    space: lower\n", "")
    plan = checked(text, tmp_path).plan
    assert slipcases_of(plan)[0].space is None
    assert [space.used for space in plan.spaces] == [0, 0]


def test_a_box_too_large_for_its_space_is_named(tmp_path: Path) -> None:
    text = shelf().replace("height: 27 mm, depth: 22 mm", "height: 22 mm, depth: 15.9 mm", 1)
    assert errors(checked(text, tmp_path)) == [
        "shelf.yaml:23:9: the slipcase salt is 0.16 mm too tall for upper, which has 22 mm; "
        "put it in lower, where it can stand, or leave its tallest book out",
        "shelf.yaml:23:9: the slipcase salt is 0.05 mm too deep for upper, which has 15.9 mm; "
        "put it in lower, where it can stand, or leave its deepest book out",
    ]


def test_a_row_with_a_box_that_is_over_says_what_would_help(tmp_path: Path) -> None:
    """14.71 + 4.54 + 2 · 0.2 = 19.65.

    Likely error √((154 · 0.0075)² + (10 · 0.02)² + (80 · 0.005)² + 3 · 0.15² + 0.2² + 0.05²) = 1.282.
    """
    text = shelf().replace("    space: lower\n", "").replace("  upper: {width: 60 mm", "  upper: {width: 19.1 mm")
    assert errors(checked(text, tmp_path / "0")) == [
        "shelf.yaml:6:18: upper is over: 1 slipcase and 1 book with their clearance need 19.65 mm, the space has 19.1 "
        "mm, 0.55 mm too little; give Pans and Rakes 24 pages fewer; or put Pans and Rakes in lower, which has 60 mm "
        "left; or take a paper of 63 µm or less for laid, now 75 µm"
    ]
    # Each remedy, taken, is enough; most of the thinner paper is in the boxed books.
    fewer = text.replace("title: Pans and Rakes", "title: Pans and Rakes\n    block: {pages: 24}")
    moved = text.replace("title: Pans and Rakes", "title: Pans and Rakes\n    space: lower")
    for number, remedied in enumerate((fewer, moved, text.replace("75 um", "62 um"), text), start=1):
        assert bool(errors(checked(remedied, tmp_path / f"{number}"))) is (remedied is text)


def test_a_clearance_smaller_than_the_books_likely_error_is_said(tmp_path: Path) -> None:
    def said_of_it(text: str) -> list[Problem]:
        return [one for one in checked(text, tmp_path).problems if one.field[:1] == ("slipcases",)]

    [note] = said_of_it(shelf())
    assert (note.severity, note.field) == ("note", ("slipcases", "salt", "clearance"))
    assert str(note) == (
        "shelf.yaml:23:9: the books of salt may be off by ± 0.88 mm together, but the clearance is 0.3 mm; "
        "finish the books before you print the box, and write what they measure side by side as "
        "measured_rows: - {books: [Tide Tables, 2, 3], thickness: … mm}; or write clearance: 0.89 mm"
    )
    measured = shelf() + "measured_rows:\n  - {books: [Tide Tables, 2, 3], thickness: 14.5 mm}\n"
    assert said_of_it(measured) == []
    for clearance, said in (("0.87 mm", True), ("0.89 mm", False)):
        assert bool(said_of_it(shelf().replace("2, 3]", f"2, 3], clearance: {clearance}"))) is said


@pytest.mark.parametrize("ground", ["#e8dcc0", "#b09a78", "#20242c"])
def test_the_title_of_a_dressed_box_suits_the_cloth_it_stands_on(tmp_path: Path, ground: str) -> None:
    """Its ink is chosen against the ground of the books, not against a ground the box does not show."""
    design = f'{{style: cloth, colour: "{ground}"}}'
    text = shelf().replace("- title: Tide Tables", f"- title: Tide Tables\n    design: {design}")
    faces = "faces: {as_books: yes, title: Salt}"
    found = checked(text.replace("2, 3], stock: card}", f"2, 3], stock: card, {faces}}}"), tmp_path)
    (title,) = record(box_drafts_of(found)[0].pieces[0].art).texts
    assert contrast(title.colour, Colour.from_hex(ground)) >= 4.5


def test_a_faint_title_on_a_box_is_told(tmp_path: Path) -> None:
    faces = 'faces: {colour: "#767676", title: Salt, ink: "#999999"}'
    found = checked(shelf().replace("2, 3], stock: card}", f"2, 3], stock: card, {faces}}}"), tmp_path)
    # (0.318547 + 0.05) / (0.181164 + 0.05), by the W3C formula
    assert any("the title on the back has a contrast of 1.6 to its ground" in str(one) for one in found.problems)


@pytest.mark.parametrize("style", ["plain", "cloth", "leather"])
def test_a_box_may_wear_the_dress_of_its_first_book(tmp_path: Path, style: str) -> None:
    """The first fill reaches the bleed all around; the only words are the box's own, and one face keeps its colour."""
    text = shelf().replace("- title: Tide Tables", f"- title: Tide Tables\n    design: {{style: {style}}}")
    faces = 'faces: {as_books: yes, title: Salt, top: {colour: "#ff0000"}}'
    found = checked(text.replace("2, 3], stock: card}", f"2, 3], stock: card, {faces}}}"), tmp_path)
    (piece,) = box_drafts_of(found)[0].pieces
    drawn = record(piece.art)
    # leather is lettered in capitals, and so is this cloth by its look
    assert [text.text for text in drawn.texts] == ["Salt" if style == "plain" else "SALT"]
    width, height = piece.flat.size
    first, *others = [mark for mark in drawn.marks if isinstance(mark, Filled)]
    around = Rect.around(first.path.points())
    assert around.contains(Rect(0, 0, width, height).grown(piece.flat.bleed))
    reds = [Rect.around(mark.path.points()) for mark in others if mark.colour == Colour(1.0, 0.0, 0.0)]
    top = next(panel.rect for panel in piece.flat.panels if panel.role is Role.TOP)
    assert len(reds) == 1 and reds[0].contains(top)


@pytest.mark.parametrize("style", ["cloth", "leather", "half leather", "pamphlet", "school", "picture", "plain"])
@pytest.mark.parametrize("author", ["A. Fell", "B. Fell", "C. Fell"])
def test_a_dressed_box_is_titled_in_the_hand_of_its_books(tmp_path: Path, style: str, author: str) -> None:
    """Typeface and capitals are those of the spines; so is the ink, which is chosen for their ground."""
    book = f"- title: Tide Tables\n    author: {author}\n    design: {{style: {style}}}"
    text = shelf().replace("- title: Tide Tables", book)
    faces = "faces: {as_books: yes, title: Tide Tables}"
    found = checked(text.replace("2, 3], stock: card}", f"2, 3], stock: card, {faces}}}"), tmp_path)
    (box,) = box_drafts_of(found)[0].pieces
    titles = [text for text in record(box.art).texts if text.text.casefold() in "tide tables"]
    pieces = [piece for piece in drafts_of(found)[0].pieces if piece.flat.dressed]
    words = [text for piece in pieces for text in record(piece.art).texts if text.text.casefold() in "tide tables"]
    hands = {(text.line.runs[0][1].typeface.name, text.text.isupper()) for text in words}
    assert {(text.line.runs[0][1].typeface.name, text.text.isupper()) for text in titles} <= hands
    assert titles
    if style != "half leather" or len(hands) == 1:
        assert {text.colour for text in titles} <= {text.colour for text in words}
    back = next(panel.rect for panel in box.flat.panels if panel.role is Role.BACK)
    rules = [
        mark
        for mark in record(box.art).marks
        if isinstance(mark, Filled) and mark.colour == titles[0].colour
        and Rect.around(mark.path.points()).width == pytest.approx(back.width)
    ]  # fmt: skip
    assert len(rules) == 4
    for text in titles:
        words = ink_box(text).grown(0.5)
        assert not any(words.overlaps(Rect.around(mark.path.points())) for mark in rules)
