"""Errors added up and chances, against published values."""

from __future__ import annotations

import pytest

from bookmaker.shelf.fit import fit_space
from bookmaker.shelf.space_entry import SpaceEntry
from bookmaker.things.standing import Standing, Uncertainty, root_sum_square


def test_root_sum_square_of_the_guide() -> None:
    """JCGM 100:2008 (GUM), H.1, end-gauge calibration, from memory: 25, 9.7, 2.9, 16.6 nm give 31.7, printed 32."""
    assert root_sum_square([25, 9.7, 2.9, 16.6]) == pytest.approx(31.7, abs=0.05)


@pytest.mark.parametrize(
    ("sigmas", "chance"),
    [(0, 0.5), (1, 0.8413), (1.645, 0.95), (1.96, 0.975), (2.576, 0.995), (-1, 0.1587), (-1.96, 0.025)],
)
def test_chance_of_fitting_follows_the_normal_distribution(sigmas: float, chance: float) -> None:
    """Tables of the standard normal distribution, from memory: Φ(1) = 0.8413, Φ(1.96) = 0.975, …"""
    # one book of 4 mm ± 0.3 (so σ = 0.15) without clearance
    space = SpaceEntry.model_validate(
        {"width": f"{4 + 0.15 * sigmas:.6f} mm", "height": "30 mm", "depth": "30 mm", "clearance": "0 mm"}
    )
    book = Standing("tides", "Tides", 4.0, 20.0, 15.0, Uncertainty({}, 0.3))
    assert fit_space("upper", space, [book], {}).probability == pytest.approx(chance, abs=2e-4)
