"""Words that keep together, and words that are hyphenated as their script asks."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.typesetting.lines.bonds import boxed
from bookmaker.typesetting.lines.boxes import Boxes
from bookmaker.typesetting.lines.breaking import break_paragraph
from bookmaker.typesetting.lines.fount import Fount, Style
from bookmaker.typesetting.lines.hyphens import language_of, partings
from bookmaker.typesetting.page import PageFrame
from tests.kit.text_pages import FACE, inside, lines

BOXES = Boxes(Fount({Style.ROMAN: FACE}, "en_US"), 20.0, hanging=True)
WORDS = st.lists(st.sampled_from(["fog", "lamp", "keeper", "at", "—", "–"]), min_size=2, max_size=40)


@given(words=WORDS, measure=st.floats(8, 20))
@settings(deadline=None)
def test_no_line_begins_with_a_dash(words: list[str], measure: float) -> None:
    words = [word for word, before in zip(words, ["—", *words], strict=False) if not {word, before} <= {"—", "–"}]
    words = ["fog", *words]
    for line in break_paragraph(boxed(words, BOXES), BOXES.ragged, (measure,))[1:]:
        assert words[line.first] not in {"—", "–"} or words[line.first - 1] in {"—", "–"}


def test_a_dash_of_speech_stays_on_its_line(tmp_path: Path) -> None:
    text = "— Кто там? — спросил голос у сторожа. — И моряки знали его. — Никого, — ответил сторож и запер дверь."
    for width in (12, 13, 14, 15, 16, 18):
        found = lines(inside(tmp_path, text, PageFrame(width, 30, 2), language="ru").pages[0])
        assert not [line.text for line in found[1:] if line.text.startswith("—")]


@pytest.mark.parametrize("name", ["П. П. Сомов", "A. B. Sterrickson", "И. Самарский"])
def test_initials_stay_with_their_name(tmp_path: Path, name: str) -> None:
    for width in (18, 19, 20, 21, 22, 23, 24):
        text = f"Вчера вечером приехал писатель {name} и сказал, что снова видел остров и туман над ним."
        shown = [line.text for line in lines(inside(tmp_path, text, PageFrame(width, 30, 2), language="ru").pages[0])]
        assert any(name in line for line in shown), shown


def test_a_word_at_the_end_of_a_sentence_is_no_initial() -> None:
    penalties = [box.stops[-1].penalty for box in boxed(["did", "I.", "The", "A.", "Sterrick"], BOXES)]
    assert penalties[:3] == [0, 0, 0]
    assert penalties[3] > 1000


def test_words_in_another_script_are_hyphenated_by_it() -> None:
    assert language_of("туман", "el") == "ru"
    assert language_of("туман", "uk") == "uk"
    assert language_of("θάλασσα", "ru") == "el"
    assert language_of("lamplight", "ru") == "ru"
    assert [part.at for part in partings("достопримечательность", "el")] == [
        part.at for part in partings("достопримечательность", "ru")
    ]
    assert partings("достопримечательность", None) == []
    assert partings("θάλασσα", "en_US") == partings("θάλασσα", "el")


def test_words_in_latin_letters_among_others_are_noted(tmp_path: Path) -> None:
    found = inside(tmp_path, "туман fogs and harbour lamps, keeper", language="ru")
    [note] = [problem for problem in found.problems if "Latin" in problem.message]
    assert note.message == (
        "3 of the 6 words of log.md are in Latin letters and never hyphenated, for its language is ru"
    )
    assert not [p for p in inside(tmp_path, "туман fogs and", language="en").problems if "Latin" in p.message]


def test_pairs_of_lines_lose_nothing() -> None:
    words = ["fog", "—", "A.", "Lamp", "at", "—"]
    found = break_paragraph(boxed(words, BOXES), BOXES.ragged, (6.0,))
    assert found[0].first == 0
    assert {later.first - line.last for line, later in pairwise(found)} == {1}


# common practice
TIED = [
    *["Mrs Quillfeather", "Mr. Quill", "“Mrs Quill", "St Mawgan", "¼ lb", "4 1/2", "4 ½", "1/2 lb", "17° C.", "No. 14"],
    *["20 kg", "5 March", "Jan. 5th", "vol. II", "George V", "100 B.C.", "A.D. 900", "pp. 3–9,", "10 a.m.", "5 %"],
    *["20 000", "£ 5", "§ 9,", "Louis XIV,", "5. März", "5 марта", "10 кг", "стр. 7", "Ludwig II."],
    *["3 in.", "3½ in.,", "15s. 1d.", "9s. 1½d.,", "£4 15s.", "£1,200 0s."],
]
FREE = [
    "said Mrs",
    "said I",
    "When I",
    "in March",
    "12, kg",
    "the 5",
    "1871 we",
    "No. Fog",
    "Mr, Quill",
    "fog V",
    "3 in",
    "15s. Not",
    "2d. 3s.",
]


@pytest.mark.parametrize("pair", TIED)
def test_names_and_measures_are_tied(pair: str) -> None:
    words = ["fog", *pair.split(), "fog"]
    assert [box.stops[-1].penalty > 1000 for box in boxed(words, BOXES)] == [False, True, False, False]


@pytest.mark.parametrize("pair", FREE)
def test_other_words_are_not(pair: str) -> None:
    assert not any(box.stops[-1].penalty for box in boxed(["fog", *pair.split(), "fog"], BOXES))


TIES_TEXT = (
    "Old Mrs Quillfeather weighed all 4 1/2 lb of crumpets on 5 March, the birthday of George V, at No. 14, and then "
    "she wrote to Dr. Unthank that the temperature in her kitchen had never once been over 17° C. since the wedding."
)


@pytest.mark.parametrize("justified", ["yes", "no"])
def test_ties_hold_in_text_and_headings(tmp_path: Path, justified: str) -> None:
    for width in range(20, 34):
        frame = PageFrame(width, 90, 2)
        page = inside(tmp_path, f"# {TIES_TEXT}\n\n{TIES_TEXT}", frame, justified=justified).pages[0]
        for one, other in pairwise(lines(page)):
            broken = f"{one.text.split(' ')[-1]} {other.text.split(' ')[0]}"
            assert broken not in {"Mrs Quillfeather", "4 1/2", "1/2 lb", "5 March,", "George V,", "No. 14,"}, width
            assert broken not in {"Dr. Unthank", "17° C."}, width


@pytest.mark.parametrize(("language", "stays"), [("cs", True), ("ru", True), ("pl", True), ("en", False)])
def test_words_of_one_letter_end_no_line_where_that_is_the_rule(tmp_path: Path, language: str, stays: bool) -> None:
    """Czech k s v z a i o u (Internetová jazyková příručka); Polish and Russian alike (handbooks, see `bonds`)."""
    text = "стоит в тумане и с фонарём " * 6 if language == "ru" else "stojí v mlze a s lampou " * 6
    ends = [
        line.text.split(" ")[-1]
        for width in range(18, 34)
        for line in lines(inside(tmp_path, text.strip(), PageFrame(width, 60, 2), language=language).pages[0])
    ]
    assert any(len(end) == 1 for end in ends) is not stays
