"""What the steps of a binding know, and what they say: the seam between a kind of binding and the guide."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from ..paper.stock import Stock
from ..paper.stock_entry import GLUES
from ..shelf_file.whereabouts import Whereabouts
from ..things.book.plan import BookPlan
from ..things.slipcase.plan import SlipcasePlan
from .items import Figure
from .prints import Prints

__all__ = ["BookJob", "BoxJob", "Making", "Measure", "Supply", "Unit"]


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
class Making:
    """How one part is made: its heading, its steps, its drawings, and what it takes."""

    heading: str
    steps: tuple[str, ...]
    figures: tuple[Figure, ...] = ()
    tools: tuple[str, ...] = ()
    supplies: tuple[Supply, ...] = ()
    measures: tuple[Measure, ...] = ()


@dataclass(frozen=True, slots=True)
class BookJob:
    """A book to make: its plan, the stocks, where its parts are printed, and the room for a drawing in mm.

    `whereabouts` tell where the maker writes about it, `called` how a list of books calls it.
    """

    book: BookPlan
    stocks: Mapping[str, Stock]
    prints: Prints
    room: float
    whereabouts: Whereabouts
    called: str

    def stock(self, kind: str) -> Stock:
        """The stock that the flats of a kind are cut from."""
        return self.stocks[next(flat.stock for flat in self.book.flats if flat.kind == kind)]


@dataclass(frozen=True, slots=True)
class BoxJob:
    """A slipcase to make: its plan, its books, the stocks, where its net is printed, and the room for a drawing.

    `called` is how a list of books calls its books.
    """

    box: SlipcasePlan
    books: tuple[BookPlan, ...]
    stocks: Mapping[str, Stock]
    prints: Prints
    room: float
    called: str
