"""Names on labels and in the guide: in a typeface that has their letters, or the number of the book."""

from __future__ import annotations

from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen
from pypdf import PdfReader

from bookmaker import make
from bookmaker.ground.art import Written
from bookmaker.ground.geometry import Point
from bookmaker.ground.typefaces import load_typeface
from bookmaker.guide.wrapping import wrapped
from bookmaker.paper.printer_entry import SheetOrder
from bookmaker.sheets.layout import lay_out
from bookmaker.sheets.marks import furnish
from bookmaker.things.views.ink import word
from bookmaker.typesetting.stand_ins import face_with, printable
from bookmaker.workshop import Made
from tests.kit.by_kind import drafts_of

GREEK, ARABIC = "Ὁ λύχνος · Маяк", "فنار"

SHELF = """\
shelf: The Lamp Room
stocks:
  page: {{caliper: 75 um, glue: 15 um, grain: long}}
  cover: {{caliper: 160 um}}
books:
  - title: {title}
    size: {{height: 21 mm, width: 15 mm}}
    block: {{stock: page, pages: 8}}
    cover: {{kind: wrap, stock: cover}}
    direction: right-to-left
    inside: {inside}
    design: {{spine_title: none, front_title: no}}
"""


def own_face(path: Path) -> Path:
    """A typeface in which every letter that the label needs is a box."""
    letters = sorted(set(ARABIC + "1234567890. ·–,abcdefghijklmnopqrstuvwxyz"))
    names = [".notdef", *(f"u{ord(letter):04X}" for letter in letters)]
    pen = TTGlyphPen(None)
    for act, at in ((pen.moveTo, (50, 0)), (pen.lineTo, (50, 500)), (pen.lineTo, (450, 500)), (pen.lineTo, (450, 0))):
        act(at)
    pen.closePath()
    box = pen.glyph()
    builder = FontBuilder(1000, isTTF=True)
    builder.setupGlyphOrder(names)
    builder.setupCharacterMap({ord(letter): f"u{ord(letter):04X}" for letter in letters})
    builder.setupGlyf(dict.fromkeys(names, box))
    builder.setupHorizontalMetrics(dict.fromkeys(names, (500, 50)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Tiles", "styleName": "Regular"})
    builder.setupOS2(sxHeight=500, sCapHeight=500)
    builder.setupPost()
    builder.save(path)
    return path


def words_of(path: Path) -> str:
    """All that a PDF says, without its line ends."""
    return " ".join(" ".join(page.extract_text().split()) for page in PdfReader(path).pages)


def made(folder: Path, title: str, inside: str) -> Made:
    (folder / "lamp.txt").write_text(f"{ARABIC} {ARABIC}", encoding="utf-8")
    (folder / "shelf.yaml").write_text(SHELF.format(title=title, inside=inside), encoding="utf-8")
    return make(folder / "shelf.yaml", folder / "out")


def test_a_face_with_the_letters_stands_in(tmp_path: Path) -> None:
    assert face_with("Fog", "sans bold").name == "Open Sans Bold"
    assert not face_with(GREEK, "sans").missing(GREEK)
    own = load_typeface(own_face(tmp_path / "tiles.ttf"))
    assert not printable(ARABIC)
    assert printable(ARABIC, own)
    assert face_with(ARABIC, "sans", own) is own


def test_the_guide_loses_no_letters_of_a_name() -> None:
    lines = wrapped(f"1. {GREEK}", "sans bold", 3.0, 60.0)
    drawn = [run for line in lines for _, run in line.runs]
    assert [run.text for run in drawn if run.typeface.missing(run.text)] == []
    [(_, run)] = word(GREEK, Point(0, 0)).line.runs
    assert run.typeface.missing(GREEK) == []


def test_labels_have_the_name_in_a_typeface_with_its_letters(tmp_path: Path) -> None:
    result = made(tmp_path, GREEK, "{kind: ruled}")
    assert result.checked.problems == ()
    pieces = [piece for draft in drafts_of(result.checked) for piece in draft.pieces]
    layout = lay_out(pieces, result.checked.plan.stocks, 2.0, SheetOrder.FEWEST, lambda *_: None)
    notes = [note for sheet in layout.sheets for note in furnish(sheet, GREEK).notes if isinstance(note, Written)]
    runs = [run for note in notes for _, run in note.line.runs if GREEK in run.text]
    assert len(runs) > len(layout.sheets)
    assert [run.text for run in runs if run.typeface.missing(run.text)] == []
    assert GREEK in words_of(tmp_path / "out" / "guide.pdf")


def test_a_name_nobody_can_print_gives_way_to_the_number_and_is_told(tmp_path: Path) -> None:
    [note] = made(tmp_path, ARABIC, "{kind: ruled}").checked.problems
    assert str(note) == (
        f"shelf.yaml:6:12: no typeface here has all letters of {ARABIC}: its number stands on labels and "
        "in the guide; write face: with one that has them in the text of its inside, for the labels"
    )
    for name in ("page.pdf", "guide.pdf"):
        assert "book 1" in words_of(tmp_path / "out" / name).replace("\N{NO-BREAK SPACE}", " ")


def test_labels_take_the_typeface_of_the_text(tmp_path: Path) -> None:
    own_face(tmp_path / "tiles.ttf")
    result = made(tmp_path, ARABIC, "{kind: text, file: lamp.txt, face: tiles.ttf, numbers: no}")
    labels = {piece.face.name for draft in drafts_of(result.checked) for piece in draft.pieces if piece.face}
    assert labels == {"Tiles"}
    assert [problem for problem in result.checked.problems if "no typeface here" in problem.message] == []
