"""Lengths: read what makers write, and convert them. How they are told is in `told`.

All readers take text, return mm as floats and raise `NotAMeasure`, which carries a message and a remedy.
Values are worked out exactly and rounded once, to the nearest float.
"""

from __future__ import annotations

from fractions import Fraction

from .quantities import Kind, NotAMeasure, read_quantity
from .told import MM_PER_INCH, Units, print_mm, units_told

__all__ = [
    "MM_PER_INCH",
    "NotAMeasure",
    "exact_mm",
    "from_pt",
    "native_length",
    "parse_length",
    "parse_offset",
    "parse_type_size",
    "print_mm",
    "print_pt",
    "rounded",
    "to_inches",
    "to_pt",
]

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

MINUS_SIGNS = ("-", "−", "–")
"""What makers write before a length that goes the other way."""

_LENGTH_WORDS = {unit: words for unit, (_, words) in _LENGTHS.items()}
_LENGTH = Kind("a length", _LENGTH_WORDS, "21 mm or 7/8 in", fraction_unit="in")
_IN_INCHES = Kind("a length", {"in": _LENGTH_WORDS["in"], **_LENGTH_WORDS}, "7/8 in or 21 mm", fraction_unit="in")
_TYPE_SIZE = Kind("a length", {"pt": _LENGTH_WORDS["pt"], **_LENGTH_WORDS}, "2.2 pt")


def native_length(text: str) -> tuple[Fraction, str]:
    """A length in the unit it was written in, exactly.

    >>> native_length('8 1/2"')
    (Fraction(17, 2), 'in')
    """
    return read_quantity(text, _IN_INCHES if units_told() is Units.INCHES else _LENGTH)


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


def rounded(mm: float) -> float:
    """A length as reports give it: a ten-thousandth of a millimetre is far below what paper knows.

    >>> rounded(18.04999999)
    18.05
    """
    return round(mm, 4) + 0.0


def print_pt(mm: float) -> str:
    """A size of type, given in mm, in points of three figures.

    >>> print_pt(25.4), print_pt(0.7761)
    ('72 pt', '2.2 pt')
    """
    return f"{to_pt(mm):.3g} pt"
