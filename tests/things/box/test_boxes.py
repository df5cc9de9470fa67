"""Boxes in the shelf file: made, dressed, put into one another, and refused."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from pypdf import PdfReader

from bookmaker.sheets.facsimiles import facsimile_of_piece
from bookmaker.sheets.flat import Role
from bookmaker.shelf.wishes import Wishes
from bookmaker.things.box.forms.kinds import KINDS
from bookmaker.things.box.plan import BoxPlan
from bookmaker.writers.shelf_front import fronts
from tests.kit.boxes import kind_of
from tests.kit.pixels import Pixels, pdf_pixels
from tests.kit.shelves import changed, checked, errors, made, refused, told

PER_MM = 10

SHELF = """\
shelf: On the Desk
stocks:
  card: {caliper: 300 um, grain: long}
  thin: {caliper: 90 um, grain: long}
spaces:
  desk: {width: 120 mm, height: 60 mm, depth: 60 mm}
things:
  - id: pins
    kind: tray
    stock: card
    inside: {length: 30 mm, width: 20 mm, height: 8 mm}
    faces: {colour: "#7a1f2b", front: {text: PINS}}
  - id: tea
    kind: lidded box
    title: Harbour Tea
    stock: card
    space: desk
    inside: {length: 30 mm, width: 20 mm, height: 18 mm}
    faces: {colour: "#2a4057", top: {design: {style: leather}}}
  - id: cigars
    kind: hinged box
    stock: card
    space: desk
    inside: {length: 28 mm, width: 18 mm, height: 9 mm}
  - id: cards
    kind: tuck box
    stock: card
    inside: {length: 7 mm, width: 4 mm, height: 9 mm}
  - id: matches
    kind: drawer box
    stock: card
    sizes: life size
    outside: {length: 240 mm, width: 180 mm, height: 120 mm}
  - id: post
    kind: envelope
    stock: thin
    sizes: life size
    inside: {length: 220 mm, width: 110 mm, height: 3 mm}
  - id: papers
    kind: folder
    stock: thin
    contents: [post]
  - id: crate
    kind: tray
    stock: card
    contents: [cards, matches]
