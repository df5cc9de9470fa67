"""What the maker writes about the printer and its sheets."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from ..papers import SheetFormat, find_format
from ..units import NotAMeasure
from .entry import Entry
from .measures import Flag, Margin, Offset, OrOneLength, Resolution, Thickness, read_margin, read_text, refuse

__all__ = ["RULE_LENGTH", "Margins", "PrinterEntry", "ReverseOffset", "Rules", "SheetName", "SheetOrder", "Turn"]

RULE_LENGTH = 150.0
"""Length in mm of the two rules on the ruler page."""


def _read_format(value: object) -> SheetFormat:
    if isinstance(value, SheetFormat):
        return value
    try:
        return find_format(read_text(value))
    except NotAMeasure as problem:
        raise refuse(problem.message, problem.remedy) from None


SheetName = Annotated[
    SheetFormat,
    BeforeValidator(_read_format),
    WithJsonSchema({"type": "string", "examples": ["A4", "8.5 x 11 in"]}),
]
"""A sheet format by name or by two sides."""


class Margins(Entry):
    """What the printer cannot reach on each side of the sheet, in mm."""

    left: Margin = 5.0
    right: Margin = 5.0
    top: Margin = 5.0
    bottom: Margin = 5.0


def _read_margins(value: object) -> object:
    if isinstance(value, (dict, Margins)):
        return value
    return dict.fromkeys(("left", "right", "top", "bottom"), read_margin(value))


class Rules(Entry):
    """What the two rules of the ruler page, drawn 150 mm long, measure on the printed sheet."""

    across: Thickness = Field(RULE_LENGTH, description="the level rule, as measured")
    up: Thickness = Field(RULE_LENGTH, description="the upright rule, as measured")

    @model_validator(mode="after")
    def _believable(self) -> Self:
        for name, measured in (("across", self.across), ("up", self.up)):
            if abs(measured / RULE_LENGTH - 1) > 0.03:
                raise refuse(
                    f"{name} is more than 3 % off the 150 mm drawn",
                    "measure again, in mm, from end mark to end mark, and see that both rules are not swapped",
                    "145.5 mm to 154.5 mm",
                )
        return self


class SheetOrder(StrEnum):
    """What comes first when pieces are laid on sheets."""

    FEWEST = "fewest sheets"
    BY_BOOK = "by book"


class Turn(StrEnum):
    """The edge a sheet is turned on to print its reverse."""

    LONG_EDGE = "long edge"
    SHORT_EDGE = "short edge"


class ReverseOffset(Entry):
    """How far the reverse is printed from where it belongs, in mm, as seen on the page of the reverse."""

    right: Offset = Field(0.0, description="how far to the right; to the left with a minus sign")
    up: Offset = Field(0.0, description="how far up; down with a minus sign")


class PrinterEntry(Entry):
    """The printer: its sheet, the edge it leaves white, its resolution and how far it stretches."""

    sheet: SheetName = Field(
        default_factory=lambda: find_format("A4"), description="A3 A4 A5 letter legal tabloid or two sides"
    )
    margins: Annotated[Margins, BeforeValidator(_read_margins), OrOneLength("5 mm")] = Field(
        default_factory=Margins, description="one length, or left, right, top and bottom"
    )
    resolution: Resolution = Field(600.0, description="dots per inch")
    knife_room: Margin = Field(2.0, description="least distance between pieces")
    sheet_order: SheetOrder = Field(
        SheetOrder.FEWEST, description="fewest sheets; or by book, with few books on each sheet"
    )
    turn: Turn = Field(Turn.LONG_EDGE, description="the edge on which sheets are turned to print their reverse")
    reverse_offset: ReverseOffset = Field(
        default_factory=ReverseOffset, description="how far the reverse is printed from where it belongs"
    )
    cutting_machine: Flag = Field(False, description="yes: print alignment crosses, and write drawings to cut by")
    rules: Rules = Field(default_factory=Rules, description="the two rules of the ruler page, as measured")
