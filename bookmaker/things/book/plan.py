"""One book worked out: block, cover, jacket and the numbers that follow."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from ...ground.geometry import Size
from ...ground.problems import Problem, ShelfFileError
from ...paper.stock import Stock
from ...paper.thickness import READING_TOLERANCE, Thickness
from ...sheets.cutting import CutPart
from ...sheets.flat import Flat
from ...typesetting.punctuation import Punctuation
from ...typesetting.stand_ins import printable
from ..standing import Standing, Uncertainty
from .blocks.block_plan import BlockPlan
from .covers.cover_plan import CoverPlan
from .covers.jacket import JacketPlan
from .designs.design import Words
from .entry import BookEntry
from .pages.written import language_named, marks_of, parts_of

__all__ = ["BookPlan", "plan_book"]


@dataclass(frozen=True, slots=True)
class BookPlan:
    """One book: `number` counts from 0 as in the shelf file; `page` is its page in mm.

    `thickness`, `height` and `depth` are those of the finished book, with its jacket if it wears one.
    `measured` is its share of a row of finished books that was measured, if it stood in one; `measured_error`
    how far that share may be off, ± mm.
    """

    number: int
    entry: BookEntry
    page: Size
    block: BlockPlan
    cover: CoverPlan
    jacket: JacketPlan | None = None
    measured: float | None = None
    measured_error: float = 0.0

    @property
    def name(self) -> str:
        """What it is called wherever it must be told from the others of its set."""
        return str(self.entry.name)

    @property
    def numbered(self) -> str:
        """Its number on the list, from 1, and its name."""
        return f"{self.number + 1}. {self.name}"

    @property
    def printed(self) -> str:
        """The same for paper: the number alone, if no typeface here has the letters of the name."""
        return self.numbered if printable(self.name) else f"book {self.number + 1}"

    @property
    def words(self) -> Words:
        """What stands on its cover."""
        entry, printed = self.entry, self.marks.printed
        return Words(
            title=printed(entry.title),
            author=printed(entry.author or ""),
            volume=entry.volume or "",
            date=printed(entry.date or ""),
            language=language_named(parts_of(entry.inside)) or entry.language,
            series=entry.series or "",
            named=(entry.title, entry.author or ""),
        )

    @property
    def marks(self) -> Punctuation:
        """The marks it is punctuated with wherever something of it is printed."""
        return marks_of(parts_of(self.entry.inside), self.entry.title, self.entry.language)

    @property
    def flats(self) -> tuple[Flat, ...]:
        """Everything to print for this book, the block first."""
        return (*self.block.flats, *self.cover.flats, *((self.jacket.flat,) if self.jacket else ()))

    @property
    def cut_list(self) -> tuple[CutPart, ...]:
        """Everything to cut by hand for this book, the block first."""
        return (*self.block.cut_list, *self.cover.cut_list)

    @property
    def thickness(self) -> Thickness:
        """The finished book's thickness, layer by layer."""
        thickness = (self.jacket or self.cover).thickness
        return thickness if self.measured is None else thickness.as_measured(self.measured)

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
        return Standing(
            number=self.number,
            title=self.name,
            thickness=self.thickness.value,
            height=self.height,
            depth=self.depth,
            uncertainty=Uncertainty(self.thickness.sensitivities, self._own_error),
            stack=self.entry.stack,
        )

    @property
    def fills(self) -> bool:
        """Whether its block takes what the others leave on its space."""
        return self.entry.block.stretch is not None

    @property
    def paged_on(self) -> frozenset[str]:
        """The stocks its pages are printed on."""
        return frozenset(flat.stock for flat in self.block.flats)

    @property
    def lettered_on(self) -> frozenset[str]:
        """The stocks its titles are printed on."""
        outside = (*self.cover.flats, *((self.jacket.flat,) if self.jacket else ()))
        return frozenset(flat.stock for flat in outside if flat.dressed)

    @property
    def notes(self) -> tuple[Problem, ...]:
        """What there is to say about its making; fields count from the book."""
        return (*self.block.notes, *self.cover.notes)

    @property
    def _own_error(self) -> float:
        """What folding and gluing may add or take, or the reading of the gauge once the finished book was measured."""
        if self.measured is not None:
            return self.measured_error
        return self.entry.assembly_tolerance if self.cover.thickness.measured is None else READING_TOLERANCE


def plan_book(number: int, entry: BookEntry, scale: float, stocks: Mapping[str, Stock]) -> BookPlan:
    """Work out one book.

    Raises:
        ShelfFileError: with everything that keeps it from being made; fields count from the book.
    """
    if entry.block.stretch and (problem := _misplaced(entry.space, entry.stack)):
        raise ShelfFileError((problem,))
    page, mirrored = entry.page_size(scale), entry.right_to_left
    block = entry.block.plan(page, stocks, right_to_left=mirrored)
    cover = entry.cover.plan(page, block, stocks, right_to_left=mirrored)
    if entry.measured_thickness is not None:
        cover = replace(cover, thickness=cover.thickness.as_measured(entry.measured_thickness))
    jacket = entry.jacket.plan(cover, stocks, right_to_left=mirrored) if entry.jacket else None
    return BookPlan(number, entry, page, block, cover, jacket)


def _misplaced(space: str | None, stack: str | None) -> Problem | None:
    """What keeps a block from filling, a book without a space or in a stack; the field is relative to the book."""
    if space is None:
        message = "the block is to fill its space, but the book stands in none"
        remedy = "add space: with a name from spaces, or write a thickness such as 4 mm"
    elif stack is not None:
        message = "a book in a stack cannot fill its space: the stack takes the height of its longest book"
        remedy = "leave stack out, or write a thickness such as 4 mm"
    else:
        return None
    return Problem(message, remedy, field=("block", "thickness"))
