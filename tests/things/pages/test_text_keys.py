"""What a maker writes about pages of text: what is refused, and what to write instead."""

from __future__ import annotations

import pyphen
import pytest
from pydantic import ValidationError

from bookmaker.shelf_file.spec_errors import explain
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.languages import LANGUAGES, UNPARTABLE, WITHOUT_BLANKS
from bookmaker.typesetting.lines.hyphens import known_language

LEADING = "write how many times the size of type it is from line to line, from 0.8 to 3, such as 1.25"


def refused(**keys: str) -> tuple[str, str]:
    """What is wrong with a key of text pages, and what to write instead."""
    with pytest.raises(ValidationError) as caught:
        TextInside.model_validate({"file": "log.md", **keys})
    [error] = caught.value.errors()
    return error["ctx"]["message"], error["ctx"]["remedy"]


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("english", "en, English"),
        ("British", "en-GB, English"),
        ("German", "de, German"),
        ("norwegian", "nb, Norwegian Bokmål"),
        ("itallian", "it, Italian"),
    ],
)
def test_a_language_by_its_name_leads_to_its_tag(written: str, meant: str) -> None:
    assert refused(language=written)[1] == f"did you mean {meant}?"


def test_languages_are_those_with_patterns() -> None:
    """The library's own list, whose names are tags with regions."""
    assert set(LANGUAGES) == {name.partition("_")[0] for name in pyphen.LANGUAGES}


@pytest.mark.parametrize(
    ("written", "message", "remedy"),
    [
        ("3 mm", "3 mm is not a plain number", LEADING),
        ("125%", "125% is a percentage", "write 1.25, a multiple of the size of type"),
        ("125 %", "125 % is a percentage", "write 1.25, a multiple of the size of type"),
        ("21", "21 is out of range", LEADING),
        ("500 %", "500 % is not a plain number", LEADING),
        ("wide", "wide is not a plain number", LEADING),
        ("1.2.3", "1.2.3 is not one number", LEADING),
    ],
)
def test_a_leading_is_a_multiple_of_the_size(written: str, message: str, remedy: str) -> None:
    assert refused(leading=written) == (message, remedy)


def test_a_language_without_patterns_is_refused() -> None:
    assert refused(language="klingon") == (
        "the language 'klingon' is not known here",
        f"write none for no hyphens, or one of {', '.join(sorted(LANGUAGES | UNPARTABLE | WITHOUT_BLANKS))}",
    )
    assert refused(language="la")[1].startswith("write none for no hyphens, or one of af, ar, as, ")
    assert TextInside.model_validate({"file": "log.md", "language": "no"}).language == "none"


def test_a_language_needs_no_patterns_if_its_marks_are_known() -> None:
    for tag, name in UNPARTABLE.items():
        assert known_language(tag) is None
        assert TextInside.model_validate({"file": "log.md", "language": tag}).language == tag
        assert refused(language=name)[1] == f"did you mean {tag}, {name}?"
    assert TextInside.model_validate({"file": "log.md", "language": "he-IL"}).language == "he-IL"


def test_no_key_is_guessed_from_a_few_letters() -> None:
    with pytest.raises(ValidationError) as caught:
        TextInside.model_validate({"kind": "text", "file": "log.md", "indent": "1 mm"})
    [problem] = explain(caught.value, TextInside)
    assert problem.remedy.startswith("known here: ")
