"""Orders of rows: how long they take, and how near they come to the best that a search eight times as long finds.

python -m tests.bench.bench_arrange
"""

from __future__ import annotations

import time
from random import Random

import bookmaker.shelf.arranging.order as ordering
from bookmaker.ground.drawing import Colour
from bookmaker.shelf.arranging.order import best_order, cost_of
from bookmaker.shelf.arranging.pleasing import Weights, Worn, costs_of

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
        for seed in range(rows):
            row = row_of(count, seed)
            start = time.process_time()
            costs = costs_of(row, row, Weights())
            found = cost_of(costs, best_order(costs, range(count)))
            seconds = time.process_time() - start
            given = cost_of(costs, range(count))
            said = f"{count} books, row {seed}: {seconds:.2f} s, {given:.3f} as given, {found:.3f} found"
            if count < 100:
                usual, ordering.STEPS_EACH = ordering.STEPS_EACH, ordering.STEPS_EACH * 8
                long = min(cost_of(costs, best_order(costs, start)) for start in _starts(count))
                ordering.STEPS_EACH = usual
                said += f", {long:.3f} by a search eight times as long from three starts"
            print(said)


def _starts(count: int) -> list[tuple[int, ...]]:
    return [tuple(Random(seed).sample(range(count), count)) for seed in range(3)]


if __name__ == "__main__":
    main()
