"""Simulated makers: of a hundred thousand who make a shelf, as many succeed as they were told would.

Each has papers and films of glue that err once for all books, hands that err with every book, a gauge that errs when a
block was measured, and a knife that errs, and goes askew, with every side that it cuts. Half a tolerance is one
standard deviation. What is told and what happens agree within 0.02 from 5 to 99 %.
"""

from __future__ import annotations

import numpy as np
import pytest

from bookmaker.shelf.fit import Verdict, fit_space
from bookmaker.shelf.plan import ShelfPlan
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.space_entry import SpaceEntry
from bookmaker.things.book.plan import BookPlan
from tests.kit.by_kind import books_of, planned_shelf

MAKERS = 100_000
Draws = np.ndarray[tuple[int, ...], np.dtype[np.float64]]

SHELF = """\
shelf: Made by many
stocks:
  page: {caliper: 80 um, tolerance: 5 um, glue: 20 um}
  card: {caliper: 180 um, limits: 10 %, glue: 20 um}
  cloth: {caliper: 140 um, tolerance: 8 %}
  board: {caliper: 0.8 mm, tolerance: 5 %}
glue_tolerances: {20 um: 12 um, paste: 40 %}
spaces:
  row: {width: 90 mm, height: 40 mm, depth: 40 mm}
defaults:
  size: {height: 21 mm, width: 15 mm}
  cover: {kind: wrap, stock: card}
  space: row
books:
  - {title: Strip, block: {kind: accordion, stock: page, pages: 48}, cover: {turn_in: 5 mm}}
  - {title: Read, block: {kind: accordion, stock: page, pages: 48, measured_thickness: 4.6 mm}}
  - {title: Wood, block: {kind: dummy, thickness: 4 mm}, assembly_tolerance: 0.1 mm}
  - title: Cased
    block: {kind: leaves, stock: page, pages: 60, printing: one side}
    cover: {kind: case, stock: cloth, boards: board, endpapers: page}
  - {title: Low, block: {kind: accordion, stock: page, pages: 32}, stack: heap}
  - {title: Middle, block: {kind: accordion, stock: page, pages: 32}, stack: heap}
  - {title: High, block: {kind: accordion, stock: page, pages: 48}, stack: heap}
"""
SHEETS = {"page": 0.005, "card": 0.018 * 2 / 3**0.5, "cloth": 0.08 * 0.14, "board": 0.04}
FILMS = {0.02: 0.012, 0.03: 0.4 * 0.03}
"""Tolerances as they are written: of sheets by stock, of films by thickness, in mm."""


@pytest.fixture(scope="module")
def plan(tmp_path_factory: pytest.TempPathFactory) -> ShelfPlan:
    path = tmp_path_factory.mktemp("shelf") / "shelf.yaml"
    path.write_text(SHELF, encoding="utf-8")
    return planned_shelf(read_shelf(path).spec)


@pytest.fixture(scope="module")
def made(plan: ShelfPlan) -> dict[str, tuple[Draws, Draws, Draws]]:
    """What comes of each book in the hands of each maker: thickness, height, depth."""
    chance = np.random.default_rng(12)

    def error(tolerance: float) -> Draws:
        return chance.normal(0, tolerance / 2, MAKERS)

    sheets = {name: error(tolerance) for name, tolerance in SHEETS.items()}
    films = {film: error(tolerance) for film, tolerance in FILMS.items()}
    found = {}
    for book in books_of(plan):
        thick = book.thickness.value + error(book.entry.assembly_tolerance)
        for layer in book.thickness.layers:
            off = sheets.get(layer.stock) if layer.stock else films[layer.caliper] if "glue" in layer.what else None
            thick += 0 if off is None else layer.count * off
        if book.name == "Read":
            thick += error(0.05)
        cut = [side + error(0.16) + error(0.12) for side in (book.height, book.depth)]
        found[book.name] = (thick, *cut)
    return found


