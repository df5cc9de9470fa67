"""With `units: inches`, or on a sheet of inches, nothing that is told names a metric unit; the same shelf comes out."""

from __future__ import annotations

import re
from pathlib import Path
from shutil import copytree

import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.problems import ShelfFileError
from bookmaker.ground.thin import print_calipers
from bookmaker.ground.told import (
    Units,
    figure,
    print_grammage,
    print_mm,
    print_range,
    rounded_down,
    rounded_up,
    told_in,
    unit,
)
from bookmaker.ground.units import parse_length, parse_offset
from bookmaker.shelf.choice import Choice
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.schema import shelf_schema
from bookmaker.shelf.wishes import Wishes
from bookmaker.shelf_file.starter import write_starter
from bookmaker.workshop import Workshop
from bookmaker.writers.manual.keys import every_key
from tests.kit.command_line import bookmaker
from tests.kit.every_key import places

DEMO = Path(__file__).parents[2] / "demo"
METRIC = re.compile(r"\d\s*(?:mm|cm|µm|um|ml|g/m²)\b|\bmillimetre")


@pytest.fixture
def demo_in_inches(tmp_path: Path) -> Path:
    text = (DEMO / "shelf.yaml").read_text(encoding="utf-8")
    shelf = tmp_path / "demo" / "shelf.yaml"
    shelf.parent.mkdir()
    for folder in ("pictures", "texts"):
        copytree(DEMO / folder, shelf.parent / folder)
    shelf.write_text(text.replace("scale: 1:12\n", "scale: 1:12\nunits: inches\n", 1), encoding="utf-8")
    return shelf


def metric(text: str) -> list[str]:
    plain = text.replace("\xa0", " ")
    return [plain[max(0, found.start() - 30) : found.end() + 10] for found in METRIC.finditer(plain)]


def test_a_length_on_a_line_of_the_rule_is_a_fraction_and_any_other_a_decimal() -> None:
    with told_in(Units.INCHES):
        told = [print_mm(mm) for mm in (22.225, 203.2, 12.7, 30.1625, 21.0, 0.0)]
        assert told == ["7/8 in", "8 in", "1/2 in", "1 3/16 in", "0.827 in", "0 in"]
        assert [figure(mm) for mm in (21, 14.2875, 44.45, 25.4)] == ["0.827", "9/16", "1 3/4", "1"]
        assert (figure(0.1, 3, signed=True), figure(1.5875, signed=True), unit()) == ("+0.004", "+1/16", "in")
    assert (print_mm(22.225), figure(21), unit()) == ("22.225 mm", "21.00", "mm")


SIXTEENTHS = {f"{number / 16:.4f}".rstrip("0") for number in range(1, 16)}
"""Those of an inch in decimals, 0.5625 and the rest; and rounded, those that thousandths hold."""


@given(st.integers(0, 40 * 16), st.floats(-0.39, 0.39))
def test_a_sixteenth_is_never_told_as_a_decimal(sixteenths: int, thousandths: float) -> None:
    """What is told differs from the length by less than a half of a thousandth, whatever it is told as."""
    inches = sixteenths / 16 + thousandths / 1000
    with told_in(Units.INCHES):
        for told in (print_mm(inches * 25.4), f"{figure(inches * 25.4)} in"):
            assert abs(parse_length(told.lstrip("-")) / 25.4 - abs(inches)) <= 0.000501, told
            assert sixteenths == 0 or "." not in told, told


@given(st.floats(0, 40))
def test_no_decimal_that_is_told_is_a_sixteenth(inches: float) -> None:
    with told_in(Units.INCHES):
        for told in (print_mm(inches * 25.4), print_mm(inches * 25.4, 1), figure(inches * 25.4)):
            decimals = "0." + told.removesuffix(" in").partition(".")[2]
            assert decimals.rstrip("0") not in SIXTEENTHS, told


