"""How covers are lettered: in typefaces of their age, capitals set apart, in the capitals of their language."""

from __future__ import annotations

import unicodedata
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.geometry import Size
from bookmaker.ground.typefaces import bundled
from bookmaker.things.book.designs.design import DrawnDesign, Words
from bookmaker.things.book.designs.letters.cut import Cut
from bookmaker.things.book.designs.letters.eras import FIRST, of_its_time
from bookmaker.things.book.designs.letters.titling import fit_text
from bookmaker.things.book.designs.styles.cloth import Cloth
from bookmaker.things.book.designs.styles.leather import Leather
from bookmaker.typesetting.capitals import has_capitals, in_capitals
from tests.kit.flats import flat_of
from tests.kit.recording import Written
from tests.kit.shelves import ONE_BOOK
from tests.kit.styles import drawn, every_style

YEARS = st.integers(1500, 2020)
FILES = {name: bundled(name).path for name in FIRST}


def typefaces(texts: list[Written]) -> set[Path]:
    return {run.typeface.path for text in texts for _, run in text.line.runs}


@every_style
@pytest.mark.parametrize("year", ["1620", "1790", "1830", "1899", "1935"])
@pytest.mark.parametrize("title", ["Salt", "Rope", "Weather", "Small Hours"])
def test_no_cover_is_lettered_in_a_typeface_of_a_later_time(model: type[DrawnDesign], year: str, title: str) -> None:
    seen = typefaces(drawn(model, flat_of(5.0), Words(title, "M. Ray", date=year)).texts)
    later = {FILES[name] for name, first in FIRST.items() if first > int(year) and not name.startswith("text")}
    assert seen & later == set()


@given(year=YEARS, month=st.sampled_from(["", "May ", "12 September "]))
def test_what_is_offered_is_of_its_time(year: int, month: str) -> None:
    offered = [("geometric", "geometric"), ("didone", "caslon italic"), ("clarendon bold", "clarendon")]
    for pair in of_its_time(offered, f"{month}{year}"):
        assert all(FIRST.get(name, 0) <= year for name in pair)


def test_a_typeface_that_is_named_letters_the_whole_cover() -> None:
    words = Words("Salt", "M. Ray", "II", "1790")
    assert typefaces(drawn(Cloth, flat_of(5.0), words, face="geometric").texts) == {bundled("geometric").path}


@pytest.mark.parametrize(("case", "said"), [("capitals", "SALT ROADS"), ("as written", "Salt Roads")])
def test_titles_are_set_as_the_maker_asks(case: str, said: str) -> None:
    for title in drawn(Leather, flat_of(5.0), Words("Salt Roads"), case=case).texts:
        assert title.text in said.split() or title.text == said


def test_capitals_are_set_apart_and_small_letters_are_not() -> None:
    """By 0.06 of the size between any two letters, and by as much as is asked for."""
    plain = bundled("caslon")
    for case, keys, ems in (("capitals", {}, 0.06), ("as written", {}, 0.0), ("as written", {"tracking": "4 %"}, 0.04)):
        words = Words("SALT" if case == "capitals" else "Salt")
        for text in drawn(Cloth, flat_of(5.0), words, case=case, face="caslon", **keys).texts:
            ((_, run),) = text.line.runs
            near = [a.advance for a in plain.shape(text.text, features=("-liga", "-clig")).glyphs]
            added = [glyph.advance - usual for glyph, usual in zip(run.glyphs, near, strict=True)]
            assert added == pytest.approx([ems] * (len(added) - 1) + [0.0])


@given(
    text=st.text(st.sampled_from("ABCdefgh ijklm"), min_size=2, max_size=24).filter(str.strip),
    tracking=st.floats(0.01, 0.3),
)
def test_letters_set_apart_still_fit_their_box(text: str, tracking: float) -> None:
    block = fit_text(Cut(bundled("caslon"), tracking), text, Size(20, 5), 6.0)
    assert block.width <= 20 + 1e-6
    for line in block.lines:
        for _, run in line.runs:
            assert run.width == pytest.approx(sum(glyph.advance for glyph in run.glyphs))


def test_figures_beside_small_letters_are_old_style() -> None:
    """Caslon's 3 hangs under the line there, and stands on it beside capitals."""
    bottoms = {}
    for case in ("as written", "capitals"):
        texts = drawn(Cloth, flat_of(9.0), Words("Trees 33"), face="caslon", case=case).texts
        bottoms[case] = min(run.bottom for text in texts for _, run in text.line.runs)
    assert bottoms["as written"] < -0.1
    assert bottoms["capitals"] > -0.05


LETTERS = st.text(st.characters(codec="utf-8", categories=("Ll", "Lu"), max_codepoint=0x52F), max_size=12)


@given(LETTERS)
def test_capitals_have_no_small_letters_left(text: str) -> None:
    """Unicode, SpecialCasing: what has a capital, of one letter or of several, becomes it."""
    said = in_capitals(text)
    for sign in said:
        assert not sign.islower() or sign.upper() == sign


@given(LETTERS)
def test_accents_stay_over_all_but_greek_capitals(text: str) -> None:
    latin = "".join(sign for sign in text if sign < "\u0370")
    assert unicodedata.normalize("NFD", in_capitals(latin)) == unicodedata.normalize("NFD", latin.upper())


@pytest.mark.parametrize(
    ("text", "language", "said"),
    [
        ("İstanbul kıyıları ile", "tr", "İSTANBUL KIYILARI İLE"),  # SpecialCasing.txt, tr: i to U+0130
        ("Istanbul", "en", "ISTANBUL"),
        ("Öffnung der Straße", "de", "ÖFFNUNG DER STRASSE"),  # SpecialCasing.txt: ß to SS
        ("Το πρωΐ", "el", "ΤΟ ΠΡΩΪ"),  # accents go, the diaeresis stays (Unicode, 5.18)
        ("ﬁn de siècle", "fr", "FIN DE SIÈCLE"),
    ],
)
def test_capitals_of_languages(text: str, language: str, said: str) -> None:
    assert in_capitals(text, language) == said


def test_a_typeface_with_a_capital_sharp_s_has_it_in_titles() -> None:
    found = drawn(Cloth, flat_of(9.0), Words("Straße", language="de"), face="geometric", case="capitals").texts
    assert {text.text for text in found} == {"STRAẞE"}


def test_scripts_without_capitals_stay_as_they_are() -> None:
    assert has_capitals("Соль и Ἅλς")
    assert not has_capitals("מלח")


def test_the_language_of_a_book_without_text_is_that_of_its_cover(tmp_path: Path) -> None:
    """French quotation marks stand around what was typed; German spines are lettered upwards."""
    path = tmp_path / "shelf.yaml"
    book = ONE_BOOK.replace("title: Tide Tables", "title: 'Die \"Gezeiten\"'\n    LANGUAGE")
    said = {}
    for language in ("", "language: de"):
        path.write_text(book.replace("    LANGUAGE\n", f"    {language}\n" if language else ""), encoding="utf-8")
        (draft,) = check(path).drafts.values()
        said[language] = [(line.text, line.way) for line in draft.lettering if line.on == "spine"]
    assert said[""] == [("Die “Gezeiten”", "down")]
    assert said["language: de"] == [("Die „Gezeiten“", "down")]


def test_columns_of_eras_are_in_order() -> None:
    assert all(one <= other for one, other in pairwise(FIRST.values()))
