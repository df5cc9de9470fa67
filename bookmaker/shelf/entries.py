"""The whole shelf file as the maker wrote it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated

from pydantic import BeforeValidator, Field, WithJsonSchema

from ..ground.amounts import parse_ratio
from ..ground.problems import Problem, near_match
from ..ground.quantities import show
from ..ground.units import NotAMeasure, print_mm
from ..paper.eyesight import READING_DISTANCE
from ..paper.printer_entry import PaperPath, PrinterEntry
from ..paper.stock_entry import StockEntry
from ..shelf_file.book_names import BookNames, UnknownBook, find_books
from ..shelf_file.fields.entry import Entry, named
from ..shelf_file.fields.measures import Thickness, ViewingDistance
from ..shelf_file.fields.words import ByName, Text, Title, read_text, refuse
from ..shelf_file.rows import LONGEST_ROW
from ..things.book.entry import SMALLEST_PAGE, BookEntry
from ..things.slipcase.members import Listed, membership_problems
from ..things.slipcase.plan import SlipcaseEntry
from .space_entry import SpaceEntry

__all__ = ["MeasuredRowEntry", "ShelfSpec", "cross_check"]


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


def _read_books(value: object) -> object:
    if isinstance(value, list) and not 1 <= len(value) <= LONGEST_ROW:
        raise refuse(f"lists {len(value)} books", f"write from 1 to {LONGEST_ROW}", f"1 to {LONGEST_ROW}")
    return value


def _read_folders(value: object) -> object:
    return [value] if isinstance(value, str) else value


Folders = Annotated[tuple[Text, ...], BeforeValidator(_read_folders)]
"""Paths of folders; one alone may stand without a list."""


class MeasuredRowEntry(Entry):
    """Finished books that were measured side by side."""

    books: tuple[Text, ...] = Field(min_length=1, description="titles, or numbers in the list of books")
    thickness: Thickness = Field(description="how thick they are together, pressed lightly")


class ShelfSpec(Entry):
    """The shelf file."""

    shelf: Title = Field(description="name of the shelf, printed on the sheets")
    scale: Scale = Field(12.0, description="scale, such as 1:12; divides every life_size")
    printer: PrinterEntry = Field(default_factory=PrinterEntry, description="sheet, margins, resolution, rules")
    stocks: Annotated[dict[str, StockEntry], ByName] = Field(description="papers and cards by name")
    spaces: Annotated[dict[str, SpaceEntry], ByName] = Field(
        default_factory=dict, description="places on the shelf by name"
    )
    measured_rows: tuple[MeasuredRowEntry, ...] = Field((), description="finished books measured side by side")
    texts_from: Folders = Field((), description="folders elsewhere that texts and captions may come from")
    viewing_distance: ViewingDistance = Field(READING_DISTANCE, description="from the eye to the page, such as 300 mm")
    books: Annotated[tuple[BookEntry, ...], BeforeValidator(_read_books)] = Field(description="the books")
    slipcases: Annotated[dict[str, SlipcaseEntry], ByName] = Field(
        default_factory=dict, description="boxes for sets of books by name"
    )

    def printed_by(self, stock: str) -> PaperPath:
        """The printer and tray that a stock of this name goes through."""
        entry = self.stocks.get(stock)
        return entry.printed_by(self.printer) if entry else self.printer


def cross_check(spec: ShelfSpec, *, all_listed: bool = True) -> Iterator[Problem]:
    """What is wrong between the parts: names that stand for nothing, pages that the scale makes vanish.

    Unless all lists could be read, a name that nothing goes by may be on one of them, and is not told.
    """
    yield from _row_problems(spec, all_listed)
    for number, book in enumerate(spec.books):
        for part, entry in (("block", book.block), ("cover", book.cover), ("jacket", book.jacket)):
            for key, name in named(entry, "stock") if entry else ():
                if name not in spec.stocks:
                    yield _unknown("stock", name, spec.stocks, ("books", number, part, key))
        if book.space is not None and book.space not in spec.spaces:
            yield _unknown("space", book.space, spec.spaces, ("books", number, "space"))
        page = book.page_size(spec.scale)
        if min(page) < SMALLEST_PAGE:
            yield Problem(
                f"at 1:{spec.scale:g} the page is {print_mm(page.width)} × {print_mm(page.height)}",
                "write the size of the full-size book, or another scale",
                field=("books", number, "life_size"),
            )
    yield from _cross_check_slipcases(spec, all_listed)


def _cross_check_slipcases(spec: ShelfSpec, all_listed: bool) -> Iterator[Problem]:
    """The same for slipcases, and whether each of their books is one book, boxed once."""
    for name, box in spec.slipcases.items():
        if box.stock not in spec.stocks:
            yield _unknown("stock", box.stock, spec.stocks, ("slipcases", name, "stock"))
        if box.space is not None and box.space not in spec.spaces:
            yield _unknown("space", box.space, spec.spaces, ("slipcases", name, "space"))
    if all_listed:
        books = [Listed(book.name, book.space, book.stack) for book in spec.books]
        yield from membership_problems(spec.slipcases, books)


def _row_problems(spec: ShelfSpec, all_listed: bool) -> Iterator[Problem]:
    """Books in measured rows that are not on the list, or are measured twice."""
    books = BookNames(book.name for book in spec.books)
    seen: set[int] = set()
    for number, row in enumerate(spec.measured_rows):
        for position, name in enumerate(row.books):
            field = ("measured_rows", number, "books", position)
            try:
                found = find_books(name, books)
            except UnknownBook as unknown:
                if all_listed:
                    yield Problem(unknown.message, unknown.remedy, field=field, value=name)
                continue
            for book in found:
                if book in seen:
                    yield Problem(f"{books[book]} is measured twice", "leave it in one row", field=field, value=name)
            seen.update(found)


def _unknown(what: str, name: str, known: Mapping[str, object], field: tuple[str | int, ...]) -> Problem:
    meant = near_match(name, known)
    if meant:
        remedy = f"did you mean {meant!r}?"
    elif known:
        remedy = ("write one of " if len(known) > 1 else "write ") + ", ".join(known)
    else:
        remedy = f"describe it under {what}s first"
    return Problem(f"there is no {what} {show(name)!r}", remedy, field=field, value=name)
