"""Scales, sizes of books and sheets, and units of length against published values."""

from __future__ import annotations

import math

import pytest

from bookmaker.ground.amounts import parse_ratio
from bookmaker.ground.units import from_pt, parse_length, to_inches, to_pt
from bookmaker.paper.papers import FORMATS, Confidence, find_format


def test_the_inch_is_exact() -> None:
    """International yard and pound agreement, 1959 (from memory): 1 in = 25.4 mm exactly."""
    assert parse_length("1 in") == 25.4
    assert parse_length("7/8 in") == 22.225
    assert parse_length("1 1/8 in") == parse_length('1-1/8"') == 28.575
    assert parse_length("1 ft") == 304.8
    assert parse_length("4 mil") == 0.1016
    assert to_inches(25.4) == 1


def test_the_point_of_page_description() -> None:
    """ISO 32000, default user space: 1 pt = 1/72 in."""
    assert parse_length("72 pt") == 25.4
    assert to_pt(25.4) == 72
    assert from_pt(36) == 12.7
    assert parse_length("8 pt") == pytest.approx(2.8222222222, abs=1e-10)


@pytest.mark.parametrize(
    ("name", "height", "width", "small_height", "small_width"),
    [
        ("demy octavo", "216 mm", "138 mm", 18.0, 11.5),
        ("royal octavo", "234 mm", "156 mm", 19.5, 13.0),
        ("B format", "198 mm", "129 mm", 16.5, 10.75),
        ("A format", "178 mm", "111 mm", 14.833, 9.25),
    ],
)
def test_life_sizes_at_one_to_twelve(
    name: str, height: str, width: str, small_height: float, small_width: float
) -> None:
    """S. Richardson, "Getting physical", 2016: sizes of full-size books; divided by twelve by hand."""
    scale = parse_ratio("1:12")
    assert parse_length(height) / scale == pytest.approx(small_height, abs=5e-4), name
    assert parse_length(width) / scale == pytest.approx(small_width, abs=5e-4), name


@pytest.mark.parametrize(
    ("name", "ratio"), [("Z", 220), ("N", 160), ("TT", 120), ("H0", 87), ("0", 45), ("I", 32), ("II", 22.5)]
)
def test_model_railway_ratios(name: str, ratio: float) -> None:
    """MOROP NEM 010 (2011): nominal scales of model railways."""
    assert parse_ratio(name) == ratio


@pytest.mark.parametrize(("text", "inches"), [("1:6", 2), ("1:12", 1), ("1:16", 0.75), ("1:24", 0.5), ("1:48", 0.25)])
def test_hobby_scales_are_inches_to_the_foot(text: str, inches: float) -> None:
    """Common practice, no source: 1:12 is one inch to the foot, and the others follow the same rule."""
    assert parse_length("1 ft") / parse_ratio(text) == pytest.approx(inches * 25.4, rel=1e-12)


def test_the_scale_of_a_dolls_house_in_a_dolls_house() -> None:
    """Common practice, no source: 1:144 is a twelfth of a twelfth."""
    assert parse_ratio("1:144") == 12 * 12


@pytest.mark.parametrize(("name", "width", "height"), [("A3", 297, 420), ("A4", 210, 297), ("A5", 148, 210)])
def test_sheets_of_the_a_series(name: str, width: float, height: float) -> None:
    """ISO 216:2007, A series."""
    assert find_format(name).size == (width, height)
    assert FORMATS[name].source.mark is Confidence.PUBLISHED


def test_the_a_series_follows_from_its_rule() -> None:
    """ISO 216 (from memory): A0 is 1 m² with sides as 1 to √2; halving the longer side gives the next."""
    short, long = math.floor(1000 / 2**0.25 + 0.5), math.floor(1000 * 2**0.25 + 0.5)
    for number in range(6):
        if number >= 3:
            assert find_format(f"A{number}").size == (short, long)
        short, long = long // 2, short


@pytest.mark.parametrize(
    ("name", "width", "height"),
    [("letter", 8.5, 11), ("legal", 8.5, 14), ("tabloid", 11, 17)],
)
def test_north_american_sheets(name: str, width: float, height: float) -> None:
    """From memory: letter 8.5 × 11, legal 8.5 × 14, tabloid 11 × 17 in; kept in inches, not in points."""
    sheet = find_format(name)
    assert (sheet.unit, float(sheet.width), float(sheet.height)) == ("in", width, height)
    assert sheet.size == pytest.approx((width * 25.4, height * 25.4), rel=1e-15)
    assert sheet.source.mark is Confidence.MEMORY


def test_letter_in_mm() -> None:
    """From memory: US letter is 215.9 × 279.4 mm."""
    assert find_format("letter").size == (215.9, 279.4)


def test_pages_per_inch() -> None:
    """R. Hollick, "ppi", 2010: 840 pages of 86 µm paper are 36.12 mm = 1.422 in, 590.697 pages an inch."""
    thickness = 420 * parse_length("86 um")
    assert thickness == pytest.approx(36.12, abs=1e-9)
    assert to_inches(thickness) == pytest.approx(1.422, abs=5e-4)
    assert 840 / to_inches(thickness) == pytest.approx(590.697, abs=1e-3)


def test_letters_of_perfect_sight() -> None:
    """Snellen chart: letters of 5 minutes of arc are 8.87 mm high at 20 ft."""
    assert parse_length("20 ft") * math.tan(math.radians(5 / 60)) == pytest.approx(8.87, abs=5e-3)
