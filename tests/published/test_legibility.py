"""Sizes and contrasts of lettering against published values."""

from __future__ import annotations

import pytest

from bookmaker.ground.drawing import BLACK, WHITE, Colour
from bookmaker.paper.eyesight import Legibility
from bookmaker.things.book.designs.tones import apart


def test_dots_of_a_letter() -> None:
    """By hand: 0.13 mm at 600 dots per inch of 25.4 mm are 3.07 dots."""
    assert Legibility(0.13, 600).dots == pytest.approx(3.0709, abs=1e-4)


@pytest.mark.parametrize(
    ("one", "other", "distance"),
    [
        (WHITE, BLACK, 1.0),
        # Oklab of sRGB red is (0.62796, 0.22486, 0.12585): B. Ottosson, "A perceptual color space for image
        # processing" (2020), from memory; from black that is √(0.39433 + 0.05056 + 0.01584).
        (Colour(1.0, 0.0, 0.0), BLACK, 0.67877),
    ],
)
def test_distance_of_colours(one: Colour, other: Colour, distance: float) -> None:
    """Oklab as published by its author, from memory."""
    assert apart(one, other) == pytest.approx(distance, abs=2e-4)
