"""Jackets and slipcases against the published bend allowance; the rest of their rules is common practice."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from bookmaker.things.book.covers.jacket import flap_fold
from tests.kit.shelves import made

SHELF = """\
shelf: Worked case
stocks:
  page: {caliper: 75 um, glue: 15 um, grain: long}
  cover: {caliper: 160 um, film: 50 um, grain: long}
  jacket: {caliper: 100 um, film: 20 um, grain: long}
  card: {caliper: 0.3 mm, glue: 30 um, grain: long}
books:
  - title: Worked case
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page, pages: 48}
    cover: {kind: wrap, stock: cover}
    jacket: {stock: jacket, flap: 6 mm}
slipcases:
  worked box: {books: [Worked case], stock: card, clearance: 0.3 mm}
"""


def piece(folder: Path, kind: str) -> dict[str, Any]:
    plan, _ = made(SHELF, folder)
    (found,) = (piece for sheet in plan["sheets"] for piece in sheet["pieces"] if piece["kind"] == kind)
    return found


@pytest.mark.parametrize(
    ("edge", "caliper", "length"),
    [
        (0.21, 0.12, 0.518363),  # π · (0.105 + 0.06)
        (1.2, 0.1, 2.042035),  # π · (0.6 + 0.05)
        (0, 0.1, 0.157080),  # a scored fold: π · 0.05
    ],
)
def test_the_fold_of_a_flap(edge: float, caliper: float, length: float) -> None:
    """*Machinery's Handbook* (Industrial Press, New York; formula from memory),
    bend allowances: A·π/180·(R + K·T) with A = 180°, R = half the edge, K = ½.
    """
    assert flap_fold(edge, caliper) == pytest.approx(length, abs=1e-6)


def test_widths_of_a_jacket(tmp_path: Path) -> None:
    """*Machinery's Handbook* (Industrial Press, New York; formula from memory),
    bend allowances; that a jacket has five panels is common practice, no source.

    The covered book is 4.56 thick and 15.21 deep, its side 0.21 at the fore-edge (the worked case of a wrap);
    c = 0.12. Spine 4.56 + π/4·0.12 = 4.6542; side 15.21 + π/8·0.12 + π/2·0.165 = 15.5163; flap 6 + π/2·0.165 = 6.2592.
    """
    widths = [panel["rect_mm"][2] for panel in piece(tmp_path, "jacket")["panels"]]
    assert widths == pytest.approx([6.2592, 15.5163, 4.6542, 15.5163, 6.2592], abs=2e-4)


def test_sizes_of_a_slipcase(tmp_path: Path) -> None:
    """Bend allowances by *Machinery's Handbook* (Industrial Press, New York; from memory);
    how a box laps is common practice, no source.

    The book in its jacket is 5.04 × 21 × 15.555. Room 5.34 × 21.3 × 15.855. Each wall of 0.3; at head and tail a
    tab of 0.3 and its glue of 0.03 besides: outside 5.94 × 22.56 × 16.155. Net: 5.34 + 2 · 15.855 + 4 · π/8·0.3 by
    21.3 + 2 · 0.33 + 2 · 15.855 + 4 · π/8·0.3.
    """
    plan, _ = made(SHELF, tmp_path / "plan")
    (box,) = plan["slipcases"]
    assert box["inside_mm"] == {"width": 5.34, "height": 21.3, "depth": 15.855}
    assert box["outside_mm"] == {"width": 5.94, "height": 22.56, "depth": 16.155}
    xs, ys = zip(*piece(tmp_path / "net", "slipcase")["outline_mm"], strict=True)
    assert max(xs) - min(xs) == pytest.approx(37.5212, abs=2e-4)
    assert max(ys) - min(ys) == pytest.approx(54.1412, abs=2e-4)
