"""Thicknesses that can be bought: about so much, whole layers of stocks, pages as thick as that."""

from __future__ import annotations

from pathlib import Path
from statistics import median
from time import perf_counter

import pytest

from bookmaker import check
from bookmaker.shelf.fit import Verdict
from tests.kit.by_kind import books_of
from tests.kit.command_line import bookmaker
from tests.kit.shelves import told

SHELF = """\
shelf: Bought
stocks:
  laid: {caliper: 80 um, glue: 15 um}
  card: {caliper: 160 um}
  grey board: {caliper: 1 mm, tolerance: 3 %, glue: 30 um}
  mount board: {caliper: 1.4 mm, tolerance: 3 %, glue: 30 um}
spaces:
  upper: {width: WIDTH, height: 27 mm, depth: 22 mmSPARE}
defaults:
  size: {height: 21 mm, width: 15 mm}
  cover: {kind: wrap, stock: card}
  design: {style: cloth}
  space: upper
books:
"""


def written(width: float, blocks: list[str], spare: str = "") -> str:
    text = SHELF.replace("WIDTH", f"{width} mm").replace("SPARE", f", to_spare: {spare}" if spare else "")
    return text + "".join(f"  - {{title: Book {number}, block: {{{block}}}}}\n" for number, block in enumerate(blocks))


def thick(folder: Path) -> list[float]:
    return [round(book.block.thickness.value, 3) for book in books_of(check(folder / "shelf.yaml").plan)]


LAYERS = "kind: dummy, thickness: layers of grey board"

ABOUT = "kind: dummy, thickness: about 5 mm"


def test_about_is_stretched_in_one_proportion(tmp_path: Path) -> None:
    """Three of about 5, 4 and 6 mm in 17.6 mm: each 17.6 less three covers, clearances and the error is to 15."""
    told(written(17.6, [ABOUT, ABOUT.replace("5", "4"), ABOUT.replace("5", "6")]), tmp_path)
    five, four, six = thick(tmp_path)
    assert five / 5 == pytest.approx(four / 4, rel=0.01) == pytest.approx(six / 6, rel=0.01)
    plan = check(tmp_path / "shelf.yaml").plan
    assert plan.spaces[0].verdict is Verdict.FITS
    assert plan.spaces[0].room_left - plan.spaces[0].reserve < 0.011


def test_about_keeps_to_its_bounds_and_says_what_stays_empty(tmp_path: Path) -> None:
    (said,) = told(written(30, [ABOUT, ABOUT]), tmp_path)
    assert "upper is not filled" in said
    assert sorted(thick(tmp_path)) == pytest.approx([5.99, 6.0]), "a fifth more at most, and no twins"


def test_about_leaves_the_rest_to_what_is_free(tmp_path: Path) -> None:
    told(written(24, [ABOUT, ABOUT.replace("5", "4"), "kind: dummy, thickness: free"]), tmp_path)
    assert thick(tmp_path)[:2] == pytest.approx([5, 4], abs=0.02)


def test_about_needs_no_space(tmp_path: Path) -> None:
    told(written(24, [ABOUT]).replace("  space: upper\n", ""), tmp_path)
    assert thick(tmp_path) == [5.0]


def test_layers_are_whole_and_of_what_was_named(tmp_path: Path) -> None:
    """Every thickness is so many times 1 mm and 80 µm, with a film of 30 µm between any two."""
    blocks = ["kind: dummy, thickness: layers of grey board and laid"] * 5
    told(written(30, blocks), tmp_path)
    plan = check(tmp_path / "shelf.yaml").plan
    for book in books_of(plan):
        counts = {part.material: part.count for part in book.block.cut_list}
        assert counts.keys() <= {"grey board", "laid"}
        layers = sum(counts.values())
        by_hand = counts.get("grey board", 0) * 1.0 + counts.get("laid", 0) * 0.08 + (layers - 1) * 0.03
        assert book.block.thickness.value == pytest.approx(by_hand)
        assert book.standing.uncertainty.slopes.get("grey board", 0) == counts.get("grey board", 0)
    assert len(set(thick(tmp_path))) == 5
    (space,) = plan.spaces
    assert space.verdict is Verdict.FITS
    assert space.room_left - space.reserve < 0.2, "within two sheets of the thin paper"


