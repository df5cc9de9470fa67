"""Subset sums and partitions with known optima: what is chosen is never further from the limit.

The sources stand in ``partition_subset_sum.json`` beside each case: R. E. Korf (1998), J. Burkardt's data sets, the
families of D. Avis and of Todd after V. Chvatal (1980) and S. Martello and P. Toth (1990, from memory). Their optima
were recomputed by dynamic programming.
"""

from __future__ import annotations

import json
from itertools import product
from pathlib import Path
from random import Random

import pytest

from bookmaker.shelf.filling.sums import best_choice

DATA = json.loads((Path(__file__).parent / "partition_subset_sum.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("case", DATA["subset_sum"], ids=lambda case: case["name"])
def test_subset_sums(case: dict[str, object]) -> None:
    weights, target = case["weights"], case["target"]
    assert isinstance(weights, list)
    assert isinstance(target, int)
    chosen = best_choice([[0, weight] for weight in weights], target, unlike=False)
    assert chosen
    assert sum(chosen.lengths) == case["best_sum"]


@pytest.mark.parametrize("case", DATA["partition"], ids=lambda case: case["name"])
def test_partitions(case: dict[str, object]) -> None:
    """Two shelves as full as each other: the one takes what is nearest to half of all."""
    numbers = case["numbers"]
    assert isinstance(numbers, list)
    chosen = best_choice([[0, number] for number in numbers], sum(numbers) // 2, unlike=False)
    assert chosen
    assert sum(numbers) - 2 * sum(chosen.lengths) == case["best_difference"]


def test_small_shelves_against_exhaustive_search() -> None:
    """Of 1500 random ones: the largest sum of lengths of which no two are alike, nor like one that is taken."""
    chance = Random(3)
    for _ in range(1500):
        options = [[chance.randint(1, 12) for _ in range(chance.randint(1, 5))] for _ in range(chance.randint(1, 5))]
        limit, taken = chance.randint(0, 40), [chance.randint(1, 12) for _ in range(chance.randint(0, 2))]
        ways = [lengths for lengths in product(*options) if sum(lengths) <= limit]
        unlike = [way for way in ways if len({*way, *taken}) == len(way) + len(set(taken))]
        chosen = best_choice(options, limit, taken=taken)
        assert (chosen is None) == (not ways)
        if chosen:
            assert sum(chosen.lengths) == max(map(sum, unlike or ways))
            assert chosen.twins == (not unlike)
            assert all(length in own for length, own in zip(chosen.lengths, options, strict=True))
