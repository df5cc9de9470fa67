"""A stock with a printer of its own: its sheets are drawn for that printer, and all others for the usual one."""

from __future__ import annotations

import json
import re
from math import dist
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from bookmaker import check
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.stock import Stock, make_stock
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.schema import shelf_schema
from tests.kit.by_kind import books_of
from tests.kit.command_line import bookmaker
from tests.kit.guide_shelves import flattened
from tests.kit.shelves import made
from tests.kit.strokes import Stroke, strokes_of

INKJET, LASER = (149.4, 150.3), (150.75, 149.25)
"""What the level and the upright rule of the ruler page measure on two printers, in mm."""

SHELF = """\
shelf: Two Trays
printer: {usual}
stocks:
  page: {{caliper: 75 um, grain: long}}
  laid: {{caliper: 75 um, grain: long, printer: {other}}}
  card: {{caliper: 160 um}}
defaults:
  size: {{height: 21 mm, width: 15 mm}}
  cover: {{kind: wrap, stock: card}}
  inside: {{kind: squared}}
books:
  - title: One Way
    block: {{kind: {kind}, stock: page, pages: 24}}
  - title: Another Way
    block: {{kind: {kind}, stock: laid, pages: 24}}
"""

PROFILE = "name: photo printer, rear tray\nsheet: A4\n"


def shelf(usual: str = "{}", other: str = "{}", kind: str = "accordion") -> str:
    return SHELF.format(usual=usual, other=other, kind=kind)


def rules(printer: tuple[float, float]) -> str:
    return f"rules: {{across: {printer[0]} mm, up: {printer[1]} mm}}"


def lengths(strokes: list[Stroke], printer: tuple[float, float] = (150.0, 150.0)) -> list[float]:
    """How long the lines of a sheet measure when a printer has printed it, in mm."""
    across, up = (measured / 150 for measured in printer)
    return sorted(dist((a.start[0] * across, a.start[1] * up), (a.end[0] * across, a.end[1] * up)) for a in strokes)


def stocks(folder: Path, text: str, profile: str = PROFILE) -> dict[str, Stock]:
    (folder / "photo.yaml").write_text(profile, encoding="utf-8")
    (folder / "shelf.yaml").write_text(text, encoding="utf-8")
    spec = read_shelf(folder / "shelf.yaml").spec
    return {name: make_stock(name, entry, spec.printer) for name, entry in spec.stocks.items()}


def test_the_same_book_measures_right_from_both_printers(tmp_path: Path) -> None:
    _, true = made(shelf(), tmp_path / "true")
    _, out = made(shelf(f"{{{rules(INKJET)}}}", f"{{{rules(LASER)}}}"), tmp_path / "corrected")
    for file, printer, other in (("page.pdf", INKJET, LASER), ("laid.pdf", LASER, INKJET), ("card.pdf", INKJET, LASER)):
        wanted = pytest.approx(lengths(strokes_of(true / file, 1)), abs=0.01)
        corrected = strokes_of(out / file, 1)
        assert lengths(corrected, printer) == wanted
        assert lengths(corrected, other) != wanted


def test_pieces_keep_to_the_margins_of_their_own_printer(tmp_path: Path) -> None:
    plan, out = made(shelf("{margins: 4 mm}", "{margins: {left: 30 mm, bottom: 40 mm}}"), tmp_path)
    for sheet in plan["sheets"]:
        low_x, low_y = (30, 40) if sheet["stock"] == "laid" else (4, 4)
        corners = [corner for piece in sheet["pieces"] for corner in piece["outline_mm"]]
        drawn = [at for stroke in strokes_of(out / sheet["file"], 1) for at in (stroke.start, stroke.end)]
        # the test line begins at the left edge, above a line of notes
        for found, slack in ((corners, 20), (drawn, 4.6)):
            assert low_x - 0.01 <= min(x for x, _ in found) <= low_x + slack
            assert low_y - 0.01 <= min(y for _, y in found) <= low_y + slack + 0.01


