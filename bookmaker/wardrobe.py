"""The covers of a whole shelf settled side by side: neighbours differ, books of a set are alike."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import accumulate

from .book_plan import BookPlan
from .designs import InSet, Words, settled
from .designs.design import DrawnDesign
from .errors import Problem, Severity
from .shelf_spec import BookEntry
from .spec.entry import Entry

__all__ = ["Coat", "dressed", "palettes_overruled"]


Coat = tuple[BookPlan, Words]
"""A book with its design settled, and the words that stand on its cover."""


def dressed(books: Sequence[BookPlan]) -> tuple[Coat, ...]:
    """The books with a ground colour for every drawn cover and jacket, each with the words that stand on it.

    Neighbours are books that follow one another in the shelf file and stand in the same space; of a book in a
    jacket with a design of its own they see the jacket. Books of one series, and volumes of the same title and
    author, are a set.
    """
    words = [book.words for book in books]
    sets: dict[object, list[int]] = {}
    for number, said in enumerate(words):
        if said.series or said.volume:
            sets.setdefault(said.kin, []).append(number)
    for members in sets.values():
        if len(members) > 1:
            fellows = tuple(words[number] for number in members)
            for number, place in zip(members, _places([books[number].cover.spine for number in members]), strict=True):
                words[number] = replace(words[number], in_set=replace(place, books=fellows))
    coats = list(zip(books, words, strict=True))
    seen = settled([(_seen(book.entry), said, book.entry.space) for book, said in coats])
    under = settled([(book.entry.design, said, book.entry.space) for book, said in coats])
    return tuple(
        (replace(book, entry=_in_coat(book.entry, outer, inner)), said)
        for (book, said), outer, inner in zip(coats, seen, under, strict=True)
    )


def palettes_overruled(books: Sequence[BookPlan], coats: Sequence[Coat]) -> Iterator[Problem]:
    """A note for every book of a set that names another palette than the book whose colour the set has.

    `books` are as the maker wrote them, `coats` what became of them.
    """
    leads: dict[int, tuple[BookPlan, DrawnDesign]] = {}
    for book, (_, words) in zip(books, coats, strict=True):
        design = _seen(book.entry)
        if not words.in_set or not isinstance(design, DrawnDesign) or design.colour or design.steps:
            continue
        lead, first = leads.setdefault(words.kin, (book, design))
        if design.palette != first.palette:
            which = f"series {words.series!r}" if words.series else f"set of {lead.entry.title!r}"
            yield Problem(
                f"{book.entry.name} takes its colour from the {first.palette} palette of {lead.entry.name}, the first "
                f"of the {which}, for a set is alike: its own palette, {design.palette}, is not used",
                "write one palette for the whole set, or colour: with one of its own",
                Severity.NOTE,
                field=("books", book.number, "design", "palette"),
            )


def _seen(entry: BookEntry) -> Entry:
    """The design that neighbours see: that of the jacket, if it has one of its own, or that of the cover."""
    return (entry.jacket and entry.jacket.design) or entry.design


def _in_coat(entry: BookEntry, outer: Entry, inner: Entry) -> BookEntry:
    """A book in its settled designs: what is seen of it, and what is under a jacket with a design of its own."""
    if not entry.jacket or not entry.jacket.design:
        return entry.model_copy(update={"design": outer})
    return entry.model_copy(update={"design": inner, "jacket": entry.jacket.model_copy(update={"design": outer})})


def _places(spines: Sequence[float]) -> list[InSet]:
    """Where each spine stands in the row of all, in mm.

    >>> _places([4.0, 5.0])
    [InSet(wider=0.0, begins=0.0, width=9.0, books=()), InSet(wider=1.0, begins=4.0, width=9.0, books=())]
    """
    narrowest, width = min(spines), sum(spines)
    begins = accumulate(spines[:-1], initial=0.0)
    return [InSet(spine - narrowest, start, width) for spine, start in zip(spines, begins, strict=True)]
