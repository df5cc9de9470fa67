"""Sticks on the lengths in which strip is sold, on published cases; each names its source.

All fewest numbers were proved again by whole numbers over all ways to fill a length.
"""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from bookmaker.sheets.strip_layout import laid_on_lengths

CASES = json.loads((Path(__file__).parent / "sticks_on_lengths.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_no_layout_takes_fewer_lengths(case: dict[str, Any]) -> None:
    sticks = [float(size) for size, count in case["sticks"].items() for _ in range(count)]
    laid = laid_on_lengths(sticks, case["sold"], case["kerf"])
    assert Counter(stick for filling in laid for stick in filling) == Counter(sticks)
    assert all(sum(one) + (len(one) - 1) * case["kerf"] <= case["sold"] for one in laid)
    assert len(laid) == case["fewest"]