def test_the_reverse_is_turned_and_moved_as_its_own_printer_asks(tmp_path: Path) -> None:
    usual = "{turn: long edge, reverse_offset: {right: 0.5 mm}}"
    other = "{turn: short edge, reverse_offset: {right: -0.25 mm, up: 1 mm}}"
    _, plain = made(shelf("{turn: long edge}", "{turn: short edge}", "leaves"), tmp_path / "plain")
    _, moved = made(shelf(usual, other, "leaves"), tmp_path / "moved")
    for file, (right, up) in (("page.pdf", (-0.5, 0.0)), ("laid.pdf", (0.25, -1.0))):
        before, after = (strokes_of(out / file, 2)[0].start for out in (plain, moved))
        assert (after[0] - before[0], after[1] - before[1]) == pytest.approx((right, up), abs=0.01)
    guide = flattened(" ".join(page.extract_text() for page in PdfReader(moved / "guide.pdf").pages))
    assert "page.pdf 1 pages 1 and 2, flipped on the long edge" in guide
    assert "laid.pdf 1 pages 1 and 2, flipped on the short edge" in guide


def test_the_sheet_the_guide_and_the_plan_name_the_printer(tmp_path: Path) -> None:
    tmp_path.joinpath("photo.yaml").write_text(PROFILE, encoding="utf-8")
    plan, out = made(shelf(other="photo.yaml"), tmp_path)
    assert [(sheet["stock"], sheet["printer"]) for sheet in plan["sheets"]] == [
        ("page", None),
        ("laid", "photo printer, rear tray"),
        ("card", None),
    ]
    assert "laid · photo printer, rear tray · sheet 1 of 1" in text_of(out / "laid.pdf")
    assert "Two Trays · page · sheet 1 of 1" in text_of(out / "page.pdf")
    guide = text_of(out / "guide.pdf")
    assert "laid.pdf 1 page 1, on photo printer, rear tray" in guide
    assert re.search(r"page.pdf 1 page 1 (?!on photo)", guide)


def text_of(file: Path) -> str:
    return flattened(" ".join(page.extract_text() for page in PdfReader(file).pages))


def test_letters_are_judged_by_the_dots_of_the_printer_they_go_through(tmp_path: Path) -> None:
    text = shelf("{resolution: 300 dpi}", "{resolution: 1200 dpi}").replace("kind: squared", "kind: text, file: a.txt")
    (tmp_path / "a.txt").write_text("The tide went out and stayed out.\n", encoding="utf-8")
    plan, _ = made(text, tmp_path)
    coarse, fine = (book["legibility"]["dots"] for book in plan["books"])
    assert fine == pytest.approx(4 * coarse, abs=0.2)
    titles = [book["spine_title"] for book in plan["books"]]
    assert [title["dots"] for title in titles] == [
        pytest.approx(title["x_height_mm"] / 25.4 * 300, abs=0.06) for title in titles
    ]


def test_pages_and_edges_are_drawn_as_fine_as_their_printer_draws(tmp_path: Path) -> None:
    text = (
        shelf("{resolution: 300 dpi}", "{resolution: 1200 dpi}")
        + """\
  - title: Dummy
    block: {kind: dummy, thickness: 5 mm, edges: lines, edge_stock: laid}
  - title: Bare Dummy
    block: {kind: dummy, thickness: 5 mm}
"""
    )
    (tmp_path / "shelf.yaml").write_text(text, encoding="utf-8")
    books = books_of(check(tmp_path / "shelf.yaml").plan)
    assert [book.frame.resolution_dpi for book in books] == [300, 1200, 1200, 300]


def test_the_command_line_names_printers_and_their_dots(tmp_path: Path) -> None:
    text = shelf("{resolution: 300 dpi}", "photo.yaml").replace("kind: squared", "kind: text, file: a.txt")
    for name, content in (("a.txt", "The tide went out.\n"), ("photo.yaml", PROFILE), ("shelf.yaml", text)):
        (tmp_path / name).write_text(content, encoding="utf-8")
    for command, told in (("check", "and 300 or 600 dpi"), ("make", "laid (on photo printer, rear tray): no layout")):
        into = ["--into", str(tmp_path / "out")] if command == "make" else []
        assert told in bookmaker(command, str(tmp_path / "shelf.yaml"), *into).out