@pytest.mark.parametrize(("low", "high"), [(3.0, 20.0), (1.0, 400.0), (0.0, 100.0), (-10.0, 10.0)])
def test_limits_have_one_unit_and_may_be_written(low: float, high: float) -> None:
    for units, sign in ((Units.INCHES, "in"), (Units.MILLIMETRES, "mm")):
        with told_in(units):
            least, most = print_range(low, high).split(" to ")
        assert least.endswith(f" {sign}") and most.endswith(f" {sign}")
        assert low <= parse_offset(least) + 1e-9 and parse_offset(most) - 1e-9 <= high
        assert parse_offset(least) == pytest.approx(low, abs=0.026)
        assert parse_offset(most) == pytest.approx(high, abs=0.026)


def test_the_limits_of_a_sheet_are_in_mil() -> None:
    with told_in(Units.INCHES):
        assert print_calipers(0.01, 3.0) == "0.4 mil to 118.1 mil"


@pytest.mark.parametrize("mm", [0.0, 0.3, 3.175, 12.8005, 21.0, 92.001, 215.9])
def test_what_is_told_in_inches_is_read_back_to_half_a_thousandth(mm: float) -> None:
    with told_in(Units.INCHES):
        told = print_mm(mm)
        below, above = print_mm(rounded_down(mm)), print_mm(rounded_up(mm))
    assert parse_length(told) == pytest.approx(mm, abs=0.0005 * 25.4 + 1e-6)
    assert parse_length(below) <= mm + 1e-3
    assert parse_length(above) >= mm - 1e-3


@pytest.mark.parametrize(("grams", "told"), [(75.2, "20 lb bond"), (120.3, "32 lb bond"), (175.8, "65 lb cover"),
                                             (216.3, "80 lb cover"), (270.4, "100 lb cover")])  # fmt: skip
def test_paper_weighs_what_it_is_sold_as(grams: float, told: str) -> None:
    """20 lb bond is 75.2 g/m², 65 lb cover 176, 80 lb 216, 100 lb 270: the conversions of the US paper trade."""
    with told_in(Units.INCHES):
        assert print_grammage(grams) == told


def test_paper_is_bought_by_the_grade_that_is_written(tmp_path: Path) -> None:
    """60 lb text weighs what 24 lb bond does: who reads that would buy another paper."""
    shelf = tmp_path / "shelf.yaml"
    shelf.write_text(
        "shelf: By the Pound\nunits: inches\nstocks: {leaves: {basis_weight: 60 lb text, grain: long}}\n"
        "defaults:\n  block: {kind: accordion, stock: leaves}\n  cover: {kind: wrap, stock: leaves}\n"
        "books:\n  - {title: Low Water, size: {height: 1 in, width: 3/4 in}, block: {pages: 16}}\n",
        encoding="utf-8",
    )
    Workshop().make(shelf, tmp_path / "out")
    guide = pypdfium2.PdfDocument(tmp_path / "out" / "guide.pdf")
    told = " ".join(page.get_textpage().get_text_range() for page in guide)
    assert "mil thick, 60 lb text, grain long" in " ".join(told.split())
    assert "bond" not in told


def test_the_demo_in_inches_names_no_metric_unit(demo_in_inches: Path) -> None:
    code, said, _ = bookmaker("check", str(demo_in_inches), "--wide")
    assert code == 0
    assert "lengths in inches" in said
    assert metric(said) == []
    for book in ("1", "24", "27"):
        assert metric(bookmaker("check", str(demo_in_inches), "--explain", book).out) == []


def test_guide_and_sheets_in_inches_name_no_metric_unit(demo_in_inches: Path) -> None:
    out = demo_in_inches.parent / "out"
    only = ("The Keeper’s Almanac", "Sermons in a Gale", "Minutes of the Lamp Committee", "Signals")
    Workshop().make(demo_in_inches, out, wishes=Wishes(Choice(only)))
    sheets = sorted(out.glob("*.pdf"))
    assert len(sheets) > 3
    texts = {path.name: "\n".join(page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(path))
             for path in sheets}  # fmt: skip
    assert {name: metric(text) for name, text in texts.items() if metric(text)} == {}
    assert "0.827" in texts["guide.pdf"]
    assert "4 in from end to end" in texts["thin-paper.pdf"]


