"""Titles on lines: no article alone, none at a line's end; shortened only step by step."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.designs.titling import fit_text
from bookmaker.designs.wording import reads_upwards, shortened, units
from bookmaker.geometry import Size
from bookmaker.typefaces import bundled

ARTICLES = ("the", "a", "an", "der", "die", "la", "les")
WORDS = st.sampled_from([*ARTICLES, "The", "of", "and", "lamp", "Harbour", "navigation", "sea", "X"])


@given(st.lists(WORDS, min_size=2, max_size=14), st.floats(1, 12), st.floats(1, 20))
@settings(max_examples=200, deadline=None)
def test_no_article_stands_alone_or_ends_a_line(words: list[str], width: float, height: float) -> None:
    *lines, last = (line.text for line in fit_text(bundled("text"), " ".join(words), Size(width, height), 5.0).lines)
    assert not [line for line in lines if line.split()[-1].casefold() in ARTICLES]
    assert not lines or last.casefold() not in ARTICLES


@given(st.lists(WORDS, max_size=14))
def test_no_word_is_lost(words: list[str]) -> None:
    assert " ".join(units(" ".join(words))).split() == words


def test_initials_stay_with_their_name() -> None:
    assert units("B. Tarrow") == ("B. Tarrow",)
    assert units("J.-P. A. Fell and Sons") == ("J.-P. A. Fell", "and Sons")
    assert units("Letter B.") == ("Letter B.",)


def test_a_link_goes_with_what_follows_unless_that_makes_the_longest_part() -> None:
    assert units("Wind and Weather") == ("Wind", "and", "Weather")
    assert units("Observations of Wind") == ("Observations", "of Wind")


def test_no_link_stands_alone_where_it_costs_little() -> None:
    block = fit_text(bundled("text"), "Small Tales of Candle Haven", Size(10, 30), 5.0)
    assert "of" not in [line.text for line in block.lines]


def test_a_title_is_shortened_in_steps() -> None:
    assert list(shortened("The Meteorology of Islands: With Tables")) == [
        "The Meteorology of Islands: With Tables",
        "The Meteorology of Islands",
        "Meteorology of Islands",
        "Mete. of Isla.",
    ]
    assert list(shortened("Salt")) == ["Salt"]


@pytest.mark.parametrize(
    ("language", "title", "upwards"),
    [("en", "Маяк", False), ("fr", "Le phare", True), ("pt-BR", "O farol", True), ("", "Маяк", True), ("", "A", False)],
)
def test_the_language_tells_which_way_a_spine_reads(language: str, title: str, upwards: bool) -> None:
    assert reads_upwards(language, title) is upwards
