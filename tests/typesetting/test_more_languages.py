"""Languages without patterns here: accepted, their words left whole, their marks those of the CLDR (48.2)."""

from __future__ import annotations

import pytest

from bookmaker.typesetting.languages import LANGUAGES, UNPARTABLE, WITHOUT_BLANKS, meant_language, unparted
from bookmaker.typesetting.punctuation import is_punctuated, punctuation_of


@pytest.mark.parametrize(
    ("language", "marks"),
    [
        *[("ar", "”“’‘"), ("fa", "«»‹›"), ("hi", "“”‘’"), ("vi", "“”‘’"), ("fa-IR", "«»‹›")],
        *[("ja", "「」『』"), ("zh", "“”‘’"), ("zh-Hant", "「」『』"), ("ko", "“”‘’")],
    ],
)
def test_quotations_have_the_marks_of_their_language(language: str, marks: str) -> None:
    found = punctuation_of(language)
    assert "".join((*found.double, *found.single)) == marks
    begin, end = found.double
    assert found.set('"x"') == f"{begin}x{end}"


@pytest.mark.parametrize("tag", UNPARTABLE)
def test_whoever_is_accepted_has_marks_and_is_told_of_hyphens_once(tag: str) -> None:
    assert is_punctuated(tag)
    assert tag not in LANGUAGES
    (note,) = unparted(tag)
    assert UNPARTABLE[tag] in note.message
    assert ("soft hyphens" in note.remedy) is (tag in {"fi", "hi", "tr"})


@pytest.mark.parametrize("tag", WITHOUT_BLANKS)
def test_languages_whose_lines_end_anywhere_need_no_hyphens(tag: str) -> None:
    assert is_punctuated(tag)
    assert not [*unparted(tag)]
    assert meant_language(WITHOUT_BLANKS[tag]) == f"did you mean {tag}, {WITHOUT_BLANKS[tag]}?"