def test_letter_is_told_in_inches_unless_the_file_says_otherwise(tmp_path: Path) -> None:
    shelf = write_starter(tmp_path / "s", "{}")
    text = shelf.read_text(encoding="utf-8")
    plain = text.replace("units: millimetres     # the unit lengths are shown in; or inches\n", "")
    for written, told in (
        (text.replace("sheet: A4", "sheet: letter"), "lengths in mm"),
        (plain, "lengths in mm"),
        (plain.replace("sheet: A4", "sheet: letter"), "lengths in inches"),
        (plain.replace("sheet: A4", "sheet: 8 x 10 in"), "lengths in inches"),
    ):
        shelf.write_text(written, encoding="utf-8")
        assert told in bookmaker("check", str(shelf)).out


def test_the_starter_in_inches_is_sound_and_written_in_inches(tmp_path: Path) -> None:
    assert bookmaker("new", str(tmp_path / "s"), "--units", "inches").code == 0
    shelf = tmp_path / "s" / "shelf.yaml"
    notes = "# Lengths need a unit: 21 mm, 2.1 cm, 7/8 in, 90 um, 4 mil, 8 pt."
    assert metric(shelf.read_text(encoding="utf-8").replace(notes, "").replace("or millimetres", "")) == []
    assert bookmaker("check", str(shelf)).out.endswith("the shelf is sound\n")


def test_what_is_refused_is_told_in_inches(tmp_path: Path) -> None:
    shelf = write_starter(tmp_path / "s", "{}", Units.INCHES)
    text = shelf.read_text(encoding="utf-8")
    shelf.write_text(
        text.replace("height: 0.83 in", "height: 0.83").replace("width: 5.1 in", "width: 5000 in"), "utf-8"
    )
    with pytest.raises(ShelfFileError) as refusal:
        Workshop().check(shelf)
    said = " ".join(f"{problem.message}; {problem.remedy}" for problem in refusal.value.problems)
    assert "0.83 has no unit; write 0.83 in" in said
    assert "write a length from" in said
    assert metric(said) == []


def test_no_refusal_of_any_key_names_a_metric_unit_or_two_units(tmp_path: Path) -> None:
    """A length too long, and a number without a unit, for every key that takes a length."""
    lengths = {key.name for key in every_key(shelf_schema()) if re.search(r"\d (?:mm|um)`", key.example)}
    said: set[str] = set()
    for place in places():
        for written in ("3000 in", "300") if place.way[-1] in lengths else ():
            shelf = tmp_path / "shelf.yaml"
            shelf.write_text(place._replace(shelf={"units": "inches", **place.shelf}).holding(written), "utf-8")
            try:
                read_shelf(shelf)
            except ShelfFileError as refusal:
                said |= {f"{problem.message}; {problem.remedy}" for problem in refusal.problems}
    assert [text for text in said if metric(text.replace("write 300 mm", ""))] == []
    limits = {text for text in said if "write a length from" in text}
    assert len(limits) > 60
    for text in limits:
        assert len(set(re.findall(r"\d (in|mil|pt)\b", text.replace("3000 in", "")))) == 1, text


def test_a_change_of_units_is_seen_in_what_is_kept(tmp_path: Path) -> None:
    """What was told in millimetres is told anew; the plan is the same."""
    shelf = write_starter(tmp_path / "s", "{}")
    text = shelf.read_text(encoding="utf-8").replace("width: 60 mm", "width: 14 mm")
    shelf.write_text(text, encoding="utf-8")
    workshop = Workshop()
    before = workshop.check(shelf)
    shelf.write_text(text.replace("units: millimetres", "units: inches"), encoding="utf-8")
    after, fresh = workshop.check(shelf), Workshop().check(shelf)
    assert [problem.message for problem in after.problems] == [problem.message for problem in fresh.problems]
    assert any("mm" in problem.message for problem in before.problems)
    assert metric(" ".join(problem.message + problem.remedy for problem in after.problems)) == []
    assert [fit.used for fit in after.plan.spaces] == [fit.used for fit in before.plan.spaces]
