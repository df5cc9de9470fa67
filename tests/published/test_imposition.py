"""Leaves, sections and imposition against the literature of the trade."""

from __future__ import annotations

import math

import pytest

from bookmaker.ground.geometry import Rect, Size
from bookmaker.paper.stock import Stock
from bookmaker.sheets.flat import Face, Flat, Panel
from bookmaker.things.book.blocks.block_plan import BlockPlan
from bookmaker.things.book.blocks.creep import creep, fold_length
from bookmaker.things.book.blocks.imposition import FOLDINGS, Imposed, fold_sheet, page_in_section
from bookmaker.things.book.blocks.leaves import Leaves
from bookmaker.things.book.blocks.sections import Sections
from tests.kit.papers import paper


def sections(page: Size, stock: Stock, **keys: str) -> BlockPlan:
    entry = Sections.model_validate({"stock": "page", **keys})
    return entry.plan(page, {"page": stock}, right_to_left=False)


def rows(flat: Flat, face: Face) -> list[list[tuple[int | None, bool]]]:
    """What a reader of one side sees, from the top row down and from the left: page, and whether head down."""
    panels = [panel for panel in flat.panels if panel.face is face]

    def from_left(panel: Panel) -> float:
        return panel.rect.x if face is Face.FRONT else -panel.rect.x

    return [
        [(panel.page, panel.head_down) for panel in sorted(panels, key=from_left) if panel.rect.y == y]
        for y in sorted({panel.rect.y for panel in panels}, reverse=True)
    ]


def test_hollick() -> None:
    """R. Hollick, "ppi", 2010: 840 pages of 86 µm paper are 420 leaves, 36.12 mm or 1.422 in; 590.697 pages an inch."""
    entry = Leaves.model_validate({"stock": "page", "pages": "840"})
    made = entry.plan(Size(15, 21), {"page": paper("86 um", sheet="A3")}, right_to_left=False)
    assert made.thickness.value == pytest.approx(36.12, abs=0.005)
    assert made.thickness.value / 25.4 == pytest.approx(1.422, abs=0.0005)
    assert made.pages / (made.thickness.value / 25.4) == pytest.approx(590.697, abs=0.001)


def test_pages_per_inch() -> None:
    """PrintWiki, "Pages per inch": a leaf is two pages, so pages per inch are 2 over the caliper, not 1."""
    entry = Leaves.model_validate({"stock": "page", "pages": "200"})
    made = entry.plan(Size(15, 21), {"page": paper("5 mil", sheet="A3")}, right_to_left=False)
    assert made.pages / (made.thickness.value / 25.4) == pytest.approx(2 / 0.005)


def test_cowie_sums() -> None:
    """*Cowie's Printer's Pocket-Book* (London, about 1835; year from memory), p. 31:
    in a section of 32 pages facing pairs sum to 33: 1 with 32, 14, 12.
    """
    made = sections(Size(15, 21), paper("50 um", sheet="A3"), pages="32", pages_in_section="32")
    pairs = {
        frozenset(panel.page for panel in flat.panels if panel.face is face) for flat in made.flats for face in Face
    }
    assert all(sum(page or 0 for page in pair) == 33 for pair in pairs)
    assert {frozenset({1, 32}), frozenset({14, 19}), frozenset({12, 21})} <= pairs
    assert len(pairs) == 16


def test_cowie_two_sheets() -> None:
    """*Cowie's Printer's Pocket-Book* (London, about 1835; year from memory):
    two sheets, one in the other: outer 8|1 and 2|7, inner 6|3 and 4|5.
    """
    outer, inner = sections(Size(15, 21), paper("80 um", sheet="A3"), pages="8").flats
    assert rows(outer, Face.FRONT) == [[(8, False), (1, False)]]
    assert rows(outer, Face.REVERSE) == [[(2, False), (7, False)]]
    assert rows(inner, Face.FRONT) == [[(6, False), (3, False)]]
    assert rows(inner, Face.REVERSE) == [[(4, False), (5, False)]]


def test_cockerell_octavo() -> None:
    """D. Cockerell, *Bookbinding, and the Care of Books* (1901), ch. II: a sheet folded three times.

    Inner side as it lies, heads of the upper row down: 7 10 11 6 over 2 15 14 3; the outer forme has the rest.
    """
    (sheet,) = sections(Size(15, 21), paper("80 um", sheet="A3"), pages="16", fold="octavo").flats
    assert rows(sheet, Face.REVERSE) == [
        [(7, True), (10, True), (11, True), (6, True)],
        [(2, False), (15, False), (14, False), (3, False)],
    ]
    assert {page for row in rows(sheet, Face.FRONT) for page, _ in row} == {1, 4, 5, 8, 9, 12, 13, 16}


