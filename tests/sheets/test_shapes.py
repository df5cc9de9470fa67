"""Pieces with round corners, holes, scores and perforations: on paper, as pictures, and under a cutting machine."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from math import dist
from pathlib import Path as FilePath

import ezdxf
import pypdfium2 as pdfium
import pytest
from PIL import Image

from bookmaker.ground.art import Filled
from bookmaker.ground.geometry import Point, Rect
from bookmaker.ground.outlines import circle, rounded
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.printer_entry import PaperPath
from bookmaker.paper.stock import Stock, calibration
from bookmaker.paper.stock_entry import Grain
from bookmaker.sheets.facsimiles import facsimile_of_piece
from bookmaker.sheets.flat import Face, Flat, Fold, FoldKind, Stroke
from bookmaker.sheets.impressions import impressions
from bookmaker.sheets.layers import Layers
from bookmaker.sheets.layout import Placement, Sheet
from bookmaker.sheets.marks import FOLD_PENS, PERFORATION, SCORE, furnish
from bookmaker.sheets.piece import Piece
from bookmaker.sheets.toolpaths import tool_sheet
from bookmaker.writers.sheets_pdf import write_sheets
from bookmaker.writers.templates import write_template
from bookmaker.writers.tools.dxf import write_dxf
from bookmaker.writers.tools.pdf import write_tools_pdf
from bookmaker.writers.tools.svg import write_svg
from tests.kit.pixels import pdf_pixels

CARD = Stock("card", 0.3, 0.0, 0.03, 0.03, Grain.UNKNOWN, FORMATS["A4"], Rect(5, 5, 200, 287))
BOX, BLEED = Rect(0, 0, 40, 30), 2.0
HOLE = circle(Point(12, 15), 5)
TAG = Flat(
    kind="tag",
    name="tag",
    stock="card",
    outline=rounded(BOX.corners, 8),
    folds=(Fold(FoldKind.VALLEY, Point(28, 0), Point(28, 30)),),
    panels=(),
    bleed=BLEED,
    holes=(HOLE,),
    scores=(Stroke(Point(0, 4), Point(40, 4)),),
    perforations=(Stroke(Point(20, 0), Point(20, 30)), Stroke(Point(24, 0), Point(40, 16))),
)
PIECE = Piece("tag-1", "tag", ("Tag", "tag"), TAG, Filled.box(BOX.grown(9)), Filled.box(BOX.grown(9)))
PER_MM = 10
"""Pixels of a rendered millimetre."""

INKED = ((20, 15), (1, 1), (-1.5, 15), (12, 11), (12, 18.9), (41.5, 20), (38.5, 28.5))
"""Points of the tag, of its bleed and of that within its hole: print runs on for 2 mm."""

BARE = ((-1.9, -1.9), (0, 0), (12, 15), (12, 17), (41.5, 31.5), (-3, 15))
"""Points of the hole and around the round corners, where the bleed has ended."""


def sheet_of(*pieces: Piece, turned: bool = False) -> Sheet:
    return Sheet(CARD, 1, 1, tuple(Placement(one, Point(50, 60 + 60 * n), turned) for n, one in enumerate(pieces)))


@pytest.mark.parametrize("page", [0, 1])
@pytest.mark.parametrize("turned", [False, True])
def test_print_ends_where_the_bleed_ends_around_curves_and_in_holes(
    tmp_path: FilePath, turned: bool, page: int
) -> None:
    """On the sheet as PDFium draws it; the reverse is turned on the long edge."""
    sheet, printer = sheet_of(PIECE, turned=turned), PaperPath.model_validate({})
    write_sheets(tmp_path / "s.pdf", "", impressions(sheet, "", printer), calibration(printer, CARD.sheet), Layers.ART)
    with pdfium.PdfDocument(tmp_path / "s.pdf") as pdf:
        image = pdf[page].render(scale=PER_MM * 25.4 / 72).to_pil().convert("L")
    to_sheet = sheet.placements[0].to_sheet

    def seen(x: float, y: float) -> int:
        at = to_sheet.apply(Point(x, y))
        across = 210 - at.x if page else at.x
        value = image.getpixel((round(across * PER_MM), round((297 - at.y) * PER_MM)))
        assert isinstance(value, int)
        return value

    assert [point for point in INKED if seen(*point) > 10] == []
    assert [point for point in BARE if seen(*point) < 245] == []


@pytest.mark.parametrize("face", [Face.FRONT, Face.REVERSE])
def test_a_picture_of_the_piece_has_its_hole_and_its_corners(face: Face) -> None:
    facsimile = facsimile_of_piece(PIECE, face)
    pixels = pdf_pixels(facsimile.art, 254, PER_MM, facsimile.box)

    def dark(x: float, y: float) -> bool:
        across = 40 - x if face is Face.REVERSE else x
        return bool(pixels[int((30 - y) * PER_MM), int(across * PER_MM), 0] < 128)

    assert dark(20, 15) and dark(6.5, 15) and dark(2.5, 2.5)
    assert not dark(12, 15) and not dark(8, 15) and not dark(1, 1) and not dark(39, 29)


def test_marks_tell_scores_and_perforations_from_folds_and_the_edge_of_a_hole_is_drawn() -> None:
    around = furnish(sheet_of(PIECE), "Shelf")
    starts = {(mark.path.points()[0], mark.pen) for mark in around.folds}
    here = {(round(at.x - 50, 3), round(at.y - 60, 3), pen) for at, pen in starts}
    off = BLEED + 0.3
    valley = FOLD_PENS[FoldKind.VALLEY]
    assert here == {
        (28, -off, valley),
        (28, 30 + off, valley),
        (-off, 4, SCORE),
        (40 + off, 4, SCORE),
        (20, -off, PERFORATION),
        (20, 30 + off, PERFORATION),
        (24 - off, -off, PERFORATION),
        (40 + off, 16 + off, PERFORATION),
    }
    assert len({SCORE.dash, PERFORATION.dash, *(pen.dash for pen in FOLD_PENS.values())}) == 4
    circles = [line for line in around.cuts if len(line.path.points()) == len(HOLE)]
    assert [Rect.around(line.path.points()) for line in circles] == [pytest.approx(Rect(57, 70, 10, 10))]


def test_slanted_marks_run_on_in_the_line_and_stay_clear_of_the_label() -> None:
    marks = [mark.path.points() for mark in furnish(sheet_of(PIECE), "Shelf").folds if mark.pen is PERFORATION]
    slanted = [(start, end) for start, end in marks if start.x != end.x]
    assert len(slanted) == 2
    for start, end in slanted:
        assert start.y - start.x == pytest.approx(end.y - end.x) == pytest.approx(60 - 50 - 24)
        assert end.y >= 60 - BLEED - 0.3 - 1.1 - 1e-9


def test_holes_are_cut_before_their_outline_and_scores_and_perforations_are_passes_of_their_own() -> None:
    found = tool_sheet(sheet_of(PIECE, PIECE))
    assert [str(tool) for tool, _ in found.layers] == ["Crosses", "Creasing", "Perforating", "Cutting"]
    assert [len(path.points) for path in found.cuts] == [len(HOLE), len(TAG.outline)] * 2
    assert all(path.closed for path in found.cuts)
    assert len(found.perforations) == len(found.scores) == 4  # a fold and a score for each
    hole, outline = found.cuts[:2]
    assert all(dist(at, (62, 75)) == pytest.approx(5) for at in hole.points)
    assert Rect.around(outline.points) == Rect(50, 60, 40, 30)


def test_the_drawings_for_machines_have_them_all(tmp_path: FilePath) -> None:
    """Read back by ezdxf, by Python's XML parser, and as layers of the PDF by PDFium."""
    drawn = tool_sheet(sheet_of(PIECE))
    write_dxf(tmp_path / "s.dxf", drawn)
    write_svg(tmp_path / "s.svg", "tags", drawn)
    write_tools_pdf(tmp_path / "s.pdf", "tags", [drawn])
    drawing = ezdxf.readfile(tmp_path / "s.dxf")
    assert not drawing.audit().errors
    in_dxf = [(line.dxf.layer, len(list(line.get_points()))) for line in drawing.modelspace()]
    groups = ET.parse(tmp_path / "s.svg").getroot().findall("{http://www.w3.org/2000/svg}g")
    in_svg = [(one.attrib["id"], path.attrib["d"].count("L") + 1) for one in groups for path in one]
    assert in_dxf == in_svg
    assert [layer for layer, _ in in_svg] == ["Creasing"] * 2 + ["Perforating"] * 2 + ["Cutting"] * 2
    with pdfium.PdfDocument(tmp_path / "s.pdf") as pdf:
        assert len(list(pdf[0].get_objects())) == 6


def test_a_template_shows_the_hole_and_the_bleed(tmp_path: FilePath) -> None:
    write_template(tmp_path, "tag", "Tag", [TAG])
    with Image.open(tmp_path / "tag.png") as picture:
        image = picture.convert("RGB")
    per_mm = image.width / (40 + 2 * BLEED)

    def at(x: float, y: float) -> object:
        return image.getpixel((round((x + BLEED) * per_mm), round((30 + BLEED - y) * per_mm)))

    bleed, white = (230, 230, 230), (255, 255, 255)
    assert [at(14, 25), at(6, 15)] == [white, white]
    assert [at(-1, 15), at(12, 10.7), at(12, 19)] == [bleed, bleed, bleed]
    assert [at(12, 15), at(-1.5, -1.5)] == [white, white]


def test_a_plain_piece_is_printed_within_a_rectangle_on_both_sides() -> None:
    plain = Flat("card", "card", "card", BOX.corners, (), (), bleed=BLEED)
    assert plain.inked().points() == BOX.grown(BLEED).corners
    assert plain.inked(Face.REVERSE) == plain.inked()
