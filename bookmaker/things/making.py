"""How a thing is made, as it tells itself: steps, drawings, tools, what is used up, what to measure.

The guide above lays this out, and knows nothing of bindings.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from ..ground.drawing import Art
from ..ground.geometry import Size
from ..paper.glue import GLUES, glue_called
from ..paper.stock import Stock
from ..sheets.flat import Flat
from ..shelf_file.whereabouts import Whereabouts
from .prints import Prints

__all__ = ["Bench", "Chapter", "Figure", "Making", "Measure", "Supply", "Unit"]


class Unit(StrEnum):
    """What a supply is counted in: mm of its length, or mm² of the area it covers."""

    LENGTH = "length"
    AREA = "area"


@dataclass(frozen=True, slots=True)
class Supply:
    """Something that is used up besides paper and board: thread and wire in mm, glue in mm² of glued area.

    `film` is the thickness of a dry film of glue in mm.
    """

    what: str
    amount: float
    unit: Unit
    film: float = GLUES["pva"]


@dataclass(frozen=True, slots=True)
class Measure:
    """Something to measure: what was computed, in mm, and what is written for the real value, and where.

    `measured` is what the shelf file says already.
    """

    what: str
    computed: float
    written: str
    measured: float | None = None


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing in a box of a size in mm, from its lower left corner, and what stands below it."""

    art: Art
    size: Size
    caption: str = ""


@dataclass(frozen=True, slots=True)
class Making:
    """How one part is made: its heading, its steps, its drawings, and what it takes."""

    heading: str
    steps: tuple[str, ...]
    figures: tuple[Figure, ...] = ()
    tools: tuple[str, ...] = ()
    supplies: tuple[Supply, ...] = ()
    measures: tuple[Measure, ...] = ()


@dataclass(frozen=True, slots=True)
class Chapter:
    """What a thing tells its maker: what it is, its sizes, and how its parts are made, in the order of the work.

    `sizes` are at most six, each with what it is. Things of one `kin` that are made alike may be told together.
    """

    title: str
    about: str
    makings: tuple[Making, ...]
    sizes: tuple[tuple[str, str], ...] = ()
    kin: str = ""


@dataclass(frozen=True, slots=True)
class Bench:
    """What lies before a maker: the stocks, where the parts of a thing are printed, the room for a drawing in mm.

    `whereabouts` tell where the maker writes about it.
    """

    stocks: Mapping[str, Stock]
    prints: Prints
    room: float
    whereabouts: Whereabouts

    def stock_of(self, flat: Flat) -> Stock:
        """What a flat is cut from."""
        return self.stocks[flat.stock]

    def glue_of(self, flat: Flat) -> str:
        """What a flat is glued with."""
        return glue_called(self.stock_of(flat).glue)
