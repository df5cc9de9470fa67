"""Letters to the eye and to the printer."""

from __future__ import annotations

import pytest

from bookmaker.paper.eyesight import Legibility


@pytest.mark.parametrize(
    ("x_height", "dpi", "distance", "verdict"),
    [
        (0.44, 600, 300, "readable"),
        (0.43, 600, 300, "with a lens"),
        (0.43, 600, 250, "readable"),
        (0.17, 600, 300, "with a lens"),
        (0.16, 600, 300, "texture only"),
        (0.33, 300, 300, "texture only"),
        (0.44, 150, 300, "texture only"),
    ],
)
def test_verdicts(x_height: float, dpi: float, distance: float, verdict: str) -> None:
    """Readable from 5 minutes of arc, 0.436 mm at 300 mm; texture below 4 dots, 0.169 mm at 600 to the inch."""
    assert str(Legibility(x_height, dpi, distance).sight) == verdict


def test_a_ten_point_face_at_1_to_12_is_3_dots_high() -> None:
    """Common practice: x-height ratio 0.45, so 0.13 mm; at 600 dots to the inch 3 dots."""
    letters = Legibility(10 * 25.4 / 72 * 0.45 / 12, 600)
    assert letters.x_height == pytest.approx(0.132, abs=0.001)
    assert letters.dots == pytest.approx(3.1, abs=0.05)
    assert letters.minutes == pytest.approx(1.5, abs=0.02)
