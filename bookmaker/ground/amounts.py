"""Measures that are no lengths: weight, bulk, resolution, shares, scales, counts, piles of sheets.

They are read as lengths are: text comes in, floats or whole numbers go out, worked out exactly and rounded once,
and what cannot be meant is refused with `NotAMeasure`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from .quantities import Kind, NotAMeasure, read_number, read_quantity, show, split_number, tidy
from .told import in_units
from .units import parse_length

__all__ = [
    "RAILWAY_RATIOS",
    "a_pile",
    "parse_basis_weight",
    "parse_bulk",
    "parse_count",
    "parse_grammage",
    "parse_pile",
    "parse_ratio",
    "parse_resolution",
    "parse_share",
]

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

MOST_SHEETS = 10_000
MOST_POUNDS = 500

_GRAMMAGE = Kind("a grammage", {"g/m2": "g/m2 g/m² g/m^2 g/qm g/sqm gsm g"}, "80 g/m2")
_BULK = Kind("a bulk", {"cm3/g": "cm3/g cm³/g cm^3/g cc/g"}, "1.25 cm3/g")
_RESOLUTION = Kind("a resolution", {"dpi": "dpi ppi"}, "600 dpi")
_SHARE = Kind("a percentage", {"%": "% percent"}, "10 %")


def _within(low: int | Fraction, high: int, text: str, kind: Kind) -> Fraction:
    """The value of a measure that makes sense only between two limits."""
    value, _ = read_quantity(text, kind)
    if not low <= value <= high:
        remedy = f"write {kind.what} from {float(low):g} {kind.usual} to {high} {kind.usual}"
        raise NotAMeasure(f"{show(text)} is out of range", remedy)
    return value


def parse_grammage(text: str) -> float:
    """Mass per area in g/m².

    >>> parse_grammage("60 g/m²"), parse_grammage("60 gsm"), parse_grammage("60 g")  # as wrappers say it
    (60.0, 60.0, 60.0)
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
        raise NotAMeasure(f"{plain} has a mark between its thousands", f"write {int(re.sub('[^0-9]', '', plain))}")
    raise NotAMeasure(f"{show(plain)!r} is not a whole number", "write one in digits, such as 48")


def a_pile() -> str:
    """How a measured pile is written.

    >>> a_pile()
    '20 sheets = 1.52 mm'
    """
    return in_units("20 sheets = 1.52 mm", "20 sheets = 0.06 in")


def parse_pile(text: str) -> tuple[int, float]:
    """A measured pile of paper: the number of sheets, and its height in mm.

    >>> parse_pile("20 sheets = 1.52 mm"), parse_pile("20 sheets measure 1.52 mm")
    ((20, 1.52), (20, 1.52))
    """
    example = a_pile()
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
