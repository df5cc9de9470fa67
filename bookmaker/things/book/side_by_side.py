"""The covers of a whole shelf settled side by side: books of a set are alike, and neighbours that are is told."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import accumulate

from ...ground.geometry import Size
from ...ground.problems import Problem, Severity
from ...ground.quantities import show
from .coat import Coat
from .designs.colouring import coloured
from .designs.design import Design, InSet, Words
from .entry import BookEntry
from .looks import look_of
from .neighbours import seen_design
from .plan import BookPlan

__all__ = ["dressed", "in_look", "looks_overruled", "palettes_overruled", "set_notes"]


def dressed(books: Sequence[BookPlan]) -> tuple[BookPlan, ...]:
    """The books with a ground colour for every drawn cover and jacket, and with the words of the sets they are in.

    Books of one series, and volumes of the same title and author, are a set. All have the look that is written for
    the first of them that has one, or one that hangs on what they have in common.
    """
    words = [_of_its_age(book.entry, book.coat.words) for book in books]
    for members in _sets(books):
        written = next((look for number in members if (look := books[number].entry.look)), None)
        shared = written or look_of(*words[members[0]].set_words)
        for number in members:
            words[number] = _of_its_age(books[number].entry, replace(words[number], look=shared))
        fellows = tuple(words[number] for number in members)
        spines = [Size(books[number].cover.spine, books[number].height) for number in members]
        for number, place in zip(members, _places(spines), strict=True):
            words[number] = replace(words[number], in_set=replace(place, books=fellows))
    row = list(zip(books, words, strict=True))
    seen = coloured((seen_design(book.entry), said) for book, said in row)
    under = coloured((book.entry.design, said) for book, said in row)
    return tuple(
        _framed(replace(book, coat=_coat(book.entry, said, outer, inner)))
        for (book, said), outer, inner in zip(row, seen, under, strict=True)
    )


def in_look(book: BookPlan, look: int) -> BookPlan:
    """A book as another look would have it, and the words of its set with it."""
    words = _of_its_age(book.entry, replace(book.coat.words, look=look))
    if words.in_set:
        fellows = tuple(_of_its_age(book.entry, replace(fellow, look=look)) for fellow in words.in_set.books)
        words = replace(words, in_set=replace(words.in_set, books=fellows))
    (outer,), (inner,) = (coloured([(design, words)]) for design in (seen_design(book.entry), book.entry.design))
    return replace(book, coat=_coat(book.entry, words, outer, inner))


def _of_its_age(entry: BookEntry, words: Words) -> Words:
    """The words of a book with the year that its design gives it."""
    return replace(words, period=seen_design(entry).period_for(words))


def _framed(book: BookPlan) -> BookPlan:
    """The book with its pages in the look of its set."""
    words = replace(book.frame.book, look=book.coat.words.look)
    return book if words == book.frame.book else replace(book, frame=replace(book.frame, book=words))


def _coat(entry: BookEntry, words: Words, outer: Design, inner: Design) -> Coat:
    """The settled designs: what is seen of the book, and what is under a jacket with a design of its own."""
    own = entry.jacket is not None and entry.jacket.design is not None
    return Coat(words, inner, outer) if own else Coat(words, outer)


def palettes_overruled(books: Sequence[BookPlan]) -> Iterator[Problem]:
    """A note for every book of a set that names another palette than the book whose colour the set has."""
    leads: dict[tuple[str, ...], tuple[BookPlan, str]] = {}
    for book in books:
        palette, words = seen_design(book.entry).palette_of_set, book.coat.words
        if not words.in_set or palette is None:
            continue
        lead, first = leads.setdefault(words.set_words, (book, palette))
        if palette != first:
            which = f"series {words.series!r}" if words.series else f"set of {lead.entry.title!r}"
            yield Problem(
                f"{book.name} takes its colour from the {first} palette of {lead.name}, the first "
                f"of the {which}, for a set is alike: its own palette, {palette}, is not used",
                "write one palette for the whole set, or colour: with one of its own",
                Severity.NOTE,
                field=("design", "palette"),
                thing=book.id,
            )


def _sets(books: Sequence[BookPlan]) -> list[list[int]]:
    """The numbers of the books of each set, counted from 0."""
    sets: dict[object, list[int]] = {}
    for number, said in enumerate(book.coat.words for book in books):
        if said.series or said.volume:
            sets.setdefault(said.set_words, []).append(number)
    return [members for members in sets.values() if len(members) > 1]


def _places(spines: Sequence[Size]) -> list[InSet]:
    """Where each spine stands in the row of all, in mm.

    >>> first, second = _places([Size(4.0, 20.0), Size(5.0, 22.0)])
    >>> (first.taller, first.shorter), (second.wider, second.begins, second.shorter)
    ((2.0, 0.0), (1.0, 4.0, 2.0))
    """
    widths, heights = [spine.width for spine in spines], [spine.height for spine in spines]
    begins = accumulate(widths[:-1], initial=0.0)
    return [
        InSet(
            wider=spine.width - min(widths),
            begins=start,
            width=sum(widths),
            taller=max(heights) - spine.height,
            shorter=spine.height - min(heights),
            low=min(heights) / spine.height,
        )
        for spine, start in zip(spines, begins, strict=True)
    ]


def looks_overruled(books: Sequence[BookPlan]) -> Iterator[Problem]:
    """A note for every book of a set for which another look is written than the one that the set has."""
    for book in books:
        shared = book.coat.words.look
        if book.entry.look not in (None, shared):
            yield Problem(
                f"{book.name} has look {shared}, that of its set, for a set is alike: its own, {book.entry.look}, is "
                "not used",
                f"write look: {shared} for all books of the set, or leave its own out",
                Severity.NOTE,
                field=("look",),
                thing=book.id,
            )


def set_notes(books: Sequence[BookPlan]) -> Iterator[Problem]:
    """Where a picture that runs across the spines of a set is broken."""
    for members in _sets(books):
        designs = {number: seen_design(books[number].entry) for number in members}
        painted = {number: picture for number, design in designs.items() if (picture := design.picture_across)}
        drawn = any(design.is_landscape for design in designs.values())
        for number in members if painted else ():
            if number not in painted:
                picture = next(iter(painted.values()))
                yield Problem(
                    f"{show(books[number].name)} has no picture on its spine, where that of its set runs across",
                    f"give it style: picture and spine_picture: {picture}",
                    Severity.NOTE,
                    field=("design",),
                    thing=books[number].id,
                )
        spaces = list(dict.fromkeys(books[number].entry.space for number in members))
        if (painted or drawn) and len(spaces) > 1:
            named = " and ".join("no space" if space is None else show(space) for space in spaces)
            yield Problem(
                f"the books of {show(_name_of_set(books[members[0]]))} stand in {named}: the picture across their "
                "spines is divided",
                "name one space for all of them",
                Severity.NOTE,
                field=("space",),
                thing=books[members[-1]].id,
            )


def _name_of_set(book: BookPlan) -> str:
    return book.coat.words.series or book.coat.words.title
