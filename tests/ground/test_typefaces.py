"""Typefaces: measures against the font files' own tables, shaping laws, refusals."""

from __future__ import annotations

import io
import pickle
import struct
from pathlib import Path

import pytest
from fontTools.feaLib.builder import addOpenTypeFeaturesFromString
from fontTools.ttLib import TTCollection, TTFont
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.files import SourceFile
from bookmaker.ground.problems import ShelfFileError
from bookmaker.ground.typefaces import Glyph, Run, TextLine, bundled, files, load_typeface, set_line
from bookmaker.ground.typefaces.names import BUNDLED
from tests.kit.fonts import cff_font

TEXT = bundled("text")
UNKERNED = ("-kern", "-liga", "-clig", "-calt")


def letters_of(run: Run) -> str:
    return "".join(glyph.text for glyph in run.glyphs)


@pytest.mark.parametrize("name", BUNDLED)
def test_measures_are_those_of_the_font_file(name: str) -> None:
    """Read by fontTools from hmtx, hhea and OS/2 (OpenType 1.9), not by HarfBuzz."""
    typeface = bundled(name)
    tables = TTFont(typeface.path)
    em = tables["head"].unitsPerEm
    assert typeface.units_per_em == em
    assert typeface.ascent == tables["hhea"].ascent / em
    assert typeface.descent == tables["hhea"].descent / em < 0
    assert typeface.x_height == tables["OS/2"].sxHeight / em
    assert typeface.cap_height == tables["OS/2"].sCapHeight / em
    for char in "aHgz.,7é ":
        run = typeface.shape(char, features=UNKERNED)
        assert run.width == pytest.approx(tables["hmtx"][tables.getBestCmap()[ord(char)]][0] / em, abs=1e-9)


def test_heights_as_measured_by_the_readme_of_the_fonts() -> None:
    """fonts/README.md, table of measures: Noto Serif 536 and 714, EB Garamond 400 and 650."""
    assert (TEXT.x_height, TEXT.cap_height) == (0.536, 0.714)
    assert (bundled("old style").x_height, bundled("old style").cap_height) == (0.4, 0.65)


def test_heights_missing_in_the_file_are_measured_on_the_letters(tmp_path: Path) -> None:
    tables = TTFont(TEXT.path)
    tables["OS/2"].sxHeight = tables["OS/2"].sCapHeight = 0
    tables.save(tmp_path / "no-heights.ttf")
    typeface = load_typeface(tmp_path / "no-heights.ttf")
    assert typeface.x_height == pytest.approx(tables["glyf"]["x"].yMax / 1000)
    assert typeface.cap_height == pytest.approx(tables["glyf"]["H"].yMax / 1000)


def test_pairs_are_kerned() -> None:
    """By the font's GPOS table A and V close up by 80 thousandths of the em (read with ttx)."""
    loose = TEXT.shape("AV", features=("-kern",))
    assert TEXT.shape("AV").width == pytest.approx(loose.width - 0.080)


@pytest.mark.parametrize("name", ["text", "sans", "old style", "blackletter"])
def test_a_ligature_stands_for_all_its_letters(name: str) -> None:
    run = bundled(name).shape("office")
    assert [glyph.text for glyph in run.glyphs] == ["o", "ffi", "c", "e"]
    apart = bundled(name).shape("office", features=("-liga",))
    assert [glyph.text for glyph in apart.glyphs] == list("office")


LETTERS = st.sampled_from("aefilotAVT.,- 1ΩμάςЁлйё\u0301\u0327\u00a0\u00ad’é")


@settings(deadline=None)
@given(st.text(LETTERS, max_size=20), st.sampled_from(list(BUNDLED)))
def test_no_character_is_lost_and_the_advances_add_up(text: str, name: str) -> None:
    run = bundled(name).shape(text)
    assert letters_of(run) == text == run.text
    assert run.width == pytest.approx(sum(glyph.advance for glyph in run.glyphs), abs=1e-9)


def test_a_mark_is_shifted_over_its_letter_and_keeps_its_own_text() -> None:
    letter, mark = TEXT.shape("q\u0301").glyphs
    assert (letter.text, mark.text) == ("q", "\u0301")
    assert mark.advance == 0
    assert mark.dx < 0


def test_of_several_glyphs_for_one_character_the_first_holds_it(tmp_path: Path) -> None:
    """A font that sets a pound sign as L and a stroke (GSUB lookup type 2)."""
    tables = TTFont(TEXT.path)
    addOpenTypeFeaturesFromString(tables, "feature ccmp { sub sterling by L hyphen; } ccmp;")
    tables.save(tmp_path / "split.ttf")
    run = load_typeface(tmp_path / "split.ttf").shape("a£b")
    assert [glyph.text for glyph in run.glyphs] == ["a", "£", "", "b"]


def test_features_and_language_reach_the_shaper() -> None:
    small = TEXT.shape("ab", features=("smcp",))
    assert [glyph.gid for glyph in small.glyphs] != [glyph.gid for glyph in TEXT.shape("ab").glyphs]
    serbian = TEXT.shape("б", language="sr")
    assert serbian.glyphs != TEXT.shape("б", language="ru").glyphs


