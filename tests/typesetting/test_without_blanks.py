"""Chinese, Japanese and Korean: where lines end, and how their signs fill them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.type_styles import Style
from bookmaker.ground.typefaces import Typeface, load_typeface
from bookmaker.typesetting.lines.boxes import Boxes
from bookmaker.typesetting.lines.fount import Fount
from bookmaker.typesetting.lines.hyphens import partings
from bookmaker.typesetting.lines.ideographs import is_wide, places_to_part
from bookmaker.typesetting.lines.paragraphs import Lines, Measures
from bookmaker.typesetting.manuscripts.markdown import passages_of
from bookmaker.typesetting.manuscripts.plain_text import plain_passages
from tests.kit.fonts import font_of_boxes

SIGNS = {
    "AL": "#", "B2": "\u2014", "CL": "}", "CP": ")", "EX": "!", "GL": "\u00a0", "HY": "-", "IN": "\u2024", "IS": ",",
    "NU": "0", "OP": "(", "PO": "%", "PR": "$", "QU": '"', "SY": "/", "H2": "\uac00", "H3": "\uac01", "CJ": "\u3041",
    "wide OP": "\u300c", "ID": "\u5b57", "NS": "\uff1a",
}  # fmt: skip
"""Classes of UAX #14, each with the sign that stands for it in Unicode's test file, or with a wide one of the class."""

IDEOGRAPHS = ("ID", "H2", "H3")
WIDE_ONES = (*IDEOGRAPHS, "wide OP", "CJ", "NS")

AFTER_IDEOGRAPHS = {"AL", "B2", "H2", "H3", "ID", "NU", "wide OP", "PR", "OP"}
BEFORE_IDEOGRAPHS = {"H2", "H3", "ID", "wide OP"}
ENDS = (
    dict.fromkeys(IDEOGRAPHS, AFTER_IDEOGRAPHS)
    | {cls: AFTER_IDEOGRAPHS | {"PO"} for cls in ("CJ", "NS")}
    | dict.fromkeys(("AL", "B2", "CL", "CP", "EX", "HY", "IN", "IS", "NU", "PO", "SY"), BEFORE_IDEOGRAPHS)
    | {cls: set[str]() for cls in ("wide OP", "OP", "GL", "QU")}
    | {"PR": {"wide OP"}}
)
"""After each class those before which a line may begin, of all pairs with a wide sign: LineBreakTest.txt, Unicode 15.0.

What it says of CJ holds for NS, which has no wide sign there.
"""

TEXT = "島の灯台守は、毎晩七時に「古い『ランプ』」を灯した（らしい）。ちょっと、コーヒー！二十％……と言って——笑った。"
NEVER_FIRST = "、。，．」』）！？：；・々ーぁぃぅぇぉっゃゅょァィゥェォッャュョ…"
NEVER_LAST = "「『（"
"""A choice of JLREQ, 3.1.7 and 3.1.8, as implementations have it."""


@pytest.mark.parametrize("first", SIGNS)
@pytest.mark.parametrize("second", SIGNS)
def test_pairs_with_a_wide_sign_are_parted_as_the_test_file_of_unicode_has_it(first: str, second: str) -> None:
    if first in WIDE_ONES or second in WIDE_ONES:
        found = [at for at, _ in places_to_part(SIGNS[first] + SIGNS[second])]
        assert found == ([1] if second in ENDS[first] else [])


@pytest.mark.parametrize(
    ("text", "places"),
    [
        ("他说“好”吗", [1, 2, 5]),  # marks that open and close (LB15a, LB15b, LB19a)
        ("字\u3099字", [2]),  # a mark stays with its sign (LB9)
        ("字——字", [1, 3]),  # two dashes are one (LB17)
        ("字Harbour号", [1, 8]),
        ("\x01字\x00字", [2]),  # before the sign of the style that begins there
    ],
)
def test_longer_stretches_are_parted_by_the_rules(text: str, places: list[int]) -> None:
    assert [at for at, _ in places_to_part(text)] == places


def test_no_line_begins_with_a_sound_mark_after_a_dash() -> None:
    """It counts as a letter, but no line begins with one (class CJ of UAX #14)."""
    assert [parting.at for parting in partings("い—ー、い", None)] == [1, 4]
    assert [parting.at for parting in partings("いい—ab", None)] == [1, 2, 3]


