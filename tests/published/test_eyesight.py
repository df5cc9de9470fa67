"""What eyes resolve, as published."""

from __future__ import annotations

import pytest

from bookmaker.eyesight import Legibility, least_height


@pytest.mark.parametrize(("distance", "height"), [(20 * 304.8, 8.87), (1000, 1.454), (300, 0.436), (250, 0.364)])
def test_a_letter_for_20_20_eyes_is_5_minutes_high(distance: float, height: float) -> None:
    """H. Snellen's chart: 8.87 mm at 20 ft for 20/20; the others are the same angle."""
    assert least_height(distance) == pytest.approx(height, abs=0.005 if distance > 1000 else 0.0005)
    assert Legibility(least_height(distance), 600, distance).minutes == pytest.approx(5)
