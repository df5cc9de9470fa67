"""Every book worked out: block, cover and the numbers that follow. Arithmetic only, nothing is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from math import sqrt

from .blocks import BlockPlan, Solid, plan_block
from .book_names import find_book
from .covers import CoverPlan, plan_cover
from .cutting import CutPart
from .designs import Words
from .errors import FieldPath, Problem, ShelfFileError
from .filling import Filler, Filling, fill_space, misplaced
from .flat import Flat
from .geometry import Size
from .shelf import SpaceFit, Standing, Uncertainty, fit_space
from .shelf_spec import BookEntry, MeasuredRowEntry, ShelfSpec
from .stock import Stock, make_stock
from .thickness import READING_TOLERANCE, Thickness

__all__ = ["BookPlan", "MeasuredRow", "ShelfPlan", "plan_shelf"]


@dataclass(frozen=True, slots=True)
class BookPlan:
    """One book: `number` counts from 0 as in the shelf file; `page` is its page in mm.

    `measured` is its share of a row of finished books that was measured, if it stood in one; `measured_error`
    how far that share may be off, ± mm.
    """

    number: int
    entry: BookEntry
    page: Size
    block: BlockPlan
    cover: CoverPlan
    measured: float | None = None
    measured_error: float = 0.0

    @property
    def outside(self) -> Thickness:
        """The thickness of the finished book."""
        thickness = self.cover.thickness
        return thickness if self.measured is None else thickness.as_measured(self.measured)

    @property
    def words(self) -> Words:
        """What stands on its cover."""
        entry = self.entry
        return Words(
            entry.title, entry.author or "", entry.volume or "", entry.date or "", series=entry.series or ""
        )

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
        thickness = self.outside
        return Standing(
            number=self.number,
            title=self.entry.title,
            thickness=thickness.value,
            height=self.cover.height,
            depth=self.cover.depth,
            uncertainty=Uncertainty(thickness.sensitivities, self._own_error),
            stack=self.entry.stack,
        )

    @property
    def _own_error(self) -> float:
        """What folding and gluing may add or take, or the reading of the gauge once the finished book was measured."""
        if self.measured is not None:
            return self.measured_error
        return self.entry.assembly_tolerance if self.cover.thickness.measured is None else READING_TOLERANCE


@dataclass(frozen=True, slots=True)
class MeasuredRow:
    """Finished books measured side by side: their numbers from 0, and how thick they are together, in mm."""

    books: tuple[int, ...]
    thickness: float


@dataclass(frozen=True, slots=True)
class ShelfPlan:
    """All books and how they stand."""

    spec: ShelfSpec
    stocks: Mapping[str, Stock]
    books: tuple[BookPlan, ...]
    spaces: tuple[SpaceFit, ...]
    measured_rows: tuple[MeasuredRow, ...] = ()
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
    rows = tuple(_measured_row(row, spec) for row in spec.measured_rows)
    books = _as_measured_in_rows(_plan_books(dict(enumerate(spec.books)), spec.scale, stocks), rows)
    filling = _fill(spec, books, tolerances)
    filled = {number: _of_thickness(spec.books[number], thick) for number, thick in filling.thicknesses.items()}
    books |= _plan_books(filled, spec.scale, stocks)
    notes = [
        note
        for book in books.values()
        for note in _inside(("books", book.number), (*book.block.notes, *book.cover.notes))
    ]
    spaces = tuple(_fit(name, spec, books, tolerances) for name in spec.spaces)
    return ShelfPlan(spec, stocks, tuple(books.values()), spaces, rows, (*filling.notes, *notes))


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


def _measured_row(row: MeasuredRowEntry, spec: ShelfSpec) -> MeasuredRow:
    titles = [book.title for book in spec.books]
    return MeasuredRow(tuple(find_book(name, titles) for name in row.books), row.thickness)


def _as_measured_in_rows(books: Mapping[int, BookPlan], rows: Iterable[MeasuredRow]) -> dict[int, BookPlan]:
    """The books with their shares of the measured rows: the difference is spread by thickness, the error evenly."""
    measured = dict(books)
    for row in rows:
        computed = sum(books[number].cover.thickness.value for number in row.books)
        for number in row.books:
            share = books[number].cover.thickness.value * row.thickness / computed
            error = READING_TOLERANCE / sqrt(len(row.books))
            measured[number] = replace(books[number], measured=share, measured_error=error)
    return measured


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
    if entry.measured_thickness is not None:
        cover = replace(cover, thickness=cover.thickness.as_measured(entry.measured_thickness))
    return BookPlan(number, entry, page, block, cover)


def _inside(prefix: FieldPath, problems: Iterable[Problem]) -> list[Problem]:
    """The problems of a part, with their fields counted from the whole shelf."""
    return [replace(problem, field=(*prefix, *problem.field)) for problem in problems]
