"""Measures as makers write them: what is read, what is refused and in which words, what is printed."""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bookmaker
from bookmaker.ground import units
from bookmaker.ground.amounts import (
    parse_basis_weight,
    parse_bulk,
    parse_count,
    parse_grammage,
    parse_pile,
    parse_ratio,
    parse_resolution,
    parse_share,
)
from bookmaker.ground.thin import print_um
from bookmaker.ground.units import (
    NotAMeasure,
    exact_mm,
    from_pt,
    native_length,
    parse_length,
    print_mm,
    to_inches,
    to_pt,
)

READERS: tuple[Callable[[str], object], ...] = (
    parse_length,
    parse_grammage,
    parse_bulk,
    parse_resolution,
    parse_share,
    parse_ratio,
    parse_count,
    parse_pile,
    parse_basis_weight,
)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("21 mm", 21.0),
        ("21mm", 21.0),
        (" 21\u202fmm ", 21.0),
        ("21 MM", 21.0),
        ("21 millimetres", 21.0),
        ("2.1 cm", 21.0),
        ("0.2 m", 200.0),
        (".5 mm", 0.5),
        ("021 mm", 21.0),
        ("0 mm", 0.0),
        ("12345678901234567890 mm", 12345678901234567890.0),
        ("21" + " " * 76 + "mm", 21.0),
        ("2,5 mm", 2.5),
        ("2,25 mm", 2.25),
        ("0,125 mm", 0.125),
        ("1234,567 mm", 1234.567),
        ("1.000 mm", 1.0),
        ("7/8 in", 22.225),
        ("7/8in", 22.225),
        ("7 / 8 in", 22.225),
        ("7⁄8 in", 22.225),
        ("9/8 in", 28.575),
        ("1 1/8 in", 28.575),
        ('1-1/8"', 28.575),
        ("1 - 1/8 inches", 28.575),
        ("1–1/8 in", 28.575),
        ("1⅛ in", 28.575),
        ("1 ⅛ inch", 28.575),
        ("⅞″", 22.225),
        ("½ in.", 12.7),
        ('1"', 25.4),
        ("1”", 25.4),
        ("1“", 25.4),
        ("1''", 25.4),
        ("1′′", 25.4),
        ("1 ft", 304.8),
        ("1'", 304.8),
        ("1’", 304.8),
        ("2 feet", 609.6),
        ("90 um", 0.09),
        ("90 \u00b5m", 0.09),
        ("90 \u03bcm", 0.09),
        ("90 microns", 0.09),
        ("4 mil", 0.1016),
        ("4 thou", 0.1016),
        ("36 pt", 12.7),
        ("36 points", 12.7),
    ],
)
def test_lengths(text: str, mm: float) -> None:
    assert parse_length(text) == mm


