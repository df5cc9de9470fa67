"""How the thickness of sheets, films and piles is told, and limits: with inches in thousandths of one, which the paper
trade calls mils; as `told` tells all other lengths."""

from __future__ import annotations

from math import floor

from .told import MM_PER_INCH, Units, in_units, print_mm, trimmed, units_told

__all__ = [
    "caliper_unit",
    "figure_caliper",
    "figure_um",
    "print_caliper",
    "print_calipers",
    "print_um",
    "small_unit",
    "thinner",
]

MM_PER_MIL = MM_PER_INCH / 1000


def print_um(mm: float) -> str:
    """A small length, given in mm, in µm or in mils.

    >>> print_um(0.075)
    '75 µm'
    """
    return in_units(f"{trimmed(mm * 1000, 1)} µm", f"{trimmed(mm / MM_PER_MIL, 2)} mil")


def figure_um(mm: float) -> str:
    """A small length, given in mm, as a number before a `small_unit`.

    >>> figure_um(0.078)
    '78.0'
    """
    return in_units(f"{mm * 1000:.1f}", f"{mm / MM_PER_MIL:.2f}")


def small_unit(*, typed: bool = False) -> str:
    """The sign behind small lengths; as it is typed on most keyboards, if it is to be written.

    >>> small_unit(), small_unit(typed=True)
    ('µm', 'um')
    """
    return in_units("um" if typed else "µm", "mil")


def print_caliper(mm: float, digits: int = 3) -> str:
    """How thick a sheet, a film or a pile is, given in mm: with inches in mils.

    >>> print_caliper(0.09)
    '0.09 mm'
    >>> from bookmaker.ground.told import Units, told_in
    >>> with told_in(Units.INCHES):
    ...     print_caliper(0.1016)
    '4 mil'
    """
    return in_units(print_mm(mm, digits), f"{trimmed(mm / MM_PER_MIL, 2)} mil")


def figure_caliper(mm: float, *, signed: bool = False) -> str:
    """The same as a number in a column whose head names the `caliper_unit`.

    >>> figure_caliper(0.0584)
    '0.058'
    """
    sign = "+" if signed else ""
    return in_units(f"{mm:{sign}.3f}", f"{mm / MM_PER_MIL:{sign}.2f}")


def caliper_unit() -> str:
    """The unit of what is as thin as sheets, and of piles of them.

    >>> caliper_unit()
    'mm'
    """
    return in_units("mm", "mil")


def thinner(mm: float) -> float:
    """The thickest sheet, in mm, that is no thicker and may be written: in whole µm, or tenths of a mil.

    >>> thinner(0.0788)
    0.078
    """
    if units_told() is Units.INCHES:
        return floor(mm / MM_PER_MIL * 10 + 1e-6) * MM_PER_MIL / 10
    return floor(mm * 1000 + 1e-6) / 1000


def print_calipers(low: float, high: float) -> str:
    """Two limits of a thickness, given in mm, in one unit, rounded to what may be written.

    >>> print_calipers(0.01, 3)
    '0.01 mm to 3 mm'
    >>> from bookmaker.ground.told import Units, told_in
    >>> with told_in(Units.INCHES):
    ...     print_calipers(0.01, 3)
    '0.4 mil to 118.1 mil'
    """
    return f"{print_caliper(-thinner(-low))} to {print_caliper(thinner(high))}"
