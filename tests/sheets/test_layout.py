"""Pieces on sheets: the paper they take, the cuts that part them, off-cuts, and the order of books."""

from __future__ import annotations

import tempfile
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from bookmaker import make
from bookmaker.cli.tables import paper_line
from bookmaker.ground.art import NOTHING, Stroked, Written
from bookmaker.ground.geometry import Axis, Rect, Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.printer_entry import PrinterEntry
from bookmaker.paper.stock import make_stock
from bookmaker.paper.stock_entry import StockEntry
from bookmaker.sheets.flat import Flat
from bookmaker.sheets.layout import Sheet, lay_out
from bookmaker.sheets.marks import furnish
from bookmaker.sheets.piece import Piece
from bookmaker.sheets.tally import Tally
from tests.kit.papers import paper
from tests.kit.shelves import made, on_two_papers
from tests.kit.strokes import POINT

BOOK = """\
  - title: Volume {number}
    size: {{height: {height} mm, width: {width} mm}}
    block: {{kind: accordion, stock: page, pages: {pages}}}
    cover: {{kind: wrap, stock: cover}}
"""

VARIED = [(21, 15, 48), (24.5, 16.3, 24), (19, 13.2, 30), (18, 12, 20), (26, 14, 40), (15, 11, 16)]


def laid_out(
    folder: Path,
    books: list[tuple[float, float, int]],
    *,
    grain: str = "long",
    order: str = "fewest sheets",
    off_cuts: str = "[]",
) -> tuple[dict[str, Any], Path]:
    listed = (BOOK.format(number=n, height=h, width=w, pages=p) for n, (h, w, p) in enumerate(books, start=1))
    return made(on_two_papers("".join(listed), printer=f"sheet_order: {order}", grain=grain, off_cuts=off_cuts), folder)


def extent(piece: dict[str, Any]) -> Rect:
    """The box around a piece on its sheet."""
    xs, ys = zip(*piece["outline_mm"], strict=True)
    return Rect(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))


def parted(sheet: dict[str, Any]) -> list[Rect]:
    """What is left when the cuts of a sheet are made in their order; each must run from edge to edge of one part."""
    loose = [Rect(0, 0, *sheet["size_mm"])]
    for cut in sheet["knife_cuts"]:
        (x0, y0), (x1, y1) = cut["from_mm"], cut["to_mm"]
        upright = x0 == x1
        assert upright != (y0 == y1)
        (part,) = (
            part
            for part in loose
            if (upright and (y0, y1) == pytest.approx((part.y, part.top), abs=1e-3) and part.x < x0 < part.right)
            or (not upright and (x0, x1) == pytest.approx((part.x, part.right), abs=1e-3) and part.y < y0 < part.top)
        )
        loose.remove(part)
        x, y, width, height = part
        if upright:
            loose += [Rect(x, y, x0 - x, height), Rect(x0, y, part.right - x0, height)]
        else:
            loose += [Rect(x, y, width, y0 - y), Rect(x, y0, width, part.top - y0)]
    return loose


