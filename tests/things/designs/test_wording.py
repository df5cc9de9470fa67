"""Titles on lines: no article alone, none at a line's end; shortened only step by step."""

from __future__ import annotations

from itertools import combinations, pairwise
from math import prod

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.geometry import Size
from bookmaker.ground.typefaces import bundled
from bookmaker.things.book.designs.letters.names import surname
from bookmaker.things.book.designs.letters.titling import breakings, fit_text
from bookmaker.things.book.designs.letters.wording import (
    breaks_well,
    reads_upwards,
    shortened,
    units,
    with_subtitle,
)

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


def test_a_link_goes_with_what_follows() -> None:
    assert units("Wind and Weather") == ("Wind", "and Weather")
    assert units("Letters from a Constant Friend") == ("Letters", "from a Constant", "Friend")
    assert units("Under the Ash") == ("Under", "the Ash")


SMALL = {
    "en": {"the", "a", "an", "of", "and", "in", "on", "to", "for", "by", "from", "with", "under", "between", "my"},
    "de": {"der", "die", "das", "dem", "eine", "von", "und", "in", "auf", "mit", "über", "nach", "zum", "des", "für"},
    "fr": {"le", "la", "les", "un", "de", "du", "des", "et", "à", "aux", "dans", "sur", "pour", "par", "avec", "sans"},
}
"""Articles, prepositions, conjunctions, from memory."""

WEIGHTY = {
    "en": ["Tide", "Lamp", "Harbour", "Keeper", "Winter", "Constantinople", "Salt", "Ferries", "Great"],
    "de": ["Ebbe", "Leuchtfeuer", "Meer", "Wärter", "Geschichte", "Nordseeinseln", "Alte", "Salz"],
    "fr": ["Mer", "Phare", "Baie", "Hommes", "Gardienne", "Oiseaux", "Marées", "Petite"],
}


@st.composite
def titles(draw: st.DrawFn) -> tuple[str, str]:
    """A language, and a title that has something to say after each of its small words."""
    language = draw(st.sampled_from(sorted(SMALL)))
    parts: list[str] = []
    for _ in range(draw(st.integers(1, 5))):
        parts += draw(st.lists(st.sampled_from(sorted(SMALL[language])), max_size=2))
        parts += draw(st.lists(st.sampled_from(WEIGHTY[language]), min_size=1, max_size=2))
    return language, " ".join(parts)


@given(titles(), st.floats(1, 14), st.floats(1, 20), st.booleans(), st.booleans())
@settings(max_examples=200, deadline=None)
def test_no_line_ends_with_a_small_word(
    titled: tuple[str, str], width: float, height: float, capitals: bool, apart: bool
) -> None:
    """Unless the line is the first, of one long word, or is made of small words alone, set smaller, within a title."""
    language, title = titled
    said = title.upper() if capitals else title
    block = fit_text(bundled("caslon"), said, Size(width, height), 5.0, small_lines=apart)
    assert " ".join(line.text for line in block.lines) == said
    for number, line in enumerate(block.lines):
        words = line.text.casefold().split()
        if words[-1] not in SMALL[language]:
            assert line.size == pytest.approx(block.size)
        elif number or len(words) > 1 or len(words[0]) < 5:
            assert apart
            assert all(word in SMALL[language] for word in words)
            assert line.size < 0.8 * block.size
            assert 0 < number < len(block.lines) - 1


def test_a_phrase_is_not_broken_where_small_words_may_stand_apart() -> None:
    block = fit_text(bundled("caslon"), "ANNALS OF THE LOW TIDE", Size(10, 7), 5.0, small_lines=True)
    assert [line.text for line in block.lines] == ["ANNALS", "OF THE", "LOW TIDE"]
    first, second, third = block.drops
    assert third - second > second - first  # what is free over and under the small line is the same


def test_a_title_is_shortened_in_steps() -> None:
    assert list(shortened("The Meteorology of Islands: With Tables")) == [
        "The Meteorology of Islands: With Tables",
        "The Meteorology of Islands",
        "Meteorology of Islands",
    ]
    assert list(shortened("Salt")) == ["Salt"]


@pytest.mark.parametrize(
    ("title", "whole_words"),
    [
        ("The Wonderful Adventures of a Small Tin Whistle", "Wonderful Adventures"),
        ("Notes on Bees, with Plates", "Notes on Bees"),
        ("Seven Winters in the Marsh after the Flood", "Seven Winters"),
        ("Rope Walks and Tar Houses", "Rope Walks and Tar Houses"),
        ("Navigation of Canals", "Navigation of Canals"),
        ("Lives of St. Ode", "Lives of St. Ode"),
    ],
)
def test_a_title_keeps_whole_words_as_long_as_it_can(title: str, whole_words: str) -> None:
    """Phrases go from the end, before a preposition; two words stay, and nothing that is joined is parted."""
    ways = list(shortened(title))
    uncut = [way for way in ways if "&" not in way]
    assert uncut[-1] == whole_words
    assert ways[: len(uncut)] == uncut
    said = set(title.replace(",", "").split())
    assert all(word.rstrip(",:") in said | {"&"} for way in ways for word in way.split())


@pytest.mark.parametrize(
    ("language", "title", "upwards"),
    [("en", "Маяк", False), ("fr", "Le phare", True), ("pt-BR", "O farol", True), ("", "Маяк", True), ("", "A", False)],
)
def test_the_language_tells_which_way_a_spine_reads(language: str, title: str, upwards: bool) -> None:
    assert reads_upwards(language, title) is upwards


