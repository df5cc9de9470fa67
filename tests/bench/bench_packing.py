"""Nesting against a general-purpose packing library, on the published cases and on random pieces.

Run on request: ``python -m tests.bench.bench_packing``. How the library is asked stands in tests/published/library.py.
"""

from __future__ import annotations

import json
import random
import sys
import time
from pathlib import Path

from bookmaker.sheets.packing import Bin, Item, nest, pack_strip
from tests.kit.packing_library import METHODS, ORDERS, STRAIGHT, best_of_library

CASES = Path(__file__).parent.parent / "published" / "hopper_turton_c1_c4.json"


def published() -> bool:
    """Print the table; whether the average is better than the library's best."""
    ours_over, library_over, straight_over = [], [], []
    print(f"{len(METHODS)} methods, {len(ORDERS)} orders")
    print("case   pieces optimum  nesting (s)       best of library  best of its straight-cut methods (s)")
    for case in json.loads(CASES.read_text(encoding="utf-8"))["instances"]:
        sides, width, optimum = case["items"], case["strip_width"], case["optimal_height"]
        start = time.perf_counter()
        strip = pack_strip([Item(str(n), w, h, may_turn=True) for n, (w, h) in enumerate(sides)], width)
        half = time.perf_counter()
        library = best_of_library(sides, width, optimum)
        cut = best_of_library(sides, width, optimum, STRAIGHT)
        end = time.perf_counter()
        for over, height in ((ours_over, strip.height), (library_over, library), (straight_over, cut)):
            over.append(100 * (height / optimum - 1))
        print(
            f"{case['name']:6} {len(sides):6} {optimum:7}  {strip.height:4g} {ours_over[-1]:5.2f} % {half - start:5.2f}"
            f"  {library:4} {library_over[-1]:5.2f} %      {cut:4} {straight_over[-1]:5.2f} % {end - half:5.2f}"
        )
    for name, over in (("nesting", ours_over), ("library", library_over), ("its straight cuts", straight_over)):
        print(f"{name}: {sum(over) / len(over):.2f} % over the optimum on average, {max(over):.2f} % at worst")
    return sum(ours_over) < sum(library_over)


def many_pieces() -> bool:
    """Print how long 300 different pieces take; whether all runs end within 5 s."""
    slowest = 0.0
    for seed in range(3):
        luck = random.Random(seed)
        pieces = [
            Item(
                str(n), round(luck.uniform(10, 120), 2), round(luck.uniform(8, 60), 2), may_turn=True, group=str(n // 6)
            )
            for n in range(300)
        ]
        start = time.perf_counter()
        nesting = nest(pieces, Bin(200, 287), 2.0)
        half = time.perf_counter()
        strip = pack_strip(pieces, 200, 2.0)
        end = time.perf_counter()
        slowest = max(slowest, half - start, end - half)
        print(
            f"300 pieces: {nesting.sheets} sheets, bound {nesting.bound}, rows {nesting.row_sheets}, "
            f"{100 * nesting.used_share:.1f} % used, {half - start:.2f} s; as a strip "
            f"{100 * (strip.height / strip.bound - 1):.2f} % over the bound, {end - half:.2f} s"
        )
    return slowest <= 5


if __name__ == "__main__":
    sys.exit(0 if all([published(), many_pieces()]) else 1)
