"""How errors of paper and hands add up: slopes against finite differences, spreads against simulated makers."""

from __future__ import annotations

import random
import statistics

import pytest

from bookmaker.shelf.entries import ShelfSpec
from bookmaker.shelf.plan import ShelfPlan
from bookmaker.shelf.reading import read_shelf
from tests.kit.by_kind import books_of, planned_shelf, slipcases_of

CALIPERS = {"page": 0.08, "thick": 0.11, "cover": 0.16, "board": 0.8, "cloth": 0.14, "jacket": 0.1, "card": 0.3}

SHELF = """\
shelf: Every binding
stocks: {STOCKS}
spaces:
  row: {width: 90 mm, height: 40 mm, depth: 40 mm}
defaults:
  size: {height: 21 mm, width: 15 mm}
  cover: {kind: wrap, stock: cover}
  space: row
books:
  - {title: Strip, block: {kind: accordion, stock: page, pages: 48}, cover: {turn_in: 5 mm}}
  - {title: Tabs, block: {kind: accordion, stock: page, pages: 90, joint: hinge tab}}
  - {title: Leaves, block: {kind: leaves, stock: thick, pages: 60}}
  - {title: Doubled, block: {kind: leaves, stock: page, pages: 24, printing: one side}}
  - {title: Sewn, block: {kind: sections, stock: page, pages: 96, pages_in_section: 16, sewing: two on}}
  - {title: Octavo, block: {kind: sections, stock: page, pages: 64, fold: octavo}}
  - {title: Glued, block: {kind: sections, stock: page, pages: 32, printing: one side, fastening: glued}}
  - {title: Dummy, block: {kind: dummy, thickness: 4 mm}}
  - title: Full
    block: {kind: sections, stock: page, pages: 32}
    cover: {kind: case, stock: cloth, boards: board, endpapers: thick}
  - title: Half
    block: {kind: leaves, stock: page, pages: 40}
    cover: {kind: case, stock: cover, boards: board, binding: half, spine_stock: cloth, endpapers: page}
    jacket: {stock: jacket}
  - {title: Boxed, block: {kind: accordion, stock: page, pages: 48}, jacket: {stock: jacket}}
  - {title: Too, block: {kind: accordion, stock: thick, pages: 24}, assembly_tolerance: 0.1 mm}
  - {title: Measured, block: {kind: accordion, stock: page, pages: 48, measured_thickness: 4.6 mm}}
slipcases:
  box: {books: [Boxed, Too], stock: card, clearance: 1 mm}
"""


@pytest.fixture(scope="module")
def spec(tmp_path_factory: pytest.TempPathFactory) -> ShelfSpec:
    stocks = ", ".join(
        f"{name}: {{caliper: {caliper} mm, film: 20 um, tolerance: {tolerance_of(name)} mm}}"
        for name, caliper in CALIPERS.items()
    )
    path = tmp_path_factory.mktemp("shelf") / "shelf.yaml"
    path.write_text(SHELF.replace("STOCKS", stocks), encoding="utf-8")
    return read_shelf(path).spec


def tolerance_of(stock: str) -> float:
    """A twentieth of its caliper."""
    return CALIPERS[stock] / 20


def planned(spec: ShelfSpec, **off: float) -> ShelfPlan:
    """The shelf as it comes out when the calipers of stocks are off by so much, and all that is laid of paste."""
    paste = off.get("paste", 0.0)
    stocks = {
        name: entry.model_copy(update={"caliper": CALIPERS[name] + off.get(name, 0.0), "glue": entry.glue + paste})
        for name, entry in spec.stocks.items()
    }
    return planned_shelf(spec.model_copy(update={"stocks": stocks}))


def widths(plan: ShelfPlan) -> dict[str, float]:
    """The thickness of every book, of the box, and of the whole row."""
    books = {book.entry.title: book.thickness.value for book in books_of(plan)}
    return {**books, "box": slipcases_of(plan)[0].outside.width, "row": plan.spaces[0].used}


def slopes(plan: ShelfPlan, stock: str) -> dict[str, float]:
    books = {book.entry.title: book.thickness.sensitivities.get(stock, 0.0) for book in books_of(plan)}
    return {**books, "box": slipcases_of(plan)[0].uncertainty.slopes.get(stock, 0.0)}


@pytest.mark.parametrize("stock", CALIPERS)
def test_slopes_are_those_of_finite_differences(spec: ShelfSpec, stock: str) -> None:
    """Central differences over 2 µm, of every binding there is and of a box around two of them."""
    step = 0.001
    more, less = widths(planned(spec, **{stock: step})), widths(planned(spec, **{stock: -step}))
    for name, slope in slopes(planned(spec), stock).items():
        assert slope == pytest.approx((more[name] - less[name]) / (2 * step), abs=1e-4), name


def test_every_stock_counts_somewhere(spec: ShelfSpec) -> None:
    """So that the differences above are not all nought; the measured book owes nothing to its pages."""
    plan = planned(spec)
    assert all(any(slopes(plan, stock).values()) for stock in CALIPERS)
    assert slopes(plan, "page")["Measured"] == 0
    assert slopes(plan, "page")["Strip"] == 50


def test_the_likely_error_is_that_of_many_makers(spec: ShelfSpec) -> None:
    """Three hundred makers (seed 12) whose papers, hands, glue and gauge err by half their tolerance.

    A stock errs once for all its books, hands err anew with every book. With 300 of them the spread found is
    sure to 8 % (two standard errors, 2/√(2·300)).
    """
    chance = random.Random(12)
    plan = planned(spec)
    rows: list[float] = []
    for _ in range(300):
        papers = {name: chance.gauss(0, tolerance_of(name) / 2) for name in CALIPERS}
        hands = sum(chance.gauss(0, book.entry.assembly_tolerance / 2) for book in books_of(plan))
        papers["paste"] = chance.gauss(0, 0.01 / 2)
        gauge = chance.gauss(0, 0.05 / 2)
        # the dummy's two films are PVA whatever its paper is glued with
        rows.append(planned(spec, **papers).spaces[0].used + hands + gauge + 2 * papers["paste"])
    (space,) = plan.spaces
    assert statistics.fmean(rows) == pytest.approx(space.used, abs=0.15)
    assert 2 * statistics.stdev(rows) == pytest.approx(space.likely, rel=0.1)
    assert max(abs(row - space.used) for row in rows) < space.all_one_way


def test_all_one_way_is_every_error_at_once(spec: ShelfSpec) -> None:
    plan = planned(spec)
    worst = (
        planned(spec, **{name: tolerance_of(name) for name in CALIPERS}, paste=0.01).spaces[0].used + 2 * 0.01 + 0.05
    )
    hands = sum(book.entry.assembly_tolerance for book in books_of(plan))
    assert plan.spaces[0].all_one_way == pytest.approx(worst - plan.spaces[0].used + hands)
