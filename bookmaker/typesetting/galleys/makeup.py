"""Make-up: galleys into pages of equally many lines, a spread at a time.

Where a page falls short for the sake of single lines, a paragraph of the spread is set a line longer or shorter, if
that helps; else the page that faces it is as short, if it can be. No word is parted over the turn of a leaf if another
set of lines avoids it, or a spread that is a line shorter.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import islice

from .made_pages import BLANK, MadePage
from .matter import Matter
from .page_filling import FilledPage, filled_page
from .read_matter import Place, ReadMatter

__all__ = ["Others", "make_up"]

Others = Callable[[Matter, int], Iterable[Matter]]
"""Some matter set in other ways; if the number of its lines over the foot of a page is given, without the hyphen there.
"""

TRIES = 3
"""So many other ways of setting its paragraphs are tried to mend a spread."""

ROUNDS = 2
"""So often: what makes a spread full may part a word over its turn."""

MOST_CHANGED = 1
"""A paragraph is made longer or shorter by no more lines than these."""

FEWEST_LINES = 3
"""A paragraph of fewer lines is hardly ever set a line longer or shorter."""

FEWEST_EVENED = 8
"""Pages of fewer lines are not made shorter for the sake of those that face them: a line is too much of them."""

MOST_GIVEN_UP = 3
"""Facing pages are made shorter by no more lines than these to be equal."""


def _as_it_is(matter: Matter, foot: int) -> Iterable[Matter]:  # noqa: ARG001 (whatever is asked for)
    return ()


def make_up(matter: Iterable[Matter], rows: int, first: int = 1, others: Others = _as_it_is) -> Iterator[MadePage]:
    """The pages of a text, a spread at a time; `rows` is how many lines a page has, `first` the number of the first.

    Pages with an even number face the one that follows them. One stays blank where a recto must follow.
    """
    galley, place, number = ReadMatter(matter), Place(), first
    while (following := galley[place.matter]) is not None or place.pending:
        if following and following.recto and not place.pending and place.line == 0 and number % 2 == 0:
            yield BLANK
            number += 1
        for filled in _mended(galley, place, rows, others, facing=number % 2 == 0):
            for page in filled.pages:
                yield page
                number += 1
            place = filled.next
        galley.forget(place.matter)


def _mended(galley: ReadMatter, place: Place, rows: int, others: Others, *, facing: bool) -> Sequence[FilledPage]:
    """The pages of a spread, with other sets of lines as long as these have fewer faults."""

    def filled() -> tuple[FilledPage, ...]:
        return _spread(galley, place, rows) if facing else (filled_page(galley, place, rows, rows),)

    found, lengths = filled(), dict[int, int]()
    for _ in range(ROUNDS):
        faults, best = _faults(found, rows), None
        changes = _changes(galley, place, found, rows, others) if faults else ()
        for number, before, other in islice(changes, TRIES):
            if abs(len(other.lines) - lengths.setdefault(number, len(before.lines))) > MOST_CHANGED:
                continue
            galley.put(number, other)
            again = filled()
            galley.put(number, before)
            fewer = _faults(again, rows)
            if fewer < faults:
                faults, best = fewer, (number, other, again)
        if best is None:
            break
        number, other, found = best
        galley.put(number, other)
    return (_unparted(galley, place, rows, found) or found) if found[-1].page.parts_a_word else found


def _unparted(galley: ReadMatter, place: Place, rows: int, pages: Sequence[FilledPage]) -> Sequence[FilledPage]:
    """The pages with a line less on each, if no word is parted over their turn then; else none."""
    shorter, reached = list[FilledPage](), place
    while len(shorter) < len(pages) and rows >= FEWEST_EVENED:
        shorter.append(filled_page(galley, reached, rows, rows - 1))
        reached = shorter[-1].next
    even = all(filled.page.deep == rows - 1 and not (filled.plates or filled.free) for filled in shorter)
    return shorter if even and shorter and not shorter[-1].page.parts_a_word else ()


def _faults(pages: Sequence[FilledPage], rows: int) -> int:
    """Rows that pages lack which should be full, by which they differ, and one for a word parted over their turn."""
    lacking = [filled.lacking(rows) for filled in pages if not filled.free]
    return sum(lacking) + max(lacking, default=0) - min(lacking, default=0) + bool(pages[-1].page.parts_a_word)


def _changes(
    galley: ReadMatter, place: Place, pages: Sequence[FilledPage], rows: int, others: Others
) -> Iterator[tuple[int, Matter, Matter]]:
    """Other ways to set the paragraphs that begin on some pages, the one at the foot first, then the longest.

    What stands after the first page that lacks lines, not only to be equal to another, cannot make that one full.
    """
    begin, end, foot = place.matter + (place.line > 0), pages[-1].next.matter, pages[-1].page.parts_a_word
    if foot and end >= begin and (last := galley[end]):
        yield from ((end, last, other) for other in others(last, foot))
    alone = filled_page(galley, place, rows, rows)
    end = alone.next.matter if alone.lacking(rows) else end
    numbered = ((number, galley[number]) for number in range(begin, end + 1))
    paragraphs = [(number, found) for number, found in numbered if found and len(found.lines) >= FEWEST_LINES]
    for number, found in sorted(paragraphs, key=lambda pair: -len(pair[1].lines)):
        yield from ((number, found, other) for other in others(found, 0))


def _spread(galley: ReadMatter, place: Place, rows: int) -> tuple[FilledPage, ...]:
    """A left page and the one that faces it, equally deep if that can be; the left one alone if a plate faces it."""
    left = filled_page(galley, place, rows, rows)
    if left.free or left.plates:
        return (left,)
    right = filled_page(galley, left.next, rows, rows)
    shorter = min(left.page.deep, right.page.deep)
    if right.free or left.page.deep == right.page.deep or rows < FEWEST_EVENED:
        return (left, right)
    for depth in range(rows - 1, max(math.ceil(shorter), rows - MOST_GIVEN_UP) - 1, -1):
        one = filled_page(galley, place, rows, depth)
        other = filled_page(galley, one.next, rows, depth)
        if one.page.deep == other.page.deep >= shorter and not (one.plates or one.free or other.free):
            return (one, other)
    return (left, right)
