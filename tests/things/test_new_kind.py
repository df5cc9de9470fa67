"""A kind of thing that the house has never seen is defined here alone and goes the whole way; nothing else knows it."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Literal

import ezdxf
import pytest
from pydantic import Field
from pypdf import PdfReader

from bookmaker import check, make
from bookmaker.cli.tables import shelf_tables
from bookmaker.ground.art import Filled
from bookmaker.ground.drawing import Colour
from bookmaker.ground.geometry import Axis, Point, Rect
from bookmaker.ground.outlines import circle
from bookmaker.ground.problems import CommandError, Problem, ShelfFileError
from bookmaker.sheets.cutting import Stick
from bookmaker.sheets.flat import Flat, Fold, FoldKind, Panel, Role
from bookmaker.sheets.sheet_room import flat_too_large
from bookmaker.sheets.toolpaths import Tool
from bookmaker.shelf.choice import Choice
from bookmaker.shelf.wishes import Wishes
from bookmaker.shelf_file.fields.measures import PageSide
from bookmaker.shelf_file.fields.words import Ink, StockName
from bookmaker.things.common_steps import FOLDING, KNIFE, glue_over
from bookmaker.things.draft import Draft
from bookmaker.things.families import all_families
from bookmaker.things.listed import FlatPlan, ListedEntry, ListedFamily, ListedThing, pieces_of
from bookmaker.things.making import Bench, Chapter, Making
from bookmaker.things.terms import Terms
from bookmaker.things.thing import Around, Plan
from tests.kit.pixels import pdf_pixels
from tests.kit.shelves import written

# The kind begins here.


class CardEntry(ListedEntry):
    """A folded card with a round hole in its front, that stands on a stick."""

    kind: Literal["peephole card"] = "peephole card"
    stock: StockName = Field(description="name of the card, as under stocks")
    height: PageSide = Field(description="height of the folded card")
    width: PageSide = Field(description="width of the folded card")
    hole: PageSide = Field(description="width of the hole")
    colour: Ink = Field(Colour.from_hex("#2a4057"), description="its colour")


class Card(ListedThing[CardEntry]):
    """A card as it was written."""

    def plan(self, terms: Terms, held: Sequence[Plan]) -> FlatPlan[Card]:
        """Back and front beside one another, with a hole in the middle of the front."""
        entry, whole = self.entry, Rect(0, 0, 2 * self.entry.width, self.entry.height)
        back, front = (Rect(x, 0, entry.width, entry.height) for x in (0.0, entry.width))
        fold = Fold(FoldKind.MOUNTAIN, Point(entry.width, 0), Point(entry.width, entry.height))
        panels = (Panel(Role.BACK, back), Panel(Role.FRONT, front))
        hole = circle(front.centre, entry.hole / 2)
        flat = Flat("card", "card", entry.stock, whole.corners, (fold,), panels, Axis.Y, 1.0, holes=(hole,))
        problems = [*flat_too_large("the card", flat, terms.stocks[entry.stock], ("stock",))]
        if entry.hole > (most := min(front.size) - 4):
            problems.append(Problem("its hole leaves too little card", f"write at most {most:g} mm", field=("hole",)))
        if problems:
            raise ShelfFileError(problems)
        foot = Stick("foot", "basswood", entry.width, 3.0, 2.0, (45.0, 45.0))
        return FlatPlan(thing=self, made_as="folded card", flats=(flat,), sticks=(foot,))


class Cards(ListedFamily[CardEntry, FlatPlan[Card]]):
    """Cards to look through."""

    noun, listed, made = "card", CardEntry, Card

    def draw(self, plan: FlatPlan[Card], held: Sequence[Plan]) -> Draft:
        """One colour, out to the bleed."""
        return Draft(pieces_of(plan, [Filled(plan.flats[0].inked(), plan.thing.entry.colour)]))

    def chapter(self, plan: FlatPlan[Card], bench: Bench, around: Around) -> Chapter:
        """Print it, cut the hole and then the outline, fold it, glue it to its foot."""
        (flat,), (foot,) = plan.flats, plan.sticks
        steps = ("Cut the hole first, then the card.", "Fold the card.", "Glue it on its foot.")
        glue = glue_over(bench.glue_of(flat), [Rect(0, 0, foot.length, foot.width)])
        making = Making("The card", steps, takes=(flat.kind,), tools=(*KNIFE, *FOLDING), supplies=(glue,))
        return Chapter(f"Card: {plan.name}", "A card to look through.", (making,))


# The kind ends here.

KINDS = (*all_families(), Cards())

SHELF = """\
shelf: Through the Keyhole
printer: {cutting_machine: yes}
stocks:
  card: {caliper: 300 um, grain: long}
things:
  - id: lighthouse
    kind: peephole card
    title: The Lighthouse
    stock: card
    height: 30 mm
    width: 20 mm
    hole: 8 mm
  - {id: harbour, kind: peephole card, stock: card, height: 24 mm, width: 24 mm, hole: 10 mm}
