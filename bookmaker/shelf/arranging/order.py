"""The order that costs least, where a cost belongs to neighbours, to three in a row, and to four.

A row of books is an open path, not a tour: it has two ends, and nothing joins them. Short rows are searched through;
longer ones are improved by counted steps of annealing, so that the same row gives the same order on any machine.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from math import exp
from random import Random

__all__ = ["SEARCHED_THROUGH", "Costs", "best_order", "cost_of"]

SEARCHED_THROUGH = 9
"""Rows of up to so many are searched through; what comes out is the best there is."""

STEPS_EACH = 2500
"""Steps of annealing for each thing of a row: 40 take 100 000."""

RUNS, SHORT = 2, 60
"""Rows of up to so many are annealed twice, with other chances, and the better order is taken."""

FEW, FAR = 10, 0.2
"""A move concerns up to so many things besides two; this share of moves may reach to the end of the row."""

COOLED = 1e-2
"""The temperature falls to this share of what it began with."""

Order = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Costs:
    """What an order costs.

    `beside[a][b]` is the cost of a beside b, the same as of b beside a. `steps[a][b]` is 1 if b is clearly higher than
    a, -1 if lower, 0 if neither: three that rise or fall in a row cost `stairs`, four that go up and down and up (or
    down and up and down) cost `teeth`. Nothing costs less than nothing.
    """

    beside: tuple[tuple[float, ...], ...]
    steps: tuple[tuple[int, ...], ...] = ()
    stairs: float = 0.0
    teeth: float = 0.0

    def until(self, row: Sequence[int], end: int) -> float:
        """What the thing at a place costs together with up to three before it."""
        if end < 1:
            return 0.0
        before, last = row[end - 1], row[end]
        cost = self.beside[before][last]
        if end < 2 or not self.steps:
            return cost
        step, previous = self.steps[before][last], self.steps[row[end - 2]][before]
        if step == 0 or previous == 0:
            return cost
        if step == previous:
            return cost + self.stairs
        return cost + self.teeth if end > 2 and self.steps[row[end - 3]][row[end - 2]] == step else cost


def cost_of(costs: Costs, row: Sequence[int]) -> float:
    """What a whole row costs.

    >>> cost_of(Costs(((0, 1, 4), (1, 0, 2), (4, 2, 0))), (0, 1, 2))
    3.0
    """
    return float(sum(costs.until(row, end) for end in range(len(row))))


def best_order(
    costs: Costs,
    start: Sequence[int],
    held: tuple[int, int] = (0, 0),
    progress: Callable[[int, int], None] = lambda *_: None,
) -> Order:
    """The cheapest order that was found, never worse than the one to start from.

    So many at its beginning and at its end as `held` says stay where they are. Up to `SEARCHED_THROUGH` that may move
    are searched through; what comes out is then the cheapest there is.
    """
    row = tuple(start)
    free = len(row) - sum(held)
    if free < 2:
        return row
    if free <= SEARCHED_THROUGH:
        return _searched(costs, row, held)
    runs = RUNS if len(row) <= SHORT else 1

    def told(run: int, step: int, steps: int) -> None:
        progress(run * steps + step, runs * steps)

    found = [_annealed(costs, row, held, Random(len(row) + run), partial(told, run)) for run in range(runs)]
    return min(found, key=lambda order: cost_of(costs, order))


def _searched(costs: Costs, start: Order, held: tuple[int, int]) -> Order:
    """Depth first, the cheapest next thing first; whatever costs more than the best so far is left."""
    first, last = held[0], len(start) - held[1]
    best, least = start, cost_of(costs, start)
    row = [*start[:first]]

    def search(rest: frozenset[int], cost: float) -> None:
        nonlocal best, least
        if cost >= least - 1e-12:
            return
        if not rest:
            whole = (*row, *start[last:])
            total = cost + sum(costs.until(whole, end) for end in range(last, len(whole)))
            if total < least - 1e-12:
                best, least = whole, total
            return
        for added, thing in sorted((_added(costs, row, thing), thing) for thing in rest):
            row.append(thing)
            search(rest - {thing}, cost + added)
            row.pop()

    search(frozenset(start[first:last]), cost_of(costs, row))
    return best


def _added(costs: Costs, row: list[int], thing: int) -> float:
    row.append(thing)
    cost = costs.until(row, len(row) - 1)
    row.pop()
    return cost


Move = tuple[int, int, list[int]]
"""From which place to before which, and what stands there then."""


def _annealed(
    costs: Costs, start: Order, held: tuple[int, int], chance: Random, progress: Callable[[int, int], None]
) -> Order:
    """Moves that cost more are made too, ever more seldom."""
    row, best = [*start], start
    cost = least = cost_of(costs, row)
    steps = STEPS_EACH * len(row)
    heat = _spread(costs, row, held, chance)
    for step in range(steps):
        if step % 10_000 == 0:
            progress(step, steps)
        low, high, changed = _move(row, held, chance)
        gain = _change(costs, row, low, high, changed)
        if gain <= 0 or chance.random() < exp(-gain / (heat * COOLED ** (step / steps))):
            row[low:high] = changed
            cost += gain
            if cost < least - 1e-9:
                best, least = tuple(row), cost
    return min(_descended(costs, best, held), start, key=lambda order: cost_of(costs, order))


def _spread(costs: Costs, row: list[int], held: tuple[int, int], chance: Random) -> float:
    """How much a move changes as a rule: the temperature to begin with."""
    changes = [abs(_change(costs, row, *_move(row, held, chance))) for _ in range(100)]
    return max(sum(changes) / len(changes) / 2, 1e-9)


def _move(row: list[int], held: tuple[int, int], chance: Random) -> Move:
    """A stretch turned round, or one thing or a few moved to another place, or two exchanged."""
    first, last = held[0], len(row) - held[1]
    low = first + int(chance.random() * (last - first - 1))
    far = last - low - 2 if chance.random() < FAR else FEW
    high = min(low + 2 + int(chance.random() * far), last)
    kind = chance.random()
    part = row[low:high]
    if kind < 0.4:
        return low, high, part[::-1]
    if kind < 0.8:
        few = min(1 + int(chance.random() * 3), len(part))
        return low, high, (part[few:] + part[:few] if kind < 0.6 else part[-few:] + part[:-few])
    return low, high, [part[-1], *part[1:-1], part[0]]


def _change(costs: Costs, row: list[int], low: int, high: int, changed: list[int]) -> float:
    """What a row costs more when a stretch of it is replaced."""
    end = min(high + 3, len(row))
    places = range(low, end)
    until = costs.until
    before = sum([until(row, place) for place in places])
    old, row[low:high] = row[low:high], changed
    after = sum([until(row, place) for place in places])
    row[low:high] = old
    return after - before


def _descended(costs: Costs, start: Order, held: tuple[int, int]) -> Order:
    """Every move is tried until none gains."""
    row = [*start]
    gained = True
    while gained:
        gained = False
        for low, high, changed in _all_moves(row, held):
            if _change(costs, row, low, high, changed) < -1e-9:
                row[low:high] = changed
                gained = True
                break
    return tuple(row)


def _all_moves(row: list[int], held: tuple[int, int]) -> Iterator[Move]:
    first, last = held[0], len(row) - held[1]
    for low in range(first, last - 1):
        for high in range(low + 2, last + 1):
            part = row[low:high]
            yield low, high, part[::-1]
            for few in range(1, min(4, len(part))):
                yield low, high, part[few:] + part[:few]
                yield low, high, part[few:] + part[:few][::-1]
                yield low, high, part[-few:] + part[:-few]
                yield low, high, part[-few:][::-1] + part[:-few]
            yield low, high, [part[-1], *part[1:-1], part[0]]
