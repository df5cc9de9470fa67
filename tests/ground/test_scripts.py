"""Stretches of one script, and the order in which they stand on the line."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.scripts import in_visual_order, stretches

MIXED = st.text(st.sampled_from("abΩЖשבع12., (\u0301-"), max_size=16)


def on_the_line(text: str, right_to_left: bool) -> str:
    """The characters as they stand from left to right."""
    parts = stretches(text, right_to_left)
    shown = [text[part.start : part.end][:: -1 if part.level % 2 else 1] for part in parts]
    return "".join(shown[place] for place in in_visual_order([part.level for part in parts]))


@pytest.mark.parametrize(
    ("text", "right_to_left", "shown"),
    [
        ("car שבת", False, "car תבש"),
        ("שבת car", True, "car תבש"),
        ("he said שבת אב to me", False, "he said בא תבש to me"),
        ("אב 12 גד", True, "דג 12 בא"),
        ("אב 12 ab", True, "ab 12 בא"),
        ("אב ab 12", True, "ab 12 בא"),
        ("אב 1,250.", True, ".1,250 בא"),
        ("אב 12", False, "12 בא"),
        ("page 12", True, "page 12"),
        ("ab.", True, ".ab"),
        ("אב.", False, "בא."),
        ("12", True, "12"),
        ("...", True, "..."),
        ("", True, ""),
    ],
)
def test_words_stand_as_readers_of_both_directions_expect(text: str, right_to_left: bool, shown: str) -> None:
    """Unicode Standard Annex #9, rules W7, N1, N2, I1, I2 and L2, worked by hand."""
    assert on_the_line(text, right_to_left) == shown


@given(MIXED, st.booleans())
def test_stretches_cover_the_text_once(text: str, right_to_left: bool) -> None:
    parts = stretches(text, right_to_left)
    assert "".join(text[part.start : part.end] for part in parts) == text
    assert all(part.start < part.end for part in parts)
    assert all(one[2:] != other[2:] for one, other in pairwise(parts))


def test_signs_go_with_their_neighbours() -> None:
    assert [part[2] for part in stretches("“Ёлка, 7”")] == ["Cyrl"]
    assert [part[:3] for part in stretches("lamp, Ωδή.")] == [(0, 6, "Latn"), (6, 10, "Grek")]
    assert [part[2] for part in stretches("…")] == ["Latn"]
    assert [part[2] for part in stretches("...", right_to_left=True)] == ["Hebr"]


def test_stretches_of_mixed_directions() -> None:
    assert stretches("ab 12 אב") == [(0, 6, "Latn", 0), (6, 8, "Hebr", 1)]
    assert stretches("אב 12", right_to_left=True) == [(0, 3, "Hebr", 1), (3, 5, "Latn", 2)]
    assert stretches("ab אב", right_to_left=True) == [(0, 2, "Latn", 2), (2, 5, "Hebr", 1)]


def test_a_mark_stays_with_its_letter() -> None:
    assert [part[:3] for part in stretches("aΩ\u0301")] == [(0, 1, "Latn"), (1, 3, "Grek")]
    assert stretches("ae\u0301", right_to_left=True) == [(0, 3, "Latn", 2)]


@given(st.lists(st.integers(0, 3), max_size=12))
def test_the_visual_order_holds_each_place_once(levels: list[int]) -> None:
    assert sorted(in_visual_order(levels)) == list(range(len(levels)))


def test_the_visual_order_turns_what_is_turned_twice_back() -> None:
    assert in_visual_order([0, 1, 2, 2, 1, 0]) == [0, 4, 2, 3, 1, 5]