"""


def made(folder: Path, wishes: Wishes = Wishes()) -> tuple[dict[str, Any], Path]:  # noqa: B008 (a frozen value)
    make(written(SHELF, folder), folder / "out", wishes=wishes, families=KINDS)
    return json.loads((folder / "out" / "plan.json").read_text(encoding="utf-8")), folder / "out"


def refused(folder: Path, right: str, wrong: str) -> list[str]:
    assert right in SHELF
    with pytest.raises(ShelfFileError) as caught:
        check(written(SHELF.replace(right, wrong), folder), families=KINDS)
    return [str(problem) for problem in caught.value.problems]


def text_of(path: Path) -> str:
    return " ".join(" ".join(page.extract_text().split()) for page in PdfReader(path).pages)


def test_the_kind_takes_less_than_eighty_lines() -> None:
    """From its first line to its last, and the imports that nothing but the kind needs."""
    lines = Path(__file__).read_text(encoding="utf-8").split("\n")
    begins, ends = (lines.index(f"# The kind {word} here.") for word in ("begins", "ends"))
    kind = [line for line in lines[begins + 1 : ends] if line.strip()]
    imports = [line for line in lines[:begins] if line.startswith(("import ", "from "))]
    assert len(kind) + len(imports) < 80


def test_it_is_planned_printed_nested_and_listed_in_the_plan(tmp_path: Path) -> None:
    plan, _ = made(tmp_path)
    first, second = plan["things"]
    assert (first["id"], second["id"]) == ("lighthouse", "harbour")
    assert first["sticks"] == [
        {
            "what": "foot",
            "material": "basswood",
            "count": 1,
            "length_mm": 20.0,
            "width_mm": 3.0,
            "thickness_mm": 2.0,
            "bevels_deg": [45.0, 45.0],
        }
    ]
    (sheet,) = plan["sheets"]
    pieces = {piece["owner"]: piece for piece in sheet["pieces"]}
    assert pieces.keys() == {"lighthouse", "harbour"}
    assert [len(piece["folds"]) for piece in pieces.values()] == [1, 1]
    for owner, width in (("lighthouse", 8), ("harbour", 10)):
        (hole,) = pieces[owner]["holes_mm"]
        box = Rect.around([Point(*point) for point in hole])
        assert (box.width, box.height) == pytest.approx((width, width), abs=1e-3)
    assert not plan["problems"]


def test_it_is_cut_by_machine_the_hole_before_the_outline(tmp_path: Path) -> None:
    _, out = made(tmp_path)
    drawing = ezdxf.readfile(out / "machine" / "card-1.dxf")
    lines = [(line.dxf.layer, len(list(line.get_points()))) for line in drawing.modelspace()]
    assert [layer for layer, _ in lines].count(Tool.SCORE) == 2
    corners = [count for layer, count in lines if layer == Tool.CUT]
    assert [count > 4 for count in corners] == [True, False, True, False]


def test_it_is_in_the_guide_in_the_shopping_list_and_in_the_cutting_list(tmp_path: Path) -> None:
    _, out = made(tmp_path)
    guide, cutting = text_of(out / "guide.pdf"), text_of(out / "cutting-list.pdf")
    assert guide.count("Card: The Lighthouse") == guide.count("Card: harbour") == 1
    assert "basswood strip, 3.00 × 2.00 mm: 2 sticks, 46 mm in all" in guide
    assert "saw by hand: 1 foot of basswood, 20.00 mm over all" in guide
    assert "card: 1 sheet of A4" in guide
    assert "craft knife" in guide
    assert "The Lighthouse foot both 45° 1 20.00 14.00" in cutting


@pytest.mark.parametrize("called", ["lighthouse", "The Lighthouse"])
def test_it_is_made_alone_by_id_and_by_name(tmp_path: Path, called: str) -> None:
    plan, _ = made(tmp_path, Wishes(choice=Choice(only=(called,))))
    assert [piece["owner"] for sheet in plan["sheets"] for piece in sheet["pieces"]] == ["lighthouse"]
    with pytest.raises(CommandError) as caught:
        made(tmp_path, Wishes(choice=Choice(only=("The Lightouse",))))
    assert "did you mean 'The Lighthouse'?" in str(caught.value.problems[0])


def test_its_picture_has_the_hole(tmp_path: Path) -> None:
    checked = check(written(SHELF, tmp_path), families=KINDS)
    faces = checked.drafts["lighthouse"].faces
    assert {str(role) for role in faces} == {"front", "back"}
    front = faces[Role.FRONT]
    pixels = pdf_pixels(front.art, 254, 10, front.box)
    assert tuple(pixels[20, 20]) == pytest.approx((0x2A, 0x40, 0x57), abs=2)
    assert tuple(pixels[150, 100]) == (255, 255, 255)


def test_check_shows_it_on_a_shelf_without_books(tmp_path: Path) -> None:
    checked = check(written(SHELF, tmp_path), families=KINDS)
    (table,) = shelf_tables(checked.plan)
    rows = [cells for cells, _ in table.rows]
    assert rows == [("The Lighthouse", "folded card", "2", "–"), ("harbour", "folded card", "2", "–")]


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("hole: 8 mm", "hole: 18 mm", "12:11: its hole leaves too little card; write at most 16 mm"),
        ("hole: 8 mm", "hole: 8 ells", "12:11: The Lighthouse: hole: 'ells' is not a unit"),
        ("    hole: 8 mm\n", "    hole: 8 mm\n    hoel: 8 mm\n", "13:5: The Lighthouse has an unknown key 'hoel'"),
        ("    hole: 8 mm\n", "", "6:5: The Lighthouse has no hole; add hole: width of the hole"),
        ("    stock: card", "    stock: crad", "9:12: there is no stock 'crad'; did you mean 'card'?"),
        ("id: harbour", "id: lighthouse", "13:10: the id lighthouse is that of The Lighthouse already"),
        ("kind: peephole card\n", "kind: peephole crad\n", "7:11: The Lighthouse: kind: 'peephole crad' is not known"),
        ("width: 20 mm", "width: 120 mm", "9:12: the card with its bleed is 242 mm × 32 mm, but"),
    ],
)
def test_its_faults_come_out_with_file_line_and_column(tmp_path: Path, right: str, wrong: str, told: str) -> None:
    (found,) = refused(tmp_path, right, wrong)
    assert found.startswith(f"shelf.yaml:{told}")
