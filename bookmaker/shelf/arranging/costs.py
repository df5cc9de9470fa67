"""What an order costs: by neighbours, by three in a row, and by four."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

__all__ = ["Costs", "cost_of"]


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
        earlier = self.steps[row[end - 3]][row[end - 2]] if end > 2 else 0
        return cost + self.pattern(earlier, self.steps[row[end - 2]][before], self.steps[before][last])

    def pattern(self, earlier: int, previous: int, step: int) -> float:
        """What the last of three steps costs together with those before it."""
        if step == 0 or previous == 0:
            return 0.0
        if step == previous:
            return self.stairs
        return self.teeth if earlier == step else 0.0


def cost_of(costs: Costs, row: Sequence[int]) -> float:
    """What a whole row costs.

    >>> cost_of(Costs(((0, 1, 4), (1, 0, 2), (4, 2, 0))), (0, 1, 2))
    3.0
    """
    return float(sum(costs.until(row, end) for end in range(len(row))))
