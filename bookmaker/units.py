"""Measures: read what makers write, convert, print. The only place that knows the inch and the point.

All readers take text, return floats (lengths in mm) and raise `NotAMeasure`, which carries a message and a
remedy. Values are worked out exactly and rounded once, to the nearest float.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from .quantities import Kind, NotAMeasure, read_number, read_quantity, show, split_number, tidy

__all__ = [
    "MM_PER_INCH",
    "RAILWAY_RATIOS",
    "NotAMeasure",
    "exact_mm",
    "from_pt",
    "native_length",
    "parse_basis_weight",
    "parse_bulk",
    "parse_count",
    "parse_grammage",
    "parse_length",
    "parse_offset",
    "parse_pile",
    "parse_ratio",
    "parse_resolution",
    "parse_share",
    "parse_type_size",
    "print_length",
    "print_mm",
    "print_pt",
    "print_um",
    "to_inches",
    "to_pt",
]

MM_PER_INCH = 25.4
"""Exact by definition."""
PT_PER_INCH = 72
"""A unit of default user space, ISO 32000."""

_INCH = Fraction(254, 10)
_LENGTHS = {
    "mm": (Fraction(1), "mm millimetre millimetres millimeter millimeters"),
    "cm": (Fraction(10), "cm centimetre centimetres centimeter centimeters"),
    "m": (Fraction(1000), "m metre metres meter meters"),
    "um": (Fraction(1, 1000), "um micron microns micrometre micrometres micrometer micrometers"),
    "in": (_INCH, 'in in. inch inches "'),
    "ft": (12 * _INCH, "ft ft. foot feet '"),
    "mil": (_INCH / 1000, "mil mils thou"),
    "pt": (_INCH / PT_PER_INCH, "pt point points"),
}
"""Each unit of length: its mm, and how it may be spelled."""

RAILWAY_RATIOS: Mapping[str, Fraction] = {
    "Z": Fraction(220),
    "N": Fraction(160),
    "TT": Fraction(120),
    "H0": Fraction(87),
    "0": Fraction(45),
    "I": Fraction(32),
    "II": Fraction(45, 2),
}
"""How many times smaller than life: MOROP NEM 010 (2011)."""

MINUS_SIGNS = ("-", "−", "–")
"""What makers write before a length that goes the other way."""

MOST_SHEETS = 10_000
MOST_POUNDS = 500

_LENGTH_WORDS = {unit: words for unit, (_, words) in _LENGTHS.items()}
_LENGTH = Kind("a length", _LENGTH_WORDS, "21 mm or 7/8 in", fraction_unit="in")
_TYPE_SIZE = Kind("a length", {"pt": _LENGTH_WORDS["pt"], **_LENGTH_WORDS}, "2.2 pt")
_GRAMMAGE = Kind("a grammage", {"g/m2": "g/m2 g/m² g/m^2 g/qm g/sqm gsm"}, "80 g/m2")
_BULK = Kind("a bulk", {"cm3/g": "cm3/g cm³/g cm^3/g cc/g"}, "1.25 cm3/g")
_RESOLUTION = Kind("a resolution", {"dpi": "dpi ppi"}, "600 dpi")
_SHARE = Kind("a share", {"%": "% percent"}, "10 %")


def _within(low: int | Fraction, high: int, text: str, kind: Kind) -> Fraction:
    """The value of a measure that makes sense only between two limits."""
    value, _ = read_quantity(text, kind)
    if not low <= value <= high:
        remedy = f"write {kind.what} from {float(low):g} {kind.usual} to {high} {kind.usual}"
        raise NotAMeasure(f"{show(text)} is out of range", remedy)
    return value


def native_length(text: str) -> tuple[Fraction, str]:
    """A length in the unit it was written in, exactly.

    >>> native_length('8 1/2"')
    (Fraction(17, 2), 'in')
    """
    return read_quantity(text, _LENGTH)


def exact_mm(value: Fraction, unit: str) -> Fraction:
    """A length in mm, exactly, from a value and one of mm, cm, m, um, in, ft, mil, pt.

    >>> exact_mm(Fraction(17, 2), "in")
    Fraction(2159, 10)
    """
    return value * _LENGTHS[unit][0]


def parse_length(text: str) -> float:
    """A length in mm; 0 is returned, negative lengths are refused.

    >>> parse_length("7/8 in"), parse_length('1-1/8"'), parse_length("90 µm"), parse_length("2,5 mm")
    (22.225, 28.575, 0.09, 2.5)

    Raises:
        NotAMeasure: no unit, a wrong one, or a number that cannot be meant.
    """
    return float(exact_mm(*native_length(text)))


def parse_offset(text: str) -> float:
    """A shift in mm, which may go the other way: a length with or without a minus sign.

    >>> parse_offset("-0.4 mm"), parse_offset("0.2 mm")
    (-0.4, 0.2)

    Raises:
        NotAMeasure: as for a length.
    """
    written = text.strip()
    if written[:1] in MINUS_SIGNS:
        return -parse_length(written[1:])
    return parse_length(written.removeprefix("+"))


def parse_type_size(text: str) -> float:
    """A size of type in mm: any length, but most makers will mean points.

    >>> parse_type_size("72 pt"), parse_type_size("1 mm")
    (25.4, 1.0)

    Raises:
        NotAMeasure: as for a length.
    """
    return float(exact_mm(*read_quantity(text, _TYPE_SIZE)))


def parse_grammage(text: str) -> float:
    """Mass per area in g/m².

    >>> parse_grammage("60 g/m²"), parse_grammage("60 gsm")
    (60.0, 60.0)
    """
    return float(_within(5, 5000, text, _GRAMMAGE))


def parse_bulk(text: str) -> float:
    """Thickness for mass and area, in cm³/g.

    >>> parse_bulk("1.25 cm³/g")
    1.25
    """
    return float(_within(Fraction(3, 10), 20, text, _BULK))


def parse_resolution(text: str) -> float:
    """Dots to the inch.

    >>> parse_resolution("600 dpi")
    600.0
    """
    return float(_within(50, 20_000, text, _RESOLUTION))


def parse_share(text: str) -> float:
    """A share of the whole, from 0 to 1; it must be written with its % sign, as a bare 0.1 could be 0.1 %.

    >>> parse_share("10 %")
    0.1
    """
    return float(_within(0, 100, text, _SHARE) / 100)


def parse_ratio(text: str) -> float:
    """How many times smaller than life: a ratio, or the name of a model railway scale (MOROP NEM 010).

    >>> parse_ratio("1:12"), parse_ratio("1/12"), parse_ratio("1:22.5"), parse_ratio("H0")
    (12.0, 12.0, 22.5, 87.0)
    """
    plain = tidy(text, "1:12")
    named = RAILWAY_RATIOS.get(plain.upper().replace("O", "0"))
    if named is not None:
        return float(named)
    one, sign, times = plain.partition(":" if ":" in plain else "/")
    if not sign:
        hint = f"1:{plain}" if re.fullmatch(r"[1-9][0-9]*", plain) else "1:12"
        names = ", ".join(RAILWAY_RATIOS)
        raise NotAMeasure(f"{show(plain)!r} is not a scale", f"write {hint}, or one of {names}")
    ratio = [part.strip() for part in (one, times)]
    if not all(re.fullmatch(r"[0-9.,]+", part) for part in ratio):
        raise NotAMeasure(f"{show(plain)!r} is not a scale", "write it like 1:12")
    model, life = (read_number(part) for part in ratio)
    if model != 1 or life == 0:
        hint = f"1:{one.strip()}" if life == 1 and model > 0 else "1:12"
        raise NotAMeasure(f"{show(plain)} is not a scale of 1 to something", f"write it like {hint}")
    return float(life)


def parse_count(text: str) -> int:
    """A whole number from 0 up, in plain digits.

    >>> parse_count("48")
    48
    """
    plain = tidy(text, "48")
    if re.fullmatch(r"[0-9]{1,9}", plain):
        return int(plain)
    if re.fullmatch(r"- ?[0-9.]+", plain):
        raise NotAMeasure(f"{show(plain)} is negative", "write a whole number such as 48")
    if re.fullmatch(r"[0-9]{1,9}(\.0*|,0{1,2})", plain):
        raise NotAMeasure(f"{plain} has a decimal point", f"write {int(re.split('[.,]', plain)[0])}")
    if re.fullmatch(r"[0-9]{1,3}([, _'][0-9]{3}){1,2}", plain):
        raise NotAMeasure(f"{plain} has its thousands parted", f"write {int(re.sub('[^0-9]', '', plain))}")
    raise NotAMeasure(f"{show(plain)!r} is not a whole number", "write one in digits, such as 48")


def parse_pile(text: str) -> tuple[int, float]:
    """A measured pile of paper: the number of sheets, and its height in mm.

    >>> parse_pile("20 sheets = 1.52 mm"), parse_pile("20 sheets measure 1.52 mm")
    ((20, 1.52), (20, 1.52))
    """
    example = "20 sheets = 1.52 mm"
    plain = tidy(text, example)
    match = re.fullmatch(r"(\S+) ?(?:sheets?|leaf|leaves) ?(?:=|:|measures?|are|is)(.*)", plain, re.IGNORECASE)
    if not match:
        raise NotAMeasure(f"{show(plain)!r} is not a measured pile", f"write it like {example}")
    sheets, height = parse_count(match[1]), parse_length(match[2])
    if not 1 <= sheets <= MOST_SHEETS:
        raise NotAMeasure(f"a pile of {sheets} sheets cannot be measured", f"write 1 to {MOST_SHEETS} sheets")
    if height == 0:
        raise NotAMeasure("the pile has no height", f"measure it and write it like {example}")
    return sheets, height


def parse_basis_weight(text: str) -> tuple[float, str]:
    """A US basis weight: pounds for 500 sheets, and the words for the grade (see `papers.find_grade`).

    >>> parse_basis_weight("20 lb bond"), parse_basis_weight("80# cover")
    ((20.0, 'bond'), (80.0, 'cover'))
    """
    plain = tidy(text, "20 lb bond")
    number, rest = split_number(plain)
    match = re.fullmatch(r"(?:lbs?\b\.?|pounds?\b|#) ?(.*)", rest, re.IGNORECASE)
    if not number or not match:
        raise NotAMeasure(f"{show(plain)!r} is not a basis weight", "write it like 20 lb bond or 80 lb cover")
    pounds = read_number(number, "lb")
    if not match[1]:
        raise NotAMeasure(f"{number} lb has no grade", f"write {number} lb bond, text, book, cover or index")
    if not 0 < pounds <= MOST_POUNDS:
        raise NotAMeasure(f"{number} lb is out of range", f"write a weight up to {MOST_POUNDS} lb")
    return float(pounds), match[1]


def to_pt(mm: float) -> float:
    """Points from mm.

    >>> to_pt(25.4)
    72.0
    """
    return mm * PT_PER_INCH / MM_PER_INCH


def from_pt(points: float) -> float:
    """Mm from points.

    >>> from_pt(72)
    25.4
    """
    return points * MM_PER_INCH / PT_PER_INCH


def to_inches(mm: float) -> float:
    """Inches from mm."""
    return mm / MM_PER_INCH


def _trimmed(value: float, digits: int) -> str:
    text = f"{value:.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def print_mm(value: float, digits: int = 3) -> str:
    """A length in mm, rounded, without idle zeros.

    >>> print_mm(4.305), print_mm(21.0), print_mm(18.04999, 1)
    ('4.305 mm', '21 mm', '18 mm')
    """
    return f"{_trimmed(value, digits)} mm"


def print_pt(mm: float) -> str:
    """A size of type, given in mm, in points of three figures.

    >>> print_pt(25.4), print_pt(0.7761)
    ('72 pt', '2.2 pt')
    """
    return f"{to_pt(mm):.3g} pt"


def print_um(mm: float) -> str:
    """A small length, given in mm, in µm.

    >>> print_um(0.075)
    '75 µm'
    """
    return f"{_trimmed(mm * 1000, 1)} µm"


def print_length(mm: float) -> str:
    """A length in both systems; thin things show thousandths of an inch.

    >>> print_length(21), print_length(0.09), print_length(0)
    ('21 mm (0.827 in)', '0.09 mm (3.54 mil)', '0 mm')
    """
    if mm == 0:
        return "0 mm"
    inches = to_inches(mm)
    other = f"{_trimmed(inches, 3)} in" if abs(inches) >= 0.1 else f"{_trimmed(inches * 1000, 2)} mil"
    return f"{print_mm(mm)} ({other})"
