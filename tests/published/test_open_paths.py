"""Orders as open paths, on published distances.

G. Reinelt, "TSPLIB - A Traveling Salesman Problem Library", ORSA Journal on Computing 3/4 (1991): six small instances
with proved tours. A row of books does not return to its first: optima of open paths are not published and were found by
dynamic programming (M. Held and R. M. Karp, "A Dynamic Programming Approach to Sequencing Problems", Journal of the
Society for Industrial and Applied Mathematics 10/1, 1962).
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from bookmaker.shelf.arranging.costs import Costs, cost_of
from bookmaker.shelf.arranging.order import best_order

CASES = json.loads((Path(__file__).parent / "small_tours.json").read_text(encoding="utf-8"))["instances"]


@pytest.mark.parametrize("name", CASES)
def test_the_shortest_path_is_found(name: str) -> None:
    case = CASES[name]
    costs = Costs(tuple(map(tuple, case["matrix"])))
    found = best_order(costs, range(case["n"]))
    assert sorted(found) == list(range(case["n"]))
    assert cost_of(costs, found) == case["optimal_open_path_length"]
