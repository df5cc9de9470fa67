"""Field types of the shelf file that are whole numbers: pages, leaves, holes."""

from __future__ import annotations

from typing import Annotated

from pydantic import AfterValidator, BeforeValidator, WithJsonSchema

from ...ground.amounts import parse_count
from ...ground.quantities import NotAMeasure
from .words import read_text, refuse

__all__ = [
    "Columns",
    "Copies",
    "Count",
    "Flyleaves",
    "FoldedPanels",
    "GridColumns",
    "LookNumber",
    "Month",
    "NewsPages",
    "PageCount",
    "PartPages",
    "PicturesOnPage",
    "SectionPages",
    "Squares",
    "Stations",
    "StripPanels",
    "Year",
]


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
        raise refuse(f"{count} is not a multiple of 4, but a folded sheet has four pages", f"write {near}")
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

GridColumns = Annotated[int, _whole(1, 100), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 100})]
"""How many stand beside one another in a grid."""


PartPages = Annotated[int, _whole(1, 2000), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 2000})]
"""Pages of a part of a book: at most 2000."""

LookNumber = Annotated[int, _whole(1, 99_999), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 99_999})]
"""Which of many looks a book has."""

StripPanels = Annotated[
    int,
    _whole(4, 400, even=True),
    WithJsonSchema({"type": "integer", "minimum": 4, "maximum": 400, "multipleOf": 2}),
]
"""Panels of the longest strip: even."""

Flyleaves = Annotated[
    int,
    _whole(0, 20, even=True),
    WithJsonSchema({"type": "integer", "minimum": 0, "maximum": 20, "multipleOf": 2}),
]
"""Blank panels at each end: even."""

Columns = Annotated[int, _whole(1, 12), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 12})]
"""Columns of text beside one another."""

PicturesOnPage = Annotated[int, _whole(1, 6), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 6})]
"""Pictures on a page of an album."""

FoldedPanels = Annotated[int, _whole(2, 16), WithJsonSchema({"type": "integer", "minimum": 2, "maximum": 16})]
"""Panels or rows into which a paper is folded."""

Copies = Annotated[int, _whole(1, 200), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 200})]
"""How many of a paper are made."""


def _in_fours(count: int) -> int:
    if count % 4:
        raise refuse(f"{count} is not a multiple of 4, but a folded sheet has four pages", "write 4, 8, 12 or 16")
    return count


NewsPages = Annotated[
    int, _whole(4, 16), AfterValidator(_in_fours), WithJsonSchema({"type": "integer", "enum": [4, 8, 12, 16]})
]
"""Pages of folded sheets that lie in one another."""

Year = Annotated[int, _whole(1583, 9999), WithJsonSchema({"type": "integer", "minimum": 1583, "maximum": 9999})]
"""A year of the calendar that is in use since then."""

Month = Annotated[int, _whole(1, 12), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 12})]
"""A month of a year."""

Squares = Annotated[int, _whole(4, 12), WithJsonSchema({"type": "integer", "minimum": 4, "maximum": 12})]
"""Squares along the side of a board."""
