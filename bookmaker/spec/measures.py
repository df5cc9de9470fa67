"""Field types of the shelf file: text as the maker wrote it on the way in, plain numbers on the way out.

Each type refuses what cannot be meant (a page of 3 m, paper of 0) with the limits it keeps. All raise
pydantic errors of the type ``maker`` that carry the message and the remedy apart.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, GetJsonSchemaHandler, WithJsonSchema
from pydantic_core import CoreSchema, PydanticCustomError

from ..drawing import Colour
from ..quantities import show
from ..units import (
    NotAMeasure,
    parse_bulk,
    parse_count,
    parse_grammage,
    parse_length,
    parse_offset,
    parse_resolution,
    print_length,
)
from .entry import Names

__all__ = [
    "BlockThickness",
    "Bulk",
    "Count",
    "Ease",
    "FilmThickness",
    "Flag",
    "Flyleaves",
    "Grammage",
    "Ink",
    "LifeSide",
    "Margin",
    "Offset",
    "OrOneLength",
    "PageCount",
    "PageSide",
    "PaperThickness",
    "PartPages",
    "Resolution",
    "SectionPages",
    "SheetSide",
    "ShelfSide",
    "SolidThickness",
    "SpaceName",
    "Spacing",
    "StaffSpacing",
    "Stations",
    "StockName",
    "TabWidth",
    "Text",
    "Thickness",
    "ThreadThickness",
    "Title",
    "TypeSize",
    "read_margin",
    "read_text",
    "refuse",
]


LONGEST_TITLE = 300
JOINERS = "\u200c\u200d\u200e\u200f\u00ad"
"""Invisible signs that belong to writing: joiners, direction marks, the soft hyphen."""


def refuse(message: str, remedy: str, limit: str = "") -> PydanticCustomError:
    """The error a field type raises; `remedy` says what to write instead."""
    return PydanticCustomError("maker", "{message}", {"message": message, "remedy": remedy, "limit": limit})


def read_text(value: object) -> str:
    """One value as text; a list or mapping in its place is refused."""
    if isinstance(value, str):
        return value
    if value is None:
        raise refuse("is empty", "write a value or leave the line out")
    if isinstance(value, (int, float)):
        return str(value)
    form = "a list" if isinstance(value, (list, tuple)) else "a group of keys"
    raise refuse(f"is {form} where one value belongs", "write one value on the line")


def _read_title(value: object) -> str:
    title = " ".join(read_text(value).split())
    if not title:
        raise refuse("is empty", "write at least one letter")
    if len(title) > LONGEST_TITLE:
        raise refuse(f"has {len(title)} characters", f"write at most {LONGEST_TITLE}", f"{LONGEST_TITLE} characters")
    hidden = next((sign for sign in title if not sign.isprintable() and sign not in JOINERS), "")
    if hidden:
        raise refuse(f"holds the control character U+{ord(hidden):04X}", "write visible letters only")
    return title


def _measured(parse: Callable[[str], float], value: object) -> float:
    text = read_text(value)
    try:
        return parse(text)
    except NotAMeasure as problem:
        raise refuse(problem.message, problem.remedy) from None


def _length_reader(
    low: float, high: float, parse: Callable[[str], float] = parse_length
) -> Callable[[object], float]:
    def read(value: object) -> float:
        if isinstance(value, float):
            return value
        text = read_text(value)
        try:
            mm = parse(text)
        except NotAMeasure as problem:
            raise refuse(problem.message, _in_microns(text, low, high) or problem.remedy) from None
        if not low <= mm <= high:
            limit = f"{print_length(low)} to {print_length(high)}"
            raise refuse(f"{value} is out of range", f"write a length from {limit}", limit)
        return mm

    return read


def _in_microns(text: str, low: float, high: float) -> str:
    """What to write instead of a bare number that makes sense only in µm: the 90 of a paper, say."""
    try:
        as_mm, as_um = parse_length(f"{text} mm"), parse_length(f"{text} um")
    except NotAMeasure:
        return ""
    return f"write {text} um" if as_mm > high and low <= as_um <= high else ""


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


def _length_schema(example: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "examples": [example]})


PageSide = Annotated[float, _between(1, 400), _length_schema("21 mm")]
"""Height or width of a page in mm."""
LifeSide = Annotated[float, _between(20, 2000), _length_schema("198 mm")]
"""Height or width of the full-size book in mm."""
PaperThickness = Annotated[float, _between(0.01, 3), _length_schema("90 um")]
"""Caliper of one sheet, film or board in mm."""
FilmThickness = Annotated[float, _between(0, 1), _length_schema("50 um")]
"""Film or glue in mm; 0 is allowed."""
Thickness = Annotated[float, _between(0.1, 200), _length_schema("4.2 mm")]
"""Thickness of a block or a book in mm."""
SolidThickness = Annotated[float, _between(1, 200), _length_schema("4 mm")]
"""Thickness of a solid block in mm: less than 1 mm is a card, not a block."""


def _read_block_thickness(value: object) -> float | str:
    text = value if isinstance(value, float) else read_text(value).strip()
    if isinstance(text, str) and not any(sign.isdigit() for sign in text):
        if text.casefold() == "fill":
            return "fill"
        raise refuse(f"{show(text)!r} is neither a length nor fill", "write it like 4 mm, or fill")
    return _length_reader(1, 200)(text)


BlockThickness = Annotated[
    float | Literal["fill"],
    BeforeValidator(_read_block_thickness),
    WithJsonSchema({"type": "string", "examples": ["4 mm", "fill"]}),
]
"""Thickness of a solid block in mm, or ``fill``: what is left on its space."""
Margin = Annotated[float, BeforeValidator(read_margin), _length_schema("5 mm")]
"""A margin or turn-in in mm; 0 is allowed."""
Ease = Annotated[float, _between(0, 10), _length_schema("0.2 mm")]
"""Play or tolerance in mm; 0 is allowed."""
Offset = Annotated[float, BeforeValidator(_length_reader(-10, 10, parse_offset)), _length_schema("-0.4 mm")]
"""A shift in mm, either way."""
TabWidth = Annotated[float, _between(3, 20), _length_schema("3 mm")]
"""Width of a glue tab in mm: less than 3 mm does not hold."""
ShelfSide = Annotated[float, _between(3, 2000), _length_schema("92 mm")]
"""A side of a shelf space in mm."""
SheetSide = Annotated[float, _between(40, 1500), _length_schema("210 mm")]
"""A side of a printer sheet in mm."""
TypeSize = Annotated[float, _between(0.2, 30), _length_schema("3.5 pt")]
"""Size of type (the em) in mm."""
Spacing = Annotated[float, _between(0.2, 50), _length_schema("1.2 mm")]
"""Distance from one ruled line to the next in mm."""
StaffSpacing = Annotated[float, _between(0.1, 10), _length_schema("0.17 mm")]
"""Distance from one line of a music staff to the next in mm."""


def _whole(low: int, high: int, *, even: bool = False) -> BeforeValidator:
    def read(value: object) -> int:
        text = read_text(value)
        try:
            count = parse_count(text)
        except NotAMeasure as problem:
            raise refuse(problem.message, problem.remedy) from None
        if not low <= count <= high:
            raise refuse(f"{text} is out of range", f"write a whole number from {low} to {high}", f"{low} to {high}")
        if even and count % 2:
            near = f"{count - 1} or {count + 1}" if count > low else f"{count + 1}"
            raise refuse(f"{count} is odd, but a leaf has two pages", f"write {near}")
        return count

    return BeforeValidator(read)


Count = Annotated[int, _whole(0, 1000), WithJsonSchema({"type": "integer", "minimum": 0, "maximum": 1000})]
"""A small whole number."""
PageCount = Annotated[
    int,
    _whole(2, 2000, even=True),
    WithJsonSchema({"type": "integer", "minimum": 2, "maximum": 2000, "multipleOf": 2}),
]
"""Pages of a book: even, at most 2000."""

def _read_section_pages(value: object) -> int | None:
    text = read_text(value).strip()
    if text.casefold() == "automatic":
        return None
    try:
        count = parse_count(text)
    except NotAMeasure as problem:
        raise refuse(problem.message, f"{problem.remedy}, or automatic") from None
    if not 4 <= count <= 400:
        raise refuse(f"{text} is out of range", "write a multiple of 4 from 4 to 400, or automatic", "4 to 400")
    if count % 4:
        near = f"{count - count % 4} or {count - count % 4 + 4}"
        raise refuse(f"{count} is no multiple of 4, but a folded sheet has four pages", f"write {near}")
    return count


SectionPages = Annotated[
    int | None,
    BeforeValidator(_read_section_pages),
    WithJsonSchema(
        {"anyOf": [{"const": "automatic"}, {"type": "integer", "minimum": 4, "maximum": 400, "multipleOf": 4}]}
    ),
]
"""Pages of a section: a multiple of 4, or None where it was left to be chosen."""

Stations = Annotated[int, _whole(2, 40), WithJsonSchema({"type": "integer", "minimum": 2, "maximum": 40})]
"""Holes through the spine fold of a section."""

ThreadThickness = Annotated[float, _between(0.02, 2), _length_schema("0.15 mm")]
"""Thickness of thread or wire in mm."""
PartPages = Annotated[int, _whole(1, 2000), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 2000})]
"""Pages of a part of a book: at most 2000."""

Flyleaves = Annotated[
    int,
    _whole(0, 20, even=True),
    WithJsonSchema({"type": "integer", "minimum": 0, "maximum": 20, "multipleOf": 2}),
]
"""Blank panels at each end: even."""

Text = Annotated[str, BeforeValidator(read_text)]
"""One value, kept as it was written."""

Title = Annotated[str, BeforeValidator(_read_title)]
"""A title or a name: some visible text, at most 300 characters, white space tidied."""

StockName = Annotated[str, BeforeValidator(read_text), Names("stock")]
"""The name of a stock, as under ``stocks``."""

SpaceName = Annotated[str, BeforeValidator(read_text), Names("space")]
"""The name of a space, as under ``spaces``."""

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
Resolution = Annotated[
    float,
    BeforeValidator(lambda value: _measured(parse_resolution, value)),
    WithJsonSchema({"type": "string", "examples": ["600 dpi"]}),
]
"""Printer dots per inch."""


def _read_flag(value: object) -> bool:
    text = read_text(value).strip().casefold()
    if text in {"yes", "true", "on"}:
        return True
    if text in {"no", "false", "off"}:
        return False
    raise refuse(f"{show(text)} is neither yes nor no", "write yes or no")


Flag = Annotated[bool, BeforeValidator(_read_flag), WithJsonSchema({"type": "boolean"})]
"""Yes or no."""


def _read_ink(value: object) -> Colour:
    if isinstance(value, Colour):
        return value
    try:
        return Colour.from_hex(read_text(value).strip())
    except ValueError:
        written = show(str(value))
        raise refuse(f"{written} is not a colour", 'write red, green and blue as "#7a1f2b", in quotes') from None


Ink = Annotated[
    Colour, BeforeValidator(_read_ink), WithJsonSchema({"type": "string", "pattern": "^#[0-9a-fA-F]{3,6}$"})
]
"""A colour, written ``"#rrggbb"``."""