UNITS = "mm, cm, m, um, in, ft, mil, pt"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("21", "21 has no unit; write 21 mm"),
        ("7/8", "7/8 has no unit; write 7/8 in"),
        ("1 1/8", "1 1/8 has no unit; write 1 1/8 in"),
        ("21 mmm", "'mmm' is not a unit of length; write 21 mm"),
        ("3 inchs", "'inchs' is not a unit of length; write 3 in"),
        ("21 kg", f"'kg' is not a unit of length; write it in {UNITS}"),
        ("21 px", f"'px' is not a unit of length; write it in {UNITS}"),
        ("-5 mm", "-5 mm is negative; write 5 mm"),
        ("−5 mm", "-5 mm is negative; write 5 mm"),
        ("- 5 mm", "- 5 mm is negative; write 5 mm"),
        ("-5", "-5 is negative; write 5"),
        ("+5 mm", "+5 mm has a sign; write 5 mm"),
        ("± 5 mm", "± 5 mm has a sign; write 5 mm"),
        ("+", "+ has a sign; write 21 mm or 7/8 in"),
        ("nan mm", "'nan mm' is not a length; write it like 21 mm or 7/8 in"),
        ("inf", "'inf' is not a length; write it like 21 mm or 7/8 in"),
        ("mm", "'mm' is not a length; write it like 21 mm or 7/8 in"),
        ("mm 21", "'mm 21' is not a length; write it like 21 mm or 7/8 in"),
        ("large", "'large' is not a length; write it like 21 mm or 7/8 in"),
        ("-", "'-' is not a length; write it like 21 mm or 7/8 in"),
        ("\x00\x1b", "'??' is not a length; write it like 21 mm or 7/8 in"),
        ("", "the value is empty; write it like 21 mm or 7/8 in"),
        (" \n", "the value is empty; write it like 21 mm or 7/8 in"),
        ("1e3 mm", "1e3 mm has an exponent; write the number out in full"),
        ("1E-3 mm", "1E-3 mm has an exponent; write the number out in full"),
        ("1/0 in", "1/0 in divides by zero; write another number below the stroke"),
        ("1 1/0 in", "1 1/0 in divides by zero; write another number below the stroke"),
        ("1 9/8 in", "1 9/8 in has a fraction of one or more; write 2 1/8 in"),
        ("1 8/8 in", "1 8/8 in has a fraction of one or more; write 2 in"),
        ("1,000 mm", "1,000 mm can be read in two ways; write 1 mm or 1000 mm"),
        ("12,500 mm", "12,500 mm can be read in two ways; write 12.5 mm or 12500 mm"),
        ("100,000", "100,000 can be read in two ways; write 100 or 100000"),
        ("1,000,000 um", "1,000,000 um has a mark between its thousands; write 1000000 um"),
        ("1.000.000 um", "1.000.000 um has a mark between its thousands; write 1000000 um"),
        ("1 000 mm", "1 000 mm has a mark between its thousands; write 1000 mm"),
        ("1,000.5 mm", "1,000.5 mm has a mark between its thousands; write 1000.5 mm"),
        ("1.000,5 mm", "1.000,5 mm has a mark between its thousands; write 1000.5 mm"),
        ("5-6 mm", "5-6 mm is a range; write one value"),
        ("5. mm", "5. mm is not one number; write one number such as 21, 2.5, 7/8 or 1 1/8"),
        ("1.2.3 mm", "1.2.3 mm is not one number; write one number such as 21, 2.5, 7/8 or 1 1/8"),
        ("1 2 mm", "1 2 mm is not one number; write one number such as 21, 2.5, 7/8 or 1 1/8"),
        ("1.5/2 mm", "1.5/2 mm is not one number; write one number such as 21, 2.5, 7/8 or 1 1/8"),
        ("1 ft 2 in", "1 ft 2 in holds more than one measure; write it like 21 mm or 7/8 in"),
        ("1' 2\"", "1 ' 2\" holds more than one measure; write it like 21 mm or 7/8 in"),
        ("1'2\"", "1 '2\" holds more than one measure; write it like 21 mm or 7/8 in"),
        ("2 mm x 3 mm", "2 mm x 3 mm holds more than one measure; write it like 21 mm or 7/8 in"),
        ("5 mm²", "'mm²' is not a unit of length; write 5 mm"),
        ("21² mm", "'² mm' is not a unit of length; write 21 mm"),
        ("٢١ mm", "'٢١ mm' is not a length; write it like 21 mm or 7/8 in"),
        ("21 mm long", f"'mm long' is not a unit of length; write it in {UNITS}"),
        ("1" * 21 + " mm", "1" * 21 + " mm has more digits than can be measured; write fewer digits"),
        ("1" * 50 + " mm", "1" * 40 + "… has more digits than can be measured; write fewer digits"),
        ("1" * 100_000, "1" * 40 + "… is too long for a measure; write it like 21 mm or 7/8 in"),
    ],
)
def test_lengths_that_are_none(text: str, said: str) -> None:
    with pytest.raises(NotAMeasure) as caught:
        parse_length(text)
    assert str(caught.value) == said


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (parse_grammage, "60 g/m2", 60.0),
        (parse_grammage, "60 g/m²", 60.0),
        (parse_grammage, "60gsm", 60.0),
        (parse_grammage, "5 gsm", 5.0),
        (parse_grammage, "5000 gsm", 5000.0),
        (parse_grammage, "75,2 g/m^2", 75.2),
        (parse_bulk, "1.25 cm3/g", 1.25),
        (parse_bulk, "1.25 cm³/g", 1.25),
        (parse_bulk, "1,25cc/g", 1.25),
        (parse_resolution, "600 dpi", 600.0),
        (parse_resolution, "1200DPI", 1200.0),
        (parse_share, "10 %", 0.1),
        (parse_share, "2.3%", 0.023),
        (parse_share, "0 %", 0.0),
        (parse_share, "100 %", 1.0),
        (parse_share, "8 1/2 percent", 0.085),
        (parse_ratio, "1:12", 12.0),
        (parse_ratio, "1 : 12", 12.0),
        (parse_ratio, "1/12", 12.0),
        (parse_ratio, "1:22.5", 22.5),
        (parse_ratio, "1:22,5", 22.5),
        (parse_ratio, "HO", 87.0),
        (parse_ratio, "h0", 87.0),
        (parse_ratio, "O", 45.0),
        (parse_ratio, "ii", 22.5),
        (parse_count, "48", 48),
        (parse_count, " 048 ", 48),
        (parse_count, "0", 0),
        (parse_pile, "20 sheets = 1.52 mm", (20, 1.52)),
        (parse_pile, "20 sheets measure 1.52 mm", (20, 1.52)),
        (parse_pile, "20 Sheets: 1,52mm", (20, 1.52)),
        (parse_pile, "20 leaves are 60 thou", (20, 1.524)),
        (parse_pile, "1 sheet=1/8in", (1, 3.175)),
        (parse_pile, "10000 sheets = 1 m", (10000, 1000.0)),
        (parse_basis_weight, "20 lb bond", (20.0, "bond")),
        (parse_basis_weight, "500 lb index", (500.0, "index")),
        (parse_basis_weight, "0.5 lb bond", (0.5, "bond")),
        (parse_basis_weight, "20lb. Bond", (20.0, "Bond")),
        (parse_basis_weight, "100# text", (100.0, "text")),
        (parse_basis_weight, "80 lbs cover stock", (80.0, "cover stock")),
        (parse_basis_weight, "24 pounds copier", (24.0, "copier")),
    ],
)
def test_other_measures(read: Callable[[str], object], text: str, value: object) -> None:
    assert read(text) == value