def test_korean_lines_rather_end_between_words() -> None:
    assert {penalty for _, penalty in places_to_part("등대지기는")} == {40.0}
    assert {penalty for _, penalty in places_to_part("灯台守は")} == {0.0}


@pytest.fixture(scope="module")
def face(tmp_path_factory: pytest.TempPathFactory) -> Typeface:
    letters = "".join(dict.fromkeys(f" .,x0Hab￥“”{TEXT}{NEVER_FIRST}{NEVER_LAST}"))
    return load_typeface(font_of_boxes(tmp_path_factory.mktemp("wide") / "own.ttf", letters))


def set_in(face: Typeface, text: str, measure: float) -> Iterator[tuple[str, float, float]]:
    """The lines of a filled paragraph in type of 1 mm: what each says, and where its ink begins and ends."""
    fount = Fount({Style.ROMAN: face}, None, "ja")
    boxes = Boxes(fount, measure, hanging=True)
    for line in Lines(fount).paragraph(text, Measures(0.0, (measure,)), boxes, 1.0, justified=True).lines:
        made = fount.line(line.words, 1.0, line.gap, line.tracking)
        runs = [run for _, run in made.runs]
        left = line.x + runs[0].left
        yield line.words, left, line.x + made.width - (runs[-1].width - runs[-1].right)


def test_lines_are_filled_to_both_edges_by_their_letters_alone(face: Typeface) -> None:
    """Ink of ideographs is 0.05 em from the left of its square and 0.55 from the right, that of marks at the edge."""
    *filled, last = set_in(face, TEXT * 4, 11.6)
    assert "".join(words for words, _, _ in (*filled, last)) == TEXT * 4
    for words, left, right in filled:
        assert left == pytest.approx(0.05, abs=0.02)
        # dashes and points of leaving out are narrow here, and stand out by a fifth
        edge = 11.55 if words[-1] in "、。」』）" else 11.05 if is_wide(words[-1]) else 11.65
        assert right == pytest.approx(edge, abs=0.02), words


@given(st.text(alphabet=TEXT + NEVER_FIRST[:8] + NEVER_LAST, min_size=40, max_size=400), st.floats(8, 25))
def test_no_line_begins_or_ends_as_it_must_not(face: Typeface, text: str, measure: float) -> None:
    """But where so many such signs come together that they fill a line by themselves."""
    lines = [words for words, _, _ in set_in(face, text, measure)]
    assert "".join(lines) == text
    places = {at for at, _ in places_to_part(text)}
    ends, end = set(), 0
    for line in lines[:-1]:
        end += len(line)
        ends.add(end)
    bounds = [0, *sorted(places), len(text)]
    longest = max(after - before for before, after in pairwise(bounds))
    if longest <= measure:
        assert ends <= places
        assert not {line[0] for line in lines[1:]} & set(NEVER_FIRST)
        assert not {line[-1] for line in lines[:-1]} & set(NEVER_LAST)


def test_marks_that_meet_close_up_and_latin_words_stand_apart(face: Typeface) -> None:
    """Two marks take the room of one and a half, and a quarter of the square parts figures from ideographs (JLREQ)."""
    fount = Fount({Style.ROMAN: face}, None, "ja")
    assert fount.width("灯。」灯") == pytest.approx(3.5)
    assert fount.width("灯」「灯") == pytest.approx(3.5)
    assert fount.width("灯「『灯") == pytest.approx(3.5)
    assert fount.width("灯00灯") == pytest.approx(3.5)
    assert Fount({Style.ROMAN: face}, None, "ko").width("灯。」灯") == pytest.approx(4.0)


def test_a_paragraph_without_a_blank_may_be_as_long_as_it_likes(face: Typeface) -> None:
    text = TEXT * 60
    *filled, _ = set_in(face, text, 20.0)
    assert max(len(words) for words, _, _ in filled) <= 24
    assert sum(len(words) for words, _, _ in filled) > 3000


TYPED = "灯台の\n下の岩に、*波*が\n寄せ\nabc の\n등대\n지기"
JOINED = "灯台の下の岩に、{}が寄せ abc の등대 지기"


def test_lines_as_they_were_typed_go_on_without_a_blank() -> None:
    """But for Korean, and beside Latin words."""
    (plain,) = plain_passages(TYPED)
    assert plain.text == JOINED.format("*波*")
    (passage,), _ = passages_of(TYPED, "t.md")
    assert passage.text == JOINED.format("\x01波\x00")
