"""Packing in rows: laws for all layouts, and small cases whose layout is known."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.geometry import Rect
from bookmaker.packing import Bin, DoesNotFit, Item, Placed, pack_rows

AREA = Bin(100, 80)
TINY = 1e-6

sides = st.one_of(
    st.integers(3, 60).map(float),
    st.sampled_from([10.0, 12.5, 20.0, 33.3, 100 / 3, 40.0]),
    st.floats(3, 60, allow_nan=False).map(lambda side: round(side, 3)),
)
item_lists = st.lists(st.tuples(sides, sides, st.booleans(), st.sampled_from(["", "a", "b", "c"])), max_size=24).map(
    lambda rows: [Item(f"p{number}", *row) for number, row in enumerate(rows)]
)
gaps = st.sampled_from([0.0, 1.0, 2.0, 0.35])


def check_places(items: Sequence[Item], placed: Sequence[Placed], bins: Sequence[Bin], gap: float) -> None:
    """Every item once, in order, inside, as large as it is, turned only if allowed, knife room kept."""
    assert [spot.key for spot in placed] == [item.key for item in items]
    for item, spot in zip(items, placed, strict=True):
        size = (item.height, item.width) if spot.turned else (item.width, item.height)
        assert (spot.width, spot.height) == size
        assert item.may_turn or not spot.turned
        area = bins[spot.bin]
        assert Rect(0, 0, area.width, area.height).contains(outline(spot), TINY)
    for number, spot in enumerate(placed):
        for other in placed[:number]:
            if spot.bin == other.bin:
                room = outline(spot).grown(gap)
                assert not room.overlaps(outline(other), TINY)


def outline(spot: Placed) -> Rect:
    """A piece where it lies."""
    return Rect(spot.x, spot.y, spot.width, spot.height)


def sheets_of(placed: Iterable[Placed]) -> int:
    """Bins used."""
    return len({spot.bin for spot in placed})


@given(item_lists, gaps)
def test_rows_hold_everything(items: list[Item], gap: float) -> None:
    placed = pack_rows(items, AREA, gap)
    check_places(items, placed, [AREA] * sheets_of(placed), gap)
    assert placed == pack_rows(items, AREA, gap)
    assert {spot.bin for spot in placed} == set(range(sheets_of(placed)))


def test_rows_are_filled_one_after_the_other() -> None:
    placed = pack_rows([Item(key, 30, 20, may_turn=False) for key in "abcdefghij"], AREA, 2)
    assert [(spot.bin, spot.x, spot.y) for spot in placed] == [(0, x, y) for y in (0, 22, 44) for x in (0, 32, 64)] + [
        (1, 0, 0)
    ]


def test_sums_of_fractions_still_fit() -> None:
    assert 10.3 + 10.3 + 10.3 > 30.9  # in floating point
    items = [Item(str(number), 10.3, 10.3, may_turn=False) for number in range(9)]
    assert sheets_of(pack_rows(items, Bin(30.9, 30.9), 0)) == 1


def test_pieces_of_one_book_lie_together() -> None:
    items = [Item(str(number), 48, 10, may_turn=False, group="ab"[number % 2]) for number in range(4)]
    assert [spot.y for spot in pack_rows(items, AREA, 2)] == [0, 12, 0, 12]


def test_pieces_that_fit_no_bin_are_named_with_sizes() -> None:
    items = [
        Item("fits", 99, 79, may_turn=False),
        Item("wide", 101, 5, may_turn=False),
        Item("turned", 5, 100, may_turn=True),
        Item("high", 7, 81, may_turn=False),
    ]
    with pytest.raises(DoesNotFit) as refusal:
        pack_rows(items, AREA, 2)
    assert refusal.value.keys == ("wide", "high")
    assert str(refusal.value) == "larger than 100 × 80 mm: wide (101 × 5 mm), high (7 × 81 mm)"


def test_pieces_lie_flat_if_they_may_turn() -> None:
    low, high = pack_rows([Item("a", 10, 30, may_turn=True), Item("b", 10, 30, may_turn=False)], AREA, 0)
    assert (low.turned, low.width, low.height) == (True, 30, 10)
    assert (high.turned, high.width, high.height) == (False, 10, 30)
