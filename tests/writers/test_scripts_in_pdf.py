"""Text in other scripts comes out of a PDF as it was written, read by pypdf and by PDFium."""

from __future__ import annotations

import io
import unicodedata
from pathlib import Path as FilePath

import pypdf
import pypdfium2
import pytest

from bookmaker.ground.drawing import BLACK
from bookmaker.ground.geometry import Point, Size
from bookmaker.ground.typefaces import TextLine, load_typeface
from bookmaker.ground.typefaces.clusters import shared
from bookmaker.writers.pdf import PdfFile
from tests.kit.fonts import font_of_boxes

HINDI = "हिन्दी में किताब"
HALVES = """languagesystem DFLT dflt; languagesystem dev2 dflt;
feature half { sub u0928 u094D by halfna; } half;"""
POINTED = "בְּרֵאשִׁית שָׁלוֹם"
POINTS = """languagesystem DFLT dflt; languagesystem hebr dflt;
markClass [u05B0 u05B4 u05B5 u05B8 u05B9 u05BC u05C1] <anchor 250 0> @points;
feature mark { pos base [u05D0 u05D1 u05D5 u05DC u05E8 u05E9] <anchor 250 0> mark @points; } mark;"""
LAM_ALEF = """languagesystem DFLT dflt; languagesystem arab dflt;
feature rlig { sub u0644 u0627 by lamalef; } rlig;"""
ARABIC = "السلام كلا بلا"


def read_back(path: FilePath, text: str, *, features: str = "", joined: tuple[str, ...] = ()) -> tuple[str, str, bytes]:
    """What pypdf and PDFium read of a line, and the operators of its page."""
    letters = "".join(dict.fromkeys([".", "a", " ", *text]))
    face = load_typeface(font_of_boxes(path, letters, features, joined))
    run = face.shape(text, right_to_left=unicodedata.bidirectional(text[0]) in {"R", "AL"})
    file = io.BytesIO()
    with PdfFile(file, title="Trial") as pdf, pdf.page(Size(100, 40)) as canvas:
        canvas.text(TextLine(5, ((0.0, run),)), Point(5, 20), BLACK)
    page = pypdf.PdfReader(io.BytesIO(file.getvalue()), strict=True).pages[0]
    said = str(pypdfium2.PdfDocument(file.getvalue())[0].get_textpage().get_text_range())
    return page.extract_text().strip(), said, page.get_contents().get_data()  # type: ignore[union-attr]


def test_hindi_is_given_back_though_signs_stand_before_the_letters_they_follow(tmp_path: FilePath) -> None:
    """The sign for i is spoken after its consonant and written before it (Unicode, section 12.1)."""
    by_pypdf, by_pdfium, operators = read_back(tmp_path / "own.ttf", HINDI, features=HALVES, joined=("halfna",))
    assert by_pypdf == by_pdfium == HINDI
    assert operators.count(b"/ActualText") == 2
    assert b"<" + "\ufeffहि".encode("utf-16-be").hex().encode() + b">" in operators


def test_points_of_hebrew_stand_for_themselves(tmp_path: FilePath) -> None:
    by_pypdf, by_pdfium, operators = read_back(tmp_path / "own.ttf", POINTED, features=POINTS)
    assert b"/ActualText" not in operators
    # shapers put marks in an order that means the same
    for found in (by_pypdf, by_pdfium):
        assert unicodedata.normalize("NFD", found) == unicodedata.normalize("NFD", POINTED)


def test_letters_that_became_one_glyph_are_not_turned_round(tmp_path: FilePath) -> None:
    by_pypdf, by_pdfium, _ = read_back(tmp_path / "own.ttf", ARABIC, features=LAM_ALEF, joined=("lamalef",))
    assert by_pdfium == ARABIC
    assert unicodedata.normalize("NFKC", by_pypdf) == ARABIC


@pytest.mark.parametrize(
    ("said", "gids", "own"),
    [
        ("\u05d1\u05bc\u05b0", [3, 9], ["\u05b0", "\ufb31"]),  # one glyph for letter and point, one for the vowel
        ("\u05d1\u05b0\u05bc", [3, 2, 1], ["\u05b0", "\u05bc", "\u05d1"]),  # marks in an order that means the same
        ("\u05d1\u05b0", [8, 9], ["\u05d1\u05b0", ""]),  # nobody knows whose is whose
    ],
)
def test_glyphs_of_a_cluster_take_what_is_theirs(said: str, gids: list[int], own: list[str]) -> None:
    assert shared(said, gids, {0x05D1: 1, 0x05BC: 2, 0x05B0: 3}.get, True) == own
