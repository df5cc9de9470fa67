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

__all__ = ["CAUTION", "Bench", "Chapter", "Figure", "Making", "Manner", "Measure", "Supply", "Unit", "caution", "drawn"]

CAUTION = "Caution: "
"""What a line begins with that warns of the step below it."""


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
class Manner:
    """How something is done, drawn alike for all things that are made so; `drawn` names it in their steps."""

    name: str
    figure: Figure


def drawn(name: str, stages: str = "") -> str:
    """Where a step leads to a drawing of how it is done, or to some stages of it.

    >>> drawn("a turned-in corner", "b")
    '[a turned-in corner: b]'
    """
    return f"[{name}: {stages}]" if stages else f"[{name}]"


def caution(text: str) -> str:
    """A warning, which stands among the steps before the one that it concerns.

    >>> caution("the ends of the wire are sharp.")
    'Caution: the ends of the wire are sharp.'
    """
    return f"{CAUTION}{text}"


@dataclass(frozen=True, slots=True)
class Making:
    """How one part is made: its heading, its steps, its drawings, and what it takes.

    A step is one thing to do. `figures` show this very part, `manners` what its steps have in common with others.
    `takes` are the kinds of flat that are printed for it.
    """

    heading: str
    steps: tuple[str, ...]
    figures: tuple[Figure, ...] = ()
    manners: tuple[Manner, ...] = ()
    takes: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    supplies: tuple[Supply, ...] = ()
    measures: tuple[Measure, ...] = ()

    @property
    def drawings(self) -> tuple[Figure, ...]:
        """What shows this part, and then how it is done."""
        return (*self.figures, *(manner.figure for manner in self.manners))


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
