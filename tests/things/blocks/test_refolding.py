"""Folding the strips of plan.json in code, and reading the book that comes out."""

from __future__ import annotations

import json
import math
import tempfile
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker import make

SHELF = """\
shelf: Folding
stocks:
  page: {{caliper: 75 um, {grain}}}
  cover: {{caliper: 160 um}}
books:
  - title: Tide Book
    direction: {direction}
    size: {{height: {height} mm, width: {width} mm}}
    block: {{kind: accordion, stock: page, pages: {pages}, flyleaves: {flyleaves}}}
    cover: {{kind: wrap, stock: cover}}
"""


def strips_of(shelf: str) -> list[dict[str, Any]]:
    """The strips in plan.json, in the order of their names."""
    with tempfile.TemporaryDirectory() as name:
        path = Path(name) / "shelf.yaml"
        path.write_text(shelf, encoding="utf-8")
        make(path, Path(name) / "out")
        plan = json.loads((Path(name) / "out" / "plan.json").read_text(encoding="utf-8"))
    pieces = [piece for sheet in plan["sheets"] for piece in sheet["pieces"] if piece["kind"] == "strip"]
    return sorted(pieces, key=lambda piece: int(piece["name"].split()[1]))


def along(piece: dict[str, Any], point: list[float]) -> float:
    """How far along its strip a point lies, from the end on the left when the art stands upright."""
    low_x, low_y = (min(corner[axis] for corner in piece["outline_mm"]) for axis in (0, 1))
    return point[1] - low_y if piece["turned_deg"] == 90 else point[0] - low_x


def refold(strips: list[dict[str, Any]], *, right_to_left: bool) -> list[tuple[dict[str, Any], str]]:
    """The pile from the front cover on: each panel, and where its spine edge lies, left or right.

    The printed face of the first panel looks away from the front cover. A valley brings faces together, so
    it can only follow a panel whose face looks on; a mountain turns faces apart, so it follows one that
    looks back. Strips are glued back to back.
    """
    pile = []
    for strip in strips:
        panels = sorted(strip["panels"], key=lambda panel: along(strip, panel["rect_mm"]), reverse=right_to_left)
        folds = sorted(strip["folds"], key=lambda fold: along(strip, fold["from_mm"]), reverse=right_to_left)
        assert len(folds) == len(panels) - 1
        looks_on = True
        for number, panel in enumerate(panels):
            side = "right" if looks_on is not right_to_left else "left"
            pile.append((panel, side))
            if number < len(folds):
                assert folds[number]["kind"] == ("valley" if looks_on else "mountain")
                edge = along(strip, panel["rect_mm"])
                width = panel["rect_mm"][3 if strip["turned_deg"] == 90 else 2]
                assert math.isclose(
                    along(strip, folds[number]["from_mm"]), edge + (0 if right_to_left else width), abs_tol=1e-3
                )
                looks_on = not looks_on
        assert not looks_on  # the last back is free for the next strip's first back
    return pile


@given(
    pages=st.integers(1, 60).map(lambda leaves: 2 * leaves),
    flyleaves=st.sampled_from([0, 2, 4]),
    width=st.floats(7, 60),
    height=st.floats(9, 80),
    grain=st.sampled_from(["grain: long", "grain: short", "grain: unknown"]),
    direction=st.sampled_from(["left-to-right", "right-to-left"]),
)
@settings(max_examples=60, deadline=None)
def test_refolded_strips_read_as_a_book(
    pages: int, flyleaves: int, width: float, height: float, grain: str, direction: str
) -> None:
    shelf = SHELF.format(
        pages=pages, flyleaves=flyleaves, width=f"{width:.2f}", height=f"{height:.2f}", grain=grain, direction=direction
    )
    right_to_left = direction == "right-to-left"
    strips = strips_of(shelf)
    pile = refold(strips, right_to_left=right_to_left)
    blank = 1 + flyleaves
    assert [panel["page"] for panel, _ in pile] == [None] * blank + list(range(1, pages + 1)) + [None] * blank
    assert pile[0][0]["role"] == pile[-1][0]["role"] == "pastedown"
    for panel, spine in pile:
        if panel["page"] is not None:
            recto = panel["page"] % 2 == 1
            assert spine == ("left" if recto is not right_to_left else "right")


@given(grain=st.sampled_from(["long", "short"]), width=st.floats(7, 60), height=st.floats(9, 80))
@settings(max_examples=20, deadline=None)
def test_folds_run_with_the_grain(grain: str, width: float, height: float) -> None:
    shelf = SHELF.format(
        pages=24,
        flyleaves=0,
        width=f"{width:.2f}",
        height=f"{height:.2f}",
        grain=f"grain: {grain}",
        direction="left-to-right",
    )
    for strip in strips_of(shelf):
        for fold in strip["folds"]:
            upright = abs(fold["from_mm"][0] - fold["to_mm"][0]) < 1e-6
            assert upright == (grain == "long")  # the sheet is A4, printed upright


def test_the_worked_case_has_five_strips_of_ten_on_one_sheet() -> None:
    shelf = SHELF.format(pages=48, flyleaves=0, width=15, height=21, grain="grain: long", direction="left-to-right")
    assert [len(strip["panels"]) for strip in strips_of(shelf)] == [10] * 5
