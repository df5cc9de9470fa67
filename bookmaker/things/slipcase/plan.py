"""The slipcase: an open-fronted box for a row of finished books, made to their outer sizes.

It stands on the shelf instead of its books. Its width follows theirs, so their errors are its errors.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema

from ...ground.geometry import Rect, Size
from ...ground.pictures import Picture
from ...ground.problems import Problem, Severity, ShelfFileError, gathered
from ...ground.quantities import counted
from ...ground.thin import print_caliper
from ...ground.told import print_range
from ...ground.units import print_mm
from ...paper.stock import Stock
from ...sheets.flat import Flat, Role
from ...sheets.sheet_room import flat_too_large
from ...shelf_file.book_names import BookName
from ...shelf_file.fields.entry import ThingEntry
from ...shelf_file.fields.measures import SmallLength, TabWidth
from ...shelf_file.fields.words import Flag, SpaceName, StockName, ThingId, Title, read_title, refuse
from ..answers import Named, Niche
from ..place import PlaceEntry
from ..standing import Standing, Uncertainty
from ..terms import Terms
from ..thing import AnyFamily, Plan, Thing
from .faces import BoxFaces, load_faces
from .net import SMALLEST_TAB, BoxSize, Tabs, outside_of, slipcase_net, tab_length, tabs_of

__all__ = ["ListedSlipcase", "Slipcase", "SlipcaseEntry", "SlipcasePlan", "plan_slipcase"]

SHORTEST_TAB = 2.0
"""A tab whose narrow end is shorter does not hold, in mm (common practice)."""

THINNEST_BOX = 0.15
"""A box of thinner paper does not stand by itself, in mm (common practice)."""

THUMB_OF_HEIGHT, THUMB_OF_DEPTH = 0.2, 0.3
"""The radius of a thumb cut is the smaller of these shares of the room's height and depth."""


def _read_names(value: object) -> tuple[str, ...]:
    """Titles or numbers of books; one alone may stand without a list."""
    written = value if isinstance(value, (list, tuple)) else (value,) if isinstance(value, str) else None
    if written is None:
        raise refuse("is not a list of books", "write their titles, each after a -")
    if not written:
        raise refuse("lists no book", "write the titles of the books that stand in the box, each after a -")
    return tuple(map(read_title, written))


BookNames = Annotated[
    tuple[str, ...],
    BeforeValidator(_read_names),
    WithJsonSchema({"type": "array", "items": {"type": "string"}, "minItems": 1}),
]
"""Books by their titles, or by their numbers on the list, counted from 1."""


class SlipcaseEntry(ThingEntry):
    """A slipcase."""

    id: ThingId | None = Field(None, description="what it goes by; made of its name, if not given")
    books: BookNames = Field(description="titles of its books, or their numbers on the list")
    stock: StockName = Field(description="name of the card, as under stocks")
    clearance: SmallLength = Field(0.3, description="play for the row of books, each way")
    space: SpaceName | None = Field(None, description="where it stands; the space its books name, if not given")
    place: PlaceEntry | None = Field(None, description="where in the room it stands, measured")
    tab: TabWidth | None = Field(None, description="width of the glue tabs; 5 mm, or less in a narrow box")
    thumb_cut: Flag = Field(False, description="half-round cuts at the opening, to take hold of the books")
    faces: BoxFaces | None = Field(None, description="what is printed on it; nothing, if not given")


class ListedSlipcase(SlipcaseEntry):
    """A slipcase in the list of things."""

    kind: Literal["slipcase"] = "slipcase"
    id: ThingId = Field(description="what it goes by")
    title: Title | None = Field(None, description="what it is called; its id, if not given")


@dataclass(frozen=True, slots=True, kw_only=True)
class Slipcase(Thing):
    """A slipcase as it was written, with the pictures of its faces."""

    id: str
    family: AnyFamily = field(compare=False, repr=False)
    entry: SlipcaseEntry
    name: BookName
    pictures: Mapping[Role, Picture] = field(default_factory=dict)

    @property
    def space(self) -> str | None:
        """Where it stands, as written."""
        return self.entry.space

    @property
    def place(self) -> PlaceEntry | None:
        """Where in the room it is, as written."""
        return self.entry.place

    @property
    def holds(self) -> tuple[Named, ...]:
        """Its books."""
        return tuple(Named(name, ("books", place)) for place, name in enumerate(self.entry.books))

    def read(self, folder: Path) -> tuple[Slipcase, tuple[Problem, ...]]:
        """The slipcase with the pictures of its faces."""
        problems: list[Problem] = []
        pictures: Mapping[Role, Picture] = {}
        with gathered(problems, "faces"):
            pictures = load_faces(self.entry.faces, folder) if self.entry.faces else {}
        return replace(self, pictures=pictures), tuple(problems)

    def plan(self, terms: Terms, held: Sequence[Plan]) -> SlipcasePlan:
        """Work out the box around its finished books."""
        books = [plan.standing for plan in held if plan.standing]
        space = self.space or (None if self.place else next((plan.space for plan in held if plan.space), None))
        return plan_slipcase(self, books, space, terms)


