"""The whole shelf file as the maker wrote it."""

from __future__ import annotations

from contextlib import suppress
from functools import cache
from types import GenericAlias
from typing import Annotated, Any, ClassVar

from pydantic import BeforeValidator, Field, WithJsonSchema, create_model, model_validator

from ..ground.amounts import parse_ratio
from ..ground.told import Units
from ..ground.units import NotAMeasure
from ..paper.eyesight import READING_DISTANCE
from ..paper.papers import find_format, told_of
from ..paper.printer_entry import PrinterEntry
from ..paper.stock_entry import GlueFilm, StockEntry, ToleranceText
from ..shelf_file.fields.entry import Entry, either
from ..shelf_file.fields.measures import Thickness, ViewingDistance
from ..shelf_file.fields.words import ByName, Text, Title, read_text, refuse
from ..shelf_file.yaml_tree import Tree
from ..things.thing import AnyFamily
from .arranging.keys import ArrangeEntry
from .room.surface_entry import RoomSurfaceEntry
from .space_entry import SpaceEntry

__all__ = ["THINGS", "MeasuredRowEntry", "ShelfSpec", "shelf_model", "units_meant"]


def _read_scale(value: object) -> float:
    if isinstance(value, float):
        return value
    try:
        scale = parse_ratio(read_text(value))
    except NotAMeasure as problem:
        raise refuse(problem.message, problem.remedy) from None
    if not 1 <= scale <= 300:
        raise refuse(f"a scale of 1:{scale:g} is out of range", "write a scale from 1:1 to 1:300", "1:1 to 1:300")
    return scale


Scale = Annotated[float, BeforeValidator(_read_scale), WithJsonSchema({"type": "string", "examples": ["1:12"]})]
"""How many times smaller than life."""


def _read_folders(value: object) -> object:
    return [value] if isinstance(value, str) else value


Folders = Annotated[tuple[Text, ...], BeforeValidator(_read_folders)]
"""Paths of folders; one alone may stand without a list."""


class MeasuredRowEntry(Entry):
    """Finished books that were measured side by side."""

    books: tuple[Text, ...] = Field(min_length=1, description="titles, or numbers in the list of books")
    thickness: Thickness = Field(description="how thick they are together, pressed lightly")


class ShelfSpec(Entry):
    """The shelf file, in which things of some families may stand."""

    families: ClassVar[tuple[AnyFamily, ...]] = ()

    shelf: Title = Field(description="name of the shelf, printed on the sheets")
    scale: Scale = Field(12.0, description="scale, such as 1:12; divides every life_size")
    units: Units | None = Field(
        None, description="the unit in which lengths are shown: millimetres or inches; as the sheet is, if not given"
    )
    printer: PrinterEntry = Field(default_factory=PrinterEntry, description="sheet, margins, resolution, rules")
    stocks: Annotated[dict[str, StockEntry], ByName] = Field(description="papers and cards by name")
    spaces: Annotated[dict[str, SpaceEntry], ByName] = Field(
        default_factory=dict, description="places on the shelf by name"
    )
    surfaces: Annotated[dict[str, RoomSurfaceEntry], ByName] = Field(
        default_factory=dict, description="walls, desks and floors of the room by name"
    )
    glue_tolerances: dict[GlueFilm, ToleranceText] = Field(
        default_factory=dict, description="how far films of a glue may be off, by glue; a third, if not given"
    )
    arrange: ArrangeEntry = Field(default_factory=ArrangeEntry, description="how rows are put in order")
    measured_rows: tuple[MeasuredRowEntry, ...] = Field((), description="finished books measured side by side")
    texts_from: Folders = Field((), description="folders elsewhere that texts and captions may come from")
    viewing_distance: ViewingDistance = Field(READING_DISTANCE, description="from the eye to the page, such as 300 mm")

    @property
    def told(self) -> Units:
        """What lengths are told in: as it says, or in inches if the usual sheet is one of inches."""
        return self.units or told_of(self.printer.sheet)


def units_meant(shelf: Tree) -> Units:
    """What a file that may be wrong is told in, before it is checked."""
    written, printer = shelf.child("units"), shelf.child("printer")
    sheet = printer and printer.child("sheet")
    with suppress(ValueError):
        return Units(str(written.plain())) if written else told_of(find_format(str(sheet.plain() if sheet else "A4")))
    return Units.MILLIMETRES


THINGS = "things"
"""The list of things of all kinds."""


@cache
def shelf_model(families: tuple[AnyFamily, ...]) -> type[ShelfSpec]:
    """The model of a shelf file in which things of some kinds may stand."""
    sections: dict[str, Any] = dict(family.section[:2] for family in families if family.section)
    listed = [family.listed for family in families if family.listed]
    if listed:
        sections[THINGS] = (
            GenericAlias(tuple, (either(listed), ...)),
            Field((), description="what else is made, each of a kind"),
        )
    counted = [family.section.key for family in families if family.section and family.section.counted]

    def with_things_alone(written: object) -> object:
        """A shelf of things needs no books."""
        if isinstance(written, dict) and written.get(THINGS):
            return {**dict.fromkeys(counted, ()), **written}
        return written

    validators: dict[str, Any] = {"with_things_alone": model_validator(mode="before")(with_things_alone)}
    model: type[ShelfSpec] = create_model(
        ShelfSpec.__name__,
        __base__=ShelfSpec,
        __doc__=ShelfSpec.__doc__,
        __validators__=validators,
        **sections,
    )
    model.families = families
    return model
