"""The whole shelf worked out: every book, every slipcase, every space. Arithmetic only, nothing is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from ..ground.problems import FieldPath, Problem, ShelfFileError
from ..paper.eyesight import Legibility
from ..paper.stock import Stock, make_stock
from ..shelf_file.book_names import BookNames
from ..shelf_file.fields.entry import named
from ..things.book.entry import BookEntry
from ..things.book.plan import BookPlan, plan_book
from ..things.slipcase.members import Listed, members, space_of
from ..things.slipcase.plan import SlipcasePlan, plan_slipcase
from ..things.standing import Standing
from .entries import ShelfSpec
from .filling import Filler, Filling, fill_space
from .fit import SpaceFit, fit_space
from .measured_rows import MeasuredRow, as_measured, measured_row

__all__ = ["BookPlan", "ShelfPlan", "plan_shelf"]


@dataclass(frozen=True, slots=True)
class ShelfPlan:
    """All books, the slipcases some stand in, and how everything stands on the shelf."""

    spec: ShelfSpec
    stocks: Mapping[str, Stock]
    books: tuple[BookPlan, ...]
    slipcases: tuple[SlipcasePlan, ...]
    spaces: tuple[SpaceFit, ...]
    measured_rows: tuple[MeasuredRow, ...] = ()
    notes: tuple[Problem, ...] = ()

    @property
    def tolerances(self) -> Mapping[str, float]:
        """The tolerance of each stock's caliper, ± mm."""
        return {name: stock.tolerance for name, stock in self.stocks.items()}

    def resolution(self, stocks: Iterable[str]) -> float:
        """Dots to the inch of the coarsest printer that some stocks go through."""
        return min((self.stocks[name].printer.resolution for name in stocks), default=self.spec.printer.resolution)

    def letters(self, x_height: float, stocks: Iterable[str]) -> Legibility:
        """Letters of an x-height in mm as they are printed on some stocks, and seen from the viewing distance."""
        return Legibility(x_height, self.resolution(stocks), self.spec.viewing_distance)


def plan_shelf(spec: ShelfSpec) -> ShelfPlan:
    """Work out every book and every space: first what has a thickness of its own, then what fills the spaces.

    Raises:
        ShelfFileError: with every stock, every book and every slipcase that cannot be made.
    """
    problems: list[Problem] = []
    stocks = _stocks(spec, problems)
    possible = {number: book for number, book in enumerate(spec.books) if _stocks_of(book) <= stocks.keys()}
    names = BookNames(book.name for book in spec.books)
    rows = tuple(measured_row(row, names) for row in spec.measured_rows)
    books = _plan_books(possible, spec.scale, stocks, problems)
    books = as_measured(books, [row for row in rows if books.keys() >= set(row.books)])
    slipcases = _plan_slipcases(spec, books, stocks, problems)
    _refuse_if_any(problems)
    filling = _fill(spec, books, slipcases, stocks, problems)
    filled = {number: _of_thickness(spec.books[number], thick) for number, thick in filling.thicknesses.items()}
    books |= _plan_books(filled, spec.scale, stocks, problems)
    _refuse_if_any(problems)
    spaces = tuple(_fit(name, spec, books, slipcases, stocks) for name in spec.spaces)
    notes = [*filling.notes]
    notes += [note for book in books.values() for note in _inside(("books", book.number), book.notes)]
    notes += [note for box in slipcases for note in _inside(("slipcases", box.name), box.notes)]
    return ShelfPlan(spec, stocks, tuple(books.values()), slipcases, spaces, rows, tuple(notes))


def _refuse_if_any(problems: Sequence[Problem]) -> None:
    if problems:
        raise ShelfFileError(problems)


def _stocks(spec: ShelfSpec, problems: list[Problem]) -> dict[str, Stock]:
    stocks: dict[str, Stock] = {}
    for name, entry in spec.stocks.items():
        try:
            stocks[name] = make_stock(name, entry, spec.printer)
        except ShelfFileError as refusal:
            problems += refusal.problems
    return stocks


