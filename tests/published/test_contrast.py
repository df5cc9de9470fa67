"""Contrast of colours, as the Web Content Accessibility Guidelines define it."""

from __future__ import annotations

import pytest

from bookmaker.ground.drawing import WHITE, Colour, contrast


@pytest.mark.parametrize(
    ("colour", "ratio"), [("#777777", 4.478), ("#767676", 4.542), ("#ff0000", 3.998), ("#0000ff", 8.592)]
)
def test_contrast_with_white(colour: str, ratio: float) -> None:
    """W3C, WCAG 2.x, definitions of relative luminance and contrast ratio; values derived from the formula."""
    assert contrast(Colour.from_hex(colour), WHITE) == pytest.approx(ratio, abs=5e-4)


def test_black_on_white_is_the_most_there_is() -> None:
    """W3C, WCAG 2.x: contrast ratios range from 1 to 21."""
    assert contrast(Colour(0, 0, 0), WHITE) == pytest.approx(21)
    assert contrast(WHITE, WHITE) == 1
