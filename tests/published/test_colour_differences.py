"""Distances of colours against published values.

G. Sharma, W. Wu and E. N. Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes, Supplementary Test
Data, and Mathematical Observations", Color Research and Application 30/1 (2005), Table 1; B. Ottosson, "A perceptual
color space for image processing" (2020), table of XYZ and Oklab pairs.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.colours.differences import Lab, ciede2000, difference, lab_of, oklab_of, oklab_of_xyz
from bookmaker.ground.drawing import BLACK, WHITE, Colour

DATA = json.loads((Path(__file__).parent / "ciede2000_pairs.json").read_text(encoding="utf-8"))
PARTS = st.floats(0, 1)
COLOURS = st.builds(Colour, PARTS, PARTS, PARTS)


@pytest.mark.parametrize("row", DATA["pairs"], ids=str)
def test_pairs_of_sharma_wu_and_dalal(row: list[float]) -> None:
    one, other = Lab(*row[:3]), Lab(*row[3:6])
    assert ciede2000(one, other) == pytest.approx(row[6], abs=DATA["tolerance"])
    assert ciede2000(other, one) == pytest.approx(row[6], abs=DATA["tolerance"])


def test_there_are_thirty_four_pairs() -> None:
    assert len(DATA["pairs"]) == 34


@pytest.mark.parametrize(
    ("xyz", "expected"),
    [
        ((0.950, 1.0, 1.089), (1.0, 0.0, 0.0)),
        ((1.0, 0.0, 0.0), (0.450, 1.236, -0.019)),
        ((0.0, 1.0, 0.0), (0.922, -0.671, 0.263)),
        ((0.0, 0.0, 1.0), (0.153, -1.415, -0.449)),
    ],
)
def test_oklab_of_ottosson(xyz: tuple[float, float, float], expected: tuple[float, float, float]) -> None:
    assert oklab_of_xyz(*xyz) == pytest.approx(expected, abs=0.001)


def test_red_in_oklab() -> None:
    """Public reference value of sRGB red in Oklab."""
    assert oklab_of(Colour(1.0, 0.0, 0.0)) == pytest.approx((0.627955, 0.224863, 0.125846), abs=1e-6)


def test_black_and_white_are_a_hundred_apart() -> None:
    assert difference(BLACK, WHITE) == pytest.approx(100, abs=0.01)
    assert lab_of(WHITE) == pytest.approx((100, 0, 0), abs=0.02)


@given(COLOURS, COLOURS)
def test_a_difference_is_none_only_for_the_same_and_the_same_both_ways(one: Colour, other: Colour) -> None:
    assert difference(one, one) == pytest.approx(0, abs=1e-9)
    assert difference(one, other) >= 0
    assert difference(one, other) == pytest.approx(difference(other, one), abs=1e-6)
