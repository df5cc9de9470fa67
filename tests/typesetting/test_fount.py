"""Founts and boxes: widths against fontTools and HarfBuzz themselves, styles, hyphens, hanging signs."""

from __future__ import annotations

from copy import copy
from itertools import pairwise

import pytest
import uharfbuzz as hb
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.typefaces import bundled
from bookmaker.typesetting.lines.boxes import Boxes
from bookmaker.typesetting.lines.fount import ADDED_HYPHEN, Fount, Style, as_read
from bookmaker.typesetting.lines.hyphens import known_language, partings

FACES = {Style.ROMAN: bundled("text"), Style.ITALIC: bundled("text italic"), Style.BOLD: bundled("text bold")}
FOUNT = Fount(FACES, "en_US")
HARFBUZZ = hb.Font(hb.Face(hb.Blob(bundled("text").data)))


def harfbuzz_width(text: str) -> float:
    """The width that HarfBuzz gives a text, in ems, asked for directly."""
    buffer = hb.Buffer()
    buffer.add_str(text)
    buffer.guess_segment_properties()
    hb.shape(HARFBUZZ, buffer)
    return float(sum(position.x_advance for position in buffer.glyph_positions)) / HARFBUZZ.face.upem


@given(word=st.text("abcdefghijklmnopqrstuvwxyzABCVWTAy.,", min_size=1, max_size=20))
@settings(deadline=None)
def test_words_are_as_wide_as_harfbuzz_says(word: str) -> None:
    assert FOUNT.width(word) == pytest.approx(harfbuzz_width(word))


def test_single_letters_are_as_wide_as_the_font_file_says() -> None:
    tables = TTFont(bundled("text").path)
    for letter in "aeiouxyzAEQ.,-0189":
        advance = tables["hmtx"][tables.getBestCmap()[ord(letter)]][0]
        assert FOUNT.width(letter) == pytest.approx(advance / tables["head"].unitsPerEm)


def test_where_a_word_is_parted_its_parts_keep_their_places() -> None:
    word = "difficulties"
    for at in range(1, len(word)):
        assert FOUNT.offset(word, at) == pytest.approx(harfbuzz_width(word[:at]), abs=0.05)


def test_signs_of_style_change_the_face_and_are_not_read() -> None:
    word = f"{Style.ITALIC}lamp{Style.ROMAN},"
    first, second = FOUNT.runs(word)
    assert (first.text, first.typeface.name) == ("lamp", "Noto Serif Italic")
    assert (second.text, second.typeface.name) == (",", "Noto Serif")
    assert as_read(word) == "lamp,"
    assert FOUNT.line(f"a {word} b", 1.0).text == "a lamp, b"


def test_a_style_without_a_face_is_set_in_roman() -> None:
    [run] = Fount({Style.ROMAN: bundled("sans")}, None).runs(f"{Style.ITALIC}lamp")
    assert run.typeface is bundled("sans")


def test_the_parts_of_a_word_keep_its_style() -> None:
    assert FOUNT.part(f"{Style.BOLD}lighthouse", 6, 11) == f"{Style.BOLD}house"
    assert FOUNT.part(f"{Style.BOLD}light{Style.ROMAN}house", 0, 6, hyphened=True) == f"{Style.BOLD}light{ADDED_HYPHEN}"


def test_spaces_are_wider_by_the_gap() -> None:
    line = FOUNT.line("a b c", 2.0, gap=0.5)
    widths = [FOUNT.width(letter) * 2 for letter in "abc"]
    assert line.width == pytest.approx(sum(widths) + 2 * (FOUNT.space.width * 2 + 0.5))


# ---- hyphens


@pytest.mark.parametrize(
    ("word", "parts"),
    [
        ("lamp", ["lamp"]),
        ("burner", ["burner"]),  # two letters alone on a line are too few
        ("“hyphenation,”", ["“hyphen", "ation,”"]),  # two letters are too few
        ("boat-house", ["boat-", "house"]),
        ("it—and", ["it—", "and"]),
        ("light\u00adhouses", ["light\u00ad", "houses"]),
        ("1907-1912", ["1907-", "1912"]),
        ("x-ray", ["x-ray"]),
    ],
)
def test_words_are_parted_where_readers_expect_it(word: str, parts: list[str]) -> None:
    ends = [0, *(parting.at for parting in partings(word, "en_US")), len(word)]
    assert [word[start:end] for start, end in pairwise(ends)] == parts


def test_hyphens_are_added_only_where_there_are_none() -> None:
    assert [parting.hyphened for parting in partings("boat-building", "en_US")] == [False, True]
    assert [parting.flagged for parting in partings("it—and", "en_US")] == [False]


def test_other_languages_have_their_own_patterns() -> None:
    assert known_language("de") == "de"
    german = [parting.at for parting in partings("Leuchtturmwärter", known_language("de"))]
    assert german == [6, 10, 13]
    assert [parting.at for parting in partings("маяковский", known_language("ru"))]
    assert partings("Leuchtturmwärter", None) == []