def _stocks_of(book: BookEntry) -> set[str]:
    """The names of the stocks a book is made of."""
    return {name for part in (book.block, book.cover, book.jacket) if part for _, name in named(part, "stock")}


def _plan_books(
    entries: Mapping[int, BookEntry], scale: float, stocks: Mapping[str, Stock], problems: list[Problem]
) -> dict[int, BookPlan]:
    """The books that can be made; what is wrong with others is added to the problems."""
    books: dict[int, BookPlan] = {}
    for number, entry in entries.items():
        try:
            books[number] = plan_book(number, entry, scale, stocks)
        except ShelfFileError as refusal:
            problems += _inside(("books", number), refusal.problems)
    return books


def _plan_slipcases(
    spec: ShelfSpec, books: Mapping[int, BookPlan], stocks: Mapping[str, Stock], problems: list[Problem]
) -> tuple[SlipcasePlan, ...]:
    """Every slipcase around the finished books it names, if all of these can be made."""
    listed = [Listed(book.name, book.space, book.stack) for book in spec.books]
    slipcases: list[SlipcasePlan] = []
    for name, entry in spec.slipcases.items():
        inside = members(entry, listed)
        if entry.stock not in stocks or not books.keys() >= set(inside):
            continue
        problems += [_fills_a_slipcase(books[number]) for number in inside if _filler(books[number])]
        try:
            row = [books[number].standing for number in inside]
            slipcases.append(plan_slipcase(name, entry, row, space_of(entry, listed), stocks))
        except ShelfFileError as refusal:
            problems += _inside(("slipcases", name), refusal.problems)
    return tuple(slipcases)


def _fills_a_slipcase(book: BookPlan) -> Problem:
    return Problem(
        f"{book.name} is to fill its space, but it stands in a slipcase",
        "write a thickness such as 4 mm, or take it out of the slipcase",
        field=("books", book.number, "block", "thickness"),
    )


def _fill(
    spec: ShelfSpec,
    books: Mapping[int, BookPlan],
    slipcases: Iterable[SlipcasePlan],
    stocks: Mapping[str, Stock],
    problems: list[Problem],
) -> Filling:
    """How thick the blocks become that take what is left on their spaces; `books` has them as thin as they may be."""
    thicknesses: dict[int, float] = {}
    notes: list[Problem] = []
    for name in spec.spaces:
        fillers = [filler for book in books.values() if book.entry.space == name and (filler := _filler(book))]
        if fillers:
            try:
                filling = fill_space(_fit(name, spec, books, slipcases, stocks), fillers, spec.scale)
                thicknesses |= filling.thicknesses
                notes += filling.notes
            except ShelfFileError as refusal:
                problems += refusal.problems
    return Filling(thicknesses, tuple(notes))


def _filler(book: BookPlan) -> Filler | None:
    stretch = book.entry.block.stretch
    return Filler(book.number, *stretch) if stretch else None


def _of_thickness(entry: BookEntry, thickness: float) -> BookEntry:
    """The book with the bounds of its block closed on one thickness, in mm."""
    return entry.model_copy(update={"block": entry.block.of_thickness(thickness)})


def _fit(
    name: str,
    spec: ShelfSpec,
    books: Mapping[int, BookPlan],
    slipcases: Iterable[SlipcasePlan],
    stocks: Mapping[str, Stock],
) -> SpaceFit:
    """How everything stands in one space: its books, without those in slipcases, and its slipcases."""
    boxed = {number for box in slipcases for number in box.books}
    standing: list[Standing] = [
        *(book.standing for book in books.values() if book.entry.space == name and book.number not in boxed),
        *(box.standing for box in slipcases if box.space == name),
    ]
    tolerances = {stock.name: stock.tolerance for stock in stocks.values()}
    return fit_space(name, spec.spaces[name], standing, tolerances)


def _inside(prefix: FieldPath, problems: Iterable[Problem]) -> list[Problem]:
    """The problems of a part, with their fields counted from the whole shelf."""
    return [replace(problem, field=(*prefix, *problem.field)) for problem in problems]
