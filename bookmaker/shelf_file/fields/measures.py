"""Field types of the shelf file that are measures: text as the maker wrote it comes in, plain numbers go out.

Each type refuses what cannot be meant (a page of 3 m, paper of 0) with the limits it keeps. All raise
pydantic errors of the type ``maker`` that carry the message and the remedy apart.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, GetJsonSchemaHandler, WithJsonSchema
from pydantic_core import CoreSchema

from ...ground.amounts import parse_bulk, parse_grammage, parse_resolution, parse_share
from ...ground.quantities import show
from ...ground.thin import print_calipers, small_unit
from ...ground.told import in_units, print_range, unit
from ...ground.units import NotAMeasure, parse_length, parse_offset, parse_type_size, print_pt
from .words import read_text, refuse

__all__ = [
    "FIT",
    "BlockThickness",
    "Bulk",
    "Degree",
    "DummyThickness",
    "FilmThickness",
    "Grammage",
    "InkSpread",
    "LifeSide",
    "Margin",
    "Offset",
    "OrOneLength",
    "PageSide",
    "PaperThickness",
    "Resolution",
    "RoomLength",
    "ScanWidths",
    "SheetSide",
    "ShelfSide",
    "SmallLength",
    "Spacing",
    "StaffSpacing",
    "TabWidth",
    "Thickness",
    "ThingSide",
    "ThreadThickness",
    "Tracking",
    "TypeSize",
    "TypeSizeOrFit",
    "ViewingDistance",
    "read_margin",
]

MOST_TRACKED = 0.3


def _measured(parse: Callable[[str], float], value: object) -> float:
    text = read_text(value)
    try:
        return parse(text)
    except NotAMeasure as problem:
        raise refuse(problem.message, problem.remedy) from None


def _length_reader(
    low: float,
    high: float,
    parse: Callable[[str], float] = parse_length,
    limits: Callable[[float, float], str] = print_range,
) -> Callable[[object], float]:
    def read(value: object) -> float:
        if isinstance(value, float):
            return value
        text = read_text(value)
        try:
            mm = parse(text)
        except NotAMeasure as problem:
            other = small_unit(typed=True) if limits is print_calipers else "mm"
            raise refuse(problem.message, _in_another(other, text, low, high) or problem.remedy) from None
        if not low <= mm <= high:
            limit = limits(low, high)
            raise refuse(f"{value} is out of range", f"write a length from {limit}", limit)
        return mm

    return read


def _in_another(other: str, text: str, low: float, high: float) -> str:
    """What to write instead of a bare number that makes sense only in another unit: the 90 of a paper, say."""
    try:
        usual, meant = parse_length(f"{text} {unit()}"), parse_length(f"{text} {other}")
    except NotAMeasure:
        return ""
    return f"write {text} {other}" if usual > high and low <= meant <= high else ""


class OrOneLength:
    """Tells the schema of a list or a group that one length may stand in its place."""

    def __init__(self, example: str) -> None:
        self.example = example

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {"anyOf": [{"type": "string", "examples": [self.example]}, handler(core)]}


read_margin = _length_reader(0, 100)
"""A margin in mm from what was written."""


def _between(low: float, high: float) -> BeforeValidator:
    return BeforeValidator(_length_reader(low, high))


def _thin(low: float, high: float) -> BeforeValidator:
    return BeforeValidator(_length_reader(low, high, limits=print_calipers))


def _length_schema(example: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "examples": [example]})


PageSide = Annotated[float, _between(1, 400), _length_schema("21 mm")]
"""Height or width of a page in mm."""
LifeSide = Annotated[float, _between(20, 2000), _length_schema("198 mm")]
"""Height or width of the full-size book in mm."""
ThingSide = Annotated[float, _between(0.1, 4000), _length_schema("30 mm")]
"""A side of a thing in mm, finished or in life."""
PaperThickness = Annotated[float, _thin(0.01, 3), _length_schema("90 um")]
"""Caliper of one sheet, film or board in mm."""
FilmThickness = Annotated[float, _thin(0, 1), _length_schema("50 um")]
"""Film or glue in mm; 0 is allowed."""
Thickness = Annotated[float, _between(0.1, 200), _length_schema("4.2 mm")]
"""Thickness of a block or a book in mm."""
DummyThickness = Annotated[float, _between(1, 200), _length_schema("4 mm")]
"""Thickness of a dummy block in mm: less than 1 mm is a card, not a block."""


ScanWidth = Annotated[float, _between(1, 2000), _length_schema("140 mm")]
"""One part of a real cover in mm."""


def _read_scan_widths(value: object) -> object:
    if not isinstance(value, (list, tuple)) or len(value) != 3:
        widths = in_units("[140 mm, 28 mm, 140 mm]", "[5 1/2 in, 1 1/8 in, 5 1/2 in]")
        raise refuse("are not three widths", f"write them from the left of the scan, as {widths}")
    return value


ScanWidths = Annotated[tuple[ScanWidth, ...], BeforeValidator(_read_scan_widths)]
"""Back, spine and front of a real cover in mm."""


def _read_block_thickness(value: object) -> float | str:
    text = value if isinstance(value, float) else read_text(value).strip()
    if isinstance(text, str) and not any(sign.isdigit() for sign in text):
        if text.casefold() in ("fill", "free"):
            return "fill"
        some = in_units("4 mm", "5/32 in")
        raise refuse(
            f"{show(text)!r} is neither a length nor fill",
            f"write it like {some}, about {some}, layers of and the name of a stock, or fill",
        )
    return _length_reader(1, 200)(text)


BlockThickness = Annotated[
    float | Literal["fill"],
    BeforeValidator(_read_block_thickness),
    WithJsonSchema({"type": "string", "examples": ["4 mm", "about 4 mm", "layers of grey board", "fill"]}),
]
"""Thickness of a dummy block in mm, or ``fill``: what is left on its space."""
Margin = Annotated[float, BeforeValidator(read_margin), _length_schema("5 mm")]
"""A margin or turn-in in mm; 0 is allowed."""
SmallLength = Annotated[float, _between(0, 10), _length_schema("0.2 mm")]
"""Play or tolerance in mm; 0 is allowed."""
InkSpread = Annotated[float, _thin(0, 0.2), _length_schema("20 um")]
"""How far ink spreads beyond an edge in mm; 0 is allowed."""
Offset = Annotated[float, BeforeValidator(_length_reader(-10, 10, parse_offset)), _length_schema("-0.4 mm")]
"""A shift in mm, either way."""
Skew = Annotated[float, BeforeValidator(_length_reader(-5, 5, parse_offset)), _length_schema("0.2 mm")]
"""How far something leans in mm between two marks, either way."""
TabWidth = Annotated[float, _between(3, 20), _length_schema("3 mm")]
"""Width of a glue tab in mm: less than 3 mm does not hold."""
ShelfSide = Annotated[float, _between(3, 2000), _length_schema("92 mm")]
"""A side of a shelf space in mm."""
RoomLength = Annotated[float, _between(0, 2000), _length_schema("120 mm")]
"""A measure on a wall or a desk in mm; 0 is allowed."""
ViewingDistance = Annotated[float, _between(50, 5000), _length_schema("300 mm")]
"""From the eye to the book, in mm."""
SheetSide = Annotated[float, _between(40, 1500), _length_schema("210 mm")]
"""A side of a printer sheet in mm."""


def _in_points(low: float, high: float) -> str:
    return f"{print_pt(low)} to {print_pt(high)}"


_read_type_size = _length_reader(0.2, 30, parse_type_size, _in_points)
TypeSize = Annotated[float, BeforeValidator(_read_type_size), _length_schema("3.5 pt")]
"""Size of type (the em) in mm."""
FIT = 0.0
"""The size of type that stands for the largest that fits."""


def _read_size_or_fit(value: object) -> float:
    return FIT if isinstance(value, str) and value.strip().casefold() == "fit" else _read_type_size(value)


TypeSizeOrFit = Annotated[
    float, BeforeValidator(_read_size_or_fit), WithJsonSchema({"type": "string", "examples": ["3.5 pt", "fit"]})
]
"""Size of type (the em) in mm, or `FIT`."""
Spacing = Annotated[float, _between(0.2, 50), _length_schema("1.2 mm")]
"""Distance from one ruled line to the next in mm."""
StaffSpacing = Annotated[float, _between(0.1, 10), _length_schema("0.17 mm")]
"""Distance from one line of a music staff to the next in mm."""


ThreadThickness = Annotated[float, _thin(0.02, 2), _length_schema("0.15 mm")]
"""Thickness of thread or wire in mm."""
Grammage = Annotated[
    float,
    BeforeValidator(lambda value: _measured(parse_grammage, value)),
    WithJsonSchema({"type": "string", "examples": ["80 g/m2"]}),
]
"""Mass per area in g/m²."""
Bulk = Annotated[
    float,
    BeforeValidator(lambda value: _measured(parse_bulk, value)),
    WithJsonSchema({"type": "string", "examples": ["1.25 cm3/g"]}),
]
"""Thickness per mass and area in cm³/g."""


def _read_tracking(value: object) -> float:
    share = _measured(parse_share, value)
    if share > MOST_TRACKED:
        raise refuse(
            f"{read_text(value)} is too far apart for letters of one word", "write a percentage from 0 % to 30 %"
        )
    return share


Degree = Annotated[
    float,
    BeforeValidator(lambda value: _measured(parse_share, value)),
    WithJsonSchema({"type": "string", "examples": ["40 %"]}),
]
"""How much of something there is, from 0 to 1."""

Tracking = Annotated[float, BeforeValidator(_read_tracking), WithJsonSchema({"type": "string", "examples": ["6 %"]})]
"""How far letters stand apart, in ems: from 0 to 0.3."""

Resolution = Annotated[
    float,
    BeforeValidator(lambda value: _measured(parse_resolution, value)),
    WithJsonSchema({"type": "string", "examples": ["600 dpi"]}),
]
"""Printer dots per inch."""
