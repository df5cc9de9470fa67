"""What was measured goes before what was computed, everywhere, and teaches the caliper of the paper."""

from __future__ import annotations

import json
import random
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.paper.thickness import Layer, Thickness
from bookmaker.shelf.feedback import estimate_caliper
from tests.kit.command_line import bookmaker
from tests.kit.shelves import refused, reported, written

SHELF = """\
shelf: Measured
stocks:
  page: {{caliper: 75 um, glue: 15 um{page}}}
  card: {{caliper: 160 um}}
spaces:
  ledge: {{width: 60 mm, height: 30 mm, depth: 20 mm}}
defaults:
  size: {{height: 21 mm, width: 15 mm}}
  block: {{kind: accordion, stock: page}}
  cover: {{kind: wrap, stock: card}}
  space: ledge
books:
{books}
"""


def report(folder: Path, books: str, page: str = "") -> dict[str, Any]:
    return reported(SHELF.format(books=books, page=page), folder)


ONE = "  - {title: One, block: {pages: 48}}\n"
TWO = "  - {title: Two, block: {pages: 96}}\n"


def test_a_measured_book_stands_as_thick_as_measured(tmp_path: Path) -> None:
    computed = report(tmp_path, ONE)
    measured = report(tmp_path, ONE.replace("One,", "One, measured_thickness: 5.2 mm,"))
    book = measured["books"][0]
    assert book["overall_mm"]["thickness"] == 5.2
    assert book["spine_mm"] == computed["books"][0]["spine_mm"]
    assert measured["spaces"][0]["used_mm"] == 5.2
    assert book["tolerance_mm"] == 0.05  # the gauge's, no longer that of paper and glue
    # 50 · 0.075 + 26 · 0.015 = 4.14 for the block, and two covers of 0.16
    assert measured["measured"] == [
        {"what": "1 One, finished book", "computed_mm": 4.46, "measured_mm": 5.2, "difference_mm": 0.74}
    ]


def test_a_measured_block_carries_on_into_spine_and_book(tmp_path: Path) -> None:
    measured = report(tmp_path, ONE.replace("pages: 48", "pages: 48, measured_thickness: 4.4 mm"))
    book = measured["books"][0]
    assert book["spine_mm"] == pytest.approx(4.4 + 0.03 + 0.1257, abs=1e-4)  # two films under its ends, π/4 · 0.16
    assert book["overall_mm"]["thickness"] == pytest.approx(4.75)
    assert [one["difference_mm"] for one in measured["measured"]] == [0.29]  # 50 · 0.075 + 24 · 0.015 = 4.11


def test_a_measured_row_shares_out_its_difference(tmp_path: Path) -> None:
    rows = "measured_rows:\n  - {books: [Two, 1], thickness: 13.5 mm}"
    computed, measured = report(tmp_path, ONE + TWO), report(tmp_path, ONE + TWO + rows)
    before = [book["overall_mm"]["thickness"] for book in computed["books"]]
    after = [book["overall_mm"]["thickness"] for book in measured["books"]]
    assert sum(after) == pytest.approx(13.5, abs=2e-4)
    assert after[0] / before[0] == pytest.approx(after[1] / before[1], abs=1e-4)
    assert measured["spaces"][0]["used_mm"] == pytest.approx(13.5)
    assert measured["spaces"][0]["tolerance_mm"] == pytest.approx(0.05)
    assert measured["measured"][0]["what"] == "Two + One, side by side"
    assert measured["measured"][0]["computed_mm"] == pytest.approx(sum(before))


def test_a_pile_goes_before_the_wrapper(tmp_path: Path) -> None:
    found = report(tmp_path, ONE, ", pile: 20 sheets = 1.6 mm")
    assert found["measured"] == [
        {"what": "page, one sheet", "computed_mm": 0.075, "measured_mm": 0.08, "difference_mm": 0.005}
    ]
    assert found["books"][0]["block_thickness_mm"] == pytest.approx(50 * 0.08 + 26 * 0.015)


def test_rows_of_books_that_are_not_there(tmp_path: Path) -> None:
    rows = "measured_rows:\n  - {books: [One, Tow, 9], thickness: 9 mm}\n  - {books: [1], thickness: 4 mm}"
    path = written(SHELF.format(books=ONE + TWO + rows, page=""), tmp_path)
    said = bookmaker("check", str(path))
    assert said.code == 2
    lines = [line.partition(": ")[2] for line in said.err.splitlines() if line.startswith("shelf.yaml:")]
    assert lines == [
        "there is no book 'Tow'; did you mean 'Two'?",
        "there is no book '9'; write a title, or a number from 1 to 2",
        "One is measured twice; leave it in one row",
    ]


