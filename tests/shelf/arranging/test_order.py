"""Orders that cost least: against every order there is, never worse than before, what is held stays."""

from __future__ import annotations

from itertools import pairwise, permutations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.shelf.arranging.costs import Costs, cost_of
from bookmaker.shelf.arranging.improving import Improver
from bookmaker.shelf.arranging.order import best_order


def row_of(count: int, seed: int) -> Costs:
    """Books with random heights and likings."""
    chance = Random(seed)
    heights = [chance.choice((17, 18.5, 20, 21, 23)) for _ in range(count)]
    beside = [[0.0] * count for _ in range(count)]
    for one in range(count):
        for other in range(one):
            beside[one][other] = beside[other][one] = round(chance.random() ** 2, 3)
    steps = tuple(tuple((high > low) - (high < low) for high in heights) for low in heights)
    return Costs(tuple(map(tuple, beside)), steps, stairs=0.4, teeth=0.3)


def told_apart(costs: Costs, row: tuple[int, ...]) -> float:
    """The cost of a row, window by window."""
    steps = [costs.steps[one][other] for one, other in pairwise(row)]
    cost = sum(costs.beside[one][other] for one, other in pairwise(row))
    cost += costs.stairs * sum(one == other != 0 for one, other in pairwise(steps))
    return cost + costs.teeth * sum(
        one != 0 and one == -other == third for one, other, third in zip(steps, steps[1:], steps[2:], strict=False)
    )


@given(st.integers(2, 30), st.integers(0, 10**6))
def test_the_cost_of_a_row_is_that_of_its_windows(count: int, seed: int) -> None:
    costs = row_of(count, seed)
    row = tuple(Random(seed).sample(range(count), count))
    assert cost_of(costs, row) == pytest.approx(told_apart(costs, row))
    assert cost_of(costs, row[::-1]) == pytest.approx(told_apart(costs, row))


@given(st.integers(2, 7), st.integers(0, 10**6), st.sets(st.integers(0, 6), max_size=3))
@settings(deadline=None)
def test_no_order_is_better_in_short_rows(count: int, seed: int, places: set[int]) -> None:
    costs, start = row_of(count, seed), tuple(range(count))
    held = frozenset(place for place in places if place < count)
    kept = [row for row in permutations(start) if all(row[place] == start[place] for place in held)]
    best = min(told_apart(costs, row) for row in kept)
    found = best_order(costs, start, held)
    assert found in kept
    assert told_apart(costs, found) == pytest.approx(best)


def test_no_order_of_nine_is_better() -> None:
    costs = row_of(9, 5)
    best = min(told_apart(costs, row) for row in permutations(range(9)))
    assert told_apart(costs, best_order(costs, range(9))) == pytest.approx(best)


@given(st.integers(10, 14), st.integers(0, 10**6))
@settings(max_examples=6, deadline=None)
def test_longer_rows_are_never_worse_than_before_and_always_the_same(count: int, seed: int) -> None:
    costs = row_of(count, seed)
    start = tuple(Random(seed).sample(range(count), count))
    held = frozenset({0, count - 1} if seed % 2 else {0, 3, count - 4})
    found = best_order(costs, start, held)
    assert [found[place] for place in held] == [start[place] for place in held]
    assert sorted(found) == sorted(start)
    assert told_apart(costs, found) <= told_apart(costs, start) + 1e-9
    assert found == best_order(costs, start, held)


def test_progress_is_told() -> None:
    told: list[tuple[int, int]] = []
    best_order(row_of(12, 1), range(12), progress=lambda done, of: told.append((done, of)))
    assert told[0][0] < told[0][1] == 800 * 12**2
    assert [done for done, _ in told] == sorted(done for done, _ in told)


@given(st.integers(10, 16), st.integers(0, 10**6), st.booleans())
@settings(max_examples=30, deadline=None)
def test_what_is_ruled_out_would_not_have_gained(count: int, seed: int, held: bool) -> None:
    """Every move that is looked at: its bound is no less than what it gains, and that is what the whole row says."""
    costs, chance = row_of(count, seed), Random(seed)
    start = tuple(chance.sample(range(count), count))
    row = Improver(costs, start, frozenset({0, count - 1} if held else ()))
    for thing in start:
        for move in row._moves(thing):
            gain = row._gain(move)
            low, high = row.free[move[0]], row.free[move[2] - 1] + 1
            after = (*start[:low], *row._stretch(move), *start[high:])
            assert sorted(after) == sorted(start)
            assert gain == pytest.approx(told_apart(costs, start) - told_apart(costs, after))
            assert gain <= row._bound(move) + 1e-9


def test_a_long_row_comes_near_the_best_of_a_far_longer_search() -> None:
    """The share is that of this very row: steps are counted, so it does not hang on the machine."""
    costs = row_of(24, 3)
    found = told_apart(costs, best_order(costs, range(24)))
    start = Random(1).sample(range(24), 24)
    longest = Improver(costs, start, frozenset()).improve(Random(1), 1_500_000, lambda *_: None)
    assert found <= 1.02 * told_apart(costs, longest)