"""


def plans(tmp_path: Path, text: str = SHELF) -> dict[str, BoxPlan]:
    found = checked(text, tmp_path)
    assert not errors(found)
    return {id: plan for id, plan in found.plan.plans.items() if isinstance(plan, BoxPlan)}


def pixels_of(tmp_path: Path, text: str, thing: str, piece: int = 0) -> tuple[Pixels, float]:
    """A piece as it is cut out, and how high it is in mm."""
    facsimile = facsimile_of_piece(checked(text, tmp_path).drafts[thing].pieces[piece])
    return pdf_pixels(facsimile.art, 254, PER_MM, facsimile.box), facsimile.box.height


def test_every_form_is_made_and_told_of(tmp_path: Path) -> None:
    plan, out = made(SHELF, tmp_path, Wishes(templates=True))
    assert sorted(thing["kind"] for thing in plan["things"]) == sorted([*map(kind_of, KINDS), "tray"])
    assert not [problem for problem in plan["problems"] if problem["severity"] != "note"]
    pieces = [piece["owner"] for sheet in plan["sheets"] for piece in sheet["pieces"]]
    assert [pieces.count(thing) for thing in ("pins", "tea", "matches", "post")] == [1, 2, 2, 1]
    guide = " ".join(" ".join(page.extract_text().split()) for page in PdfReader(out / "guide.pdf").pages)
    for form in KINDS:
        assert f"{kind_of(form).capitalize()}: " in guide
    assert "leading the upper tuck in behind the front as you close it" in guide
    assert "The fibres run along its hinge, which is bent often" in guide
    assert (out / "template-pins.png").exists()


def test_sizes_are_those_that_were_written(tmp_path: Path) -> None:
    found = plans(tmp_path)
    assert found["pins"].room == pytest.approx((30, 20, 8))
    assert found["matches"].outside == pytest.approx((20, 15, 10))
    assert found["post"].room == pytest.approx((220 / 12, 110 / 12, 0.25))
    (stands,) = [plan.standing for id, plan in found.items() if id == "tea"]
    assert stands is not None
    assert (stands.thickness, stands.depth, stands.height) == pytest.approx(found["tea"].outside)


def test_a_box_is_made_around_what_lies_in_it(tmp_path: Path) -> None:
    """Side by side the largest counts, one on the other all do; all together have the ease."""
    found = plans(tmp_path)
    cards, matches = found["cards"].outside, found["matches"].outside
    assert found["crate"].room == pytest.approx(
        (
            max(cards.length, matches.length) + 0.3,
            max(cards.width, matches.width) + 0.3,
            cards.height + matches.height + 0.3,
        )
    )
    assert found["crate"].held == ("cards", "matches")
    post = found["post"].outside
    assert found["papers"].room == pytest.approx((post.length + 0.3, post.width + 0.3, post.height + 0.3))


def test_the_row_is_less_sure_in_thicker_card(tmp_path: Path) -> None:
    """Along the front of a tray lie four layers: end wall and tab at each end; a lid over it adds four more."""
    found = plans(tmp_path)
    assert found["pins"].layers_across == pytest.approx(4)
    assert found["tea"].layers_across == pytest.approx(8)
    assert found["cards"].layers_across == pytest.approx(3)


def test_glue_flaps_stay_bare_and_sides_are_printed(tmp_path: Path) -> None:
    seen, high = pixels_of(tmp_path, SHELF, "pins")
    (flat,) = plans(tmp_path)["pins"].flats

    def colour_at(role: Role) -> tuple[float, ...]:
        at = next(panel.rect for panel in flat.panels if panel.role is role).grown(-0.5)
        return tuple(seen[int((high - at.y) * PER_MM), int(at.x * PER_MM)])

    tab = next(panel.rect for panel in flat.panels if panel.role is Role.TAB).centre
    assert tuple(seen[int((high - tab.y) * PER_MM), int(tab.x * PER_MM)]) == (255, 255, 255)
    for role in (Role.FRONT, Role.BACK, Role.LEFT, Role.RIGHT, Role.BOTTOM):
        assert colour_at(role) == pytest.approx((0x7A, 0x1F, 0x2B), abs=2)


def test_a_picture_of_the_whole_runs_on_over_the_edges(tmp_path: Path) -> None:
    """A gradient from left to right: on both sides of a crease it has nearly the same grey."""
    shades = np.tile(np.linspace(0, 255, 1400).astype(np.uint8), (1000, 1))
    Image.fromarray(shades).save(tmp_path / "sky.png", dpi=(600, 600))
    text = changed(('{colour: "#7a1f2b", front: {text: PINS}}', "{picture: sky.png}"), text=SHELF)
    seen, high = pixels_of(tmp_path, text, "pins")
    (flat,) = plans(tmp_path, text)["pins"].flats
    floor = next(panel.rect for panel in flat.panels if panel.role is Role.BOTTOM)
    row = seen[int((high - floor.centre.y) * PER_MM), :, 0]
    steps = np.abs(np.diff(row[5:-5]))
    assert steps.max() <= 4
    assert row[-10] - row[10] > 150


def test_faces_of_a_lidded_box_are_those_of_its_lid(tmp_path: Path) -> None:
    """The base has the colour alone, unless it has sides of its own."""
    base, _ = pixels_of(tmp_path, SHELF, "tea", 0)
    lid, _ = pixels_of(tmp_path, SHELF, "tea", 1)
    plain = (0x2A, 0x40, 0x57)
    for seen, least, most in ((base, 0.4, 1.0), (lid, 0.1, 0.75)):
        share = float(np.mean(np.abs(seen - plain).max(axis=2) < 4))
        assert least < share < most


def test_a_closed_box_is_seen_from_the_front_with_its_lid_over_it(tmp_path: Path) -> None:
    """The skirt of a hinged lid shows the ground alone, the wall below it what is written for the front."""
    sides = 'faces: {colour: "#102030", front: {colour: "#c0a060"}}'
    text = changed(("height: 9 mm}\n  - id: cards", f"height: 9 mm}}\n    {sides}\n  - id: cards"), text=SHELF)
    found = checked(text, tmp_path)
    front = found.drafts["cigars"].front
    assert front is not None
    piece, box = front
    assert box.size == pytest.approx((30.26, 9.6))
    seen = pdf_pixels(piece.art, 254, PER_MM, box)
    assert tuple(seen[int(1.5 * PER_MM), 150]) == pytest.approx((0x10, 0x20, 0x30), abs=2)
    assert tuple(seen[int(7 * PER_MM), 150]) == pytest.approx((0xC0, 0xA0, 0x60), abs=2)
    assert found.drafts["post"].front is None


def test_what_lies_in_a_box_is_not_seen_on_the_shelf_and_the_box_is(tmp_path: Path) -> None:
    text = changed(("contents: [cards, matches]", "contents: [cards, matches]\n    space: desk"), text=SHELF)
    found = checked(text, tmp_path)
    (desk, *others) = fronts(found.plan, found.drafts)
    assert [shown.thing for place in desk.places for shown in place] == ["tea", "cigars", "crate"]
    assert all(shown.spine for place in desk.places for shown in place)
    assert [shown.thing for row in others for place in row.places for shown in place][:1] == ["pins"]


PINS = "inside: {length: 30 mm, width: 20 mm, height: 8 mm}"
TEA = "inside: {length: 30 mm, width: 20 mm, height: 18 mm}"
CIGARS = "inside: {length: 28 mm, width: 18 mm, height: 9 mm}"
CARDS = "inside: {length: 7 mm, width: 4 mm, height: 9 mm}"
SMALL = "inside: {length: 9 mm, width: 9 mm, height: 9 mm}"


@pytest.mark.parametrize(
    ("right", "wrong", "place", "said"),
    [
        (TEA, f"{TEA}\n    lid: 25 mm", "19:10", "a lid 25 mm deep does not go on a base 18.3 mm high"),
        (TEA, f"{TEA}\n    play: 0 mm", "19:11", "with a play of 0 mm on each side the lid cannot go on"),
        (PINS, f"{PINS}\n    tab: 12 mm", "12:10", "tabs of 12 mm are longer than half the side they lie on"),
        (CIGARS, f"{CIGARS}\n    lid: 11 mm", "25:10", "a lid 11 mm deep does not close over a box 9 mm high inside"),
        (PINS, PINS.replace("8 mm", "1 mm"), "10:12", "card of 0.3 mm is too thick for a room of 1 mm"),
        (PINS, PINS.replace("20 mm", "3 mm"), "11:13", "a room 3 mm wide leaves glue tabs of 1.25 mm"),
        (PINS, PINS.replace("30 mm", "300 mm"), "10:12", "the net of the tray with its bleed is "),
        (PINS, "outside: {length: 1 mm, width: 20 mm, height: 8 mm}", "11:14", "1 mm × 20 mm × 8 mm outside leaves no"),
        (f"    {PINS}\n", "", "8:5", "has no size"),
        (PINS, f"{PINS}\n    {PINS.replace('inside', 'outside')}", "8:5", "has both inside and outside"),
        (
            "contents: [cards, matches]",
            f"contents: [cards, matches]\n    {SMALL}",
            "47:13",
            "its contents are 20 mm × 15",
        ),
        ("contents: [post]", f"contents: [crate]\n    {SMALL}", "43:13", "larger than the room inside"),
        ("contents: [cards, matches]", "contents: [cards, crate]", "46:15", "the tray crate would stand in itself"),
        ("contents: [cards, matches]", "contents: [cards, match]", "46:23", "nothing is called 'match'"),
        (CARDS, CARDS.replace("9 mm", "2 mm"), "28:13", "in a room 4 mm from front to back and 2 mm high, tucks of"),
        ("front: {text: PINS}", "front: {picture: none.png}", "12:49", "there is no picture"),
    ],
)
def test_what_cannot_be_made_is_told_with_its_place(
    tmp_path: Path, right: str, wrong: str, place: str, said: str
) -> None:
    found = refused(changed((right, wrong), text=SHELF), tmp_path)
    assert [one for one in found if one.startswith(f"shelf.yaml:{place}: ") and said in one], found


def test_what_is_not_seen_is_told(tmp_path: Path) -> None:
    text = changed(
        ("height: 120 mm}\n", 'height: 120 mm}\n    faces: {left: {text: "LEFT"}}\n'),
        (
            "stock: card\n    space: desk\n    inside: {length: 28 mm",
            "stock: thin\n    space: desk\n    inside: {length: 28 mm",
        ),
        text=SHELF,
    )
    found = told(text, tmp_path)
    assert any("the sleeve has no left side" in one for one in found)
    assert any("thin is 0.09 mm thick; a box under 0.15 mm does not stand" in one for one in found)
