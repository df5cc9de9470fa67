"""The accordion's other joint: strips that end at valleys, with a tab for the next strip."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.sheets.flat import FoldKind, Role
from bookmaker.things.book.plan import BookPlan
from tests.kit.by_kind import books_of

SHELF = """\
shelf: Tabs
stocks:
  page: {caliper: 75 um, glue: 15 um, grain: long}
books:
  - title: Tide Book
    direction: DIRECTION
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page, pages: PAGES, joint: hinge tab, tab: 4 mm}
    cover: {kind: wrap, stock: page}
"""


def planned(folder: Path, pages: int, direction: str = "left-to-right") -> BookPlan:
    path = folder / "shelf.yaml"
    path.write_text(SHELF.replace("PAGES", str(pages)).replace("DIRECTION", direction), encoding="utf-8")
    return books_of(check(path).plan)[0]


@pytest.mark.parametrize("pages", [2, 10, 12, 24, 48, 98, 200])
@pytest.mark.parametrize("direction", ["left-to-right", "right-to-left"])
def test_every_page_once_in_order_and_tabs_beyond_valleys(tmp_path: Path, pages: int, direction: str) -> None:
    book = planned(tmp_path, pages, direction)
    assert [page for strip in book.block.flats for page in strip.pages] == list(range(1, pages + 1))
    assert sum(panel.role is not Role.TAB for strip in book.block.flats for panel in strip.panels) == pages + 2
    for strip in book.block.flats[:-1]:
        tab, fold = strip.panels[-1], strip.folds[-1]
        assert (tab.role, fold.kind) == (Role.TAB, FoldKind.VALLEY)
        beside = tab.rect.right if direction == "right-to-left" else tab.rect.x
        assert fold.start.x == pytest.approx(beside)
        assert tab.rect.width == pytest.approx(4)
    assert all(panel.role is not Role.TAB for panel in book.block.flats[-1].panels)


def test_folds_alternate_from_strip_to_strip(tmp_path: Path) -> None:
    kinds = [fold.kind for strip in planned(tmp_path, 98).block.flats for fold in strip.folds]
    assert kinds == [FoldKind.MOUNTAIN if panel % 2 else FoldKind.VALLEY for panel in range(99)]


def test_strips_fit_the_printable_width(tmp_path: Path) -> None:
    for pages in range(20, 120, 2):
        for strip in planned(tmp_path, pages).block.flats:
            assert strip.size.width <= 200 - 2 * 2.2 + 1e-6


def test_each_tab_adds_a_sheet_and_a_film_at_the_spine(tmp_path: Path) -> None:
    block = planned(tmp_path, 48).block
    tabs = len(block.flats) - 1
    assert tabs > 0
    assert block.thickness.value == pytest.approx(4.14 + tabs * (0.075 + 0.015))