def test_each_script_of_a_line_is_shaped_as_its_own() -> None:
    """A Serbian б after Latin letters still has its Serbian form, which is filed under Cyrillic."""
    assert TEXT.shape("ab б", language="sr").glyphs[-1] == TEXT.shape("б", language="sr").glyphs[0]


def test_right_to_left_text_is_laid_from_the_right() -> None:
    assert letters_of(TEXT.shape("שלום 12 ab", right_to_left=True)) == "ab 12 םולש"
    assert letters_of(TEXT.shape("lamp שלום")) == "lamp םולש"


def test_a_run_is_shaped_once_and_memory_is_bounded(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "own.ttf").write_bytes(TEXT.data)
    typeface = load_typeface(tmp_path / "own.ttf")
    assert typeface.shape("lamp") is typeface.shape("lamp")
    assert typeface.shape("lamp") is not typeface.shape("lamp", features=("smcp",))
    monkeypatch.setattr("bookmaker.ground.typefaces.typeface.MOST_RUNS", 10)
    for number in range(100):
        typeface.shape(f"lamp {number}")
        assert len(typeface._runs) <= 10


def test_ink_of_a_run() -> None:
    """Heights of the outlines as fontTools reads them from glyf."""
    outlines = TTFont(TEXT.path)["glyf"]
    assert TEXT.shape("Hx").top == outlines["H"].yMax / 1000
    assert TEXT.shape("Hp").bottom == outlines["p"].yMin / 1000
    assert TEXT.shape("' ").bottom > 0
    assert (TEXT.shape(" ").top, TEXT.shape(" ").bottom) == (0, 0)
    assert (TEXT.shape("").top, TEXT.shape("").width) == (0, 0)


def test_the_ink_of_a_raised_glyph_is_raised() -> None:
    glyph = TEXT.shape("H").glyphs[0]
    raised = Run(TEXT, "H", (glyph._replace(dy=0.5),), glyph.advance)
    assert raised.top == pytest.approx(TEXT.shape("H").top + 0.5)
    assert raised.bottom == pytest.approx(0.5)


def test_what_a_typeface_covers() -> None:
    assert TEXT.covers("a")
    assert TEXT.covers("Ж")
    assert TEXT.covers("\n")
    assert bundled("typewriter").covers("\u2067")
    assert TEXT.covers("\u205f")
    assert not TEXT.covers("\a")
    assert not TEXT.covers("漢")


def test_missing_characters_come_once_and_in_order() -> None:
    assert TEXT.missing("a 漢ש漢字\n") == ["漢", "ש", "字"]
    assert TEXT.missing("Déjà vu, Ωμέγα, Ёлка") == []


def test_a_mark_without_glyph_is_not_missed_where_it_joins_its_letter() -> None:
    """The typewriter has é but no combining acute of its own."""
    typewriter = bundled("typewriter")
    assert not typewriter.covers("\u0301")
    assert typewriter.missing("e\u0301") == []
    assert typewriter.missing("q\u0301") == ["\u0301"]
    assert not typewriter.covers("ẋ")
    assert typewriter.missing("x\u0307") == ["\u0307"]


def test_a_letter_is_covered_by_its_parts(tmp_path: Path) -> None:
    tables = TTFont(TEXT.path)
    for table in tables["cmap"].tables:
        table.cmap.pop(ord("é"), None)
    tables.save(tmp_path / "parts.ttf")
    typeface = load_typeface(tmp_path / "parts.ttf")
    assert typeface.covers("é")
    assert [glyph.text for glyph in typeface.shape("é").glyphs] == ["é", ""]


def test_the_same_file_is_the_same_typeface_even_from_another_process() -> None:
    run = TEXT.shape("office")
    there = pickle.loads(pickle.dumps(run))
    assert there.typeface is TEXT
    assert there == run
    assert len(pickle.dumps(run)) < 2000


def test_a_line_is_as_wide_as_its_runs_reach() -> None:
    line = set_line(TEXT, 2.0, "lamp")
    assert line.width == pytest.approx(2 * TEXT.shape("lamp").width)
    two = TextLine(2.0, ((0.0, TEXT.shape("lamp ")), (10.0, TEXT.shape("oil"))))
    assert two.width == pytest.approx(10 + 2 * TEXT.shape("oil").width)
    assert two.text == "lamp oil"
    assert TextLine(2.0, ()).width == 0


def test_a_glyph_is_a_plain_tuple() -> None:
    assert TEXT.shape("-").glyphs == (Glyph(TEXT.shape("-").glyphs[0].gid, TEXT.shape("-").width, 0, 0, "-"),)


def test_a_font_with_cff_outlines_is_usable(tmp_path: Path) -> None:
    typeface = load_typeface(cff_font(tmp_path / "cff.otf", "aHx"))
    assert typeface.shape("aH").width == pytest.approx(TEXT.shape("aH", features=UNKERNED).width)
    assert typeface.shape("H").top == pytest.approx(0.714)


def changed(**values: int) -> bytes:
    tables, file = TTFont(TEXT.path), io.BytesIO()
    for name, value in values.items():
        setattr(tables["OS/2"], name, value)
    tables.save(file)
    return file.getvalue()


