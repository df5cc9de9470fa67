"""Orders of rows: how long they take, and how near they come to the best that a long search of another kind finds.

python -m tests.bench.bench_arrange [40|400]
"""

from __future__ import annotations

import sys
import time
from math import exp
from random import Random

from bookmaker.ground.drawing import Colour
from bookmaker.shelf.arranging.costs import Costs, cost_of
from bookmaker.shelf.arranging.keys import ArrangeEntry
from bookmaker.shelf.arranging.order import best_order
from bookmaker.shelf.arranging.pleasing import Worn, costs_of

STEPS = 1_500_000

STYLES = ("cloth", "leather", "half leather", "paper boards", "school")


def row_of(count: int, seed: int) -> list[Worn]:
    """Books as a shelf has them."""
    chance = Random(seed)
    return [
        Worn(
            chance.uniform(15, 27),
            chance.uniform(1.5, 8),
            chance.choice(STYLES),
            Colour(*(chance.uniform(0.05, 0.9) for _ in range(3))),
        )
        for _ in range(count)
    ]


def main() -> None:
    """Run the benchmark and print what was measured."""
    for count, rows in ((40, 5), (400, 1)):
        if sys.argv[1:] not in ([], [str(count)]):
            continue
        for seed in range(rows):
            row = row_of(count, seed)
            start = time.process_time()
            costs = costs_of(row, row, ArrangeEntry())
            found = cost_of(costs, best_order(costs, range(count)))
            seconds = time.process_time() - start
            given = cost_of(costs, range(count))
            said = f"{count} books, row {seed}: {seconds:.2f} s, {given:.3f} as given, {found:.3f} found"
            if count < 100:
                long = min(cost_of(costs, _annealed(costs, count, seed)) for seed in range(2))
                said += f", {long:.3f} by annealing twice a long time: {found / long:.4f} of it"
            print(said)


def _annealed(costs: Costs, count: int, seed: int) -> tuple[int, ...]:
    """Another search, independent of the first: annealing, 1 500 000 steps."""
    chance, row = Random(seed), Random(seed).sample(range(count), count)
    cost = least = cost_of(costs, row)
    best, heat, cooled = tuple(row), cost / count, 3e-3
    for step in range(STEPS):
        low = int(chance.random() * (count - 1))
        high = min(low + 2 + int(chance.random() * (10 if chance.random() < 0.8 else count)), count)
        part, kind = row[low:high], chance.random()
        few = 1 + int(chance.random() * 3)
        new = part[::-1] if kind < 0.4 else part[few:] + part[:few] if kind < 0.7 else part[-few:] + part[:-few]
        end = min(high + 3, count)
        before = sum([costs.until(row, place) for place in range(low, end)])
        row[low:high] = new
        gain = sum([costs.until(row, place) for place in range(low, end)]) - before
        if gain > 0 and chance.random() >= exp(-gain / (heat * cooled ** (step / STEPS))):
            row[low:high] = part
            continue
        cost += gain
        if cost < least - 1e-9:
            best, least = tuple(row), cost
    return best


if __name__ == "__main__":
    main()
