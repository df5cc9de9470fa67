"""Sheet formats: each row with its source."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from ..ground.problems import near_match
from ..ground.quantities import show, tidy
from ..ground.told import Units, in_units, print_range, unit
from ..ground.units import NotAMeasure, exact_mm, native_length

__all__ = [
    "FORMATS",
    "Confidence",
    "SheetFormat",
    "Source",
    "find_format",
    "told_of",
]

SMALLEST_SHEET, LARGEST_SHEET = 40, 1500
"""Sides in mm that a sheet for a printer may have."""


class Confidence(StrEnum):
    """How a value came here: printed in its source, remembered, or common practice without a source."""

    PUBLISHED = "pub"
    MEMORY = "mem"
    PRACTICE = "practice"


@dataclass(frozen=True, slots=True)
class Source:
    """Where a row's numbers come from."""

    title: str
    mark: Confidence


_ISO = Source("ISO 216:2007, A series", Confidence.PUBLISHED)
_US = Source("North American sheet sizes", Confidence.MEMORY)
_MAKER = Source("the maker's own", Confidence.PRACTICE)


@dataclass(frozen=True, slots=True)
class SheetFormat:
    """A sheet size in the unit it is defined in; `unit` is one that `units.exact_mm` knows."""

    name: str
    unit: str
    width: Decimal
    height: Decimal
    source: Source

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in mm, converted exactly and rounded once.

        >>> FORMATS["letter"].size
        (215.9, 279.4)
        """
        width, height = (exact_mm(Fraction(side), self.unit) for side in (self.width, self.height))
        return float(width), float(height)


def _format(name: str, unit: str, width: str, height: str, source: Source) -> SheetFormat:
    return SheetFormat(name, unit, Decimal(width), Decimal(height), source)


FORMATS: dict[str, SheetFormat] = {
    sheet.name: sheet
    for sheet in (
        _format("A3", "mm", "297", "420", _ISO),
        _format("A4", "mm", "210", "297", _ISO),
        _format("A5", "mm", "148", "210", _ISO),
        _format("letter", "in", "8.5", "11", _US),
        _format("legal", "in", "8.5", "14", _US),
        _format("tabloid", "in", "11", "17", _US),
    )
}


def find_format(text: str) -> SheetFormat:
    """A sheet format by its name, or from its width and height.

    >>> find_format("a4").name, find_format("8.5 x 11 in").size
    ('A4', (215.9, 279.4))

    Raises:
        NotAMeasure: the name is unknown, or the sides are no lengths or beyond 40 mm to 1500 mm.
    """
    plain = tidy(text, f"A4 or {_usual_sheet()}")
    if plain[0].isdigit() or plain[0] in ".-":
        return _custom_format(plain)
    known = {name.casefold(): sheet for name, sheet in FORMATS.items()}
    name = re.sub(r"^(din|iso|us) ?", "", plain.casefold())
    if name in known:
        return known[name]
    meant = near_match(name.split(" ")[0], FORMATS) or near_match(name, FORMATS)
    known_names = ", ".join(FORMATS)
    remedy = f"did you mean {meant}?" if meant else f"write {known_names}, or two sides: {_usual_sheet()}"
    raise NotAMeasure(f"there is no sheet format {show(plain)!r}", remedy)


def _usual_sheet() -> str:
    return in_units("210 x 297 mm", "8 1/2 x 11 in")


def told_of(sheet: SheetFormat) -> Units:
    """What lengths are told in to somebody who prints on a sheet: what it is sold by.

    >>> told_of(FORMATS["letter"]), told_of(FORMATS["A4"])
    (<Units.INCHES: 'inches'>, <Units.MILLIMETRES: 'millimetres'>)
    """
    return Units.INCHES if sheet.unit in ("in", "ft") else Units.MILLIMETRES


def _custom_format(plain: str) -> SheetFormat:
    sides = re.split(r" ?(?:x|X|×|\*|\bby\b) ?", plain)
    if len(sides) != 2:
        raise NotAMeasure(f"{show(plain)} is not a sheet size", f"write two sides, such as {_usual_sheet()}")
    first, second = sides
    if not re.search(r"[^0-9 ./,-]", first):  # one unit, at the end, serves both sides
        if not re.search(r"[^0-9 ./,-]", second):
            raise NotAMeasure(f"{plain} has no unit", f"write {first} x {second} {unit()}")
        first += re.sub(r"^[0-9 ./,-]*", " ", second)
    (width, sold_by), (height, other) = native_length(first), native_length(second)
    if sold_by != other:
        width, height, sold_by = exact_mm(width, sold_by), exact_mm(height, other), "mm"
    for side in (width, height):
        if not SMALLEST_SHEET <= exact_mm(side, sold_by) <= LARGEST_SHEET:
            limits = print_range(SMALLEST_SHEET, LARGEST_SHEET)
            raise NotAMeasure(f"{show(plain)} is not a sheet for a printer", f"write sides from {limits}")
    return SheetFormat(" × ".join(sides), sold_by, _decimal(width), _decimal(height), _MAKER)


def _decimal(value: Fraction) -> Decimal:
    return Decimal(value.numerator) / Decimal(value.denominator)