def test_titles_are_judged_by_the_printer_of_their_cover(tmp_path: Path) -> None:
    text = shelf("{resolution: 1200 dpi}").replace("160 um", "160 um, printer: {resolution: 60 dpi}")
    (tmp_path / "shelf.yaml").write_text(text, encoding="utf-8")
    told = [problem.message for problem in check(tmp_path / "shelf.yaml").problems]
    assert any("printer dots: too small to print" in message for message in told)


def test_a_profile_stands_by_itself_and_a_group_beside_the_usual_printer(tmp_path: Path) -> None:
    usual = "{name: study, margins: 7 mm, resolution: 300 dpi, turn: short edge, rules: {across: 149 mm}}"
    own = stocks(tmp_path, shelf(usual, "{profile: photo.yaml, margins: 9 mm}"))["laid"].printer
    assert (own.margins.left, own.resolution, own.turn.value, own.rules.across) == (9, 600, "long edge", 150)
    beside = stocks(tmp_path, shelf(usual, "{margins: 9 mm}"))["laid"]
    path = beside.printer
    assert (path.margins.left, path.resolution, path.turn.value, path.rules.across) == (9, 300, "short edge", 149)
    assert (path.name, beside.printed_on) == (None, "")


def test_rules_and_diagonals_are_of_one_print(tmp_path: Path) -> None:
    usual = "{rules: {across: 149 mm, up: 149 mm}, diagonals: {rising: 140.5 mm, falling: 140.5 mm}}"
    path = stocks(tmp_path, shelf(usual, "{rules: {across: 151 mm, up: 151 mm}}"))["laid"].printer
    assert (path.rules.across, path.diagonals) == (151, None)


def test_the_sheet_is_that_of_the_stock_then_of_its_printer_then_the_usual_one(tmp_path: Path) -> None:
    profile = PROFILE.replace("A4", "A5")
    found = stocks(tmp_path, shelf("{sheet: letter}", "photo.yaml"), profile)
    assert [(stock.sheet.name, stock.printed_on) for stock in found.values()] == [
        ("letter", ""),
        ("A5", "photo printer, rear tray"),
        ("letter", ""),
    ]
    text = shelf("{sheet: letter}", "photo.yaml, sheet: A3")
    assert stocks(tmp_path, text, profile)["laid"].sheet.name == "A3"


def test_off_cuts_go_through_the_printer_of_their_stock(tmp_path: Path) -> None:
    stock = stocks(tmp_path, shelf(other="{margins: 12 mm}, off_cuts: 100 x 120 mm"))["laid"]
    assert [(cut.printable.x, cut.printer) for cut in stock.off_cuts] == [(12, stock.printer)]


@pytest.mark.parametrize(
    ("other", "told"),
    [
        ("lost.yaml", "shelf.yaml:5:48: there is no profile lost.yaml; "
         "write one with bookmaker ruler --measured, or write the keys of the printer here"),
        ("{profile: photo.yaml, name: office}", "shelf.yaml:5:76: photo.yaml is the profile of "
         "'photo printer, rear tray', not of 'office'; name the other profile, or leave name out"),
        ("{margins: 5 in}", "shelf.yaml:5:58: stocks.laid.printer.margins: 5 in is out of range; "
         "write a length from 0 mm to 100 mm"),
        ("{marigns: 5 mm}", "shelf.yaml:5:49: stocks.laid.printer has an unknown key 'marigns'; did you mean margins?"),
        ("{margins: 95 mm}", "shelf.yaml:5:48: the margins leave 20 mm × 107 mm of A4; "
         "write smaller margins or a larger sheet: 40 mm must be left each way"),
    ],
)  # fmt: skip
def test_printers_that_cannot_be_used(tmp_path: Path, other: str, told: str) -> None:
    (tmp_path / "photo.yaml").write_text(PROFILE, encoding="utf-8")
    (tmp_path / "shelf.yaml").write_text(shelf(other=other), encoding="utf-8")
    with pytest.raises(ShelfFileError) as refused:
        check(tmp_path / "shelf.yaml")
    assert str(refused.value) == told


def test_the_schema_knows_a_printer_by_its_file_too() -> None:
    printer: Any = shelf_schema()["$defs"]["StockEntry"]["properties"]["printer"]
    assert {"type": "string"} in printer["anyOf"]
    assert {"$ref": "#/$defs/PaperPath"} in printer["anyOf"]
    assert json.dumps(printer)
