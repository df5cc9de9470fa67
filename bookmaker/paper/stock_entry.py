"""What the maker writes about paper and card."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator
from pydantic_core import PydanticCustomError

from ..ground.amounts import a_pile, parse_grammage, parse_pile, parse_share
from ..ground.quantities import show
from ..ground.thin import print_caliper, print_calipers
from ..ground.told import in_units
from ..ground.units import NotAMeasure, parse_length
from ..shelf_file.fields.entry import Entry
from ..shelf_file.fields.measures import Bulk, FilmThickness, Grammage, OrOneLength, PaperThickness
from ..shelf_file.fields.words import Text, read_text, refuse
from .glue import GLUES
from .grades import usual_bulk
from .printer_entry import PaperPath, SheetName

__all__ = ["GlueFilm", "Grain", "Pile", "StockEntry", "Tolerance", "ToleranceText", "of_weight"]

THINNEST, THICKEST = 0.01, 3.0
"""What a sheet of paper or card may measure, in mm."""

USUAL_GRAMMAGE = 80.0
"""What the paper of offices weighs, in g/m²."""

MOST_OFF_CUTS = 50
"""More left-over sheets of one stock than anybody keeps."""


class Grain(StrEnum):
    """Which side of the sheet the fibres follow."""

    LONG = "long"
    SHORT = "short"
    UNKNOWN = "unknown"


class Pile(Entry):
    """A measured pile: so many sheets, so thick in mm."""

    sheets: int
    height: float

    @property
    def caliper(self) -> float:
        """Thickness of one sheet in mm."""
        return self.height / self.sheets


class Tolerance(Entry):
    """How far a thickness may be off: a share of it, or a length in mm."""

    share: float = 0.0
    length: float = 0.0

    def of(self, thickness: float) -> float:
        """The tolerance in mm of something `thickness` mm thick."""
        return self.share * thickness + self.length


def _read_pile(value: object) -> Pile:
    try:
        sheets, height = parse_pile(read_text(value))
    except NotAMeasure as problem:
        raise refuse(problem.message, problem.remedy) from None
    pile = Pile(sheets=sheets, height=height)
    if not THINNEST <= pile.caliper <= THICKEST:
        raise refuse(
            f"{value} makes each sheet {print_caliper(pile.caliper)}",
            f"count and measure again: paper and card have {print_calipers(THINNEST, THICKEST)} a sheet",
        )
    return pile


def _read_tolerance(value: object) -> Tolerance:
    text = read_text(value)
    try:
        if "%" in text:
            return Tolerance(share=parse_share(text))
        return Tolerance(length=parse_length(text))
    except NotAMeasure as problem:
        some = in_units("8 um", "0.3 mil")
        raise refuse(problem.message, f"write a percentage such as 10 % or a length such as {some}") from None


def _read_glue(value: object) -> object:
    text = read_text(value)
    if text.casefold() not in GLUES and not any(sign.isdigit() for sign in text):
        some = in_units("25 um", "1 mil")
        known = "spray, glue stick, paste, PVA or double-sided film"
        raise refuse(f"{show(text)} is not a glue known here", f"write {known}, or how thick it dries, such as {some}")
    return GLUES.get(text.casefold(), text)


def _read_films(value: object) -> object:
    return value if isinstance(value, (list, tuple)) else (value,)


def _read_off_cuts(value: object) -> object:
    sizes = value if isinstance(value, (list, tuple)) else (value,)
    if len(sizes) > MOST_OFF_CUTS:
        raise refuse(f"lists {len(sizes)} off-cuts", f"write at most {MOST_OFF_CUTS}", f"at most {MOST_OFF_CUTS}")
    return sizes


def of_weight(grammage: float) -> str:
    """The keys for a paper of which the weight is known, in g/m².

    >>> of_weight(80)
    'grammage: 80 g/m2, bulk: 1.25 cm3/g'
    """
    return f"grammage: {grammage:g} g/m2, bulk: {usual_bulk(grammage):g} cm3/g"


GlueFilm = Annotated[FilmThickness, BeforeValidator(_read_glue)]
"""A glue film in mm, given by a length or by the name of the glue."""

_TEXT = WithJsonSchema({"type": "string"})


ToleranceText = Annotated[Tolerance, BeforeValidator(_read_tolerance), _TEXT]
"""How far a thickness may be off, as it is written."""


class StockEntry(Entry):
    """A paper or card: how thick it is, which way its fibres run, and the sheet it comes in.

    Its caliper follows from one of: `caliper` (or `thickness`), `grammage` with `bulk`, `basis_weight`,
    or a measured `pile`. Films lie over the print and add to the caliper.
    """

    caliper: PaperThickness | None = Field(None, description="thickness of one sheet")
    thickness: PaperThickness | None = Field(None, description="another word for caliper")
    grammage: Grammage | None = Field(None, description="mass per area, such as 80 g/m2")
    bulk: Bulk | None = Field(None, description="thickness for its weight, such as 1.25 cm3/g")
    basis_weight: Text | None = Field(None, description="US basis weight and grade, such as 60 lb book")
    pile: Annotated[Pile, BeforeValidator(_read_pile), WithJsonSchema({"type": "string"})] | None = Field(
        None, description="a measured pile, such as 20 sheets = 1.52 mm"
    )
    film: Annotated[tuple[FilmThickness, ...], BeforeValidator(_read_films), OrOneLength("50 um")] = Field(
        (), description="films over the print: one thickness or a list"
    )
    glue: GlueFilm = Field(
        GLUES["paste"], description="glue film: spray, glue stick, paste, PVA, double-sided film or a length"
    )
    grain: Grain = Field(Grain.UNKNOWN, description="long or short: the side of the sheet the fibres follow")
    tolerance: ToleranceText | None = Field(
        None, description="how far the caliper may be off, two standard deviations, such as 8 % or 6 um"
    )
    limits: ToleranceText | None = Field(
        None, description="how far off it never is, as a mill states, such as 8 %; instead of tolerance"
    )
    sheet: SheetName | None = Field(None, description="sheet format, if it is not the printer's usual one")
    off_cuts: Annotated[tuple[SheetName, ...], BeforeValidator(_read_off_cuts), OrOneLength("148 x 210 mm")] = Field(
        (), description="partly used sheets, to be filled first: width x height as they lay on the whole sheet"
    )

    printer: PaperPath | None = Field(None, description="its printer or paper path, if it is not the usual one")

    @model_validator(mode="after")
    def _one_way_to_the_caliper(self) -> Self:
        if self.caliper is not None and self.thickness is not None:
            raise refuse(
                "gives both caliper and thickness, which are the same thing",
                "keep one of the two",
                instead={"thickness": None},
            )
        given = self.caliper if self.caliper is not None else self.thickness
        if given is None and self.pile is None and self.bulk is None and self.basis_weight is None:
            raise self._too_little()
        if self.tolerance is not None and self.limits is not None:
            raise refuse(
                "gives both tolerance and limits",
                "keep limits if a mill states them, or tolerance if it was measured",
                instead={"limits": None},
            )
        if self.bulk is not None and self.grammage is None and self.basis_weight is None:
            key, weight = in_units("grammage", "basis_weight"), in_units("80 g/m2", "20 lb bond")
            raise refuse("has a bulk but no weight to go with it", f"add {key}: {weight}", instead={key: weight})
        return self

    def _too_little(self) -> PydanticCustomError:
        caliper = in_units("90 um", "3.5 mil")
        if self.grammage is None:
            weight = in_units(of_weight(USUAL_GRAMMAGE), "basis_weight: 20 lb bond")
            ways = f"caliper: {caliper}, or {weight}"
        else:
            ways = f"bulk: {usual_bulk(self.grammage):g} cm3/g, as most paper of this weight has"
        return refuse(
            "says nothing about its thickness",
            f"add {ways}, or best a measured pile: {a_pile()}",
            instead={"caliper": caliper, **dict.fromkeys(("thickness", "pile", "bulk", "basis_weight"))},
        )

    @classmethod
    def in_one_value(cls, written: str, /) -> str:
        """The weight in grams that wrappers of paper state, with a bulk that goes with it."""
        try:
            return of_weight(parse_grammage(written))
        except NotAMeasure:
            return ""

    def printed_by(self, usual: PaperPath) -> PaperPath:
        """The printer and tray this stock goes through, if not the usual one."""
        return self.printer.beside(usual) if self.printer else usual
