"""Bindings against published formulas and the worked case of the trade."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.things.book.blocks.accordion import balance, panel_count
from bookmaker.things.book.covers.bending import bend_allowance
from bookmaker.things.book.covers.wrap import side_width, spine_width
from bookmaker.writers.plan_json import check_report

WORKED = """\
shelf: Worked case
printer: {sheet: A4, margins: 5 mm}
stocks:
  page: {caliper: 75 um, glue: 15 um, grain: long}
  cover: {caliper: 160 um, film: 50 um, grain: long}
books:
  - title: Worked case
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page, pages: 48}
    cover: {kind: wrap, stock: cover}
"""


def test_worked_case_of_an_accordion_in_a_wrap(tmp_path: Path) -> None:
    """Derived by hand: 48 + 2 panels; 50 · 0.075 + 26 · 0.015 = 4.14; + π/4 · 0.21 = 4.305; + 2 · 0.21 = 4.56."""
    path = tmp_path / "shelf.yaml"
    path.write_text(WORKED, encoding="utf-8")
    checked = check(path)
    (book,) = check_report(checked)["books"]
    assert (book["panels"], book["strips"]) == (50, 5)
    assert book["block_thickness_mm"] == pytest.approx(4.14, abs=0.001)
    assert book["spine_mm"] == pytest.approx(4.305, abs=0.001)
    assert book["overall_mm"]["thickness"] == pytest.approx(4.56, abs=0.001)


@pytest.mark.parametrize(
    ("angle", "radius", "caliper", "neutral", "length"),
    [
        (90, 0, 0.21, 0.5, 0.16493),  # π/4 · 0.21
        (180, 0, 0.21, 0.5, 0.32987),  # π/2 · 0.21
        (90, 1, 0.5, 0, 1.570796),  # the inner face, π/2 · 1
        (90, 1, 0.5, 1, 2.356194),  # the outer face, π/2 · 1.5
        (45, 2, 0.4, 0.5, 1.727876),  # π/4 · 2.2
    ],
)
def test_bend_allowance(angle: float, radius: float, caliper: float, neutral: float, length: float) -> None:
    """*Machinery's Handbook* (Industrial Press, New York; formula from memory),
    bend allowances: A·π/180·(R + K·T); the numbers are derived from it by hand.
    """
    assert bend_allowance(angle, radius, caliper, neutral) == pytest.approx(length, abs=1e-5)


def test_flat_widths_of_a_wrap() -> None:
    """Derived from the bend allowance of a scored fold: half of π/4·c belongs to each side of it."""
    assert spine_width(4.14, 0.21) == pytest.approx(4.3049, abs=1e-4)
    assert side_width(15, 0, 0.21, turned_in=False) == pytest.approx(15.0825, abs=1e-4)
    assert side_width(15, 0.4, 0.21, turned_in=True) == pytest.approx(15.4 + math.pi / 8 * 0.63, abs=1e-9)


def test_accordion_counts() -> None:
    """Derived: two pastedowns besides the pages; 34 panels at 12 a sheet are 12 + 12 + 10."""
    assert (panel_count(48), panel_count(48, 2)) == (50, 54)
    assert balance(34, 12) == (12, 12, 10)
    assert balance(50, 13) == (10, 10, 10, 10, 10)
