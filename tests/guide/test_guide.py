"""The maker's guide, read back from its PDF: its numbers are those of plan.json, and nothing is left out."""

from __future__ import annotations

import re
from itertools import pairwise
from math import ceil, pi
from pathlib import Path
from typing import Any, NamedTuple

import pypdfium2 as pdfium
import pytest
from pypdf import PdfReader

from bookmaker import check
from bookmaker.ground.geometry import Size
from bookmaker.guide import guide_pages, page_size
from bookmaker.guide.pages import MARGIN
from bookmaker.guide.wrapping import wrapped
from bookmaker.sheets.layout import lay_out
from bookmaker.shelf_file.whereabouts import whereabouts
from bookmaker.things.book.blocks.kinds import KINDS as BLOCKS
from bookmaker.things.book.covers.kinds import KINDS as COVERS
from bookmaker.writers.leaflet_pdf import write_leaflet
from tests.kit.by_kind import box_drafts_of, drafts_of
from tests.kit.guide_shelves import chapters, flattened, guide_shelf, said, shelf_head, spelled, words_of
from tests.kit.shelves import made
from tests.kit.strokes import POINT, strokes_of


class Made(NamedTuple):
    """A random shelf that was made: its plan.json, its folder, and its guide read back."""

    plan: dict[str, Any]
    folder: Path
    front: str
    texts: dict[str, str]
    starts: dict[str, int]


