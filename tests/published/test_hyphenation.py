"""Hyphens as published."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from bookmaker.typesetting.lines.hyphens import known_language, partings


@pytest.mark.parametrize(
    "parted", ["hy-phen-ation", "con-cate-na-tion", "su-per-cal-ifrag-ilis-tic-ex-pi-ali-do-cious"]
)
def test_words_are_parted_as_the_texbook_shows(parted: str) -> None:
    """D. E. Knuth, The TeXbook (1984), appendix H; but two letters alone, as he allows, stay on no line here."""
    language = known_language("en")
    whole = parted.replace("-", "")
    ends = [0, *(parting.at for parting in partings(whole, language)), len(whole)]
    assert "-".join(whole[start:end] for start, end in pairwise(ends)) == re.sub(r"^(..)-", r"\1", parted)
    assert all(parting.hyphened and parting.flagged for parting in partings(whole, language))
