"""Quotation marks by language: the delimiters of the Unicode CLDR, version 48.2 (cldr-misc-full, delimiters.json).

Left out are those where print has others (German and French of Switzerland and France, Dutch, Spanish, Albanian,
Croatian, Serbian, Estonian, Esperanto) and those where the CLDR names one pair only (Bulgarian, Lithuanian).
"""

from __future__ import annotations

import pytest

from bookmaker.typesetting.punctuation import punctuation_of

CLDR = {
    "“”‘’": "en en-GB en-US af da gl hi id ko lv pt tr vi zh zu",
    "「」『』": "ja zh-Hant",
    "„“‚‘": "de cs is sk sl",
    "«»‹›": "fa",
    "«»“”": "ca el eu it pt-PT",
    "«»„“": "ru be uk",
    "«»‘’": "nb nn no",
    "„”«»": "pl ro",
    "„”»«": "hu",
    "””’’": "fi sv he",
    "”“’‘": "ar",
}


@pytest.mark.parametrize(("marks", "tag"), [(marks, tag) for marks, tags in CLDR.items() for tag in tags.split()])
def test_marks_are_those_of_the_cldr(marks: str, tag: str) -> None:
    found = punctuation_of(tag)
    assert "".join((*found.double, *found.single)) == marks
