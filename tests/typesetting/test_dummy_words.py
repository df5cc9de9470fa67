"""Dummy words: a tongue for each seed, in the measure of prose."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from statistics import mean

import pytest

from bookmaker.typesetting.dummy_words import DummyTongue, dummy_titles

SEEDS = range(1, 30)


@pytest.mark.parametrize("seed", SEEDS)
def test_words_are_as_long_and_as_unlike_one_another_as_those_of_prose(seed: int) -> None:
    """English prose: 4.7 letters a word, the ten commonest words a quarter of all (Zipf 1935; common knowledge)."""
    words = [word.strip(".,").casefold() for word in DummyTongue(seed).text(2000).split()]
    assert 3.6 < mean(map(len, words)) < 6.4
    often = Counter(words).most_common(10)
    assert 0.2 < sum(count for _, count in often) / len(words) < 0.6
    assert len(set(words)) > 100


def test_tongues_share_few_of_their_words() -> None:
    own = [set(DummyTongue(seed).text(800).casefold().replace(".", "").replace(",", "").split()) for seed in SEEDS]
    for one, other in pairwise(own):
        assert len(one & other) < 0.3 * len(one)


@pytest.mark.parametrize("seed", SEEDS)
def test_sentences_begin_with_capitals_and_end_with_stops(seed: int) -> None:
    sentences = DummyTongue(seed).text(400).split(". ")
    assert all(sentence[0].isupper() and sentence[1:].casefold() == sentence[1:] for sentence in sentences)
    assert all(5 <= len(sentence.split()) <= 17 for sentence in sentences[:-1])


@pytest.mark.parametrize("seed", SEEDS)
def test_no_word_is_one_of_the_two_before_it(seed: int) -> None:
    words = [word.strip(".,").casefold() for word in DummyTongue(seed).text(800).split()]
    assert all(word not in words[max(0, place - 2) : place] for place, word in enumerate(words))


def test_titles_are_as_many_as_asked_for() -> None:
    assert len(dummy_titles(4, 9)) == 9
    assert dummy_titles(4, 9) == dummy_titles(4, 9) != dummy_titles(5, 9)
