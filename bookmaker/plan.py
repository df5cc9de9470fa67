"""Every book worked out: block, cover and the numbers that follow. Arithmetic only, nothing is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from .blocks import BlockPlan, Solid, plan_block
from .covers import CoverPlan, plan_cover
from .errors import FieldPath, Problem, ShelfFileError
from .filling import Filler, Filling, fill_space, misplaced
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
    tolerances = {name: stock.tolerance for name, stock in stocks.items()}
    books = _plan_books(dict(enumerate(spec.books)), spec.scale, stocks)
    filling = _fill(spec, books, tolerances)
    filled = {number: _of_thickness(spec.books[number], thick) for number, thick in filling.thicknesses.items()}
    books |= _plan_books(filled, spec.scale, stocks)
    notes = [
        note
        for book in books.values()
        for note in _inside(("books", book.number), (*book.block.notes, *book.cover.notes))
    ]
    spaces = tuple(_fit(name, spec, books, tolerances) for name in spec.spaces)
    return ShelfPlan(spec, stocks, tuple(books.values()), spaces, (*filling.notes, *notes))


def _fill(spec: ShelfSpec, books: Mapping[int, BookPlan], tolerances: Mapping[str, float]) -> Filling:
    """How thick the blocks become that take what is left on their spaces; `books` has them as thin as they may be."""
    thicknesses: dict[int, float] = {}
    notes: list[Problem] = []
    problems: list[Problem] = []
    for name in spec.spaces:
        fillers = [
            Filler(book.number, block.at_least, block.at_most)
            for book in books.values()
            if book.entry.space == name and isinstance(block := book.entry.block, Solid) and block.fills
        ]
        if fillers:
            try:
                filling = fill_space(_fit(name, spec, books, tolerances), fillers)
                thicknesses |= filling.thicknesses
                notes += filling.notes
            except ShelfFileError as refusal:
                problems += refusal.problems
    if problems:
        raise ShelfFileError(problems)
    return Filling(thicknesses, tuple(notes))


def _of_thickness(entry: BookEntry, thickness: float) -> BookEntry:
    """The book with the bounds of its block closed on one thickness, in mm."""
    bounds = {"at_least": thickness, "at_most": thickness}
    return entry.model_copy(update={"block": entry.block.model_copy(update=bounds)})


def _fit(name: str, spec: ShelfSpec, books: Mapping[int, BookPlan], tolerances: Mapping[str, float]) -> SpaceFit:
    standing = [book.standing for book in books.values() if book.entry.space == name]
    return fit_space(name, spec.spaces[name], standing, tolerances)


def _plan_books(entries: Mapping[int, BookEntry], scale: float, stocks: Mapping[str, Stock]) -> dict[int, BookPlan]:
    books: dict[int, BookPlan] = {}
    problems: list[Problem] = []
    for number, entry in entries.items():
        try:
            books[number] = _plan_book(number, entry, scale, stocks)
        except ShelfFileError as refusal:
            problems += _inside(("books", number), refusal.problems)
    if problems:
        raise ShelfFileError(problems)
    return books


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
    if isinstance(entry.block, Solid) and entry.block.fills and (problem := misplaced(entry.space, entry.stack)):
        raise ShelfFileError((problem,))
    page = entry.page_size(scale)
    block = plan_block(entry.block, page, stocks, right_to_left=entry.right_to_left)
    cover = plan_cover(entry.cover, page, block, stocks, right_to_left=entry.right_to_left)
    return BookPlan(number, entry, page, block, cover)


def _inside(prefix: FieldPath, problems: Iterable[Problem]) -> list[Problem]:
    """The problems of a part, with their fields counted from the whole shelf."""
    return [replace(problem, field=(*prefix, *problem.field)) for problem in problems]
