"""Marks around pieces: what they say at each end of a line, and that none of their white falls on a piece."""

from __future__ import annotations

from math import dist
from pathlib import Path as FilePath

import pypdfium2 as pdfium
import pytest

from bookmaker.ground.art import Filled, Stroked, Written
from bookmaker.ground.drawing import BLACK, Canvas
from bookmaker.ground.geometry import Path, Point, Rect
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.printer_entry import PrinterEntry
from bookmaker.paper.stock import Stock, calibration
from bookmaker.paper.stock_entry import Grain
from bookmaker.sheets.flat import Flat, Fold, FoldKind, Panel, Role, Stroke
from bookmaker.sheets.impressions import impressions
from bookmaker.sheets.layout import Placement, Sheet
from bookmaker.sheets.marks import FOLD_PENS, TRIM, furnish
from bookmaker.sheets.piece import Piece
from bookmaker.writers.sheets_pdf import write_sheets

STOCK = Stock("page", 0.1, 0.0, 0.01, 0.03, Grain.LONG, FORMATS["A4"], Rect(5, 5, 200, 287))
PER_MM = 20
"""Pixels of a rendered millimetre."""


class Dark:
    """Black all over, out to a bleed of 2 mm."""

    def draw(self, canvas: Canvas) -> None:
        canvas.fill(Path.rectangle(Rect(0, 0, 30, 20).grown(2)), BLACK)


def sheet_with(flat: Flat, turned: bool = False) -> Sheet:
    return Sheet(STOCK, 1, 1, (Placement(Piece("piece", 0, ("Book", "part"), flat, Dark()), Point(60, 90), turned),))


def test_each_end_of_a_line_shows_the_nearest_fold() -> None:
    """As in an octavo, whose folds are mountain at one end of a line and valley at the other."""
    folds = (
        Fold(FoldKind.VALLEY, Point(15, 20), Point(15, 10)),
        Fold(FoldKind.MOUNTAIN, Point(15, 0), Point(15, 10)),
        Fold(FoldKind.MOUNTAIN, Point(0, 10), Point(15, 10)),
        Fold(FoldKind.VALLEY, Point(15, 10), Point(30, 10)),
    )
    marks = furnish(sheet_with(Flat("sheet", "sheet", "page", Rect(0, 0, 30, 20).corners, folds, ())), "Shelf").folds
    starts = [(mark.path.points()[0], mark.pen) for mark in marks]
    pens = {(round(start.x - 60, 3), round(start.y - 90, 3)): pen for start, pen in starts}
    mountain, valley = FOLD_PENS[FoldKind.MOUNTAIN], FOLD_PENS[FoldKind.VALLEY]
    assert pens == {(15, -0.3): mountain, (15, 20.3): valley, (-0.3, 10): mountain, (30.3, 10): valley}


@pytest.mark.parametrize("turned", [False, True])
def test_marks_of_mountains_end_in_a_dot_and_those_of_valleys_do_not(turned: bool) -> None:
    """A dot of 0.45 mm, three times as wide as the line, within the outer end of the mark; the legend has one too."""
    folds = (
        Fold(FoldKind.MOUNTAIN, Point(10, 0), Point(10, 20)),
        Fold(FoldKind.VALLEY, Point(20, 0), Point(20, 20)),
        Fold(FoldKind.MOUNTAIN, Point(0, 12), Point(30, 12)),
    )
    sheet = sheet_with(Flat("sheet", "sheet", "page", Rect(0, 0, 30, 20).corners, folds, ()), turned)
    around = furnish(sheet, "Shelf")
    move = sheet.placements[0].to_sheet.apply
    wanted = [move(Point(*at)) for at in ((10, -1.175), (10, 21.775), (-1.775, 12), (31.775, 12))]
    boxes = [Rect.around(dot.path.points()) for dot in around.beads]
    assert sorted((round(box.centre.x, 6), round(box.centre.y, 6)) for box in boxes) == sorted(
        (round(at.x, 6), round(at.y, 6)) for at in wanted
    )
    assert [box.width for box in boxes] == pytest.approx([0.45] * 4)
    assert sum(isinstance(note, Filled) for note in around.notes) == 1


