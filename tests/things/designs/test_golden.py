"""Covers, spines and spreads of every style look as they were meant to: a change is seen, and drawn anew on purpose.

    python -m tests.kit.golden

keeps the new ones, once they were looked at.
"""

from __future__ import annotations

import pytest

from tests.kit.golden import FOLDER, apart_from_golden, golden_names, tolerance

SIZE = 600_000
"""Bytes that all of them together take at most."""

DRAWN = [name for name in golden_names() if not name.endswith(("plain", "artwork")) and not name.startswith("spread")]
"""Those of which chance has a say."""


@pytest.mark.parametrize("name", golden_names())
def test_it_looks_as_it_was_meant_to(name: str) -> None:
    found, most = apart_from_golden(name), tolerance(name)
    told = f"{found}: python -m tests.kit.golden, and look at tests/golden/{name}.png"
    assert found.mean <= most.mean, told
    assert found.most <= most.most, told


@pytest.mark.parametrize("name", DRAWN)
def test_another_look_of_the_same_book_is_told_from_it(name: str) -> None:
    found = apart_from_golden(name, look=1)
    assert found.mean > tolerance(name).mean or found.most > tolerance(name).most


def test_there_is_one_of_each_and_all_are_small() -> None:
    kept = {path.stem: path.stat().st_size for path in FOLDER.glob("*.png")}
    assert kept.keys() == {*golden_names()}
    assert sum(kept.values()) <= SIZE
