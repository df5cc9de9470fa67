"""The covers of a whole shelf settled side by side: neighbours differ, books of a set are alike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import accumulate

from .book_plan import BookPlan
from .designs import InSet, Words, settled
from .shelf_spec import BookEntry
from .spec.entry import Entry

__all__ = ["Coat", "dressed"]


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
