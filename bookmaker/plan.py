"""Every book worked out: block, cover and the numbers that follow. Arithmetic only, nothing is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from .blocks import BlockPlan, plan_block
from .covers import CoverPlan, plan_cover
from .cutting import CutPart
from .errors import FieldPath, Problem, ShelfFileError
from .flat import Flat
from .geometry import Size
from .shelf import SpaceFit, Standing, Uncertainty, fit_space
from .shelf_spec import BookEntry, ShelfSpec
from .stock import Stock, make_stock

__all__ = ["BookPlan", "ShelfPlan", "plan_shelf"]


@dataclass(frozen=True, slots=True)
class BookPlan:
    """One book: `number` counts from 0 as in the shelf file; `page` is its page in mm."""

    number: int
    entry: BookEntry
    page: Size
    block: BlockPlan
    cover: CoverPlan

    @property
    def flats(self) -> tuple[Flat, ...]:
        """Everything to print for this book, the block first."""
        return (*self.block.flats, *self.cover.flats)

    @property
    def cut_list(self) -> tuple[CutPart, ...]:
        """Everything to cut by hand for this book, the block first."""
        return (*self.block.cut_list, *self.cover.cut_list)

    @property
    def standing(self) -> Standing:
        """The finished book as the shelf sees it."""
        thickness = self.cover.thickness
        return Standing(
            number=self.number,
            title=self.entry.title,
            thickness=thickness.value,
            height=self.cover.height,
            depth=self.cover.depth,
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
    tolerances = {name: stock.tolerance for name, stock in stocks.items()}
    spaces = tuple(
        fit_space(name, space, [book.standing for book in books if book.entry.space == name], tolerances)
        for name, space in spec.spaces.items()
    )
    return ShelfPlan(spec, stocks, tuple(books), spaces, tuple(notes))


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
    return BookPlan(number, entry, page, block, cover)


def _inside(prefix: FieldPath, problems: Iterable[Problem]) -> list[Problem]:
    """The problems of a part, with their fields counted from the whole shelf."""
    return [replace(problem, field=(*prefix, *problem.field)) for problem in problems]
