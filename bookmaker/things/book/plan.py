"""One book: as it was written and read, and worked out: block, cover, jacket and the numbers that follow."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import ceil
from pathlib import Path

from ...ground.drawing import Colour
from ...ground.geometry import Size
from ...ground.problems import Problem, Severity, ShelfFileError, within
from ...ground.units import print_mm
from ...paper.stock import Stock
from ...sheets.cutting import CutPart
from ...sheets.flat import Flat
from ...shelf_file.book_names import BookName
from ...typesetting.page import PageFrame
from ...typesetting.punctuation import Punctuation
from ..answers import Advice, Clothes, Stretch
from ..pinned import Pinned
from ..place import PlaceEntry
from ..terms import Terms
from ..thing import AnyFamily, Plan, Thing
from .coat import Coat, words_of
from .designs.letters.names import surname
from .entry import SMALLEST_PAGE, BookEntry
from .extents import misplaced, page_frame, settled_block
from .looks import look_of
from .pages.written import marks_of, parts_of
from .sizes import BookSizes
from .slips import thicker_than_high, written_life_size
from .sources import UNREAD, Sources, read_sources

__all__ = ["Book", "BookPlan", "plan_book"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Book(Thing):
    """A book as it was written, with what was read for it."""

    id: str
    family: AnyFamily = field(compare=False, repr=False)
    entry: BookEntry
    sources: Sources = UNREAD

    @property
    def done(self) -> frozenset[str]:
        """What is ticked off in the shelf file."""
        return frozenset(self.entry.done)

    @property
    def look(self) -> int:
        """Its look by itself: the one that is written, or that of its id."""
        return self.entry.look or look_of(self.id)

    @property
    def name(self) -> BookName:
        """Its title, with volume and series."""
        return self.entry.name

    @property
    def space(self) -> str | None:
        """Where it stands, as written."""
        return self.entry.space

    @property
    def place(self) -> PlaceEntry | None:
        """Where in the room it lies, as written."""
        return self.entry.place

    @property
    def stack(self) -> str | None:
        """The stack it lies in."""
        return self.entry.stack

    @property
    def stands_otherwise(self) -> str:
        """The key with which it leans, lies, lies open or shows a side."""
        return self.entry.stands.otherwise

    @property
    def pinned(self) -> Pinned:
        """Where the maker pins it."""
        return self.entry.pinned

    @property
    def spoilt(self) -> tuple[Problem, ...]:
        """Letters that no typeface has, and the like."""
        return within(("inside",), self.sources.inside.errors)

    def read(self, folder: Path) -> tuple[Book, tuple[Problem, ...]]:
        """The book with its texts, its pictures, its artwork."""
        sources, problems = read_sources(self.entry, folder)
        return replace(self, sources=sources), problems

    def checks(self, scale: float) -> Iterator[Problem]:
        """Pages that the scale makes vanish."""
        page = self.entry.page_size(scale)
        if min(page) < SMALLEST_PAGE:
            yield Problem(
                f"at 1:{scale:g} the page is {print_mm(page.width)} × {print_mm(page.height)}",
                "write the size of the full-size book, or another scale",
                field=("life_size",),
                by_itself=True,
            )

    def settled(self, terms: Terms) -> tuple[Book, tuple[Problem, ...]]:
        """The book with as many pages as its inside needs, where its block leaves that open."""
        block, problems = settled_block(self.entry, self.sources.inside, terms, self.look, unread=self.sources.unread)
        return replace(self, entry=self.entry.model_copy(update={"block": block})), problems

    def of_thickness(self, thickness: float) -> Book:
        """The book with the bounds of its block closed on one thickness, in mm."""
        block = self.entry.block.of_thickness(thickness)
        return replace(self, entry=self.entry.model_copy(update={"block": block}))

    def plan(self, terms: Terms, held: Sequence[Plan]) -> BookPlan:
        """Work it out."""
        try:
            return plan_book(self, terms)
        except ShelfFileError as refusal:
            slips = written_life_size(self.entry, terms.scale, Severity.ERROR)
            raise ShelfFileError((*slips, *refusal.problems)) from None


@dataclass(frozen=True, slots=True, kw_only=True)
class BookPlan(BookSizes):
    """One book worked out: `page` is its page in mm, `frame` its pages, to be filled."""

    thing: Book
    page: Size
    frame: PageFrame
    coat: Coat

    @property
    def entry(self) -> BookEntry:
        """What the maker wrote, and what follows from it."""
        return self.thing.entry

    @property
    def made_as(self) -> str:
        """Its block, its cover, its jacket."""
        return f"{self.block.kind}, {self.cover.kind}" + (", jacket" if self.jacket else "")

    @property
    def marks(self) -> Punctuation:
        """The marks it is punctuated with wherever something of it is printed."""
        return marks_of(parts_of(self.entry.inside), self.entry.title, self.entry.language)

    @property
    def flats(self) -> tuple[Flat, ...]:
        """Everything to print for this book, the block first."""
        return (*self.block.flats, *self._outside)

    @property
    def _outside(self) -> tuple[Flat, ...]:
        """Cover and jacket."""
        return (*self.cover.flats, *((self.jacket.flat,) if self.jacket else ()))

    @property
    def cut_list(self) -> tuple[CutPart, ...]:
        """Everything to cut by hand for this book, the block first."""
        return (*self.block.cut_list, *self.cover.cut_list)

    @property
    def fills(self) -> bool:
        """Whether its block takes what the others leave on its space."""
        return self.stretch is not None

    @property
    def stretch(self) -> Stretch | None:
        """The bounds of a block that takes what the others leave on its space."""
        found, now = self.block.stretch, self.block.thickness.value
        if found is None:
            return None
        return Stretch(found.at_least, found.at_most, ("block",), now, found.about, found.choices)

    @property
    def templates(self) -> Mapping[str, tuple[Flat, ...]]:
        """The cover, and the jacket."""
        return {"": self.cover.flats, "jacket": (self.jacket.flat,) if self.jacket else ()}

    @property
    def paged_on(self) -> frozenset[str]:
        """The stocks its pages are printed on."""
        return frozenset(flat.stock for flat in self.block.flats)

    @property
    def lettered_on(self) -> frozenset[str]:
        """The stocks its titles are printed on."""
        return frozenset(flat.stock for flat in self._outside if flat.dressed)

    @property
    def look(self) -> int:
        """The look of what is on it, that of its set if it is in one."""
        return self.coat.words.look

    @property
    def tone(self) -> Colour | None:
        """The ground of what is seen of it."""
        return self.coat.seen.ground

    @property
    def style(self) -> str:
        """The style of what is seen of it."""
        return self.coat.seen.style

    @property
    def filed_under(self) -> str:
        """The surname, and all of the name."""
        author = self.entry.author or ""
        return f"{surname(author, self.entry.language)} {author}".strip()

    @property
    def notes(self) -> tuple[Problem, ...]:
        """What there is to say about its making."""
        return (*self.block.notes, *self.cover.notes, *thicker_than_high(self, self.page.height))

    def thinner(self, missing: float) -> Advice | None:
        """Fewer pages, if it then keeps half of them; the thickest book is the first to be asked."""
        a_page = self.block.thickness_of_a_page
        if not a_page or self.entry.stack is not None or self.block.bare.measured is not None:
            return None
        fewer = 2 * ceil(missing / a_page / 2)
        said = f"give {self.name} {fewer} pages fewer"
        return Advice(said, self.block.thickness.value) if fewer <= self.block.pages / 2 else None

    def onto(self, off_cut: Stock, terms: Terms) -> Advice | None:
        """Shorter strips of its block."""
        from .off_cuts import shorter_strips

        return shorter_strips(self.entry, self.page, off_cut, terms.stocks)

    def covering_for(self, flat: Flat) -> Clothes:
        """Its cover without its words, for what goes with it."""
        design = self.coat.design
        dress = design.dress(self.thing.sources.design, flat, self.coat.words.unsaid())
        return Clothes(dress.art, design.ground, dress.titling)

    def punctuated(self, text: str) -> str:
        """A text with the marks of the book."""
        return self.marks.printed(text)


def plan_book(book: Book, terms: Terms) -> BookPlan:
    """Work out one book.

    Raises:
        ShelfFileError: with everything that keeps it from being made.
    """
    entry, stocks = book.entry, terms.stocks
    page, mirrored = entry.page_size(terms.scale), entry.right_to_left
    block = entry.block.plan(page, stocks, right_to_left=mirrored)
    if block.stretch and (problem := misplaced(entry)):
        if block.stretch.about is None:
            raise ShelfFileError((problem,))
        block = replace(block, stretch=None)
    if problem := entry.stands.problem(block.pages):
        raise ShelfFileError((problem,))
    cover = entry.cover.plan(page, block, stocks, right_to_left=mirrored)
    if entry.measured_thickness is not None:
        cover = replace(cover, thickness=cover.thickness.as_measured(entry.measured_thickness))
    jacket = entry.jacket.plan(cover, stocks, right_to_left=mirrored) if entry.jacket else None
    coat = Coat(
        words_of(entry, book.look, book.sources.inside), entry.design, entry.jacket.design if entry.jacket else None
    )
    frame = page_frame(entry, terms, block.pages, book.look)
    return BookPlan(thing=book, page=page, frame=frame, block=block, cover=cover, jacket=jacket, coat=coat)
