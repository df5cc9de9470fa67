"""Sticks on lengths of strip: nothing is lost, nothing is too long, few sticks take the fewest lengths there are."""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.sheets.strip_layout import fewest_lengths, laid_on_lengths


def fewest_by_trying(sticks: tuple[int, ...], sold: int, kerf: int) -> int:
    """The fewest lengths by trying every set of sticks on each (dynamic programming over subsets)."""
    full = (1 << len(sticks)) - 1
    fits = [
        chosen
        for chosen in range(1, full + 1)
        if sum(stick + kerf for n, stick in enumerate(sticks) if chosen >> n & 1) <= sold + kerf
    ]

    @cache
    def fewest(left: int) -> int:
        if not left:
            return 0
        first = left & -left
        return 1 + min(fewest(left & ~one) for one in fits if one & first and one & left == one)

    return fewest(full)


@given(st.lists(st.integers(5, 60), min_size=1, max_size=9), st.integers(60, 100), st.integers(0, 3))
def test_few_sticks_take_the_fewest_lengths(sticks: list[int], sold: int, kerf: int) -> None:
    laid = laid_on_lengths(sticks, sold, kerf)
    assert Counter(stick for one in laid for stick in one) == Counter(sticks)
    assert all(sum(one) + (len(one) - 1) * kerf <= sold for one in laid)
    assert fewest_lengths(sticks, sold, kerf) <= len(laid) == fewest_by_trying(tuple(sticks), sold, kerf)


@given(st.lists(st.integers(200, 1500), min_size=1, max_size=60))
def test_many_sticks_are_laid_out_and_told_the_same_every_time(lengths: list[int]) -> None:
    sticks = [length / 10 for length in lengths]
    laid = laid_on_lengths(sticks, 300.0, 1.0)
    assert Counter(stick for one in laid for stick in one) == Counter(sticks)
    assert all(sum(one) + len(one) - 1 <= 300.0 + 1e-6 for one in laid)
    assert laid == laid_on_lengths(reversed(sticks), 300.0, 1.0)


def test_a_stick_longer_than_what_is_sold_is_refused() -> None:
    with pytest.raises(ValueError, match="longer than the 60 mm"):
        laid_on_lengths([61.0], 60.0)
