"""Which units lengths are told in, and how they are told: the one place that turns mm into words.

Everything inside is mm. What is told, on paper and on screens, is told in the units of the shelf file; whoever works
one out says so once, with `told_in`, and everything that is put into words meanwhile follows.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from enum import StrEnum
from fractions import Fraction
from math import ceil, floor

__all__ = [
    "MM_PER_INCH",
    "Units",
    "figure",
    "in_units",
    "print_area",
    "print_grammage",
    "print_mm",
    "print_range",
    "print_sides",
    "print_volume",
    "rounded_down",
    "rounded_up",
    "told_in",
    "trimmed",
    "unit",
    "unit_named",
    "units_told",
]

MM_PER_INCH = 25.4
"""Exact by definition."""


class Units(StrEnum):
    """What lengths are told in."""

    MILLIMETRES = "millimetres"
    INCHES = "inches"


_TOLD: ContextVar[Units] = ContextVar("units told", default=Units.MILLIMETRES)

ROUGH, THOUSANDTHS = 1, 3
"""Decimals of an inch: of what is told in whole millimetres, and of all else, as the trade's calipers show it."""

FINEST = 16
"""Into so many parts of an inch every rule is divided; a length is told as a fraction wherever it is one of them."""

EXACT = 0.0004
"""A length less than so many inches off a fraction, 10 µm, is that fraction: it would be rounded as much anyway."""

ML_PER_FLUID_OUNCE = 29.5735295625
"""Exact by definition of the US gallon, 231 cubic inches."""

BOND_GRAMS, COVER_GRAMS = 3.7597, 2.7043
"""g/m² of a pound of bond (basic sheet 17 × 22 in) and of cover (20 × 26 in): 1406.139 over the sheet's area."""

HEAVIEST_BOND = 150.0
"""What is heavier, in g/m², is sold by the pounds of cover (common practice)."""


@contextmanager
def told_in(units: Units) -> Iterator[None]:
    """Tells all lengths in some units meanwhile.

    >>> with told_in(Units.INCHES):
    ...     print_mm(22.225), print_mm(21), print_mm(101.6)
    ('7/8 in', '0.827 in', '4 in')
    """
    before = _TOLD.set(units)
    try:
        yield
    finally:
        _TOLD.reset(before)


def units_told() -> Units:
    """What lengths are told in just now."""
    return _TOLD.get()


def _inches() -> bool:
    return _TOLD.get() is Units.INCHES


def unit() -> str:
    """The sign of the unit that stands behind a length.

    >>> unit()
    'mm'
    """
    return "in" if _inches() else "mm"


def unit_named() -> str:
    """The unit as the heads of tables name it.

    >>> unit_named()
    'mm'
    """
    return in_units("mm", "inches")


def trimmed(value: float, digits: int) -> str:
    """A number without idle zeros.

    >>> trimmed(2.50, 2), trimmed(-0.001, 2)
    ('2.5', '0')
    """
    text = f"{value:.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def print_mm(mm: float, digits: int = 3) -> str:
    """A length, given in mm, rounded, without idle zeros; in inches as a fraction, where it is one.

    >>> print_mm(4.305), print_mm(21.0), print_mm(18.04999, 1)
    ('4.305 mm', '21 mm', '18 mm')
    """
    return f"{_number(mm, digits)} {unit()}"


def print_sides(*sides: float, digits: int = 3) -> str:
    """Lengths that belong together, given in mm, with one unit behind them.

    >>> print_sides(21, 15.25)
    '21 × 15.25 mm'
    """
    return f"{' × '.join(_number(side, digits) for side in sides)} {unit()}"


def _number(mm: float, digits: int) -> str:
    return _in_inches(mm / MM_PER_INCH, digits) if _inches() else trimmed(mm, digits)


def _in_inches(inches: float, digits: int, *, idle: bool = False) -> str:
    """Inches as a rule shows them, or in decimals, with idle zeros if so: 1.1875 is 1 3/16."""
    size, places = abs(inches), THOUSANDTHS if digits else ROUGH
    nearest = Fraction(round(size * FINEST), FINEST)
    if not nearest or (abs(size - nearest) >= EXACT and round(size, THOUSANDTHS) != nearest):
        return f"{inches:.{places}f}" if idle else trimmed(inches, places)
    whole, rest = divmod(nearest, 1)
    said = " ".join(str(part) for part in (whole, rest) if part)
    return f"-{said}" if inches < 0 else said


def figure(mm: float, digits: int = 2, *, signed: bool = False) -> str:
    """A length, given in mm, as a number in a column whose head names the unit: decimals stand below one another.

    >>> figure(21), figure(0.1234, 3, signed=True)
    ('21.00', '+0.123')
    >>> with told_in(Units.INCHES):
    ...     figure(21), figure(14.2875)
    ('0.827', '9/16')
    """
    plus = "+" if signed and mm >= 0 else ""
    return plus + (_in_inches(mm / MM_PER_INCH, digits, idle=True) if _inches() else f"{mm:.{digits}f}")


def print_range(low: float, high: float, digits: int = 3) -> str:
    """Two limits, given in mm, in one unit, rounded so that either may be written.

    >>> print_range(3, 20)
    '3 mm to 20 mm'
    >>> with told_in(Units.INCHES):
    ...     print_range(3, 20)
    '0.119 in to 0.787 in'
    """
    return f"{print_mm(rounded_up(low, digits))} to {print_mm(-rounded_up(-high, digits))}"


def in_units(millimetres: str, inches: str) -> str:
    """Which of two texts is told, such as an example of a length.

    >>> in_units("21 mm", "7/8 in")
    '21 mm'
    """
    return inches if _inches() else millimetres


def print_area(mm2: float) -> str:
    """An area, given in mm².

    >>> print_area(62370.0)
    '623.7 cm²'
    """
    return f"{mm2 / MM_PER_INCH**2:.1f} sq in" if _inches() else f"{mm2 / 100:.1f} cm²"


def print_volume(ml: float) -> str:
    """A little of something to pour.

    >>> print_volume(1.84)
    '1.8 ml'
    """
    return f"{ml / ML_PER_FLUID_OUNCE:.2f} fl oz" if _inches() else f"{ml:.1f} ml"


def print_grammage(grams: float) -> str:
    """What paper weighs, given in g/m²; with inches in pounds of bond or of cover, as it is sold.

    >>> print_grammage(80)
    '80 g/m²'
    >>> with told_in(Units.INCHES):
    ...     print_grammage(75.2), print_grammage(176)
    ('20 lb bond', '65 lb cover')
    """
    if not _inches():
        return f"{grams:.0f} g/m²"
    heavy = grams > HEAVIEST_BOND
    return f"{grams / (COVER_GRAMS if heavy else BOND_GRAMS):.0f} lb {'cover' if heavy else 'bond'}"


def rounded_down(mm: float, digits: int = 1) -> float:
    """The largest length of few decimals, in the unit told, that is no longer: a limit that may be written, or 0.

    >>> rounded_down(12.38)
    12.3
    """
    step = _step(digits)
    return max(0.0, floor(mm / step + 1e-6) * step if _inches() else floor(mm * 10**digits + 1e-6) / 10**digits)


def rounded_up(mm: float, digits: int = 1) -> float:
    """The smallest length of few decimals, in the unit told, that is no shorter.

    >>> rounded_up(12.32)
    12.4
    """
    step = _step(digits)
    return ceil(mm / step - 1e-6) * step if _inches() else ceil(mm * 10**digits - 1e-6) / 10**digits


def _step(digits: int) -> float:
    return MM_PER_INCH / 10.0 ** (THOUSANDTHS if digits else ROUGH)
