"""The covers of a whole shelf settled side by side: neighbours differ, books of a set are alike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import accumulate

from .book_plan import BookPlan
from .designs import InSet, Words, settled

__all__ = ["Coat", "dressed"]


Coat = tuple[BookPlan, Words]
"""A book with its design settled, and the words that stand on its cover."""


def dressed(books: Sequence[BookPlan]) -> tuple[Coat, ...]:
    """The books with a ground colour for every drawn cover, each with the words that stand on it.

    Neighbours are books that follow one another in the shelf file and stand in the same space. Books of one
    series, and volumes of the same title and author, are a set.
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
    designs = settled([(book.entry.design, said, book.entry.space) for book, said in zip(books, words, strict=True)])
    return tuple(
        (replace(book, entry=book.entry.model_copy(update={"design": design})), said)
        for book, said, design in zip(books, words, designs, strict=True)
    )


def _places(spines: Sequence[float]) -> list[InSet]:
    """Where each spine stands in the row of all, in mm.

    >>> _places([4.0, 5.0])
    [InSet(wider=0.0, begins=0.0, width=9.0, books=()), InSet(wider=1.0, begins=4.0, width=9.0, books=())]
    """
    narrowest, width = min(spines), sum(spines)
    begins = accumulate(spines[:-1], initial=0.0)
    return [InSet(spine - narrowest, start, width) for spine, start in zip(spines, begins, strict=True)]