@pytest.mark.parametrize(
    ("title", "lines"),
    [
        ("Letters to a Cartographer", ("Letters", "to a Cartographer")),
        ("Fog for Beginners", ("Fog", "for Beginners")),
        ("What the Tide Left", ("What", "the Tide Left")),
        ("On the Keeping of Bees in Windy Places", ("On the Keeping of Bees", "in Windy Places")),
        ("Notes Towards a Theory of Rope", ("Notes Towards a Theory", "of Rope")),
        ("The House at the End of the Pier", ("The House", "at the End of the Pier")),
        ("A Dictionary of Sea-Words, Rhymed and Explained", ("A Dictionary of Sea-Words,", "Rhymed and Explained")),
        ("Survey Ledger No. 7", ("Survey", "Ledger No. 7")),
        ("The Patient Lamps, Volume Two", ("The Patient Lamps,", "Volume Two")),
        ("Les Phares de la Côte perdue", ("Les Phares", "de la Côte perdue")),
        ("Der Mann auf dem Deich und die Frau im Moor", ("Der Mann auf dem Deich", "und die Frau im Moor")),
        ("Το φως στην άκρη της θάλασσας", ("Το φως στην άκρη", "της θάλασσας")),
        ("Between the Tides", ("Between", "the Tides")),
    ],
)
def test_titles_break_by_their_sense(title: str, lines: tuple[str, str]) -> None:
    assert breakings(bundled("text bold"), title)[1].lines == lines


@given(st.lists(WORDS, min_size=2, max_size=9), st.integers(1, 4))
@settings(max_examples=150, deadline=None)
def test_lines_are_as_even_as_words_allow(words: list[str], count: int) -> None:
    """No other way to break at the same places into as many lines is narrower and breaks as well; by brute force."""
    face = bundled("text")
    parts = units(" ".join(words))
    ways = breakings(face, " ".join(words))
    if count > len(ways):
        return
    found = ways[count - 1].lines

    def cost(lines: tuple[str, ...]) -> float:
        widest = max(face.shape(line).width for line in lines)
        return widest / prod(breaks_well(*pair) for pair in pairwise(lines))

    others = [
        tuple(" ".join(parts[start:end]) for start, end in pairwise((0, *cuts, len(parts))))
        for cuts in combinations(range(1, len(parts)), count - 1)
    ]
    assert cost(found) <= min(map(cost, others)) * 1.02  # kerning over a space is not counted when lines are broken


def test_a_title_is_parted_from_its_subtitle() -> None:
    assert with_subtitle("Canals: A Handbook") == ("Canals", "A Handbook")
    assert with_subtitle("The Lamp; or, The Keeper's Daughter") == ("The Lamp", "or, The Keeper's Daughter")
    assert with_subtitle("Salt – A Life: With Maps") == ("Salt", "A Life: With Maps")
    assert with_subtitle("At 4:30") == ("At 4:30", "")
    assert with_subtitle("Salt: ") == ("Salt: ", "")


@pytest.mark.parametrize(
    ("author", "short"),
    [
        ("E. Rook", "Rook"),
        ("J.-P. A. Fell", "Fell"),
        ("The Revd Amos Pell", "Pell"),
        ("Ludwig van der Leyden", "van der Leyden"),
        ("Anna de la Cour", "de la Cour"),
        ("de la Mer", "de la Mer"),
        ("Mrs Fell", "Mrs Fell"),
        ("Sister Agnes", "Sister Agnes"),
        ("Henry IV", "Henry IV"),
        ("Brother Anselm of Skerry", "Brother Anselm of Skerry"),
        ("Maud Sterrick and T. Quay", "Sterrick and Quay"),
        ("A. Fell, B. Rook & C. Tarn", "Fell, Rook & Tarn"),
        ("Amos Pell, D.D.", "Pell"),
        ("Pell, Amos", "Pell"),
        ("Fell & Sons", "Fell & Sons"),
        ("The Lamp Committee", "The Lamp Committee"),
        ("The Lamp Keepers", "The Lamp Keepers"),
        ("A Lady", "A Lady"),
        ("Anon", "Anon"),
        ("К. Приливин", "Приливин"),
        ("Ν. Βραχοφύλακας", "Βραχοφύλακας"),
    ],
)
def test_the_surname_of_an_author(author: str, short: str) -> None:
    assert surname(author) == short


def test_where_the_surname_comes_first_a_name_stays_whole() -> None:
    assert surname("Kovár Imre", "hu") == "Kovár Imre"


@pytest.mark.parametrize(
    ("title", "ways"),
    [
        ("Rules for the Conduct of Ferries", ["Rules for the Conduct of Ferries"]),
        (
            "Rules and Fares for the Conduct of Ferries",
            ["Rules and Fares for the Conduct of Ferries", "Rules and Fares", "Rules & Fares"],
        ),
        (
            "Complete Guide to Lamps and Oils for Keepers of the Stations",
            [
                "Complete Guide to Lamps and Oils for Keepers of the Stations",
                "Complete Guide to Lamps and Oils",
                "Complete Guide to Lamps & Oils",
            ],
        ),
        ("A History of the Fisheries of Gannow", None),
        ("Wie man bei Nebel nach Hause kommt", ["Wie man bei Nebel nach Hause kommt"]),
        ("How to Keep Bees without Losing Friends", ["How to Keep Bees without Losing Friends", "How to Keep Bees"]),
    ],
)
def test_a_shortened_title_still_says_something(title: str, ways: list[str] | None) -> None:
    """No guide without what it is to, no conduct without whose; a history keeps what it is of."""
    expected = ways or [title, title.removeprefix("A "), "History of the Fisheries"]
    assert list(shortened(title)) == expected
