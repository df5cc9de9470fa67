"""Fit on the shelf: sums, stacks, shared and independent errors, and remedies that work when they are taken."""

from __future__ import annotations

import random
import re
import statistics
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.shelf.fit import SpaceFit, Verdict, fit_space
from bookmaker.shelf.space_entry import SpaceEntry
from bookmaker.things.standing import Standing, Uncertainty

TOLERANCES = {"page": 0.0075, "cover": 0.016}


def space(width: float, height: float = 30, depth: float = 25, clearance: float = 0.2) -> SpaceEntry:
    return SpaceEntry(width=float(width), height=float(height), depth=float(depth), clearance=float(clearance))


def book(number: int, thickness: float, panels: float = 50, stack: str | None = None, height: float = 21) -> Standing:
    return Standing(
        f"book-{number}",
        f"Book {number}",
        thickness,
        height,
        15,
        Uncertainty({"page": panels, "cover": 2}, 0.15),
        stack,
    )


@given(st.lists(st.floats(0.5, 20), min_size=1, max_size=20), st.floats(10, 300))
def test_room_left_is_what_books_and_their_clearance_leave(thicknesses: list[float], width: float) -> None:
    fit = fit_space("upper", space(width), [book(n, t) for n, t in enumerate(thicknesses)], TOLERANCES)
    assert fit.used == pytest.approx(sum(thicknesses))
    assert fit.room_left == pytest.approx(width - sum(thicknesses) - 0.2 * len(thicknesses))
    if fit.room_left < -1e-6:
        assert fit.verdict is Verdict.OVER


def test_a_stack_takes_its_longest_book_of_the_width_and_all_thicknesses_of_the_height() -> None:
    lying = [book(0, 5, stack="charts", height=24), book(1, 7, stack="charts", height=20)]
    fit = fit_space("upper", space(40, height=11), [*lying, book(2, 4, height=10)], TOLERANCES)
    assert fit.used == pytest.approx(24 + 4)
    assert fit.room_left == pytest.approx(40 - 28 - 2 * 0.2)
    assert fit.stands_out == (("the stack charts", "tall", pytest.approx(1.0), None),)
    assert fit.verdict is Verdict.OVER


def test_books_that_stand_out_are_named_with_how_much() -> None:
    fit = fit_space("upper", space(40, height=20.5, depth=14), [book(0, 4)], TOLERANCES)
    tall, deep = fit.stands_out
    assert tall == ("Book 0", "tall", pytest.approx(0.5), "book-0")
    assert deep == ("Book 0", "deep", pytest.approx(1.0), "book-0")


def test_a_stocks_error_is_shared_and_hands_err_on_their_own() -> None:
    fit = fit_space("upper", space(100), [book(0, 4), book(1, 4)], TOLERANCES)
    page, cover = 2 * 50 * 0.0075, 2 * 2 * 0.016
    assert fit.all_one_way == pytest.approx(page + cover + 2 * 0.15)
    assert fit.likely == pytest.approx((page**2 + cover**2 + 2 * 0.15**2) ** 0.5)


def simulated(fit: SpaceFit, books: list[Standing], rounds: int) -> tuple[float, float]:
    """Spread of the row (as a tolerance of two standard deviations), and how often it fits, from drawn errors."""
    chance = random.Random(7)
    rows = []
    for _ in range(rounds):
        paper = {name: chance.gauss(0, tolerance / 2) for name, tolerance in TOLERANCES.items()}
        rows.append(
            sum(
                one.thickness
                + sum(slope * paper[name] for name, slope in one.uncertainty.slopes.items())
                + chance.gauss(0, one.uncertainty.own / 2)
                for one in books
            )
        )
    return 2 * statistics.stdev(rows), sum(row + fit.clearance <= fit.width for row in rows) / rounds


def test_spread_and_probability_agree_with_drawn_errors() -> None:
    books = [book(n, 4 + n / 10, panels=30 + 5 * n) for n in range(6)]
    fit = fit_space("upper", space(27.2), books, TOLERANCES)
    spread, share = simulated(fit, books, 20_000)
    assert fit.likely == pytest.approx(spread, rel=0.03)
    assert 0.2 < fit.probability < 0.9
    assert fit.probability == pytest.approx(share, abs=0.015)


