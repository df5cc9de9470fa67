"""What the maker writes about the printer and its sheets."""

from __future__ import annotations

import math
from collections.abc import Callable
from enum import StrEnum
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from ..ground.told import print_range, unit_named
from ..ground.units import MM_PER_INCH, NotAMeasure, print_mm
from ..shelf_file.fields.entry import Entry
from ..shelf_file.fields.measures import (
    InkSpread,
    Margin,
    Offset,
    OrOneLength,
    Resolution,
    Skew,
    Thickness,
    read_margin,
)
from ..shelf_file.fields.words import Flag, ProfileFile, Title, read_text, refuse
from .papers import SheetFormat, find_format

__all__ = [
    "RULE_LENGTH",
    "SKEW_BASE",
    "SQUARE",
    "Diagonals",
    "Margins",
    "PaperPath",
    "PrinterEntry",
    "Profile",
    "ReverseOffset",
    "Rules",
    "SheetName",
    "SheetOrder",
    "Turn",
]

RULE_LENGTH = 150.0
"""Length in mm of the two rules on the ruler page, but for one in inches."""

SQUARE = 100.0
"""Side in mm of the square on the ruler page: a gauge that opens 150 mm spans its diagonals."""

SKEW_BASE = 120.0
"""From the lower hole on the ruler page to the upper one, in mm: the skew of the reverse is read between them."""

MOST_OFF = 0.03
"""A reading further off than this share of what was drawn is a slip of the maker, not of the printer."""

MOST_APART = 0.5
"""Diagonals may differ by so many mm from what the rules lead to expect; readings to half a millimetre do."""


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

    left: Margin = Field(5.0, description="white edge on the left")
    right: Margin = Field(5.0, description="white edge on the right")
    top: Margin = Field(5.0, description="white edge at the top")
    bottom: Margin = Field(5.0, description="white edge at the foot")


def _read_margins(value: object) -> object:
    if isinstance(value, (dict, Margins)):
        return value
    return dict.fromkeys(("left", "right", "top", "bottom"), read_margin(value))


def _as_drawn(*keys: str) -> Callable[[object], object]:
    """Lets readings that are left out be as long as they were drawn."""

    def with_drawn(written: object) -> object:
        if isinstance(written, dict) and "drawn" in written:
            return {**dict.fromkeys(keys, written["drawn"]), **written}
        return written

    return with_drawn


class Rules(Entry):
    """What the two rules of the ruler page measure on the printed sheet."""

    drawn: Thickness = Field(RULE_LENGTH, description="how long they were drawn: 150 mm, or 6 in on a page in inches")
    across: Thickness = Field(RULE_LENGTH, description="the level rule, as measured")
    up: Thickness = Field(RULE_LENGTH, description="the upright rule, as measured")

    _drawn = model_validator(mode="before")(_as_drawn("across", "up"))

    @model_validator(mode="after")
    def _believable(self) -> Self:
        _check_reading("across", self.across, self.drawn)
        _check_reading("up", self.up, self.drawn)
        return self

    @property
    def across_off(self) -> float:
        """How many times its length the level rule came out."""
        return self.across / self.drawn

    @property
    def up_off(self) -> float:
        """How many times its length the upright rule came out."""
        return self.up / self.drawn


class Diagonals(Entry):
    """What the diagonals of the ruler page's square measure on the printed sheet."""

    drawn: Thickness = Field(SQUARE, description="the side of the square as drawn: 100 mm, or 4 in on a page in inches")
    rising: Thickness = Field(description="from the lower left corner to the upper right, as measured")
    falling: Thickness = Field(description="from the upper left corner to the lower right, as measured")

    @model_validator(mode="after")
    def _believable(self) -> Self:
        _check_reading("rising", self.rising, self.drawn * math.sqrt(2))
        _check_reading("falling", self.falling, self.drawn * math.sqrt(2))
        return self


