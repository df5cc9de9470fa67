"""Walls and desks on the page: what hangs there is dragged, lines up with its neighbours, and its place is written."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page
from pytest import approx

from bookmaker import check
from tests.kit.shown import Running, running, until

SHELF = """\
shelf: The Pilot's Parlour
stocks:
  photo: {caliper: 200 um}
surfaces:
  north wall:
    width: 200 mm
    height: 150 mm
    groups:
      # the two by the window
      - {pattern: row, things: [harbour, keeper], gap: 8 mm, centre: 100 mm}
  desk: {width: 80 mm, depth: 40 mm}
things:
  - {id: harbour, kind: frame, stock: photo, width: 30 mm, height: 20 mm, shows: {colour: "#2f4f46"}}
  - {id: keeper, kind: frame, stock: photo, width: 20 mm, height: 25 mm}  # a present
"""


@pytest.fixture
def shown(tmp_path: Path) -> Iterator[Running]:
    """The room, shown."""
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    with running(tmp_path / "shelf.yaml") as found:
        yield found


@pytest.fixture
def wall(page: Page, shown: Running) -> Locator:
    """Its wall on the page."""
    page.goto(shown.address)
    page.wait_for_selector("html[data-complete=yes]")
    return page.get_by_role("region", name="north wall").locator(".recess")


def place_of(folder: Path, thing: str) -> tuple[float, float, float, float]:
    plan = check(folder / "shelf.yaml").plan
    return next(tuple(one.rect) for surface in plan.room for one in surface.things if one.thing == thing)


def test_a_frame_is_dragged_out_of_its_group_and_lines_up(page: Page, wall: Locator, tmp_path: Path) -> None:
    keeper = page.get_by_role("button", name=re.compile("keeper"))
    home, box = wall.bounding_box(), keeper.bounding_box()
    assert home and box
    mm = home["width"] / 200
    harbour = place_of(tmp_path, "harbour")
    page.mouse.move(box["x"] + 5, box["y"] + 5)
    page.mouse.down()
    # nearly under the left edge of the other, and on the wall
    left, low = harbour[0] + 0.8, 20.3
    height = box["height"] / mm
    page.mouse.move(home["x"] + left * mm + 5, home["y"] + (150 - low - height) * mm + 5, steps=6)
    page.mouse.up()
    file = tmp_path / "shelf.yaml"
    until(lambda: "place:" in file.read_text(encoding="utf-8"))
    x, y, _, _ = place_of(tmp_path, "keeper")
    assert x == approx(harbour[0], abs=0.06) and y == approx(20.3, abs=0.5)
    text = file.read_text(encoding="utf-8")
    assert "things: [harbour]" in text and "# a present" in text and "# the two by the window" in text
    page.get_by_role("button", name="undo").click()
    until(lambda: file.read_text(encoding="utf-8") == SHELF)


@pytest.mark.usefixtures("wall")
def test_keys_move_it_a_millimetre(page: Page, tmp_path: Path) -> None:
    before = place_of(tmp_path, "harbour")
    page.get_by_role("button", name=re.compile("harbour")).focus()
    page.keyboard.press("Shift+ArrowUp")
    until(lambda: "place:" in (tmp_path / "shelf.yaml").read_text(encoding="utf-8"))
    after = place_of(tmp_path, "harbour")
    assert after[:2] == (approx(before[0], abs=0.06), approx(before[1] + 1, abs=0.06))
