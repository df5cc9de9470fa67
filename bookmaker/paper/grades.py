"""Grades of paper, what they weigh, and how thick they nominally are: each row with its source."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from ..ground.problems import near_match
from ..ground.quantities import show, tidy
from ..ground.units import MM_PER_INCH, NotAMeasure, exact_mm
from .papers import Confidence, Source

__all__ = [
    "CALIPERS",
    "GRADES",
    "Caliper",
    "Grade",
    "caliper_from_bulk",
    "find_grade",
    "grammage_from_basis",
    "nominal_caliper",
    "usual_bulk",
]

GRAMS_PER_POUND = 453.59237
"""Exact by definition of the avoirdupois pound."""
SHEETS_PER_REAM = 500
CLOSE_GRAMMAGE = 0.02
"""US weights are rounded to metric ones within this share (GPO standard No. 11, its table of pairs)."""

_BASIS = Source("basic sizes of the US paper trade", Confidence.MEMORY)
_GPO = "Government Paper Specification Standards No. 11 (GPO, 1999), "


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


_OFFICE = Source("usual caliper of office paper", Confidence.MEMORY)

CALIPERS: tuple[Caliper, ...] = (
    Caliper("bond", 80, 0.100, _OFFICE),
    *_gpo("A55", "book", {60: 0.075, 75: 0.100, 90: 0.120, 105: 0.140, 120: 0.160}),
    *_gpo("A91, smooth finish", "book", {105: 0.140, 120: 0.160, 150: 0.200}),
    *_gpo("K10", "index", {165: 0.190, 200: 0.230, 255: 0.290, 305: 0.350}),
    *_gpo_copier(24, "4.1"),
    *_gpo_copier(28, "4.7"),
    *_usual("bond", {20: "3.9", 32: "5.9"}),
    *_usual("cover", {65: "9.5", 80: "11.5", 100: "14", 110: "15.5", 120: "16.5"}),
)


def usual_bulk(grammage: float, grade: str = "") -> float:
    """Thickness for its weight in cm³/g, to a twentieth, of the listed paper that weighs most nearly as much.

    >>> usual_bulk(80), usual_bulk(250), usual_bulk(163, "cover")
    (1.25, 1.15, 1.35)

    Raises:
        NotAMeasure: no such grade is known.
    """
    name = find_grade(grade).name if grade else ""
    near = min((abs(row.grammage - grammage), 1000 * row.caliper / row.grammage) for row in CALIPERS
               if name in ("", row.grade))  # fmt: skip
    return round(near[1] * 20) / 20


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
