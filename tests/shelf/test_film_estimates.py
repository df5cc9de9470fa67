"""Films of glue are learnt from what was measured, apart from the paper they lie between."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from bookmaker.shelf.film_estimates import Reading, film_estimates, learnt
from tests.kit.shelves import checked, told

TOLERANCES = {"page": 0.008, "films": 0.01}


def test_one_reading_by_hand() -> None:
    """0.02 · 0.03² / (0.03² + 0.04²) = 0.0072, ± 0.03 · 0.04 / 0.05 = 0.024."""
    (found,) = learnt([Reading(0.02, {"films": 1}, 0.04)], {"films": 0.03}).values()
    assert found == pytest.approx((0.0072, 0.024))


def test_readings_in_any_order_say_the_same() -> None:
    readings = [Reading(0.4, {"page": 50, "films": 24}, 0.15), Reading(0.2, {"page": 30}, 0.1)]
    one, other = learnt(readings, TOLERANCES), learnt(readings[::-1], TOLERANCES)
    assert one["films"] == pytest.approx(other["films"]) and one["page"] == pytest.approx(other["page"])


def test_the_tolerance_is_that_of_many_simulated_makers() -> None:
    """Ninety-five of a hundred makers have films within what they are told; the seed is 4, the makers are 2000."""
    chance = np.random.default_rng(4)
    made_of = [{"page": 50, "films": 24}, {"page": 98, "films": 48}, {"page": 40}, {"page": 60}]
    within = 0
    for _ in range(2000):
        off = {name: chance.normal(0, tolerance / 2) for name, tolerance in TOLERANCES.items()}
        readings = [
            Reading(sum(count * off[name] for name, count in counts.items()) + chance.normal(0, 0.075), counts, 0.15)
            for counts in made_of
        ]
        film, tolerance = learnt(readings, TOLERANCES)["films"]
        within += abs(film - off["films"]) <= tolerance
    assert tolerance < 0.7 * TOLERANCES["films"]
    assert 0.94 < within / 2000 < 0.965


SHELF = """\
shelf: Thick paste
stocks:
  page: {caliper: 80 um, tolerance: 1 um, glue: paste}
  card: {caliper: 160 um, glue: paste}
defaults:
  size: {height: 21 mm, width: 15 mm}
  cover: {kind: wrap, stock: card}
books:
  - {title: One, block: {kind: accordion, stock: page, pages: 48}, measured_thickness: 5.36 mm}
  - {title: Two, block: {kind: accordion, stock: page, pages: 96}, measured_thickness: 10.16 mm}
"""


def test_check_proposes_the_better_film(tmp_path: Path) -> None:
    """Both books have films of 40 µm: 50 · 0.08 + 26 · 0.04 + 2 · 0.16, and 98 · 0.08 + 50 · 0.04 + 2 · 0.16."""
    (estimate,) = film_estimates(checked(SHELF, tmp_path).plan)
    assert abs(estimate.film - 0.04) < estimate.tolerance < 0.005
    notes = [note for note in told(SHELF, tmp_path) if "a film of paste or PVA" in note]
    assert len(notes) == 1 and "the shelf file 30.0 ± 10.0 µm" in notes[0]
    better = SHELF.replace("glue: paste", "glue: 40 um")
    assert film_estimates(checked(better, tmp_path / "better").plan)[0].film == pytest.approx(0.04, abs=1e-6)