def test_about_in_layers_is_the_nearest(tmp_path: Path) -> None:
    text = written(24, ["kind: dummy, thickness: about 4 mm in layers of mount board and card"])
    told(text.replace("  space: upper\n", ""), tmp_path)
    assert thick(tmp_path) == [pytest.approx(2 * 1.4 + 6 * 0.16 + 7 * 0.03, abs=0.2)]


def test_what_is_to_spare_is_spared(tmp_path: Path) -> None:
    told(written(40, ["kind: dummy, thickness: fill"] * 6, "2 mm"), tmp_path)
    (space,) = check(tmp_path / "shelf.yaml").plan.spaces
    assert space.room_left == pytest.approx(2, abs=0.01)


def test_fill_is_spread_as_books_are_and_leaves_numbers_alone(tmp_path: Path) -> None:
    told(written(120, ["kind: dummy, thickness: 4.37 mm", *["kind: dummy, thickness: fill"] * 24]), tmp_path)
    fixed, *found = thick(tmp_path)
    assert fixed == 4.37
    assert len(set(found)) == 24
    middle = median(found)
    assert sum(abs(one - middle) < middle / 3 for one in found) > 12
    assert max(found) > 1.4 * middle
    assert min(found) < 0.75 * middle


def test_twins_that_cannot_be_helped_are_told(tmp_path: Path) -> None:
    blocks = ["kind: dummy, thickness: layers of grey board, at_least: 2 mm, at_most: 2.1 mm"] * 2
    said = told(written(30, blocks), tmp_path)
    assert any("upper has blocks of equal thickness" in one and "layers_of with one paper more" in one for one in said)


@pytest.mark.parametrize(
    ("kind", "step"),
    [("accordion, stock: laid", 2), ("leaves, stock: laid", 2), ("sections, stock: laid, pages_in_section: 16", 4)],
)
def test_pages_are_as_many_as_make_the_thickness(tmp_path: Path, kind: str, step: int) -> None:
    told(written(30, [f"kind: {kind}, pages: as thick as 4 mm"]), tmp_path)
    (book,) = books_of(check(tmp_path / "shelf.yaml").plan)
    assert book.block.pages % step == 0
    assert book.block.thickness.value == pytest.approx(4, abs=step * 0.08)


@pytest.mark.parametrize(
    ("block", "said"),
    [
        ("kind: dummy, thickness: about 5 mm, at_least: 6 mm", "is about 5 mm, which does not go with at_least 6 mm"),
        ("kind: dummy, thickness: layers of balsa", "'balsa'"),
        (f"{LAYERS}, at_least: 2.2 mm, at_most: 2.9 mm", "no number of whole layers of grey board is between"),
        ("kind: dummy, thickness: quite thick", "about 4 mm, layers of"),
        ("kind: dummy, thickness: about tall", "about"),
        ("kind: accordion, stock: laid, pages: as thick as a brick", "as_thick_as"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(tmp_path: Path, block: str, said: str) -> None:
    (tmp_path / "shelf.yaml").write_text(written(30, [block]), encoding="utf-8")
    refused = bookmaker("check", str(tmp_path / "shelf.yaml"))
    assert refused.code == 2
    assert said in refused.err


def test_three_hundred_books_are_filled_in_three_seconds() -> None:
    from bookmaker.shelf.filling.spread import Bounds, natural_wishes
    from bookmaker.shelf.filling.sums import best_choice

    start = perf_counter()
    wishes = natural_wishes([str(number) for number in range(300)], [Bounds(2000, 12000)] * 300, 1_100_000)
    chosen = best_choice([range(2000, 12001, 10)] * 300, 1_100_005, wishes, gap=10)
    assert chosen
    assert sum(chosen.lengths) == 1_100_000
    assert len(set(chosen.lengths)) == 300
    assert perf_counter() - start < 6, "three on a machine that does nothing else"