def test_short_ends_of_words_stand_alone_only_in_languages_that_allow_it() -> None:
    """Three and three letters in English (common practice), two and two in Russian, Greek German (TeX, memory)."""
    assert [parting.at for parting in partings("burner", "en_US")] == []
    assert [parting.at for parting in partings("understanding", "en_US")] == [5, 10]
    assert 2 in [parting.at for parting in partings("Reben", known_language("de"))]
    assert [parting.at for parting in partings("лампа", "ru")] == [3]
    assert 5 in [parting.at for parting in partings("θάλασσα", known_language("el"))]


def test_the_hyphen_at_the_end_of_a_line_is_printed_but_soft_to_whoever_copies_it() -> None:
    [run] = FOUNT.runs(FOUNT.part("lighthouse", 0, 5, hyphened=True))
    assert run.text == "light-"
    assert run.width == pytest.approx(harfbuzz_width("light-"))
    assert [glyph.text for glyph in run.glyphs] == [*"light", "\u00ad"]
    assert [glyph.text for run in FOUNT.runs("light\u00adhouse\u00ad") for glyph in run.glyphs] == [*"lighthouse"]


def test_letters_are_those_of_the_language() -> None:
    """Turkish tells i from ı, so f and i are not joined; Romanian has commas under s, not cedillas (OpenType, locl)."""

    def glyphs(word: str, face: str, spoken: str) -> list[int]:
        fount = Fount({Style.ROMAN: bundled(face)}, None, spoken)
        return [glyph.gid for run in fount.runs(word) for glyph in run.glyphs]

    assert [len(glyphs("fi", "old style", tag)) for tag in ("en", "tr")] == [1, 2]
    assert glyphs("\u015f", "text", "ro") == glyphs("\u0219", "text", "en") != glyphs("\u015f", "text", "tr")
    assert glyphs("б", "text", "sr") != glyphs("б", "text", "ru")


# ---- boxes


def test_boxes_know_their_stops() -> None:
    boxes = Boxes(FOUNT, 20.0, hanging=False)
    box = boxes["remembering"]
    assert box.width == pytest.approx(harfbuzz_width("remembering"))
    first, second, end = box.stops
    assert first.before == pytest.approx(harfbuzz_width("remem") + harfbuzz_width("-"), abs=0.02)
    assert second.after == pytest.approx(harfbuzz_width("remember"), abs=0.02)
    assert end == (box.width, box.width, 0.0, False)


def test_signs_hang_into_the_margins_if_asked() -> None:
    hanging, upright = Boxes(FOUNT, 20.0, hanging=True), Boxes(FOUNT, 20.0, hanging=False)
    assert hanging["fog."].stops[-1].before == pytest.approx(harfbuzz_width("fog.") - 0.7 * harfbuzz_width("."))
    assert upright["fog."].stops[-1].before == pytest.approx(harfbuzz_width("fog."))
    assert hanging["“fog"].hang == pytest.approx(0.5 * harfbuzz_width("“"))
    assert upright["“fog"].hang == hanging["fog"].hang == 0


def test_no_part_of_a_wide_word_is_wider_than_the_room() -> None:
    boxes = Boxes(FOUNT, 5.0, hanging=False)
    word = "hyphenationless" * 4
    box = boxes[word]
    cuts = [0, *(cut.at for cut in boxes.cuts[word]), len(word)]
    parts = [word[start:end] for start, end in pairwise(cuts)]
    assert "".join(parts) == word
    assert all(FOUNT.width(part) <= 5.0 for part in parts)
    assert len(box.stops) == len(parts)


def test_a_figure_after_a_circumflex_is_not_raised() -> None:
    fount = Fount({Style.ROMAN: bundled("old style")}, None)
    assert [glyph.text for run in fount.runs("x^2^") for glyph in run.glyphs] == ["x", "^", "2", "^"]


def test_tracked_letters_stand_apart_wherever_they_are_measured() -> None:
    """Ten letters and a space: ten distances between them, and the white after the last one counts for its word."""
    wide, words = FOUNT.tracked(0.04), "lampe light"
    letters = [FOUNT.letters(word) for word in words.split(" ")]
    assert wide.line_width(words) == pytest.approx(FOUNT.line_width(words) + 0.04 * sum(letters))
    assert wide.line_width(words) == pytest.approx(FOUNT.line(words, 1.0, tracking=0.04).width)
    assert wide.width("lampe") == pytest.approx(FOUNT.width("lampe") + 0.04 * letters[0])
    assert wide.word_space == pytest.approx(FOUNT.space.width + 0.04)
    assert wide.offset("light", 3) == pytest.approx(FOUNT.offset("light", 3) + 0.12)
    assert wide.reaches("light")[3] == pytest.approx(FOUNT.reaches("light")[3] + 0.12)
    again = copy(wide)
    assert (again.tracking, again.key) == (0.04, wide.key)
    assert wide.key != FOUNT.key
    assert FOUNT.tracked(0.0) is FOUNT
