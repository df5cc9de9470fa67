"""What eyes resolve, as published."""

from __future__ import annotations

import pytest

from bookmaker.paper.eyesight import Legibility, Sight


@pytest.mark.parametrize(("distance", "height"), [(20 * 304.8, 8.87), (1000, 1.4545), (300, 0.4364), (250, 0.3637)])
def test_a_letter_for_20_20_eyes_is_5_minutes_high(distance: float, height: float) -> None:
    """H. Snellen's chart: 8.87 mm at 20 ft for 20/20; the others are the same angle, derived."""
    assert Legibility(height, 600, distance).minutes == pytest.approx(5, abs=0.003)
    assert Legibility(height * 1.01, 600, distance).sight is Sight.READABLE
    assert Legibility(height * 0.99, 600, distance).sight is Sight.WITH_A_LENS