@pytest.mark.parametrize(("slack", "verdict"), [(5, Verdict.FITS), (0.05, Verdict.TIGHT), (-0.05, Verdict.OVER)])
def test_verdicts(slack: float, verdict: Verdict) -> None:
    assert fit_space("upper", space(4.2 + slack), [book(0, 4)], TOLERANCES).verdict is verdict


SHELF = """\
shelf: Remedies
stocks:
  page: {{caliper: {microns} um, glue: 15 um, grain: long, tolerance: 0 um}}
  cover: {{caliper: 160 um, grain: long, tolerance: 0 um}}
spaces:
  upper: {{width: {width:.4f} mm, height: 25 mm, depth: 20 mm}}
  lower: {{width: 12 mm, height: 25 mm, depth: 20 mm}}
defaults:
  size: {{height: 21 mm, width: 15 mm}}
  block: {{kind: accordion, stock: page}}
  cover: {{kind: wrap, stock: cover}}
books:
  - {{title: Gales, block: {{pages: {gales}}}, space: {where}}}
  - {{title: Tides, block: {{pages: 48}}, space: upper}}
  - {{title: Birds, block: {{pages: 40}}, space: upper}}
"""


def upper(
    folder: Path, width: float, gales: int = 96, where: str = "upper", microns: float = 75
) -> tuple[SpaceFit, str]:
    path = folder / "shelf.yaml"
    path.write_text(SHELF.format(width=width, gales=gales, where=where, microns=microns), encoding="utf-8")
    checked = check(path)
    remedy = next((problem.remedy for problem in checked.problems if "upper is over" in problem.message), "")
    return next(fit for fit in checked.plan.spaces if fit.name == "upper"), remedy


def full_width(folder: Path) -> float:
    """The width that the three books just fill."""
    fit, _ = upper(folder, 100)
    return fit.width - fit.room_left


def test_no_remedy_parts_a_set(tmp_path: Path) -> None:
    """Neither fewer pages in one of its books, nor another space for one."""
    width = full_width(tmp_path) - 2
    assert "give Gales" in upper(tmp_path, width)[1]
    written = SHELF.replace("title: Gales", "title: Gales, volume: I").replace(
        "title: Tides", "title: Tides, series: Sea"
    )
    path = tmp_path / "shelf.yaml"
    path.write_text(written.format(width=width, gales=96, where="upper", microns=75), encoding="utf-8")
    [remedy] = [one.remedy for one in check(path).problems if "upper is over" in one.message]
    assert "Gales" not in remedy and "Tides" not in remedy
    assert remedy.startswith("put Birds in lower")


@pytest.mark.parametrize("missing", [0.007, 0.3, 1.234, 2.5, 2.9])
def test_every_remedy_works_when_it_is_taken(tmp_path: Path, missing: float) -> None:
    width = full_width(tmp_path) - missing
    fit, remedy = upper(tmp_path, width)
    assert fit.verdict is Verdict.OVER
    assert fit.room_left == pytest.approx(-missing, abs=1e-3)
    fewer = re.search(r"give Gales (\d+) pages fewer", remedy)
    assert fewer
    assert upper(tmp_path, width, gales=96 - int(fewer[1]))[0].verdict is Verdict.FITS
    assert upper(tmp_path, width, gales=96 - int(fewer[1]) + 2)[0].verdict is not Verdict.FITS
    thinner = re.search(r"take a paper of (\d+) µm or less for page, now 75", remedy)
    assert thinner
    assert upper(tmp_path, width, microns=int(thinner[1]))[0].verdict is Verdict.FITS
    assert upper(tmp_path, width, microns=int(thinner[1]) + 1)[0].verdict is not Verdict.FITS


def test_another_space_with_room_is_offered_and_takes_the_book(tmp_path: Path) -> None:
    width = full_width(tmp_path) - 8.0
    fit, remedy = upper(tmp_path, width)
    assert fit.verdict is Verdict.OVER
    assert "put Gales in lower, which has 12 mm left" in remedy
    assert upper(tmp_path, width, where="lower")[0].verdict is Verdict.FITS


def test_a_wider_space_is_offered_by_enough(tmp_path: Path) -> None:
    width = full_width(tmp_path) - 13.0071
    _, remedy = upper(tmp_path, width)
    wider = re.search(r"write width: ([\d.]+) mm for upper", remedy)
    assert wider
    assert upper(tmp_path, float(wider[1]))[0].verdict is Verdict.FITS