@given(
    books=st.lists(
        st.tuples(
            st.floats(14, 30).map(lambda value: round(value, 2)),
            st.floats(10, 24).map(lambda value: round(value, 2)),
            st.integers(2, 40).map(lambda leaves: 2 * leaves),
        ),
        min_size=1,
        max_size=8,
    ),
    grain=st.sampled_from(["long", "short", "unknown"]),
    order=st.sampled_from(["fewest sheets", "by book"]),
    off_cuts=st.sampled_from(["[]", "148 x 210 mm", "[210 x 99 mm, 100 x 297 mm]"]),
)
@settings(max_examples=25, deadline=None)
def test_the_cuts_of_a_sheet_part_all_its_pieces(
    books: list[tuple[float, float, int]], grain: str, order: str, off_cuts: str
) -> None:
    """Simulated with a knife: after the last cut every part holds one whole piece, with room for its marks, or none."""
    with tempfile.TemporaryDirectory() as name:
        plan, _ = laid_out(Path(name), books, grain=grain, order=order, off_cuts=off_cuts)
    for sheet in plan["sheets"]:
        loose = parted(sheet)
        for piece in sheet["pieces"]:
            room = extent(piece).grown(piece["bleed_mm"] + 2)
            assert [part for part in loose if part.contains(room, 1e-3)] == [
                part for part in loose if part.overlaps(extent(piece), 1e-3)
            ]
            assert sum(part.contains(room, 1e-3) for part in loose) == 1
        held = [sum(part.overlaps(extent(piece), 1e-3) for piece in sheet["pieces"]) for part in loose]
        assert max(held) <= 1
    ids = [piece["id"] for sheet in plan["sheets"] for piece in sheet["pieces"]]
    assert len(ids) == len(set(ids)) == sum(book["strips"] + 1 for book in plan["books"])


def test_off_cuts_are_filled_first_from_a_file_of_their_own(tmp_path: Path) -> None:
    plan, out = laid_out(tmp_path, VARIED[:4], off_cuts="[210 x 70 mm, 210 x 70 mm, 210 x 99 mm]")
    names = [name for name in plan["files"] if name.startswith("page")]
    assert names == ["page.pdf", "page-off-cut-210-70-mm.pdf", "page-off-cut-210-99-mm.pdf"]
    for name, count, size in ((names[1], 2, (210, 70)), (names[2], 1, (210, 99))):
        pages = PdfReader(out / name).pages
        assert len(pages) == count
        assert [float(side) * POINT for side in pages[0].mediabox[2:]] == pytest.approx(size, abs=0.01)
        listed = [sheet for sheet in plan["sheets"] if sheet["file"] == name]
        assert [sheet["page"] for sheet in listed] == list(range(1, count + 1))
        assert all(sheet["off_cut"] and sheet["pieces"] and tuple(sheet["size_mm"]) == size for sheet in listed)
    paper = next(paper for paper in plan["paper"] if paper["stock"] == "page")
    whole, _ = laid_out(tmp_path / "whole", VARIED[:4])
    assert paper["off_cuts"] == 3
    assert paper["sheets"] < next(paper for paper in whole["paper"] if paper["stock"] == "page")["sheets"]


@pytest.mark.parametrize(("grain", "off_cut"), [("long", "210 x 120 mm"), ("short", "100 x 297 mm")])
def test_fibres_of_an_off_cut_run_as_on_the_whole_sheet(tmp_path: Path, grain: str, off_cut: str) -> None:
    """A4 upright with long grain: up the sheet; also on what was cut off below, though that is wider than high."""
    plan, _ = laid_out(tmp_path, VARIED, grain=grain, off_cuts=off_cut)
    pieces = [piece for sheet in plan["sheets"] if sheet["off_cut"] for piece in sheet["pieces"]]
    assert pieces
    for piece in pieces:
        fold = piece["folds"][0]
        assert (abs(fold["from_mm"][0] - fold["to_mm"][0]) < 1e-6) == (grain == "long")