NAMES = "Z, N, TT, H0, 0, I, II"


@pytest.mark.parametrize(
    ("read", "text", "said"),
    [
        (parse_grammage, "60", "60 has no unit; write 60 g/m2"),
        (parse_grammage, "1/2", "1/2 has no unit; write 1/2 g/m2"),
        (parse_grammage, "60 lb", "'lb' is not a unit of grammage; write it in g/m2"),
        (parse_grammage, "60 g/m", "'g/m' is not a unit of grammage; write 60 g/m2"),
        (parse_grammage, "0 g/m2", "0 g/m2 is out of range; write a grammage from 5 g/m2 to 5000 g/m2"),
        (parse_grammage, "5001 gsm", "5001 gsm is out of range; write a grammage from 5 g/m2 to 5000 g/m2"),
        (parse_grammage, "thin", "'thin' is not a grammage; write it like 80 g/m2"),
        (parse_bulk, "1.25", "1.25 has no unit; write 1.25 cm3/g"),
        (parse_bulk, "1250 cm3/g", "1250 cm3/g is out of range; write a bulk from 0.3 cm3/g to 20 cm3/g"),
        (parse_bulk, "0.2 cm3/g", "0.2 cm3/g is out of range; write a bulk from 0.3 cm3/g to 20 cm3/g"),
        (parse_resolution, "600", "600 has no unit; write 600 dpi"),
        (parse_resolution, "0 dpi", "0 dpi is out of range; write a resolution from 50 dpi to 20000 dpi"),
        (parse_resolution, "1e9 dpi", "1e9 dpi has an exponent; write the number out in full"),
        (parse_share, "0.1", "0.1 has no unit; write 0.1 %"),
        (parse_share, "101 %", "101 % is out of range; write a percentage from 0 % to 100 %"),
        (parse_share, "± 10 %", "± 10 % has a sign; write 10 %"),
        (parse_ratio, "12", f"'12' is not a scale; write 1:12, or one of {NAMES}"),
        (parse_ratio, "24th", f"'24th' is not a scale; write 1:12, or one of {NAMES}"),
        (parse_ratio, "12:1", "12:1 is not a scale of 1 to something; write it like 1:12"),
        (parse_ratio, "24:1", "24:1 is not a scale of 1 to something; write it like 1:24"),
        (parse_ratio, "2:24", "2:24 is not a scale of 1 to something; write it like 1:12"),
        (parse_ratio, "1:0", "1:0 is not a scale of 1 to something; write it like 1:12"),
        (parse_ratio, "0:1", "0:1 is not a scale of 1 to something; write it like 1:12"),
        (parse_ratio, "24:2", "24:2 is not a scale of 1 to something; write it like 1:12"),
        (parse_ratio, "1:-12", "'1:-12' is not a scale; write it like 1:12"),
        (parse_ratio, "1:", "'1:' is not a scale; write it like 1:12"),
        (parse_ratio, "1:1e3", "'1:1e3' is not a scale; write it like 1:12"),
        (parse_ratio, "", "the value is empty; write it like 1:12"),
        (parse_count, "48.0", "48.0 has a decimal point; write 48"),
        (parse_count, "48,0", "48,0 has a decimal point; write 48"),
        (parse_count, "48.5", "'48.5' is not a whole number; write one in digits, such as 48"),
        (parse_count, "1e3", "'1e3' is not a whole number; write one in digits, such as 48"),
        (parse_count, "forty", "'forty' is not a whole number; write one in digits, such as 48"),
        (parse_count, "0x30", "'0x30' is not a whole number; write one in digits, such as 48"),
        (parse_count, "٤٨", "'٤٨' is not a whole number; write one in digits, such as 48"),
        (parse_count, "-2", "-2 is negative; write a whole number such as 48"),
        (parse_count, "1,000", "1,000 has a mark between its thousands; write 1000"),
        (parse_count, "1,000,000", "1,000,000 has a mark between its thousands; write 1000000"),
        (parse_count, "1,000,000,000", "'1,000,000,000' is not a whole number; write one in digits, such as 48"),
        (parse_count, "1" * 10, "'1111111111' is not a whole number; write one in digits, such as 48"),
        (parse_count, "", "the value is empty; write it like 48"),
        (parse_pile, "1.52 mm", "'1.52 mm' is not a measured pile; write it like 20 sheets = 1.52 mm"),
        (parse_pile, "20 sheets = 1.52", "1.52 has no unit; write 1.52 mm"),
        (parse_pile, "20 sheets =", "the value is empty; write it like 21 mm or 7/8 in"),
        (parse_pile, "0 sheets = 1 mm", "a pile of 0 sheets cannot be measured; write 1 to 10000 sheets"),
        (
            parse_pile,
            "10001 sheets = 1 m",
            "a pile of 10001 sheets cannot be measured; write 1 to 10000 sheets",
        ),
        (
            parse_pile,
            "20 sheets = 0 mm",
            "the pile has no height; measure it and write it like 20 sheets = 1.52 mm",
        ),
        (parse_pile, "few sheets = 1 mm", "'few' is not a whole number; write one in digits, such as 48"),
        (parse_basis_weight, "20 lb", "20 lb has no grade; write 20 lb bond, text, book, cover or index"),
        (parse_basis_weight, "bond", "'bond' is not a basis weight; write it like 20 lb bond or 80 lb cover"),
        (
            parse_basis_weight,
            "20 kg bond",
            "'20 kg bond' is not a basis weight; write it like 20 lb bond or 80 lb cover",
        ),
        (parse_basis_weight, "0 lb bond", "0 lb is out of range; write a weight up to 500 lb"),
        (parse_basis_weight, "501 lb bond", "501 lb is out of range; write a weight up to 500 lb"),
        (parse_basis_weight, "- lb bond", "- lb is negative; write a number"),
        (parse_basis_weight, "-20 lb bond", "-20 lb is negative; write 20 lb"),
    ],
)
def test_other_measures_that_are_none(read: Callable[[str], object], text: str, said: str) -> None:
    with pytest.raises(NotAMeasure) as caught:
        read(text)
    assert str(caught.value) == said


