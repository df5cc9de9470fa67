"""Orders that cost least: against every order there is, never worse than before, what is held stays."""

from __future__ import annotations

from itertools import pairwise, permutations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.shelf.arranging.order import Costs, best_order, cost_of


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


@given(st.integers(2, 7), st.integers(0, 10**6), st.sampled_from([(0, 0), (1, 0), (0, 1), (1, 1)]))
@settings(deadline=None)
def test_no_order_is_better_in_short_rows(count: int, seed: int, held: tuple[int, int]) -> None:
    costs, start = row_of(count, seed), tuple(range(count))
    kept = [
        row
        for row in permutations(start)
        if row[: held[0]] == start[: held[0]] and row[count - held[1] :] == start[count - held[1] :]
    ]
    best = min(told_apart(costs, row) for row in kept)
    found = best_order(costs, start, held)
    assert found in kept
    assert told_apart(costs, found) == pytest.approx(best)


def test_no_order_of_nine_is_better() -> None:
    costs = row_of(9, 5)
    best = min(told_apart(costs, row) for row in permutations(range(9)))
    assert told_apart(costs, best_order(costs, range(9))) == pytest.approx(best)


@given(st.integers(10, 14), st.integers(0, 10**6))
@settings(max_examples=8, deadline=None)
def test_longer_rows_are_never_worse_than_before_and_always_the_same(count: int, seed: int) -> None:
    costs = row_of(count, seed)
    start = tuple(Random(seed).sample(range(count), count))
    found = best_order(costs, start, (1, 1))
    assert (found[0], found[-1]) == (start[0], start[-1])
    assert sorted(found) == sorted(start)
    assert told_apart(costs, found) <= told_apart(costs, start) + 1e-9
    assert found == best_order(costs, start, (1, 1))


def test_progress_is_told() -> None:
    told: list[tuple[int, int]] = []
    best_order(row_of(12, 1), range(12), progress=lambda done, of: told.append((done, of)))
    assert told[0] == (0, 60_000)
    assert [done for done, _ in told] == sorted(done for done, _ in told)
