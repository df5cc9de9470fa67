"""The whole shelf file as the maker wrote it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from .amounts import parse_ratio
from .blocks import AnyBlock
from .book_names import BookName, UnknownBook, find_books
from .covers import AnyCover
from .covers.jacket import Jacket
from .covers.members import Listed, membership_problems
from .covers.slipcase import SlipcaseEntry
from .designs import PLAIN, AnyDesign
from .errors import Problem, near_match
from .eyesight import READING_DISTANCE
from .geometry import Size
from .pages import BLANK, AnyInside
from .quantities import show
from .rows import LONGEST_ROW
from .spec.entry import Entry, named
from .spec.measures import Ease, LifeSide, PageSide, Thickness, ViewingDistance
from .spec.sheets import PaperPath, PrinterEntry
from .spec.spaces import SpaceEntry
from .spec.stocks import StockEntry
from .spec.words import SpaceName, Text, Title, read_text, refuse
from .thickness import ASSEMBLY_TOLERANCE
from .units import NotAMeasure, print_mm
from .volumes import MOST_VOLUMES

__all__ = ["BookEntry", "MeasuredRowEntry", "ShelfSpec", "cross_check"]

SMALLEST_PAGE = 1.0
"""A page side below this is a slip, in mm."""


class PageSize(Entry):
    """The page of the finished miniature."""

    height: PageSide = Field(description="height of the page, such as 21 mm")
    width: PageSide = Field(description="width of the page, such as 15 mm")


class LifeSize(Entry):
    """The page of the full-size book the miniature stands for."""

    height: LifeSide = Field(description="height of the full-size page, such as 198 mm")
    width: LifeSide = Field(description="width of the full-size page, such as 129 mm")


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


def _read_row(value: object) -> None:
    """Rows are written out before books are read: what is left of one is none."""
    if value is None:
        raise refuse("is empty", "write titles or groups of keys, each after a -")
    if not isinstance(value, list):
        raise refuse("is not a list", "write titles or groups of keys, each after a -")
    if not 1 <= len(value) <= LONGEST_ROW:
        raise refuse(f"lists {len(value)} books", f"write from 1 to {LONGEST_ROW}", f"1 to {LONGEST_ROW}")
    raise refuse("lists books where no row can stand", "write row in a book of its own, not in defaults or another row")


NoRow = Annotated[None, BeforeValidator(_read_row), WithJsonSchema({"type": "array"})]
"""Where a row would stand."""


def _read_volumes(value: object) -> None:
    """Sets are written out before books are read: what is left of one is none."""
    limit = f"2 to {MOST_VOLUMES}"
    if not isinstance(value, str) or not value.isdecimal():
        raise refuse("is not a whole number", f"write how many books the set has, {limit}", limit)
    if not 2 <= int(value[:4]) <= MOST_VOLUMES:
        raise refuse(f"is {value}; a set has {limit} books", "write how many, or leave it out for one book", limit)
    raise refuse(
        f"is {value}, but the row beside it has another number of books",
        "write as many items as volumes, or leave one of the two out; in defaults and within a row it cannot stand",
    )


NoVolumes = Annotated[
    None, BeforeValidator(_read_volumes), WithJsonSchema({"type": "integer", "minimum": 2, "maximum": MOST_VOLUMES})
]
"""Where a set would stand."""


class BookEntry(Entry):
    """One book. Its size is that of the page; the cover adds what it needs."""

    title: Title = Field(description="title, as it shall stand on spine and front")
    author: Title | None = Field(None, description="author, as it shall stand on spine and front")
    volumes: NoVolumes = Field(None, description="a set of so many books that differ in their numbers, from 2 to 100")
    series: Title | None = Field(None, description="the set it belongs to: all books of it look alike")
    volume: Title | None = Field(None, description="number of the volume, as it shall stand on the spine")
    date: Title | None = Field(None, description="year or date, as it shall stand on the spine")
    size: PageSize | None = Field(None, description="height and width of the finished page")
    life_size: LifeSize | None = Field(None, description="height and width of the full-size page; divided by the scale")
    direction: Literal["left-to-right", "right-to-left"] = Field("left-to-right", description="which way it reads")
    block: AnyBlock = Field(description="how the pages are made")
    cover: AnyCover = Field(description="how they are covered")
    jacket: Jacket | None = Field(None, description="a loose jacket around the covered book")
    inside: AnyInside = Field(BLANK, description="what the pages show")
    design: AnyDesign = Field(PLAIN, description="what the cover shows")
    space: SpaceName | None = Field(None, description="where it stands, as under spaces")
    stack: Title | None = Field(None, description="books of a space with the same stack lie on one another")
    measured_thickness: Thickness | None = Field(
        None, description="thickness of the finished book; overrides the computed one"
    )
    row: NoRow = Field(None, description="books that share all else, each a title or a group of keys")
    assembly_tolerance: Ease = Field(ASSEMBLY_TOLERANCE, description="what folding and gluing may add or take")

    @property
    def name(self) -> BookName:
        """What it is called where it must be told from other books."""
        return BookName(self.title, self.volume or "", self.series or "")

    @model_validator(mode="after")
    def _one_size(self) -> Self:
        if (self.size is None) == (self.life_size is None):
            said = "has both size and life_size" if self.size else "has no size"
            raise refuse(
                said,
                "write either size: {height: 21 mm, width: 15 mm} or life_size with the full-size page",
                instead={"size": {"height": "21 mm", "width": "15 mm"}, "life_size": None},
            )
        if self.stack and not self.space:
            remedy = "add space: with a name from spaces"
            raise refuse("lies in a stack, but in no space", remedy, instead={"stack": None})
        return self

    @property
    def right_to_left(self) -> bool:
        """Whether the book opens the other way."""
        return self.direction == "right-to-left"

    def page_size(self, scale: float) -> Size:
        """The page of the miniature in mm.

        A demy octavo of 216 × 138 mm becomes 18.0 × 11.5 mm at 1:12.
        """
        if self.size is not None:
            return Size(self.size.width, self.size.height)
        assert self.life_size is not None  # every entry has one of the two
        return Size(self.life_size.width / scale, self.life_size.height / scale)


class MeasuredRowEntry(Entry):
    """Finished books that were measured side by side."""

    books: tuple[Text, ...] = Field(min_length=1, description="titles, or numbers in the list of books")
    thickness: Thickness = Field(description="how thick they are together, pressed lightly")


class ShelfSpec(Entry):
    """The shelf file."""

    shelf: Title = Field(description="name of the shelf, printed on the sheets")
    scale: Scale = Field(12.0, description="scale, such as 1:12; divides every life_size")
    printer: PrinterEntry = Field(default_factory=PrinterEntry, description="sheet, margins, resolution, rules")
    stocks: dict[str, StockEntry] = Field(description="papers and cards by name")
    spaces: dict[str, SpaceEntry] = Field(default_factory=dict, description="places on the shelf by name")
    measured_rows: tuple[MeasuredRowEntry, ...] = Field((), description="finished books measured side by side")
    viewing_distance: ViewingDistance = Field(READING_DISTANCE, description="from the eye to the page, such as 300 mm")
    books: Annotated[tuple[BookEntry, ...], BeforeValidator(_read_books)] = Field(description="the books")
    slipcases: dict[str, SlipcaseEntry] = Field(default_factory=dict, description="boxes for sets of books by name")

    def printed_by(self, stock: str) -> PaperPath:
        """The printer and tray that a stock of this name goes through."""
        entry = self.stocks.get(stock)
        return entry.printed_by(self.printer) if entry else self.printer


def cross_check(spec: ShelfSpec) -> Iterator[Problem]:
    """What is wrong between the parts: names that stand for nothing, pages that the scale makes vanish."""
    yield from _row_problems(spec)
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
    yield from _cross_check_slipcases(spec)


def _cross_check_slipcases(spec: ShelfSpec) -> Iterator[Problem]:
    """The same for slipcases, and whether each of their books is one book, boxed once."""
    for name, box in spec.slipcases.items():
        if box.stock not in spec.stocks:
            yield _unknown("stock", box.stock, spec.stocks, ("slipcases", name, "stock"))
        if box.space is not None and box.space not in spec.spaces:
            yield _unknown("space", box.space, spec.spaces, ("slipcases", name, "space"))
    yield from membership_problems(spec.slipcases, [Listed(book.name, book.space, book.stack) for book in spec.books])


def _row_problems(spec: ShelfSpec) -> Iterator[Problem]:
    """Books in measured rows that are not on the list, or are measured twice."""
    books = [book.name for book in spec.books]
    seen: set[int] = set()
    for number, row in enumerate(spec.measured_rows):
        for position, name in enumerate(row.books):
            field = ("measured_rows", number, "books", position)
            try:
                found = find_books(name, books)
            except UnknownBook as unknown:
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
