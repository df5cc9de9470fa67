"""Sheet formats, US basis weights and nominal calipers: each row with its source."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from ..ground.problems import near_match
from ..ground.quantities import show, tidy
from ..ground.told import Units, in_units, print_range, unit
from ..ground.units import MM_PER_INCH, NotAMeasure, exact_mm, native_length

__all__ = [
    "CALIPERS",
    "FORMATS",
    "GRADES",
    "Caliper",
    "Confidence",
    "Grade",
    "SheetFormat",
    "Source",
    "caliper_from_bulk",
    "find_format",
    "find_grade",
    "grammage_from_basis",
    "nominal_caliper",
    "told_of",
]

GRAMS_PER_POUND = 453.59237
"""Exact by definition of the avoirdupois pound."""
SHEETS_PER_REAM = 500
CLOSE_GRAMMAGE = 0.02
"""US weights are rounded to metric ones within this share (GPO standard No. 11, its table of pairs)."""
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
_BASIS = Source("basic sizes of the US paper trade", Confidence.MEMORY)
_GPO = "Government Paper Specification Standards No. 11 (GPO, 1999), "


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


@dataclass(frozen=True, slots=True)
class Grade:
    """A US grade of paper: its basic sheet in inches, of which 500 weigh the basis weight."""

    name: str
    width: float
    height: float
    other_names: tuple[str, ...]
    source: Source


GRADES: dict[str, Grade] = {
    grade.name: grade
    for grade in (
        Grade("bond", 17, 22, ("copier", "copy", "ledger", "writing"), _BASIS),
        Grade("cover", 20, 26, (), _BASIS),
        Grade("book", 25, 38, ("offset", "text"), _BASIS),
        Grade("index", 25.5, 30.5, (), _BASIS),
    )
}


def find_grade(text: str) -> Grade:
    """A grade by one of its names; a word such as paper or stock after it does no harm.

    >>> find_grade("Text paper").name
    'book'

    Raises:
        NotAMeasure: no such grade is known.
    """
    plain = tidy(text, "bond").casefold()
    words = re.sub(r" (paper|stock|card|weight)$", "", plain)
    names = {name: grade for grade in GRADES.values() for name in (grade.name, *grade.other_names)}
    if words in names:
        return names[words]
    meant = near_match(words, names)
    remedy = f"did you mean {meant}?" if meant else f"write one of {', '.join(names)}"
    raise NotAMeasure(f"there is no paper grade {show(plain)!r}", remedy)


def grammage_from_basis(pounds: float, grade: str) -> float:
    """Mass per area in g/m² of a US basis weight.

    g/m² = lb · 1406.139 / (width · height of the basic sheet in inches), where 1406.139 is a pound in
    grams over the area in m² of 500 sheets of one square inch.
    20 lb bond is 75.2 g/m² (PrintWiki, "Grammage").

    >>> round(grammage_from_basis(20, "bond"), 2)
    75.19

    Raises:
        NotAMeasure: no such grade is known.
    """
    basic = find_grade(grade)
    square_metres = basic.width * basic.height * (MM_PER_INCH / 1000) ** 2
    return pounds * GRAMS_PER_POUND / (SHEETS_PER_REAM * square_metres)


def caliper_from_bulk(grammage: float, bulk: float) -> float:
    """Thickness of one sheet in mm: g/m² × cm³/g gives µm (ISO 534 defines bulk).

    >>> caliper_from_bulk(80, 1.25)
    0.1
    """
    return grammage * bulk / 1000


@dataclass(frozen=True, slots=True)
class Caliper:
    """The nominal thickness in mm of a grade at a grammage in g/m²."""

    grade: str
    grammage: float
    caliper: float
    source: Source


def _gpo(code: str, grade: str, calipers: Mapping[float, float]) -> tuple[Caliper, ...]:
    source = Source(_GPO + code, Confidence.PUBLISHED)
    return tuple(Caliper(grade, grammage, caliper, source) for grammage, caliper in calipers.items())


def _gpo_copier(pounds: float, mil: str) -> tuple[Caliper, ...]:
    """A row of the copier standard, which is in US units."""
    caliper = float(exact_mm(Fraction(mil), "mil"))
    return _gpo("O-63", "bond", {grammage_from_basis(pounds, "bond"): caliper})


def _usual(grade: str, mils: Mapping[float, str]) -> tuple[Caliper, ...]:
    """What papers sold by their US weight in lb usually measure, in mil."""
    source = Source("usual calipers of US papers", Confidence.MEMORY)
    rows = ((grammage_from_basis(pounds, grade), float(exact_mm(Fraction(mil), "mil"))) for pounds, mil in mils.items())
    return tuple(Caliper(grade, grammage, caliper, source) for grammage, caliper in rows)


CALIPERS: tuple[Caliper, ...] = (
    *_gpo("A55", "book", {60: 0.075, 75: 0.100, 90: 0.120, 105: 0.140, 120: 0.160}),
    *_gpo("A91, smooth finish", "book", {105: 0.140, 120: 0.160, 150: 0.200}),
    *_gpo("K10", "index", {165: 0.190, 200: 0.230, 255: 0.290, 305: 0.350}),
    *_gpo_copier(24, "4.1"),
    *_gpo_copier(28, "4.7"),
    *_usual("bond", {20: "3.9", 32: "5.9"}),
    *_usual("cover", {65: "9.5", 80: "11.5", 100: "14", 110: "15.5", 120: "16.5"}),
)


def nominal_caliper(grammage: float, grade: str) -> float | None:
    """The nominal thickness in mm of a grade at a grammage, or None where no table lists it within 2 %.

    >>> nominal_caliper(90, "book"), nominal_caliper(90, "cover")
    (0.12, None)

    Raises:
        NotAMeasure: no such grade is known.
    """
    name = find_grade(grade).name
    distances = [(abs(row.grammage - grammage), row.caliper) for row in CALIPERS if row.grade == name]
    distance, caliper = min(distances, default=(math.inf, 0.0))
    return caliper if distance <= CLOSE_GRAMMAGE * grammage else None