@pytest.mark.parametrize("turned", [False, True])
def test_of_two_marks_side_by_side_the_line_that_ends_farther_in_has_the_short_one(turned: bool) -> None:
    """As in a slipcase, whose top is folded across the back only, 0.3 mm above the folds of the tabs beside it."""
    tabs = [Fold(FoldKind.MOUNTAIN, Point(x, 10), Point(x + 8, 10)) for x in (1, 21)]
    top = Fold(FoldKind.MOUNTAIN, Point(20, 10.3), Point(10, 10.3))
    far = Fold(FoldKind.MOUNTAIN, Point(10, 12), Point(20, 12))
    flat = Flat("net", "net", "page", Rect(0, 0, 30, 20).corners, (*tabs, top, far), ())
    sheet = sheet_with(flat, turned)
    move = sheet.placements[0].to_sheet.apply
    wanted = {move(Point(x, y)): length for y, length in ((10, 1.7), (10.3, 0.85), (12, 1.7)) for x in (-0.3, 30.3)}
    ends = (mark.path.points() for mark in furnish(sheet, "Shelf").folds)
    marks = {start: dist(start, end) for start, end in ends}
    assert {(round(x, 6), round(y, 6)): round(marks[Point(x, y)], 6) for x, y in marks} == {
        (round(x, 6), round(y, 6)): length for (x, y), length in wanted.items()
    }


@pytest.mark.parametrize("turned", [False, True])
def test_no_white_falls_on_a_piece(tmp_path: FilePath, turned: bool) -> None:
    """Rendered at 20 pixels to the millimetre: a dark flat with a narrow notch and a cut corner stays dark."""
    outline = [(0, 0), (10, 0), (10.1, 4), (10.25, 4), (10.35, 0), (24, 0), (30, 5), (30, 20), (0, 20)]
    flat = Flat("net", "net", "page", tuple(Point(x, y) for x, y in outline), (), (), bleed=2.0)
    sheet = sheet_with(flat, turned)
    printer = PrinterEntry()
    passes = impressions(sheet, "Shelf", printer)
    write_sheets(tmp_path / "s.pdf", "Shelf", passes, calibration(printer, STOCK.sheet))
    with pdfium.PdfDocument(tmp_path / "s.pdf") as pdf:
        image = pdf[0].render(scale=PER_MM * 25.4 / 72).to_pil().convert("L")
    move = sheet.placements[0].to_sheet.apply

    def tone(x: float, y: float) -> int:
        at = move(Point(x, y))
        value = image.getpixel((int(at.x * PER_MM), image.height - 1 - int(at.y * PER_MM)))
        assert isinstance(value, int)
        return value

    for x, y in [(10.2, 4.2), (9.8, 1), (10.5, 1), (10.4, 3), (23.5, 0.3), (29.6, 5.3), (26.6, 2.9), (15, 10)]:
        assert tone(x, y) < 60, (x, y)
    for x, y in [(27.4, 2.4), (25.6, 0.9)]:
        assert tone(x, y) > 200, (x, y)  # beside the cut, on the waste, the casing


def test_trim_marks_lie_in_the_paper_that_goes() -> None:
    """A page of 12 × 18 mm in a cell of 13 × 20: head, tail and fore-edge go, the spine is at the left edge."""
    lines = (((0, 1), (13, 1)), ((0, 19), (13, 19)), ((12, 0), (12, 20)))
    trims = tuple(Stroke(Point(*start), Point(*end)) for start, end in lines)
    page = Panel(Role.PAGE, Rect(0, 1, 12, 18), 1)
    flat = Flat("leaf", "leaf", "page", Rect(0, 0, 13, 20).corners, (), (page,), trims=trims)
    marks = [mark for mark in furnish(sheet_with(flat), "Shelf").marks if isinstance(mark, Stroked)]
    assert {mark.pen for mark in marks} == {TRIM}
    drawn = {tuple((round(p.x - 60, 6), round(p.y - 90, 6)) for p in mark.path.points()) for mark in marks}
    assert drawn == {((12, 0), (12, 1)), ((12, 19), (12, 20)), ((12, 1), (13, 1)), ((12, 19), (13, 19))}


@pytest.mark.parametrize(
    ("name", "part", "short"),
    [("A letter to Maud", "letter", "A… letter"), ("12. Knots", "strip 10 of 12", "12. strip 10 of 12")],
)
def test_a_label_without_room_shows_that_words_are_left_out(name: str, part: str, short: str) -> None:
    """A piece of 2 mm has room for nothing: what stays of a name that has no number ends in three dots."""
    flat = Flat("tag", "tag", "page", Rect(0, 0, 2, 9).corners, (), ())
    placement = Placement(Piece("piece", "a", (name, part), flat, Dark()), Point(60, 90), False)
    texts = [
        mark.line.text for mark in furnish(Sheet(STOCK, 1, 1, (placement,)), "Shelf").notes if isinstance(mark, Written)
    ]
    assert short in texts
