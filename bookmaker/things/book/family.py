"""Books as one kind of thing among others: how they are listed, drawn, settled side by side, and told of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Annotated, Any

from pydantic import BeforeValidator, Field

from ...ground.ids import Called
from ...ground.problems import Problem, Severity, within
from ...ground.quantities import counted
from ...ground.told import figure, unit_named
from ...ground.units import rounded
from ...paper.eyesight import Legibility
from ...shelf_file.fields.words import refuse
from ...shelf_file.rows import LONGEST_ROW
from ..answers import Section, Table
from ..draft import Draft
from ..terms import Terms
from ..thing import Around, Family, Plan
from .drafting import draft_book
from .entry import BookEntry
from .facts import facts_of
from .legibility import lettering_problems, titles_for_a_lens
from .neighbours import alike_neighbours, kept_looks, repeated_scenes
from .pages.kinds import BLANK
from .plan import Book, BookPlan
from .side_by_side import dressed, in_look, looks_overruled, palettes_overruled, set_notes
from .slips import titled_alike, written_life_size

if TYPE_CHECKING:
    from ..making import Bench, Chapter

__all__ = ["BOOKS"]

COLUMNS = (
    ("", True),
    ("book", False),
    ("pages", True),
    ("panels", True),
    ("pieces", True),
    ("block", True),
    ("spine", True),
    ("thick", True),
    ("high", True),
    ("deep", True),
    ("±", True),
)


def _read_books(value: object) -> object:
    if isinstance(value, list) and not 1 <= len(value) <= LONGEST_ROW:
        raise refuse(f"lists {len(value)} books", f"write from 1 to {LONGEST_ROW}", f"1 to {LONGEST_ROW}")
    return value


class Books(Family[BookEntry, BookPlan]):
    """The books of a shelf."""

    noun = "book"
    section = Section(
        "books",
        (Annotated[tuple[BookEntry, ...], BeforeValidator(_read_books)], Field(description="the books")),
        counted=True,
    )

    def called(self, entry: BookEntry, key: str | int) -> Called:
        """Title, volume, series, author and date."""
        words = (entry.title, entry.volume or "", entry.series or "", entry.author or "", entry.date or "")
        return Called(words, entry, entry.id or "")

    def thing(self, entry: BookEntry, key: str | int, id: str) -> Book:
        """The book of an entry."""
        return Book(id=id, family=self, entry=entry)

    def dressed(self, plans: Sequence[Plan]) -> Sequence[Plan]:
        """The books in the colours of their looks, those of a set alike."""
        coats = {book.id: book for book in dressed(_books(plans))}
        return [coats.get(plan.id, plan) for plan in plans]

    def draw(self, plan: BookPlan, held: Sequence[Plan]) -> Draft:
        """Everything printed for a book."""
        return draft_book(plan)

    def chapter(self, plan: BookPlan, bench: Bench, around: Around) -> Chapter:
        """What it is, its sizes, how its block, its cover and its jacket are made."""
        from .chapter import book_chapter

        return book_chapter(plan, bench, around)

    def findings(self, plan: BookPlan, draft: Draft, around: Around) -> Iterator[Problem]:
        """An inside that will not be seen, lettering that is too small or too faint."""
        if not plan.block.pages and plan.entry.inside != BLANK:
            yield Problem(
                "this book is a dummy and has no pages: its inside will not be seen",
                "leave it out, or write inside: {kind: blank}",
                Severity.NOTE,
                field=("inside",),
                by_itself=True,
            )
        resolution = around.terms.resolution(plan.lettered_on)
        yield from written_life_size(plan.entry, around.terms.scale)
        yield from within(("design",), lettering_problems(draft.lettering, resolution))

    def together(self, plans: Sequence[Plan], drafts: Sequence[Draft], around: Around) -> Iterator[Problem]:
        """Titles that several have, sets that are not alike, neighbours that are, titles that need a lens."""
        books = _books(plans)
        yield from titled_alike([(book.id, book.entry) for book in books])
        yield from set_notes(books)
        yield from palettes_overruled(books)
        yield from looks_overruled(books)
        yield from alike_neighbours(books)
        yield from repeated_scenes(books)
        resolution = around.terms.resolution
        covers = [
            (plan, draft.spine_title, resolution(plan.lettered_on))
            for plan, draft in zip(plans, drafts, strict=True)
            if isinstance(plan, BookPlan)
        ]
        yield from titles_for_a_lens(covers, around.terms.viewing_distance)

    def facts(self, plan: BookPlan) -> Mapping[str, str]:
        """Its words, its sizes, its making, its design."""
        return facts_of(plan)

    def in_look(self, plan: BookPlan, look: int) -> BookPlan:
        """A book as another look would have it."""
        return in_look(plan, look)

    def looks(self, plans: Sequence[Plan], *, unlike: bool) -> Mapping[str, int]:
        """The look of every book."""
        return kept_looks(_books(plans), unlike=unlike)

    def report(self, plan: BookPlan, draft: Draft, around: Around) -> dict[str, Any]:
        """Its pages, its spine, how its text and its title can be read."""
        block = plan.block
        high = draft.x_height
        text = None if high is None else around.terms.letters(high, plan.paged_on, draft.strokes)
        return {
            "title": plan.entry.title,
            "look": plan.coat.words.look,
            "page_mm": {"width": rounded(plan.page.width), "height": rounded(plan.page.height)},
            "direction": plan.entry.direction,
            "block_kind": block.kind,
            "cover_kind": plan.cover.kind,
            "jacket": plan.jacket is not None,
            "pages": block.pages,
            "panels": block.panels,
            "strips": len(block.flats),
            "block_thickness_mm": rounded(block.thickness.value),
            "block_alone_mm": rounded(block.bare.value),
            "block_computed_mm": rounded(block.bare.computed),
            "spine_mm": rounded(plan.cover.spine),
            "spine_title": _spine_title(plan, draft, around.terms),
            "legibility": text and {**_seen(text), **_strokes(text), "verdict": str(text.sight)},
        }

    def table(self, plans: Sequence[Plan], around: Around) -> Table | None:
        """One row a book; lengths in mm."""
        books = _books(plans)
        if not books:
            return None
        title = f"{around.terms.shelf}: {counted(len(books), 'book')}, lengths in {unit_named()}"
        return Table(title, COLUMNS, tuple(_row(book, around) for book in books))


BOOKS = Books()


def _books(plans: Sequence[Plan]) -> list[BookPlan]:
    """The books among all things."""
    return [plan for plan in plans if isinstance(plan, BookPlan)]


def _row(book: BookPlan, around: Around) -> tuple[str, ...]:
    block = book.block
    _, likely = book.standing.uncertainty.spread(around.terms.tolerances)
    measured = " measured" if block.bare.measured is not None else ""
    return (
        str(around.number_of(book.id)),
        book.name,
        str(block.pages),
        str(block.panels),
        str(len(block.flats)),
        f"{figure(block.bare.value)}{measured}",
        figure(book.cover.spine),
        figure(book.thickness.value),
        figure(book.height),
        figure(book.depth),
        figure(likely),
    )


def _spine_title(plan: BookPlan, draft: Draft, terms: Terms) -> dict[str, Any] | None:
    """How the title on the spine came out; None if there is none."""
    line = draft.spine_title
    if line is None:
        return None
    letters = terms.letters(line.x_height, plan.lettered_on)
    return {"way": line.way, **_seen(letters), "contrast": round(line.contrast, 2), "seen": str(letters.sight)}


def _strokes(letters: Legibility) -> dict[str, Any]:
    """How thick strokes are in dots and how open counters, as far as they are known."""
    dots = {"stem_dots": letters.stem, "hairline_dots": letters.hairline, "counter_dots": letters.counter}
    known = {name: round(count, 2) for name, count in dots.items() if count is not None}
    return {**known, "clogged": letters.clogged}


def _seen(letters: Legibility) -> dict[str, Any]:
    """How large letters are to the printer and to the eye."""
    return {
        "x_height_mm": rounded(letters.x_height),
        "arc_minutes": round(letters.minutes, 2),
        "dots": round(letters.dots, 1),
    }