def test_quarto() -> None:
    """Common scheme of a sheet folded twice, from memory: outer forme 5 4 over 8 1, inner forme 3 6 over 2 7."""
    (sheet,) = sections(Size(15, 21), paper("80 um", sheet="A3"), pages="8", fold="quarto").flats
    assert rows(sheet, Face.FRONT) == [[(5, True), (4, True)], [(8, False), (1, False)]]
    assert rows(sheet, Face.REVERSE) == [[(3, True), (6, True)], [(2, False), (7, False)]]


@pytest.mark.parametrize("name", FOLDINGS)
def test_pairs_at_the_spine_sum_to_one_more_than_the_pages(name: str) -> None:
    """The rule of *Cowie's Printer's Pocket-Book* (London, about 1835; year from memory), p. 31,
    holds for every folding (derived).
    """
    sheet: Imposed = fold_sheet(FOLDINGS[name])
    at = {(cell.column, cell.row, cell.face): cell.page for cell in sheet.cells}
    for (column, row, face), page in at.items():
        beside = column + 1 if column % 2 == 0 else column - 1
        assert page + at[beside, row, face] == sheet.pages + 1
    assert sorted(at.values()) == list(range(1, sheet.pages + 1))
    assert page_in_section(sheet.pages, 0, sheet.pages, 3 * sheet.pages) == 3 * sheet.pages


@pytest.mark.parametrize(("folds", "times"), [(1, 1), (2, 4), (3, 14), (4, 50)])
def test_gallivan(folds: int, times: float) -> None:
    """J. Gallivan (2002), from memory: L = πt/6·(2ⁿ + 4)(2ⁿ − 1), so π·t for one fold, then 4, 14, 50 times that."""
    assert fold_length(0.1, folds) == pytest.approx(math.pi * 0.1 * times)


def test_creep_is_half_of_what_a_fold_takes() -> None:
    """Derived: π·t of a single fold (J. Gallivan, from memory) is shared by the two leaves it joins: 0.157 mm each."""
    assert creep(0, 0.1) == 0
    assert creep(1, 0.1) == pytest.approx(0.15708, abs=1e-5)
    assert creep(3, 0.1) == pytest.approx(0.47124, abs=1e-5)
    made = sections(Size(15, 21), paper("0.1 mm", sheet="A3"), pages="16")
    assert [flat.panels[0].creep for flat in made.flats] == pytest.approx([0, 0.15708, 0.31416, 0.47124], abs=1e-5)


def test_cockerell_swell() -> None:
    """D. Cockerell, *Bookbinding, and the Care of Books* (1901): two sections sewn on together have half the thread."""

    def swell(sewing: str) -> float:
        entry = {"pages": "64", "pages_in_section": "8", "thread": "0.2 mm", "sewing": sewing}
        return sections(Size(15, 21), paper("80 um", sheet="A3"), **entry).thickness.value - 32 * 0.08

    assert swell("all along") == pytest.approx(8 * 0.2)
    assert swell("two on") == pytest.approx(swell("all along") / 2)


def test_royal_octavo_before_and_after_trimming() -> None:
    """M. Roberts & D. Etherington, *Bookbinding and the Conservation of Books* (1982), "case binding sizes".

    A royal octavo is folded to 10 in, trimmed by 1/8 in at head and tail to 9 3/4, and squares of 1/8 in make its
    boards 10 in high again. The royal sheet of 20 × 25 in (from memory) gives eight leaves of 10 × 6 1/4 in.
    """
    inch = 25.4
    page = Size(6.125 * inch, 9.75 * inch)
    stock = paper("0.1 mm", sheet="600 x 800 mm", grain="unknown")
    (sheet,) = sections(page, stock, pages="16", fold="octavo", trim="1/8 in").flats
    assert sheet.size == pytest.approx((25 * inch, 20 * inch))
    folded = Rect(0, 0, sheet.size.width / 4, sheet.size.height / 2)
    assert folded.size == pytest.approx((6.25 * inch, 10 * inch))
    assert [panel.rect.height / inch for panel in sheet.panels] == pytest.approx([9.75] * 16)
    assert folded.height / inch == 9.75 + 2 * 0.125
    levels = sorted({stroke.start.y / inch for stroke in sheet.trims if stroke.start.y == stroke.end.y})
    assert levels == pytest.approx([0.125, 9.875, 10.125, 19.875])