def test_a_refusal_keeps_its_parts() -> None:
    with pytest.raises(ValueError, match="21 has no unit") as caught:
        parse_length("21")
    assert isinstance(caught.value, NotAMeasure)
    assert (caught.value.message, caught.value.remedy) == ("21 has no unit", "write 21 mm")


@given(st.sampled_from(READERS), st.text() | st.text("0123456789.,/- :mingbdptlb#%'\"µ²½e+", max_size=20))
def test_any_text_is_read_or_refused(read: Callable[[str], object], text: str) -> None:
    try:
        value = read(text)
    except NotAMeasure as problem:
        assert problem.message
        assert problem.remedy
        assert (problem.message + problem.remedy).isprintable()
    else:
        numbers = value if isinstance(value, tuple) else (value,)
        assert all(number >= 0 for number in numbers if isinstance(number, (int, float)))


@pytest.mark.parametrize("read", READERS)
@pytest.mark.parametrize("seed", ["9", "9 ", "9/", "1,", "a", "½", " ", "\u0301", "20 sheets = "])
def test_a_flood_of_text_is_refused_at_once(read: Callable[[str], object], seed: str) -> None:
    flood = seed * (100_000 // len(seed))
    started = time.perf_counter()
    with pytest.raises(NotAMeasure):
        read(flood)
    assert time.perf_counter() - started < 0.2


@given(st.floats(0, 1e6), st.integers(0, 9))
def test_printed_lengths_are_read_back(mm: float, digits: int) -> None:
    assert parse_length(print_mm(mm, digits)) == round(mm, digits)


@given(st.floats(0, 1000))
def test_lengths_read_as_written(mm: float) -> None:
    written = f"{mm:.15f}"
    assert parse_length(f"{written} mm") == float(written)
    assert parse_length(f"{written.replace('.', ',')} mm") == float(written)


@given(st.integers(0, 99), st.integers(0, 63))
def test_mixed_numbers_are_exact(whole: int, over: int) -> None:
    # 25.4/64 = 0.396875 and its multiples up to 9 digits are decimal numbers with 6 places
    millionths = (whole * 64 + over) * 396875
    expected = float(f"{millionths // 10**6}.{millionths % 10**6:06d}")
    assert parse_length(f"{whole} {over}/64 in") == expected
    assert parse_length(f'{whole}-{over}/64"') == expected


@given(st.floats(1e-3, 1e5))
def test_conversions_undo_each_other(mm: float) -> None:
    assert from_pt(to_pt(mm)) == pytest.approx(mm, rel=1e-14)
    assert to_pt(mm) == pytest.approx(72 * to_inches(mm), rel=1e-14)


@given(st.sampled_from(["mm", "cm", "m", "um", "in", "ft", "mil", "pt"]), st.integers(0, 999))
def test_a_length_in_its_own_unit(unit: str, count: int) -> None:
    value, found = native_length(f"{count} {unit}")
    assert found == unit
    assert value == count
    assert float(exact_mm(value, found)) == parse_length(f"{count}{unit}")


@pytest.mark.parametrize(
    ("printed", "text"),
    [
        (print_mm(4.305), "4.305 mm"),
        (print_mm(21.0), "21 mm"),
        (print_mm(100), "100 mm"),
        (print_mm(14.8333333), "14.833 mm"),
        (print_mm(18.04, 1), "18 mm"),
        (print_mm(1200, 0), "1200 mm"),
        (print_mm(-0.0001), "0 mm"),
        (print_mm(-0.5), "-0.5 mm"),
        (print_um(0.075), "75 µm"),
        (print_um(0.01652), "16.5 µm"),
    ],
)
def test_printed_lengths(printed: str, text: str) -> None:
    assert printed == text


def test_only_one_module_knows_the_inch_and_one_the_point() -> None:
    package = Path(bookmaker.__path__[0])
    constant = re.compile(r"(?<![\w.])(?:25\.4|72)(?![\w.]|,\d)")
    knowing = set()
    for module in package.rglob("*.py"):
        code = re.sub(r'"""[\s\S]*?"""|#.*', "", module.read_text(encoding="utf-8"))
        if constant.search(code):
            knowing.add(module.relative_to(package).as_posix())
    assert knowing == {"ground/told.py", "ground/units.py"}


def test_everything_offered_is_there() -> None:
    assert sorted(units.__all__, key=str.casefold) == sorted(set(units.__all__), key=str.casefold)
    assert all(hasattr(units, name) for name in units.__all__)