@pytest.fixture(scope="module", params=range(5))
def shelf(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Made:
    folder = tmp_path_factory.mktemp("shelf")
    plan, out = made(guide_shelf(request.param), folder)
    return Made(plan, folder, *chapters(out / "guide.pdf"))


def pieces_of(plan: dict[str, Any], owner: str, value: object) -> list[dict[str, Any]]:
    return [piece for sheet in plan["sheets"] for piece in sheet["pieces"] if piece[owner] == value]


def sides_of(piece: dict[str, Any]) -> tuple[float, float]:
    """Height and width of a piece as it is held upright."""
    xs, ys = zip(*piece["outline_mm"], strict=True)
    width, height = max(xs) - min(xs), max(ys) - min(ys)
    return (width, height) if piece["turned_deg"] else (height, width)


def folds_of(pieces: list[dict[str, Any]]) -> str:
    """How many folds of which kind, valleys first."""
    kinds = [fold["kind"] for piece in pieces for fold in piece["folds"]]
    counts = [(kinds.count(kind), kind) for kind in ("valley", "mountain")]
    return " and ".join(f"{count} {kind}{'' if count == 1 else 's'}" for count, kind in counts if count)


def test_every_kind_has_its_steps() -> None:
    for kind in (*BLOCKS, *COVERS):
        assert not kind.__abstractmethods__, kind
        assert "making" in {name for one in kind.__mro__[:2] for name in vars(one)}, kind


def test_numbers_are_those_of_the_plan(shelf: Made) -> None:
    plan, texts = shelf.plan, shelf.texts
    for number, book in enumerate(plan["books"]):
        text = texts[f"Volume {number + 1}"]
        overall = book["overall_mm"]
        for length in (book["block_alone_mm"], book["block_computed_mm"], book["spine_mm"], overall["thickness"]):
            assert re.search(rf"\b{said(length, 2)} mm", text), (length, text)
        row = [book["block_alone_mm"], book["spine_mm"], overall["thickness"], book["tolerance_mm"]]
        sizes = " ".join(f"{said(length, 2)} mm" for length in row)
        assert re.search(rf"{sizes} {said(overall['depth'], 1)} × {said(overall['height'], 1)} mm", text), sizes
        for part in book["cut_list"]:
            sides = rf"{said(part['width_mm'], 2)} × {said(part['height_mm'], 2)} mm"
            thick = rf"{said(part['thickness_mm'], 2)} mm thick"
            words = rf"{part['count']} {part['what']}s? of {part['material']} \({sides}, {thick}\)"
            assert re.search(words, text), words
        for piece in pieces_of(plan, "book", number):
            height, width = sides_of(piece)
            assert re.search(rf"\({said(width, 1)} × {said(height, 1)} mm\)", text), piece
    for box in plan["slipcases"]:
        inside, outside = box["inside_mm"], box["outside_mm"]
        for sides in (inside, outside):
            words = (
                rf"is {said(sides['width'], 1)} mm wide, {said(sides['height'], 1)} mm high and "
                rf"{said(sides['depth'], 1)} mm deep"
            )
            assert re.search(words, texts[box["name"]])


def test_folds_are_counted_as_they_are_printed(shelf: Made) -> None:
    plan, front, texts = shelf.plan, shelf.front, shelf.texts
    everything = [piece for sheet in plan["sheets"] for piece in sheet["pieces"]]
    assert f"There are {folds_of(everything)} to fold" in front
    seen = set()
    for number in range(len(plan["books"])):
        text, mine = texts[f"Volume {number + 1}"], pieces_of(plan, "book", number)
        for kind, words in (
            ("strip", "Score {folds} on the printed side"),
            ("case", "Prick the marks of the covering's folds ({folds}) through"),
            ("jacket", "Score the four folds"),
        ):
            if of_kind := [piece for piece in mine if piece["kind"] == kind]:
                seen.add(kind)
                assert words.format(folds=folds_of(of_kind)) in text
        if sheets := [piece for piece in mine if piece["kind"] == "section sheet"]:
            seen.add("section sheet")
            assert f"Cut out {len(sheets)} sheet" in text
        if flats := [piece for piece in mine if piece["kind"] == "leaves"]:
            assert f"pages 1–{min(2 * len(flats), shelf.plan['books'][number]['pages'])}, " in text
        for jacket in (piece for piece in mine if piece["kind"] == "jacket"):
            axis = 1 if jacket["turned_deg"] else 0
            edge = min(point[axis] for point in jacket["outline_mm"])
            a, b, c, d = (said(place, 1) for place in sorted(fold["from_mm"][axis] - edge for fold in jacket["folds"]))
            assert re.search(rf"They lie {a}, {b}, {c} and {d} mm from the left edge", text)
    for box in plan["slipcases"]:
        (net,) = pieces_of(plan, "slipcase", box["name"])
        assert f"Score {folds_of([net])} on the printed side" in texts[box["name"]]
    assert {"strip", "section sheet"} <= seen


def is_named(label: str, text: str) -> bool:
    """Whether a label stands there, by itself or in a run: "section 2 of 3" is one of "sections 1 to 3 of 3"."""
    runs = (
        re.escape(label[: found.start()].rstrip()) + r"s ([\d, andto]+?)" + re.escape(label[found.end() :])
        for found in re.finditer(r"(?<= )\d+", label)
    )
    told = ((one, int(found[0])) for one, found in zip(runs, re.finditer(r"(?<= )\d+", label), strict=True))
    return label in text or any(number in spelled(found) for run, number in told for found in re.findall(run, text))


def test_nothing_is_left_out(shelf: Made) -> None:
    """Each book and slipcase begins on the page the first pages name, and lists every part by its label and sheet."""
    plan, folder, front, texts, starts = shelf
    checked = check(folder / "shelf.yaml")
    assert set(texts) == {f"Volume {number}" for number in range(1, 8)} | {"pair"}
    for number, book in enumerate(plan["books"], start=1):
        overall = book["overall_mm"]
        row = rf"\b{number} Volume {number} \D+ {said(overall['thickness'], 2)} {said(overall['height'], 1)} "
        assert re.search(rf"{row}{said(overall['depth'], 1)} {starts[f'Volume {number}']}\b", front)
    for draft in (*drafts_of(checked), *box_drafts_of(checked)):
        for piece in draft.pieces:
            text = texts[checked.plan.plans[piece.owner].name]
            assert is_named(flattened(piece.label[1]), text)
    for sheet in plan["sheets"]:
        for piece in sheet["pieces"]:
            owner = piece["slipcase"] or f"Volume {piece['book'] + 1}"
            numbers = [other["page"] for other in plan["sheets"] if other["file"] == sheet["file"]]
            assert f"{sheet['file']}, sheet {numbers.index(sheet['page']) + 1}: " in texts[owner]


def test_every_sheet_is_printed_once_and_tells_whose_parts_lie_on_it(shelf: Made) -> None:
    """The table has each sheet of plan.json once, with its numbers of books and names of boxes, and no step prints."""
    table = shelf.front[shelf.front.index("Sheets to print, each once") : shelf.front.index("Shopping list")]
    rows = re.findall(
        r"(\S+\.pdf) (\d+) (?:page \d+|pages \d+ and \d+, flipped on the \w+ edge)(.*?)(?=\S+\.pdf \d|$)", table
    )
    told = {(file, int(number)): rest for file, number, rest in rows}
    assert len(rows) == len(told) == len(shelf.plan["sheets"])
    for sheet in shelf.plan["sheets"]:
        of_file = [other["page"] for other in shelf.plan["sheets"] if other["file"] == sheet["file"]]
        rest = told[sheet["file"], of_file.index(sheet["page"]) + 1]
        owners = {piece["slipcase"] or piece["book"] + 1 for piece in sheet["pieces"]}
        assert {int(one) for one in owners if one != "pair"} == set(spelled(re.sub(r"film, [\d.]+ mm|pair", "", rest)))
        assert ("pair" in rest) is ("pair" in owners)
        assert ("film" in rest) is (sheet["stock"] == "card")
    assert not any(re.search(r"\bPrint \S+\.pdf", text) for text in shelf.texts.values())


def test_shopping_list_adds_up(shelf: Made) -> None:
    """Sheets, film and board, summed here from plan.json."""
    plan, front = shelf.plan, shelf.front
    for stock in {sheet["stock"] for sheet in plan["sheets"]}:
        sheets = [sheet for sheet in plan["sheets"] if sheet["stock"] == stock]
        count = len(sheets)
        assert f"{stock}: {count} sheet{'s' if count > 1 else ''} of " in front
        if stock == "card":
            area = sum(sheet["size_mm"][0] * sheet["size_mm"][1] for sheet in sheets) / 100
            assert re.search(rf"clear film for card: 0\.050 mm in all, {said(area, 1)} cm²", front)
    parts = [part for book in plan["books"] for part in book["cut_list"]]
    bought = {id(part): (part["material"], sold(part)) for part in parts}
    for material, thickness in set(bought.values()):
        alike = [part for part in parts if bought[id(part)] == (material, thickness)]
        count = sum(part["count"] for part in alike)
        area = sum(part["count"] * part["height_mm"] * part["width_mm"] for part in alike) / 100
        total = rf"{material}, {said(thickness, 2)} mm thick: {count} parts? of {said(area, 1)} cm² in all"
        assert re.search(total, front), total


def sold(part: dict[str, Any]) -> float:
    """As thick as it is bought: wood in whole millimetres up to six, the next above what is needed."""
    return ceil(part["thickness_mm"] - 1e-6) if part["material"] == "wood" else part["thickness_mm"]


def test_wood_is_bought_as_shops_have_it(tmp_path: Path) -> None:
    """Blocks of 3.7 and 4 mm come from 4 mm; 11 mm are two layers of 6 mm; waste paper is piled up as it is."""
    thick = ("3.7 mm, material: lime wood", "4 mm, material: lime wood", "11 mm", "5.3 mm, material: waste paper")
    books = "".join(
        f"  - {{title: Volume {number}, size: {{height: 21 mm, width: 14 mm}}, cover: {{kind: wrap, stock: card}}, "
        f"block: {{kind: dummy, thickness: {one}}}}}\n"
        for number, one in enumerate(thick, start=1)
    )
    _, out = made(f"{shelf_head()}books:\n{books}", tmp_path)
    words = words_of(out / "guide.pdf")
    assert "lime wood, 4.00 mm thick: 2 parts of 5.9 cm² in all; with a third more for the cuts 7.8 cm²; for" in words
    assert "for blocks of 3.70 and 4.00 mm" in words
    assert "wood, 6.00 mm thick: 2 parts of 5.9 cm² in all" in words
    assert "Glue 2 layers of wood of 6 mm, which shops have, on one another" in words
    assert "waste paper, 5.30 mm thick: 1 part" in words


def test_a_glue_stick_is_bought_whole(tmp_path: Path) -> None:
    """156 cm² as above, of a stick that covers 2000 cm²; spray comes from a can."""
    _, out = made((shelf_head() + WORKED).replace("glue: spray", "glue: glue stick"), tmp_path)
    front = chapters(out / "guide.pdf")[0]
    assert "glue stick: 1 stick, for 156.0 cm²" in front


WORKED = """\
books:
  - title: Volume 1
    size: {height: 20 mm, width: 15 mm}
    block: {kind: accordion, stock: laid, pages: 48}
    cover: {kind: wrap, stock: card, turn_in: 4 mm}
  - title: Volume 2
    size: {height: 20 mm, width: 15 mm}
    block: {kind: accordion, stock: laid, pages: 48}
    cover: {kind: wrap, stock: card}
  - title: Volume 3
    size: {height: 20 mm, width: 15 mm}
    block: {kind: sections, stock: bond, pages: 64, pages_in_section: 16}
    cover: {kind: wrap, stock: card}
"""


def test_glue_and_thread_as_reckoned_by_hand(tmp_path: Path) -> None:
    """50 panels have 24 backs and 2 ends to glue, 3 cm² each, in two books; four sections take 5 · 20 + 150 mm.

    Two turn-ins of 4 × 20 mm take 1.6 cm² of paste. The block of the sections is 32 leaves of 0.08 and 4 threads of
    0.1 mm, 2.96 mm: its spine takes 0.592 cm² of PVA twice, and 2 mm along its first and its last page 0.8 cm²:
    1.984 cm². Wet glue: 1.6 cm² · 0.003 cm · 3.
    """
    _, out = made(shelf_head() + WORKED, tmp_path)
    front, texts, _ = chapters(out / "guide.pdf")
    assert "spray adhesive: 1 can, for 156.0 cm² " in front
    assert "thread, 0.1 mm thick: 0.25 m" in front
    assert "paste or PVA: 1.6 cm², less than 0.1 ml" in front
    assert "PVA: 2.0 cm², less than 0.1 ml" in front
    assert "Besides: spray adhesive, 78.0 cm²; paste or PVA, 1.6 cm²" in texts["Volume 1"]


def test_film_goes_over_whole_sheets(tmp_path: Path) -> None:
    """Three covers on sheets of 60 × 80 mm, 48 cm² of film for each."""
    shelf = (shelf_head() + WORKED).replace("film: 50 um,", "film: 50 um, sheet: 60 x 80 mm,")
    plan, out = made(shelf, tmp_path)
    sheets = sum(sheet["stock"] == "card" for sheet in plan["sheets"])
    assert sheets > 1
    assert f"clear film for card: 0.050 mm in all, {sheets * 48}.0 cm²" in chapters(out / "guide.pdf")[0]


def test_steps_of_a_worked_accordion(tmp_path: Path) -> None:
    """50 panels of 15 mm; 12 of them on the 195 mm of an A4 sheet, so 5 strips of 10. Of 24 films 4 join the strips."""
    _, out = made(shelf_head() + WORKED, tmp_path)
    text = chapters(out / "guide.pdf")[1]["Volume 2"]
    caliper = 0.21
    spine = 50 * 0.075 + 26 * 0.015 + pi / 4 * caliper
    for words in (
        "Score 25 valleys and 20 mountains on the printed side, from mark to mark, one every 15.0 mm",
        "Cut out 5 strips, 150.0 mm long and 20.0 mm high",
        "Fold the other strips in the same way. They begin with a valley. Rub the folds down. Valleys lie at the "
        "spine, on the left when the front is up",
        "Join strip 1 to 2, 2 to 3, 3 to 4 and 4 to 5: the backs of the two end panels are glued together",
        "(page 9 on page 10, page 19 on page 20, page 29 on page 30 and page 39 on page 40)",
        "20 films of spray adhesive, page 1 with page 2 first",
        "4.11 mm was computed, without 0.03 mm of glue under its ends",
        f"They are {spine:.1f} mm apart, the first 15.1 mm from the left edge",
        "Cut the cover out 2.0 mm outside its edges, with its print, 38.5 mm wide and 24.0 mm high",
        "the block by itself 4.11 mm ________ mm shelf.yaml, line 16, in its block: measured_thickness: … mm",
        "the covered book 4.56 mm ________ mm shelf.yaml, line 16: measured_thickness: … mm",
    ):
        assert words in text, words


MIXED = """\
books:
  - title: Volume 1
    size: {height: 21 mm, width: 15 mm}
    block: {kind: dummy, thickness: 4 mm, edges: lines, edge_stock: bond}
    cover: {kind: case, stock: card, boards: board}
  - title: Volume 2
    size: {height: 19 mm, width: 13 mm}
    block: {kind: sections, stock: bond, pages: 48, pages_in_section: 12}
    cover: {kind: wrap, stock: card}
"""


def test_steps_of_a_worked_block_case_and_section(tmp_path: Path) -> None:
    """Numbers by hand: the stiffener is 4 + 2 · 0.03 of paste + 1.6 wide.

    The strip is 0.08 mm and its paste 0.03; a board is W + q − joint wide, the joint 1.5 · 0.8.

    Between its folds the strip is H − 2c + π/4 · c = 21 − 0.16 + 0.063, each end W − c + π/8 · c = 14.951.
    The covering spans the joint from the outside of the stiffener: 1.2 + 0.8 + π/4 · 0.21 = 2.165. Each nested sheet
    is narrower by 2 · π/2 · 0.08 = 0.251: 26, 25.749 and 25.497.
    """
    _, out = made(shelf_head() + MIXED, tmp_path)
    texts = chapters(out / "guide.pdf")[1]
    for words in (
        "Cut the block of wood: 14.89 mm wide, 20.78 mm high, 4.00 mm thick",
        "Score the two folds of the edge strip on the print, 15.0 mm from each end and 20.9 mm apart",
        "Cut two boards of board, 0.80 mm thick: 14.20 mm wide, 21.80 mm high",
        "Cut a stiffener of board, 0.80 mm thick: 5.66 mm wide, 21.80 mm high",
        "2.2 mm between board and stiffener on either side (folded, a joint of 1.2 mm), 5.0 mm from every edge",
        "the joint between back and board is 1.2 mm",
    ):
        assert words in texts["Volume 1"], words
    assert "sheets 2 and 3 of a section are only 25.7 and 25.5 mm wide" in texts["Volume 2"]
    assert "Section 1: sheet 1 pages 1–2, 11–12; sheet 2 pages 3–4, 9–10; sheet 3 pages 5–8." in texts["Volume 2"]


def test_right_to_left_books_are_folded_from_the_right(tmp_path: Path) -> None:
    shelf = (shelf_head() + WORKED).replace("title: Volume 2", "title: Volume 2\n    direction: right-to-left")
    _, out = made(shelf, tmp_path)
    texts = chapters(out / "guide.pdf")[1]
    for words in ("with the front up the spine is on the right", "from its right-hand end", "on the right when the"):
        assert (words in texts["Volume 2"], words in texts["Volume 1"]) == (True, False)


def test_measured_blocks_say_so(tmp_path: Path) -> None:
    shelf = (shelf_head() + WORKED).replace("laid, pages: 48", "laid, pages: 48, measured_thickness: 4.31 mm", 1)
    _, out = made(shelf, tmp_path)
    text = chapters(out / "guide.pdf")[1]["Volume 1"]
    assert "The cover is made for the 4.31 mm that you measured (computed 4.11 mm), without 0.03 mm of glue" in text
    assert (
        "the block by itself 4.11 mm 4.31 mm shelf.yaml, line 12, in its block: measured_thickness: … mm (it is there)"
        in text
    )


HOLES = "block: {kind: sections, stock: bond, pages: 64, fold: octavo, stations: 3}"


@pytest.mark.parametrize("direction", ["left-to-right", "right-to-left"])
def test_holes_are_named_from_the_tail(tmp_path: Path, direction: str) -> None:
    """Outermost holes a tenth of the height from head and tail, on the spine fold as it is printed."""
    shelf = f"{shelf_head()}books:\n  - title: Volume 1\n    size: {{height: 20 mm, width: 14 mm}}\n"
    shelf += f"    direction: {direction}\n    {HOLES}\n    cover: {{kind: wrap, stock: card}}\n"
    _, out = made(shelf, tmp_path)
    text = chapters(out / "guide.pdf")[1]["Volume 1"]
    assert "Prick three holes through the fold with the needle, at the marks on its back" in text
    assert "They are 2.0, 10.0 and 18.0 mm above the tail of the page" in text
    over = "right half over the left" if direction == "left-to-right" else "left half over the right"
    folds = re.findall(r"Fold the (.+?) \(drawing \d\)\. The fold is sharpened", text)
    assert folds == [over, "upper half down over the lower", over]


LONG = "Wrynecks" * 15
HEBREW = "ספר המים הגבוהים"


@pytest.mark.parametrize("sheet", ["A4", "letter", "A5", "100 x 160 mm", "A3"])
def test_nothing_leaves_the_page(tmp_path: Path, sheet: str) -> None:
    """With a title that has no blanks, and paper on which the guide is not set."""
    shelf = guide_shelf(1).replace("Volume 1\n", f"{LONG}\n").replace("sheet: letter", f"sheet: {sheet}")
    shelf = shelf.replace("spaces:", "  huge: {caliper: 75 um, sheet: A3}\nspaces:")
    for stock in ("laid", "card", "bond"):
        shelf = shelf.replace(f"stock: {stock}", "stock: huge")
    _, out = made(shelf, tmp_path)
    keeps_to_the_margins(out / "guide.pdf")


EXTREMES = """\
shelf: Extremes
printer: {sheet: A5}
stocks:
  tissue: {caliper: 20 um, sheet: A4}
  laid: {caliper: 100 um, sheet: A3}
spaces:
  far too small: {width: 8 mm, height: 4 mm, depth: 4 mm}
  hall: {width: 2 m, height: 1 m, depth: 1 m}
books:
  - title: A Crumb
    size: {height: 3 mm, width: 2 mm}
    block: {kind: dummy, thickness: 9 mm}
    cover: {kind: wrap, stock: tissue}
    space: far too small
  - title: A Brick
    size: {height: 30 mm, width: 10 mm}
    block: {kind: accordion, stock: laid, pages: 600}
    cover: {kind: wrap, stock: laid}
    jacket: {stock: tissue}
    space: far too small
  - title: A Quire
    size: {height: 140 mm, width: 100 mm}
    block: {kind: sections, stock: tissue, pages: 160, fastening: stapled}
    cover: {kind: wrap, stock: laid}
    space: hall
"""


def test_the_smallest_and_the_largest_books_keep_to_the_page(tmp_path: Path) -> None:
    _, out = made(EXTREMES, tmp_path)
    keeps_to_the_margins(out / "guide.pdf")


def keeps_to_the_margins(guide: Path) -> None:
    """Every letter, measured by PDFium, and every line lies inside the margins of its page."""
    with pdfium.PdfDocument(guide) as pdf:
        for number, page in enumerate(pdf, start=1):
            width, height = (side * POINT for side in page.get_size())
            text = page.get_textpage()
            said_here = text.get_text_range()
            for index in range(text.count_chars()):
                left, low, right, top = (side * POINT for side in text.get_charbox(index))
                assert left > MARGIN - 0.6 or left == right, (number, said_here[index - 20 : index + 5])
                assert right < width - MARGIN + 0.6, (number, said_here[index - 20 : index + 5])
                assert low > MARGIN - 1 or low == top
                assert top < height - MARGIN + 1
            for stroke in strokes_of(guide, number):
                for x, y in (stroke.start, stroke.end):
                    assert MARGIN - 0.6 < x < width - MARGIN + 0.6, number
                    assert MARGIN < y < height - MARGIN + 0.6, number


def test_pages_are_the_printers_unless_they_cannot_be_read() -> None:
    assert page_size(Size(215.9, 279.4)) == (215.9, 279.4)
    assert page_size(Size(210, 148)) == (148, 210)
    for unreadable in (Size(100, 160), Size(140, 150), Size(297, 420), Size(148, 1200)):
        assert page_size(unreadable) == (210, 297)


def test_words_read_from_the_right_keep_their_order(tmp_path: Path) -> None:
    """A Hebrew title comes back whole from the heading, as PDFium reads it."""
    _, out = made((shelf_head() + WORKED).replace("title: Volume 2", f"title: {HEBREW}"), tmp_path)
    with pdfium.PdfDocument(out / "guide.pdf") as pdf:
        text = "".join(page.get_textpage().get_text_range() for page in pdf)
    assert HEBREW in flattened(text)


def test_lines_are_full_and_none_is_too_wide() -> None:
    """No line of a text could take the first word of the next one."""
    text = "Scissors and paste make a shelf of books that no one wrote, bound by hand at one inch to the foot. " * 3
    lines = wrapped(text.strip(), "sans", 3.2, 60.0)
    assert " ".join(line.text for line in lines).split() == text.split()
    for line, after in pairwise(lines):
        assert line.width <= 60.0
        longer = wrapped(f"{line.text} {after.text.split()[0]}", "sans", 3.2, 1000.0)
        assert longer[0].width > 60.0
    assert all(line.width <= 20.0 for line in wrapped("Donaudampfschiffahrtsgesellschaft", "sans", 3.2, 20.0))


def test_numbers_keep_to_their_units() -> None:
    for width in range(30, 90, 2):
        text = "cut it 18.0 × 11.5 mm wide and high, 2.25 mm thick"
        lines = [line.text for line in wrapped(text, "sans", 3.2, width)]
        assert not any(re.search(r"(\d|×)$", line) or re.match(r"mm|×", line) for line in lines[:-1] + lines[1:])


def test_a_guide_to_some_sheets_only(tmp_path: Path) -> None:
    """Volume 2 is not printed, nor are the covers: no page for the one, no sheets named for the others."""
    (tmp_path / "shelf.yaml").write_text(shelf_head() + WORKED, encoding="utf-8")
    checked = check(tmp_path / "shelf.yaml")
    pieces = [piece for draft in drafts_of(checked) for piece in draft.pieces]
    some = [piece for piece in pieces if piece.owner != "volume-2" and piece.flat.stock != "card"]
    plan = checked.plan
    sheets = [(f"{sheet.stock.name}.pdf", 1, sheet) for sheet in lay_out(some, plan.stocks, 2.0).sheets]
    where = {id: whereabouts(checked.shelf, field) for id, field in plan.register.fields.items()}
    pages = guide_pages(plan, sheets, where)
    write_leaflet(tmp_path / "guide.pdf", "Shelf", pages, Size(210, 297))
    front, texts, _ = chapters(tmp_path / "guide.pdf")
    assert set(texts) == {"Volume 1", "Volume 3"}
    assert "2 books at 1:12" in front
    assert "laid: 1 sheet of A4" in front
    assert "card: " not in front
    for text in texts.values():
        assert "Take these parts from the sheets that were printed before." in text


def test_the_same_shelf_has_the_same_guide(tmp_path: Path) -> None:
    guides = [made(guide_shelf(2), tmp_path / name)[1] / "guide.pdf" for name in ("one", "two")]
    assert guides[0].read_bytes() == guides[1].read_bytes()


def test_a_stock_may_be_called_guide(tmp_path: Path) -> None:
    shelf = (shelf_head() + WORKED).replace("laid", "guide")
    plan, out = made(shelf, tmp_path)
    assert {"guide.pdf", "guide-2.pdf"} <= set(plan["files"])
    assert {sheet["file"] for sheet in plan["sheets"]} == {"guide-2.pdf", "bond.pdf", "card.pdf"}
    assert "maker's guide" in PdfReader(out / "guide.pdf").pages[0].extract_text()


def test_blocks_that_fill_are_cut_last(tmp_path: Path) -> None:
    """Their thickness follows that of all others on the space; measured, they are blocks like any other."""
    fill = "block: {kind: dummy, thickness: fill, at_most: 9 mm"
    last = "Leave this block for last"
    for block, told in ((fill, True), (f"{fill}, measured_thickness: 8 mm", False)):
        dummy = f"  - title: Volume 4\n    size: {{height: 20 mm, width: 15 mm}}\n    space: upper\n    {block}}}\n"
        text = shelf_head() + WORKED + dummy + "    cover: {kind: wrap, stock: card}\n"
        front, texts, _ = chapters(made(text, tmp_path / str(told))[1] / "guide.pdf")
        assert ("Cut blocks that fill their space last, when the others are measured" in front) is told
        assert [last in texts[f"Volume {number}"] for number in (1, 2, 3, 4)] == [False, False, False, told]


def test_finished_rows_are_called_by_name(tmp_path: Path) -> None:
    box = "slipcases:\n  pair: {books: [1, 3], stock: card, clearance: 1 mm}\n"
    jacket = "  - title: Volume 1"
    text = shelf_head() + WORKED.replace(jacket, f"{jacket}\n    jacket: {{stock: bond}}") + box
    _, texts, _ = chapters(made(text, tmp_path)[1] / "guide.pdf")
    assert "measured_rows: at the left margin: - {books: [Volume 1, Volume 3], thickness: … mm}" in texts["pair"]
    assert "measured_rows: at the left margin: - {books: [Volume 1], thickness: … mm}" in texts["Volume 1"]


def test_warnings_stand_with_the_thing_they_are_about(tmp_path: Path) -> None:
    """White letters on white: on the page of that book, and on no other."""
    plain = "    cover: {kind: wrap, stock: card}\n"
    pale = f"    design: {{style: plain, colour: '#ffffff', ink: '#fdfdfd'}}\n{plain}"
    _, out = made((shelf_head() + WORKED).replace(plain, pale, 1), tmp_path)
    _, texts, _ = chapters(out / "guide.pdf")
    assert ["under 3; choose" in texts[f"Volume {number}"] for number in (1, 2, 3)] == [False, True, False]
    assert texts["Volume 2"].index("Caution: before you print this") < texts["Volume 2"].index("Parts, width")