def test_an_off_cut_too_small_for_any_piece_is_said(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    book = BOOK.format(number=1, height=21, width=15, pages=8)
    path.write_text(on_two_papers(book, printer="sheet_order: by book", off_cuts="60 x 80 mm"), encoding="utf-8")
    made = make(path, tmp_path / "out")
    told = [problem for problem in made.checked.problems if problem.field[:1] == ("stocks",)]
    assert [(str(problem.severity), problem.message, problem.remedy) for problem in told] == [
        (
            "note",
            "the 60 × 80 mm off-cut of page is smaller than any piece: "
            "with its margins and notes it has room for 50 mm × 58 mm",
            "keep it for smaller pieces, and take it out of off_cuts",
        )
    ]
    assert told[0].place is not None and told[0].place.line == 4


def test_an_off_cut_too_small_for_long_strips_takes_shorter_ones(tmp_path: Path) -> None:
    """The note says how many panels have room: 100 mm less margins and marks are four of 15 mm."""
    book = BOOK.format(number=1, height=21, width=15, pages=22)
    text = on_two_papers(book, printer="gap_between_pieces: 2 mm", off_cuts="100 x 120 mm")
    path = tmp_path / "shelf.yaml"
    path.write_text(text, encoding="utf-8")
    (note,) = make(path, tmp_path / "out").checked.problems
    assert note.remedy == (
        "keep it for smaller pieces, and take it out of off_cuts; or write longest_strip: 4 in the block of Volume 1"
    )
    plan, _ = made(text.replace("pages: 22", "pages: 22, longest_strip: 4"), tmp_path / "shorter")
    assert (plan["problems"], plan["books"][0]["strips"]) == ([], 6)
    on_the_off_cut = [len(sheet["pieces"]) for sheet in plan["sheets"] if sheet["size_mm"] == [100, 120]]
    assert on_the_off_cut == [3]


def test_a_search_that_finds_nothing_more_comes_to_its_end(tmp_path: Path) -> None:
    """Two books that nearly fill one sheet and might just go on an off-cut: a thousand rounds find nothing better."""
    plan, _ = laid_out(tmp_path, [(14.0, 10.0, 40)] * 2, grain="long", order="fewest sheets", off_cuts="148 x 210 mm")
    assert {sheet["stock"] for sheet in plan["sheets"]}


def test_an_off_cut_larger_than_its_sheet_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    book = BOOK.format(number=1, height=21, width=15, pages=8)
    path.write_text(on_two_papers(book, printer="sheet_order: by book", off_cuts="220 x 250 mm"), encoding="utf-8")
    with pytest.raises(ShelfFileError) as refused:
        make(path, tmp_path / "out")
    assert [f"{problem.message}; {problem.remedy}" for problem in refused.value.problems] == [
        "an off-cut of 220 × 250 mm is larger than the A4 sheet it was cut from; "
        "measure it again, or write the sheet it came from as sheet:"
    ]


@pytest.mark.parametrize("machine", ["no", "yes"])
@pytest.mark.parametrize("width", [62, 75, 100, 120, 148, 210, 297])
def test_the_foot_of_a_narrow_sheet_stays_on_it(width: int, machine: str) -> None:
    """Words and lines stand beside one another, inside the printable area, and can be read."""
    printer = PrinterEntry.model_validate({"sheet": f"{width} x 297 mm", "cutting_machine": machine})
    paper = make_stock("Bristol board", StockEntry.model_validate({"caliper": "0.3 mm"}), printer)
    furniture = furnish(Sheet(paper, 1, 1, ()), "The Reading Room of the Tidewatch")
    words = sorted((note for note in furniture.notes if isinstance(note, Written)), key=lambda note: note.at)
    boxes = [Rect(note.at.x, note.at.y, note.line.width, note.line.size * 0.7) for note in words]
    boxes += [Rect.around(line.path.points()) for line in furniture.notes if isinstance(line, Stroked)]
    assert all(paper.printable.contains(box, 0.2) for box in boxes)
    assert not [1 for n, box in enumerate(boxes[: len(words)]) for other in boxes[:n] if box.overlaps(other)]
    assert min(note.line.size for note in words) >= 0.9


def test_by_book_keeps_books_whole_and_in_order(tmp_path: Path) -> None:
    plan, _ = laid_out(tmp_path, VARIED, order="by book")
    books = [{piece["book"] for piece in sheet["pieces"]} for sheet in plan["sheets"] if sheet["stock"] == "page"]
    assert books == sorted(books, key=min)
    assert all(max(before) < min(after) for before, after in pairwise(books))


def flat_piece(name: str, width: float, height: float, book: int = 0, grain: Axis | None = Axis.Y) -> Piece:
    outline = Rect(0, 0, width, height).corners
    return Piece(name, book, ("Salt", name), Flat("strip", name, "page", outline, (), (), grain), NOTHING)


def test_a_piece_larger_than_the_sheet_is_named_with_a_sheet_that_would_do() -> None:
    pieces = [flat_piece("a sheet", 250, 20), flat_piece("fits", 150, 20), flat_piece("turned", 20, 210, grain=Axis.X)]
    with pytest.raises(ShelfFileError) as refusal:
        lay_out(pieces, {"page": paper("75 um")}, 2)
    # 2.2 mm for marks on three sides, 3.2 mm at the foot; 10 mm of margins, and 12 mm for the notes
    assert [str(problem) for problem in refusal.value.problems] == [
        "a sheet of Salt needs 254.4 mm × 25.4 mm with its marks, but the A4 sheet of page has 200 mm × 275 mm; "
        "write a sheet of at least 265 mm × 48 mm, or a smaller book",
        "turned of Salt needs 24.4 mm × 215.4 mm with its marks, but the A4 sheet of page has 200 mm × 275 mm; "
        "write a sheet of at least 226 mm × 47 mm, or a smaller book",
    ]


def test_what_the_pieces_take_is_added_up() -> None:
    """Rooms of 100 × 137.5 mm: four fill the printable 200 × 275 mm of A4, the fifth takes a second sheet."""
    pieces = [flat_piece(str(n), 100 - 4.4, 137.5 - 5.4, book=n) for n in range(5)]
    layout = lay_out(pieces, {"page": paper("75 um")}, 2)
    # A4 less 5 mm below, 12 mm of notes and 137.5 mm of pieces
    assert layout.tallies == (Tally("page", 2, 0, 2, 2, used=pytest.approx(0.625), rest=(210, 142)),)
    assert [(sheet.number, sheet.count, len(sheet.placements)) for sheet in layout.sheets] == [(1, 2, 4), (2, 2, 1)]
    assert layout.tallies[0].saved == 0


def test_the_line_on_paper_says_what_could_be_less() -> None:
    best = Tally("card", sheets=3, off_cuts=0, least=3, row_sheets=4, used=0.876)
    assert paper_line(best) == "card: no layout takes fewer sheets, 1 saved by nesting; 88% of the room used"
    open_ = Tally("card", sheets=5, off_cuts=1, least=4, row_sheets=5, used=0.7)
    assert paper_line(open_) == "card: 5 sheets, where 4 or more are needed; 70% of the room used"
    rest = Tally("card", sheets=1, off_cuts=0, least=1, row_sheets=1, used=0.3, rest=Size(215.9, 180))
    assert paper_line(rest) == (
        "card: no layout takes fewer sheets; 30% of the room used; 215.9 × 180 mm of the last sheet is left"
    )


@pytest.mark.parametrize("joint", ["back to back", "hinge tab"])
def test_advice_on_shorter_strips_holds_when_it_is_followed(tmp_path: Path, joint: str) -> None:
    """60 mm less margins and marks are 45.6: four pages of 10 mm have room, of 13 mm not; a tab of 3 mm too."""
    books = "".join(BOOK.format(number=n, height=15, width=w, pages=22) for n, w in ((1, 13), (2, 10)))
    books = books.replace("pages: 22", f"pages: 22, joint: {joint}")
    text = on_two_papers(books, printer="gap_between_pieces: 2 mm", off_cuts="60 x 60 mm")
    path = tmp_path / "shelf.yaml"
    path.write_text(text, encoding="utf-8")
    (note,) = make(path, tmp_path / "out").checked.problems
    assert note.remedy.endswith("; or write longest_strip: 4 in the block of Volume 2")
    at = text.rindex("pages: 22")
    path.write_text(f"{text[:at]}longest_strip: 4, {text[at:]}", encoding="utf-8")
    done = make(path, tmp_path / "out")
    assert done.checked.problems == ()
    assert len(done.off_cuts) == 1