def without_outlines() -> bytes:
    tables, file = TTFont(TEXT.path), io.BytesIO()
    for tag in ("glyf", "loca"):
        del tables[tag]
    tables.save(file)
    return file.getvalue()


def collection() -> bytes:
    fonts, file = TTCollection(), io.BytesIO()
    fonts.fonts = [TTFont(TEXT.path)]
    fonts.save(file)
    return file.getvalue()


def without_head() -> bytes:
    data = bytearray(TEXT.data)
    at = data.index(b"head")
    data[at : at + 4] = b"haed"
    return bytes(data)


AGAIN = "fetch the font file again from where it came"

BAD_FONTS = {
    "nothing": (b"", "own.ttf is not a font file; choose a TTF or OTF file"),
    "text": (b"Dear reader", "own.ttf is not a font file; choose a TTF or OTF file"),
    "web": (
        b"wOF2" + bytes(100),
        "own.ttf is a font for web pages; choose the same typeface as a TTF or OTF file",
    ),
    "half": (TEXT.data[: len(TEXT.data) // 2], f"own.ttf is damaged: it is cut short; {AGAIN}"),
    "cut": (TEXT.data[:3000], f"own.ttf is damaged: it is cut short; {AGAIN}"),
    "headless": (without_head(), f"own.ttf is damaged: it has no table head; {AGAIN}"),
    "blank": (without_outlines(), "own.ttf has no outlines to print; choose a TTF or OTF file with outlines"),
    "collection": (
        collection(),
        "own.ttf is a collection of fonts; choose a file that holds one font, TTF or OTF",
    ),
    "locked": (
        changed(fsType=2),
        "own.ttf may not be embedded in a PDF; choose a typeface whose licence allows it",
    ),
}


@pytest.mark.parametrize("case", BAD_FONTS)
def test_what_is_no_font_is_refused(case: str, tmp_path: Path) -> None:
    data, message = BAD_FONTS[case]
    (tmp_path / "own.ttf").write_bytes(data)
    with pytest.raises(ShelfFileError) as refusal:
        load_typeface(tmp_path / "own.ttf")
    assert str(refusal.value) == message


def test_a_font_file_that_cannot_be_read_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ShelfFileError) as refusal:
        load_typeface(tmp_path / "none.ttf")
    beside = "write its path as seen from the folder of the shelf file"
    assert str(refusal.value) == f"there is no font file none.ttf; {beside}"
    with pytest.raises(ShelfFileError) as refusal:
        load_typeface(tmp_path)
    assert str(refusal.value) == f"{tmp_path.name} is a folder, not a font file; write the name of one TTF or OTF file"


@settings(deadline=None, max_examples=60)
@given(st.integers(12, len(TEXT.data) - 4), st.binary(min_size=1, max_size=8))
def test_a_damaged_font_is_refused_or_usable_and_never_a_crash(at: int, noise: bytes) -> None:
    data = TEXT.data[:at] + noise + TEXT.data[at + len(noise) :]
    try:
        typeface = files._typeface_of.__wrapped__(SourceFile(Path("own.ttf"), "", data))
    except ShelfFileError:
        return
    typeface.shape("office")


def test_an_unknown_typeface_is_refused_with_what_was_meant() -> None:
    with pytest.raises(ShelfFileError) as refusal:
        bundled("blak letter")
    assert str(refusal.value) == "'blak letter' is not a typeface of bookmaker; did you mean 'blackletter'?"
    with pytest.raises(ShelfFileError) as refusal:
        bundled("qqq")
    assert str(refusal.value).endswith(
        "write one of text (Noto Serif), sans (Open Sans), old style (EB Garamond), typewriter (Courier Prime), "
        "blackletter (UnifrakturMaguntia), script (Dancing Script), caslon (Libre Caslon Text), didone (Libre Bodoni), "
        "clarendon (Besley), inscriptional (Cinzel), humanist (Cabin), geometric (Jost), "
        "or the path of a TTF or OTF file"
    )


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("garamond", "'old style', which is EB Garamond"),
        ("EB Garamond Italic", "'old style italic', which is EB Garamond"),
        ("noto-serif", "'text', which is Noto Serif"),
        ("Noto Serif Bold", "'text bold', which is Noto Serif"),
        ("opensans", "'sans', which is Open Sans"),
        ("Courier", "'typewriter', which is Courier Prime"),
        ("old-style", "'old style'"),
    ],
)
def test_a_family_leads_to_its_name_here(written: str, meant: str) -> None:
    with pytest.raises(ShelfFileError) as refusal:
        bundled(written)
    assert str(refusal.value) == f"{written!r} is not a typeface of bookmaker; did you mean {meant}?"


def test_all_are_freely_embeddable_truetype() -> None:
    """fsType 0 is installable embedding (OpenType, OS/2)."""
    for name in BUNDLED:
        data = bundled(name).data
        assert struct.unpack(">I", data[:4]) == (0x00010000,)
        assert TTFont(io.BytesIO(data))["OS/2"].fsType == 0
