"""Every book worked out: block, cover and the numbers that follow. Arithmetic only, nothing is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from .blocks import BlockPlan, plan_block
from .covers import CoverPlan, plan_cover
from .covers.jacket import JacketPlan, plan_jacket
from .covers.members import Listed, members, space_of
from .covers.slipcase import SlipcasePlan, plan_slipcase
from .errors import FieldPath, Problem, ShelfFileError
from .flat import Flat
from .geometry import Size
from .shelf import SpaceFit, Standing, Uncertainty, fit_space
from .shelf_spec import BookEntry, ShelfSpec
from .stock import Stock, make_stock
from .thickness import Thickness

__all__ = ["BookPlan", "ShelfPlan", "plan_shelf"]


@dataclass(frozen=True, slots=True)
class BookPlan:
    """One book: `number` counts from 0 as in the shelf file; `page` is its page in mm.

    `thickness`, `height` and `depth` are those of the finished book, with its jacket if it wears one.
    """

    number: int
    entry: BookEntry
    page: Size
    block: BlockPlan
    cover: CoverPlan
    jacket: JacketPlan | None = None

    @property
    def flats(self) -> tuple[Flat, ...]:
        """Everything to print for this book, the block first."""
        return (*self.block.flats, *self.cover.flats, *((self.jacket.flat,) if self.jacket else ()))

    @property
    def thickness(self) -> Thickness:
        """The finished book's thickness, layer by layer."""
        return (self.jacket or self.cover).thickness

    @property
    def height(self) -> float:
        """The finished book's height in mm."""
        return (self.jacket or self.cover).height

    @property
    def depth(self) -> float:
        """The finished book from spine to fore-edge, in mm."""
        return (self.jacket or self.cover).depth

    @property
    def standing(self) -> Standing:
        """The finished book as the shelf sees it."""
        thickness = self.thickness
        return Standing(
            number=self.number,
            title=self.entry.title,
            thickness=thickness.value,
            height=self.height,
            depth=self.depth,
            uncertainty=Uncertainty(thickness.sensitivities, self.entry.assembly_tolerance),
            stack=self.entry.stack,
        )


@dataclass(frozen=True, slots=True)
class ShelfPlan:
    """All books and how they stand."""

    spec: ShelfSpec
    stocks: Mapping[str, Stock]
    books: tuple[BookPlan, ...]
    spaces: tuple[SpaceFit, ...]
    notes: tuple[Problem, ...] = ()
    slipcases: tuple[SlipcasePlan, ...] = ()

    @property
    def tolerances(self) -> Mapping[str, float]:
        """The tolerance of each stock's caliper, ± mm."""
        return {name: stock.tolerance for name, stock in self.stocks.items()}


def plan_shelf(spec: ShelfSpec) -> ShelfPlan:
    """Work out every book and every space.

    Raises:
        ShelfFileError: with every stock and every book that cannot be made.
    """
    stocks = _stocks(spec)
    books: list[BookPlan] = []
    problems: list[Problem] = []
    for number, entry in enumerate(spec.books):
        try:
            books.append(_plan_book(number, entry, spec.scale, stocks))
        except ShelfFileError as refusal:
            problems += _inside(("books", number), refusal.problems)
    if problems:
        raise ShelfFileError(problems)
    notes = [note for book in books for note in _inside(("books", book.number), (*book.block.notes, *book.cover.notes))]
    slipcases = _plan_slipcases(spec, books, stocks)
    notes += [note for box in slipcases for note in _inside(("slipcases", box.name), box.notes)]
    tolerances = {name: stock.tolerance for name, stock in stocks.items()}
    spaces = tuple(
        fit_space(name, space, _standing_in(name, books, slipcases), tolerances)
        for name, space in spec.spaces.items()
    )
    return ShelfPlan(spec, stocks, tuple(books), spaces, tuple(notes), slipcases)


def _stocks(spec: ShelfSpec) -> dict[str, Stock]:
    stocks: dict[str, Stock] = {}
    problems: list[Problem] = []
    for name, entry in spec.stocks.items():
        try:
            stocks[name] = make_stock(name, entry, spec.printer)
        except ShelfFileError as refusal:
            problems += refusal.problems
    if problems:
        raise ShelfFileError(problems)
    return stocks


def _plan_book(number: int, entry: BookEntry, scale: float, stocks: Mapping[str, Stock]) -> BookPlan:
    page = entry.page_size(scale)
    block = plan_block(entry.block, page, stocks, right_to_left=entry.right_to_left)
    cover = plan_cover(entry.cover, page, block, stocks, right_to_left=entry.right_to_left)
    jacket = plan_jacket(entry.jacket, cover, stocks, right_to_left=entry.right_to_left) if entry.jacket else None
    return BookPlan(number, entry, page, block, cover, jacket)


def _plan_slipcases(
    spec: ShelfSpec, books: Sequence[BookPlan], stocks: Mapping[str, Stock]
) -> tuple[SlipcasePlan, ...]:
    """Every slipcase around the finished books it names."""
    listed = [Listed(book.title, book.space, book.stack) for book in spec.books]
    slipcases: list[SlipcasePlan] = []
    problems: list[Problem] = []
    for name, entry in spec.slipcases.items():
        row = [books[number].standing for number in members(entry, listed)]
        try:
            slipcases.append(plan_slipcase(name, entry, row, space_of(entry, listed), stocks))
        except ShelfFileError as refusal:
            problems += _inside(("slipcases", name), refusal.problems)
    if problems:
        raise ShelfFileError(problems)
    return tuple(slipcases)


def _standing_in(space: str, books: Sequence[BookPlan], slipcases: Sequence[SlipcasePlan]) -> list[Standing]:
    """What stands in a space: its books, without those in slipcases, and its slipcases."""
    boxed = {number for box in slipcases for number in box.books}
    return [
        *(book.standing for book in books if book.entry.space == space and book.number not in boxed),
        *(box.standing for box in slipcases if box.space == space),
    ]


def _inside(prefix: FieldPath, problems: Iterable[Problem]) -> list[Problem]:
    """The problems of a part, with their fields counted from the whole shelf."""
    return [replace(problem, field=(*prefix, *problem.field)) for problem in problems]