@dataclass(frozen=True, slots=True, kw_only=True)
class SlipcasePlan(Plan):
    """A slipcase worked out: `held` are its books, `space` is where it stands.

    `row` is how thick its books are side by side, `row_tolerance` how far they are likely to be off, ± mm.
    """

    thing: Slipcase
    held: tuple[str, ...]
    space: str | None
    inside: BoxSize
    outside: BoxSize
    flat: Flat
    uncertainty: Uncertainty
    row: float
    row_tolerance: float
    notes: tuple[Problem, ...] = ()

    @property
    def entry(self) -> SlipcaseEntry:
        """What the maker wrote."""
        return self.thing.entry

    @property
    def flats(self) -> tuple[Flat, ...]:
        """Its net."""
        return (self.flat,)

    @property
    def made_as(self) -> str:
        """What it holds."""
        return f"slipcase for {counted(len(self.held), 'book')}"

    @property
    def standing(self) -> Standing:
        """The box as the shelf sees it, instead of its books."""
        return Standing(
            thing=self.id,
            title=f"the slipcase {self.name}",
            thickness=self.outside.width,
            height=self.outside.height,
            depth=self.outside.depth,
            uncertainty=self.uncertainty,
        )

    @property
    def from_above(self) -> Size:
        """It stands on a desk as on a shelf, its spines to the front."""
        return Size(self.outside.width, self.outside.depth)

    def smaller(self, side: str) -> str:
        """Its books make it as large as it is."""
        return f"leave its {side}est book out"

    def niches(self, held: Sequence[Plan]) -> tuple[Niche, ...]:
        """The edges of its card around the spines of its books, each place with its share of the clearance."""
        return tuple(_niches(self, [plan.standing for plan in held if plan.standing]))


def plan_slipcase(box: Slipcase, books: Sequence[Standing], space: str | None, terms: Terms) -> SlipcasePlan:
    """Work out the box around a row of finished books, and where it stands.

    The room inside is the sum of their thicknesses, the tallest and the deepest, each with the clearance.

    Raises:
        ShelfFileError: the tabs have no room, or the net is larger than the sheet; with both, if both are so.
    """
    entry, stock = box.entry, terms.stocks[box.entry.stock]
    inside = BoxSize(
        sum(book.thickness for book in books) + entry.clearance,
        max(book.height for book in books) + entry.clearance,
        max(book.depth for book in books) + entry.clearance,
    )
    tabs = tabs_of(inside, entry.tab)
    thumb = min(inside.height * THUMB_OF_HEIGHT, inside.depth * THUMB_OF_DEPTH) if entry.thumb_cut else 0.0
    flat = slipcase_net("slipcase", inside, stock, tabs, thumb)
    problems = [*_tab_problems(inside, stock, tabs), *flat_too_large("the net", flat, stock, ("stock",))]
    if problems:
        raise ShelfFileError(problems)
    row = _row_of(books)
    return SlipcasePlan(
        thing=box,
        held=tuple(book.thing for book in books),
        space=space,
        inside=inside,
        outside=outside_of(inside, stock),
        flat=flat,
        uncertainty=Uncertainty(_with_walls(row.slopes, stock), 0.0, row.errors),
        row=sum(book.thickness for book in books),
        row_tolerance=row.spread(terms.tolerances)[1],
        notes=tuple(_too_thin(stock)),
    )


def _niches(box: SlipcasePlan, books: Sequence[Standing]) -> Iterator[Niche]:
    outside, inside = box.outside, box.inside
    card, sill = (outside.width - inside.width) / 2, (outside.height - inside.height) / 2
    each = (inside.width - box.row) / len(books)
    x = card
    for place, book in enumerate(books):
        first, last = place == 0, place == len(books) - 1
        low, high = 0.0 if first else x, outside.width if last else x + book.thickness + each
        edges = [Rect(low, 0, high - low, sill), Rect(low, outside.height - sill, high - low, sill)]
        edges += [Rect(0, 0, card, outside.height)] if first else []
        edges += [Rect(outside.width - card, 0, card, outside.height)] if last else []
        yield Niche(book.thing, Rect(x + each / 2, sill, book.thickness, book.height), tuple(edges))
        x += book.thickness + each


def _row_of(books: Sequence[Standing]) -> Uncertainty:
    """How far the row as a whole may be off."""
    slopes: dict[str, float] = {}
    for book in books:
        for stock, slope in book.uncertainty.slopes.items():
            slopes[stock] = slopes.get(stock, 0.0) + slope
    return Uncertainty(slopes, 0.0, tuple(error for book in books for error in book.uncertainty.errors))


def _with_walls(slopes: Mapping[str, float], stock: Stock) -> dict[str, float]:
    """Two walls more of the box's own stock."""
    return {**slopes, stock.name: slopes.get(stock.name, 0.0) + 2}


def _tab_problems(inside: BoxSize, stock: Stock, tabs: Tabs) -> Iterator[Problem]:
    """Tabs are no wider than the box and long enough to hold."""
    if inside.width < SMALLEST_TAB:
        yield Problem(
            f"the room inside is {print_mm(inside.width, 2)} wide, too narrow for glue tabs of "
            f"{print_mm(SMALLEST_TAB)}",
            "put another book in, or write a larger clearance",
            field=("books",),
        )
    elif tabs.width > inside.width + 1e-9:
        yield Problem(
            f"tabs of {print_mm(tabs.width)} are wider than the room inside, which is {print_mm(inside.width, 2)}",
            f"write {print_range(SMALLEST_TAB, inside.width, 1)}, or leave tab out",
            field=("tab",),
        )
    elif tab_length(inside, stock, tabs) < SHORTEST_TAB:
        yield Problem(
            f"in a room {print_mm(inside.depth, 1)} deep, tabs of {print_mm(tabs.width)} taper to nothing that holds",
            "write a narrower tab" if tabs.width > SMALLEST_TAB else "leave the box out: its books are too small",
            field=("tab",),
        )


def _too_thin(stock: Stock) -> Iterator[Problem]:
    """Thin paper makes a bag, not a box."""
    if stock.caliper < THINNEST_BOX - 1e-9:
        least = print_caliper(THINNEST_BOX)
        yield Problem(
            f"{stock.name} is {print_caliper(stock.caliper)} thick; a slipcase under {least} has no stand",
            f"name a card of {least} or more",
            Severity.WARNING,
            field=("stock",),
        )
