"""Strip packing against published cases with proved optima.

E. Hopper and B. C. H. Turton, "An empirical investigation of meta-heuristic and heuristic algorithms for a 2D packing
problem", European Journal of Operational Research 128/1 (2001), 34-57, categories C1 to C4. The pieces of each case
tile a rectangle without waste, so its height is the optimum; quarter turns are allowed. The data stand in
hopper_turton_c1_c4.json, with source and licence.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

from bookmaker.sheets.packing import Item, Strip, pack_strip
from tests.kit.packing import check_strip
from tests.kit.packing_library import best_of_library


@dataclass(frozen=True)
class Case:
    """One published case."""

    name: str
    items: tuple[Item, ...]
    width: int
    optimum: int


DATA = json.loads((Path(__file__).parent / "hopper_turton_c1_c4.json").read_text(encoding="utf-8"))
CASES = [
    Case(
        case["name"],
        tuple(Item(str(n), w, h, may_turn=True) for n, (w, h) in enumerate(case["items"])),
        case["strip_width"],
        case["optimal_height"],
    )
    for case in DATA["instances"]
]


@cache
def packed(case: Case) -> Strip:
    """The case at the usual effort."""
    return pack_strip(case.items, case.width)


def over_optimum(case: Case) -> float:
    """Percent above the proved optimum."""
    return 100 * (packed(case).height / case.optimum - 1)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_data_tile_their_rectangle(case: Case) -> None:
    assert sum(item.width * item.height for item in case.items) == case.width * case.optimum


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_no_case_is_over_8_percent(case: Case) -> None:
    strip = packed(case)
    check_strip(case.items, strip)
    assert strip.bound == case.optimum
    assert 0 <= over_optimum(case) <= 8


def test_all_cases_are_at_most_4_percent_over_on_average() -> None:
    assert len(CASES) == 12
    assert sum(map(over_optimum, CASES)) / len(CASES) <= 4


def test_nesting_is_better_on_average_than_the_best_of_a_general_library() -> None:
    """Ours by straight cuts only, the library's by any of its methods."""
    sides = {case: [(int(item.width), int(item.height)) for item in case.items] for case in CASES}
    library = [best_of_library(sides[case], case.width, case.optimum) / case.optimum for case in CASES]
    ours = [packed(case).height / case.optimum for case in CASES]
    assert sum(ours) < sum(library)