def _check_reading(name: str, measured: float, drawn: float) -> None:
    """Refuse a reading that is a slip: no printer that is set to 100 % is so far off."""
    if abs(measured / drawn - 1) <= MOST_OFF:
        return
    units = (("cm", 10.0), ("in", MM_PER_INCH))
    meant = next((unit for unit, factor in units if abs(measured * factor / drawn - 1) <= MOST_OFF), None)
    raise refuse(
        f"{name} is more than 3 % off the {print_mm(drawn, 1)} drawn",
        f"did you mean {measured:g} {meant}?"
        if meant
        else f"measure again, in {unit_named()}, from end mark to end mark, and see that no two readings are swapped",
        print_range(drawn * (1 - MOST_OFF), drawn * (1 + MOST_OFF), 1),
    )


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
    skew: Skew = Field(
        0.0, description="how much farther to the right 120 mm farther up; to the left with a minus sign"
    )


class PaperPath(Entry):
    """A printer and its tray: the sheet, the edge it leaves white, its resolution and how far it stretches."""

    name: Title | None = Field(None, description="which printer and paper path this is, such as study, rear tray")
    profile: ProfileFile | None = Field(None, description="file with what was measured of the printer")
    sheet: SheetName = Field(
        default_factory=lambda: find_format("A4"), description="A3 A4 A5 letter legal tabloid or two sides"
    )
    margins: Annotated[Margins, BeforeValidator(_read_margins), OrOneLength("5 mm")] = Field(
        default_factory=Margins, description="one length, or left, right, top and bottom"
    )
    resolution: Resolution = Field(600.0, description="dots per inch")
    ink_spread: InkSpread = Field(0.0, description="how far ink spreads at every edge, such as 20 um")
    turn: Turn = Field(Turn.LONG_EDGE, description="the edge on which sheets are turned to print their reverse")
    reverse_offset: ReverseOffset = Field(
        default_factory=ReverseOffset, description="how far the reverse is printed from where it belongs"
    )
    rules: Rules = Field(default_factory=Rules, description="the two rules of the ruler page, as measured")
    diagonals: Diagonals | None = Field(None, description="the diagonals of the square on the ruler page, as measured")

    @model_validator(mode="after")
    def _readings_go_together(self) -> Self:
        """In a parallelogram the squares of diagonals and sides add up to the same."""
        if self.diagonals is None or "rules" not in self.model_fields_set:
            return self
        by_rules = math.hypot(self.rules.across_off, self.rules.up_off) * self.diagonals.drawn
        read = math.hypot(self.diagonals.rising, self.diagonals.falling) / math.sqrt(2)
        if abs(read - by_rules) > MOST_APART:
            raise refuse(
                f"the diagonals are {print_mm(read, 1)} on average, where the rules make them {print_mm(by_rules, 1)}",
                "measure both rules and both diagonals of one print again",
                print_mm(MOST_APART),
            )
        return self

    def beside(self, usual: PaperPath) -> PaperPath:
        """This path, known by its profile; or, without one, the usual path but for what is said here.

        Rules and diagonals were read on one print, so one of them does not go with the other path's.
        """
        if self.profile is not None:
            return self
        said = {key: getattr(self, key) for key in self.model_fields_set}
        if {"rules", "diagonals"} & said.keys():
            said |= {"rules": self.rules, "diagonals": self.diagonals}
        return usual.model_copy(update={**said, "name": self.name, "profile": None})


class PrinterEntry(PaperPath):
    """The usual printer, and how pieces are to be laid on sheets."""

    gap_between_pieces: Margin = Field(2.0, description="least distance between pieces")
    sheet_order: SheetOrder = Field(
        SheetOrder.FEWEST, description="fewest sheets; or by book, with few books on each sheet"
    )
    cutting_machine: Flag = Field(False, description="yes: print alignment crosses, and write drawings to cut by")


class Profile(Entry):
    """What the file of a profile holds, under the name it has in a shelf file, so that messages are the same."""

    printer: PrinterEntry