def test_books_of_one_title_are_named_by_number(tmp_path: Path) -> None:
    rows = "measured_rows:\n  - {books: [One], thickness: 9 mm}"
    assert "2 books are called 'One'" in refused(SHELF.format(books=ONE + ONE + rows, page=""), tmp_path)[0]
    assert report(tmp_path, ONE + ONE + rows.replace("[One]", "[2]"))["books"][1]["overall_mm"]["thickness"] == 9


@pytest.mark.parametrize(
    ("written", "said"),
    [
        (
            ONE.replace("pages: 48", "pages: 48, measured_thickness: 39 mm"),
            "1 One, block by itself measures 39 mm; the shelf file makes it 4.11 mm",
        ),
        (
            ONE.replace("One,", "One, measured_thickness: 6 mm,"),
            "1 One, finished book measures 6 mm; the shelf file makes it 4.46 mm",
        ),
        (
            ONE + TWO + "measured_rows:\n  - {books: [1, 2], thickness: 64 mm}",
            "One + Two, side by side measures 64 mm; the shelf file makes it 12.88 mm",
        ),
    ],
)
def test_a_measure_that_cannot_be_is_doubted(tmp_path: Path, written: str, said: str) -> None:
    found = report(tmp_path, written)["problems"]
    doubts = [problem for problem in found if (problem["remedy"] or "").startswith("measure again, in mm")]
    assert [(problem["severity"], problem["message"], problem["line"]) for problem in doubts] == [
        ("warning", said, 16 if "measured_rows" in written else 13)
    ]


@pytest.mark.parametrize(
    ("paper", "said"),
    [
        ("pile: 100 sheets = 2 mm", "the pile of page makes a sheet 20 µm thick, less than tissue"),
        ("grammage: 80 g/m2, pile: 20 sheets = 0.9 mm", "too thin for 80 g/m²"),
        ("grammage: 80 g/m2, pile: 20 sheets = 9 mm", "too thick for 80 g/m²"),
        (
            "caliper: 90 um, pile: 20 sheets = 0.9 mm",
            "page, one sheet measures 0.04 mm; the shelf file makes it 0.09 mm",
        ),
        ("pile: 20 sheets = 0.9 mm", ""),
        ("grammage: 80 g/m2, pile: 20 sheets = 1.9 mm", ""),
        ("caliper: 90 um, pile: 20 sheets = 1.6 mm", ""),
    ],
)
def test_a_pile_that_is_of_no_paper_is_doubted(tmp_path: Path, paper: str, said: str) -> None:
    """Fibres of 1.5 g/cm³ with no air between them would make 80 g/m² 53 µm thick, and a sheet of 45 µm cannot be."""
    text = SHELF.replace("caliper: 75 um", paper).format(books=ONE, page="")
    found = [one["message"] for one in reported(text, tmp_path)["problems"] if "sheet" in one["message"]]
    assert len(found) == bool(said)
    assert said in "".join(found)


def test_thick_paper_is_no_doubtful_measure(tmp_path: Path) -> None:
    thicker = ONE.replace("pages: 48", "pages: 48, measured_thickness: 4.64 mm")  # 0.5 mm more, an eighth
    assert report(tmp_path, thicker)["problems"] == []


def block(sheets: float, measured: float, glue: float = 0.0) -> Thickness:
    return Thickness((Layer("sheets", sheets, 0.1, "page"), Layer("glue", 1, glue)), measured)


def test_the_estimate_of_two_blocks_by_hand() -> None:
    """(50 · 3.9 + 100 · 7.9) / (50² + 100²) = 0.0788, and the usual error: 2 · 0.075 / √12500 = 0.00134."""
    found = estimate_caliper("page", [block(50, 4.0, 0.1), block(100, 8.0, 0.1)], [0.15, 0.15])
    assert found.caliper == pytest.approx(0.0788)
    assert found.tolerance == pytest.approx(0.15 / 12500**0.5)


@given(st.lists(st.tuples(st.integers(10, 200), st.floats(-0.3, 0.3)), min_size=2, max_size=6))
def test_no_other_caliper_fits_the_blocks_better(parts: list[tuple[int, float]]) -> None:
    blocks = [block(sheets, sheets * 0.08 + error) for sheets, error in parts]
    found = estimate_caliper("page", blocks, [0.15] * len(parts)).caliper

    def misfit(caliper: float) -> float:
        return sum((sheets * (0.08 - caliper) + error) ** 2 for sheets, error in parts)

    assert misfit(found) <= misfit(found + 1e-4) and misfit(found) <= misfit(found - 1e-4)


