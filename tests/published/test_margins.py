"""Margins against published values."""

from __future__ import annotations

import pytest

from bookmaker.typesetting.page import PageFrame


def test_margins_by_ninths_on_a_page_of_six_by_nine_inches() -> None:
    """J. Tschichold's canon: inner, top, outer, bottom 0.667, 1, 1.333, 2 in; type area 4 × 6 in."""
    inch = 25.4
    frame = PageFrame(6 * inch, 9 * inch, 2)
    area = frame.type_area(1)
    margins = (area.x, frame.height - area.top, frame.width - area.right, area.y)
    assert [round(margin / inch, 3) for margin in margins] == [0.667, 1, 1.333, 2]
    assert [side / inch for side in area.size] == pytest.approx([4, 6])
