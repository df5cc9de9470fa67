"""Quotation marks of languages: the delimiters of the Unicode CLDR (quotationStart and so on), from memory."""

from __future__ import annotations

import pytest

from bookmaker.pages.hyphens import languages
from bookmaker.pages.punctuation import punctuation_of


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
        ("fr", "«\u202fx\u202f»"),
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
    ],
)
def test_outer_marks(language: str, outer: str) -> None:
    """French has narrow no-break spaces inside its marks (common practice)."""
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
    ],
)
def test_inner_marks(language: str, inner: str) -> None:
    assert punctuation_of(language).set("'x'") == inner


def test_every_language_with_hyphens_has_marks() -> None:
    for language in languages():
        assert len(punctuation_of(language).set('"x"')) in {3, 5}