def told_and_simulated(
    plan: ShelfPlan, made: dict[str, tuple[Draws, Draws, Draws]], names: str, width: float, height: float, depth: float
) -> tuple[float, float]:
    """The chance that was told, and the share of makers whose books have room."""
    books = {book.name: book for book in books_of(plan) if book.name in names.split()}
    space = SpaceEntry.model_validate({"width": f"{width} mm", "height": f"{height} mm", "depth": f"{depth} mm"})
    told = fit_space("row", space, [book.standing for book in books.values()], plan.terms.tolerances).probability
    upright, heap = parted(books)
    room = width - 0.2 * (len(upright) + bool(heap)) - sum(made[name][0] for name in upright)
    good = np.ones(MAKERS, dtype=bool)
    if heap:
        room = room - np.max([made[name][1] for name in heap], axis=0)
        good &= sum(made[name][0] for name in heap) <= height
    for name in upright:
        good &= made[name][1] <= height
    for name in books:
        good &= made[name][2] <= depth
    return told, float(np.mean(good & (room >= 0)))


def parted(books: dict[str, BookPlan]) -> tuple[list[str], list[str]]:
    return [n for n, b in books.items() if not b.entry.stack], [n for n, b in books.items() if b.entry.stack]


ROWS = ("Strip Read Wood Cased", "Strip Low Middle High", "Wood", "Low Middle High")


@pytest.mark.parametrize("names", ROWS)
@pytest.mark.parametrize("spare", [-1.6, -1, -0.5, 0, 0.5, 1, 1.6, 2.3])
@pytest.mark.parametrize("side", ["width", "height", "depth", "all"])
def test_as_many_makers_succeed_as_were_told(
    plan: ShelfPlan, made: dict[str, tuple[Draws, Draws, Draws]], names: str, spare: float, side: str
) -> None:
    """With so many standard deviations to spare in the width, the height, the depth, or in all of them."""
    books = {book.name: book for book in books_of(plan) if book.name in names.split()}
    upright, heap = parted(books)
    across = sum(books[n].thickness.value for n in upright) + max((books[n].height for n in heap), default=0)
    pile = sum(books[n].thickness.value for n in heap)
    across += 0.2 * (len(upright) + bool(heap))
    high = max([books[n].height for n in upright] + ([pile] if heap else []))
    deep = max(book.depth for book in books.values())
    step = {"width": 0.2, "height": 0.15, "depth": 0.1}
    room = {"width": across, "height": high, "depth": deep}
    wide = {key: room[key] + (spare * step[key] if side in (key, "all") else 5) for key in room}
    told, simulated = told_and_simulated(plan, made, names, **wide)
    assert told == pytest.approx(simulated, abs=0.02)


def test_fits_at_the_chance_that_is_asked_for(plan: ShelfPlan) -> None:
    book = books_of(plan)[0].standing
    for chance, wanted in ((0.6, Verdict.FITS), (0.9, Verdict.TIGHT)):
        likely = book.uncertainty.spread(plan.terms.tolerances)[1]
        space = SpaceEntry(width=book.thickness + 0.2 + likely / 4, height=40.0, depth=40.0, chance=chance)
        found = fit_space("row", space, [book], plan.terms.tolerances)
        assert (found.verdict, round(found.probability, 3)) == (wanted, 0.691)  # Φ(1/2), half a deviation to spare


def test_three_books_that_nearly_touch_the_board_above_are_an_even_chance(plan: ShelfPlan) -> None:
    heap = [book.standing for book in books_of(plan) if book.entry.stack]
    space = SpaceEntry(width=60.0, height=sum(book.thickness for book in heap) + 0.01, depth=40.0)
    found = fit_space("row", space, heap, plan.terms.tolerances)
    assert (found.verdict, round(found.probability, 1)) == (Verdict.TIGHT, 0.5)
    assert [one.title for one in found.doubtful] == ["the stack heap"]