def test_the_uncertainty_is_that_of_many_simulated_makers() -> None:
    """Five blocks, errors of 0.075 mm (one standard deviation): 95 % of the estimates lie within the tolerance."""
    chance = random.Random(4)
    sheets = (25, 30, 40, 60, 80)
    within = 0
    for _ in range(2000):
        blocks = [block(count, count * 0.08 + chance.gauss(0, 0.075)) for count in sheets]
        found = estimate_caliper("page", blocks, [0.15] * 5)
        within += abs(found.caliper - 0.08) <= found.tolerance
    assert 0.94 < within / 2000 < 0.99


def test_check_proposes_the_better_caliper(tmp_path: Path) -> None:
    """Both blocks are 4 % thicker than 75 µm would make them: 50 and 98 sheets, 24 and 48 films."""
    one = ONE.replace("pages: 48", f"pages: 48, measured_thickness: {50 * 0.078 + 24 * 0.015:.3f} mm")
    two = TWO.replace("pages: 96", f"pages: 96, measured_thickness: {98 * 0.078 + 48 * 0.015:.3f} mm")
    found = report(tmp_path, one + two)
    assert found["caliper_estimates"] == [{"stock": "page", "blocks": 2, "caliper_um": 78.0, "tolerance_um": 1.36}]
    assert [(problem["field"], problem["message"], problem["remedy"]) for problem in found["problems"]] == [
        (
            "stocks.page",
            "2 measured blocks make a sheet of page 78.0 ± 1.4 µm thick, the shelf file 75.0 ± 7.5 µm",
            "write caliper: 78.0 um, tolerance: 1.4 um in place of what it says of its thickness",
        )
    ]
    known = report(tmp_path, one + two, ", tolerance: 1 um").get("problems")
    assert known is not None and len(known) == 1  # 75 ± 1 is contradicted
    settled = SHELF.format(books=one + two, page=", tolerance: 1 um").replace("75 um", "77.5 um")
    (tmp_path / "settled.yaml").write_text(settled, encoding="utf-8")
    assert check(tmp_path / "settled.yaml").problems == ()


def test_explain_shows_computed_and_measured(tmp_path: Path) -> None:
    book = ONE.replace("One,", "One, measured_thickness: 5.2 mm,")
    path = written(SHELF.format(books=book, page=""), tmp_path)
    lines = [" ".join(line.split()) for line in bookmaker("check", str(path), "--explain", "one").out.splitlines()]
    assert "finished book as computed 4.460" in lines
    assert "finished book as measured 5.200" in lines
    assert "measured less computed +0.740" in lines
    assert json.loads(bookmaker("check", str(path), "--json").out)["measured"]


@pytest.mark.parametrize(
    ("second", "told"),
    [
        ("space: upper", ""),
        ("space: lower", "the space upper and the space lower"),
        ("space: upper, stack: heap", ""),
        ("author: Nobody", "the space upper and no space"),
    ],
)
def test_a_measured_row_is_of_books_that_stand_together(tmp_path: Path, second: str, told: str) -> None:
    entry = "size: {height: 20 mm, width: 14 mm}, block: {kind: dummy, thickness: 5 mm}, cover: {kind: wrap, stock: c}"
    (tmp_path / "shelf.yaml").write_text(
        f"""\
shelf: Rows
stocks: {{c: {{caliper: 160 um}}}}
spaces:
  upper: {{width: 60 mm, height: 27 mm, depth: 22 mm}}
  lower: {{width: 60 mm, height: 27 mm, depth: 22 mm}}
books:
  - {{title: One, space: upper, {entry}}}
  - {{title: Two, {second}, {entry}}}
  - {{title: Three, space: upper, {entry}}}
measured_rows:
  - {{books: [One, Two], thickness: 10.7 mm}}
""",
        encoding="utf-8",
    )
    said = [str(problem) for problem in check(tmp_path / "shelf.yaml").problems]
    assert said == (
        []
        if not told
        else [
            f"shelf.yaml:11:13: the books of this row do not stand together, but in {told}; "
            "measure side by side what stands together, and write a row for each"
        ]
    )
    text = (tmp_path / "shelf.yaml").read_text(encoding="utf-8")
    boxed = text + "slipcases:\n  pair: {books: [Two, Three], stock: c, space: upper, clearance: 1 mm}\n"
    if "stack" not in second:
        (tmp_path / "shelf.yaml").write_text(boxed, encoding="utf-8")
        (problem,) = check(tmp_path / "shelf.yaml").problems
        assert "but in the space upper and the slipcase pair" in problem.message
