"""The order that costs least, where a cost belongs to neighbours, to three in a row, and to four.

A row of books is an open path, not a tour: it has two ends, and nothing joins them. Short rows are searched through;
longer ones are improved by counted steps, so that the same row gives the same order on any machine.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from .costs import Costs, cost_of
from .improving import Improver

__all__ = ["SEARCHED_THROUGH", "best_order"]

SEARCHED_THROUGH = 9
"""Rows in which up to so many may move are searched through; what comes out is the best there is."""

WORK, MOST_WORK = 800, 7_000_000
"""Moves that are looked at for each pair in a row, 1 280 000 for 40 things, and at most, however long the row."""

Order = tuple[int, ...]


def best_order(
    costs: Costs,
    start: Sequence[int],
    held: frozenset[int] = frozenset(),
    progress: Callable[[int, int], None] = lambda *_: None,
) -> Order:
    """The cheapest order that was found, never worse than the one to start from.

    What stands in a place that is `held`, counted from 0, stays there. If up to `SEARCHED_THROUGH` may move, what comes
    out is the cheapest there is.
    """
    row = tuple(start)
    free = len(row) - len(held)
    if free < 2:
        return row
    if free <= SEARCHED_THROUGH:
        return _searched(costs, row, held)
    return Improver(costs, row, held).improve(Random(len(row)), min(WORK * len(row) ** 2, MOST_WORK), progress)


def _searched(costs: Costs, start: Order, held: frozenset[int]) -> Order:
    """Depth first, the cheapest next thing first; whatever costs more than the best so far is left."""
    best, least = start, cost_of(costs, start)
    row: list[int] = []

    def search(rest: frozenset[int], cost: float) -> None:
        nonlocal best, least
        if cost >= least - 1e-12:
            return
        if len(row) == len(start):
            best, least = tuple(row), cost
            return
        next_ones = (start[len(row)],) if len(row) in held else rest
        for added, thing in sorted((_added(costs, row, thing), thing) for thing in next_ones):
            row.append(thing)
            search(rest - {thing}, cost + added)
            row.pop()

    search(frozenset(thing for place, thing in enumerate(start) if place not in held), 0.0)
    return best


def _added(costs: Costs, row: list[int], thing: int) -> float:
    row.append(thing)
    cost = costs.until(row, len(row) - 1)
    row.pop()
    return cost
