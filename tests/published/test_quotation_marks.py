"""Quotation marks of languages: the delimiters of the Unicode CLDR (quotationStart and so on), from memory."""

from __future__ import annotations

import pytest

from bookmaker.typesetting.lines.hyphens import languages
from bookmaker.typesetting.punctuation import punctuation_of


@pytest.mark.parametrize(
    ("language", "outer"),
    [
        ("en", "“x”"),
        ("en-GB", "“x”"),
        ("de", "„x“"),
        ("de-AT", "„x“"),
        ("de-CH", "«x»"),
        ("cs", "„x“"),
        ("sk-SK", "„x“"),
        ("is", "„x“"),
        ("bg", "„x“"),
        ("fr", "«\u00a0x\u00a0»"),
        ("el-GR", "«x»"),
        ("es", "«x»"),
        ("it", "«x»"),
        ("pt", "“x”"),
        ("pt-PT", "«x»"),
        ("ru", "«x»"),
        ("uk", "«x»"),
        ("nb-NO", "«x»"),
        ("sv", "”x”"),
        ("fi", "”x”"),
        ("pl", "„x”"),
        ("hu", "„x”"),
        ("ro", "„x”"),
        ("tr", "“x”"),
        ("he", "”x”"),
    ],
)
def test_outer_marks(language: str, outer: str) -> None:
    """French has no-break spaces inside its marks (Lexique des règles typographiques, Imprimerie nationale)."""
    assert punctuation_of(language).set('"x"') == outer


@pytest.mark.parametrize(
    ("language", "inner"),
    [
        ("en", "‘x’"),
        ("de", "‚x‘"),
        ("ru", "„x“"),
        ("el", "“x”"),
        ("es", "“x”"),
        ("sv", "’x’"),
        ("pl", "«x»"),
        ("hu", "»x«"),
        ("he", "’x’"),
    ],
)
def test_inner_marks(language: str, inner: str) -> None:
    assert punctuation_of(language).set("'x'") == inner


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ('צה"ל אמר: "בוא"', "צה״ל אמר: ”בוא”"),
        ("ג'ירפה וצ'ק", "ג׳ירפה וצ׳ק"),
        ("'רחוב ז'בוטינסקי'", "’רחוב ז׳בוטינסקי’"),
        ('"דו"ח" -- וזהו...', "”דו״ח” – וזהו…"),
    ],
)
def test_geresh_and_gershayim_stand_within_hebrew_words(typed: str, printed: str) -> None:
    """Their uses are those that Unicode names for U+05F3 and U+05F4, from memory."""
    assert punctuation_of("he").set(typed) == printed


def test_every_language_with_hyphens_has_marks() -> None:
    for language in languages():
        assert len(punctuation_of(language).set('"x"')) in {3, 5}
