"""Notes at the foot of the page that refers to them, under a short rule.

They take whole rows from the text over them, so that this keeps to its grid; their own lines are closer, as their type
is smaller, and the last of them stands on the last row. A long note may go on at the foot of the next page.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import chain
from typing import NamedTuple

from ..lines.fount import NOTE_FIGURES, Style
from ..lines.set_lines import SetLine
from ..manuscripts.passage import Passage, Role
from ..manuscripts.ranks import Rank
from .made_pages import Slot
from .matter import Matter

__all__ = ["NOTE_SIZE", "NO_NOTES", "Foot", "NoteLines", "carried", "notes_in", "rows_for", "with_notes"]

NOTE_SIZE = 0.85
"""Size of notes, and of their leading at the foot of a page, as a share of those of the text."""

WHITE = 1.6
"""From the last line of the text to the first of the notes there are at least so many rows, with a rule between."""

KEPT = 2
"""So many lines of a note at least stand on a page, if it is parted, and as many go over."""

FEWEST_OVER = 3
"""So many rows are left to the text at least by notes that go on from the page before, if there are as many twice."""


def with_notes(passages: Sequence[Passage]) -> Iterator[tuple[Passage, tuple[Passage, ...]]]:
    """The passages of a text without the notes at the end of its chapters, each with those that it refers to first.

    What refers to notes from a page of its own leaves them to the passage after it; notes that nothing refers to stay.
    """
    start = 0
    while start < len(passages):
        end = next((place for place in range(start + 1, len(passages)) if _begins(passages[place])), len(passages))
        yield from _chapter(passages[start:end])
        start = end


def _begins(passage: Passage) -> bool:
    return passage.role is Role.HEADING and passage.level <= Rank.CHAPTER and not passage.inset


def _chapter(passages: Sequence[Passage]) -> Iterator[tuple[Passage, tuple[Passage, ...]]]:
    """The same for a chapter, whose notes stand together at its end."""
    begin = next((place for place, one in enumerate(passages) if one.role is Role.NOTE and one.mark), len(passages))
    others = [passage for passage in passages[begin:] if not passage.text or passage.role is Role.PLATE]
    notes: dict[str, list[Passage]] = {}
    for note in (passage for passage in passages[begin:] if passage.text and passage.role is not Role.PLATE):
        figure = note.mark.rstrip(".") if note.role is Role.NOTE and note.mark else [*notes][-1]
        notes.setdefault(figure, []).append(_run_in(note))
    waiting: list[Passage] = []
    for passage in passages[:begin]:
        waiting += _referred(passage.text, notes)
        if passage.role is Role.PLATE or not passage.text:
            yield passage, ()
        else:
            yield passage, tuple(waiting)
            waiting = []
    for left in (*waiting, *chain(*notes.values()), *others):
        yield left, ()


def _run_in(note: Passage) -> Passage:
    """Part of a note as a paragraph, whatever it was: verses go on after a stroke, cells after a point."""
    if note.role is Role.NOTE:
        return note
    text = note.text.replace("\n", "\u00a0/ ").replace("\t", "; ")
    return Passage(f"{note.mark}\u00a0{text}" if note.role is Role.ITEM and note.mark else text, Role.NOTE)


def _referred(text: str, notes: dict[str, list[Passage]]) -> Iterator[Passage]:
    """The notes that a text refers to, and those that these refer to, taken out of all."""
    for figure in _figures(text):
        for note in notes.pop(figure, ()):
            yield note
            yield from _referred(note.text, notes)


def _figures(words: str) -> Iterator[str]:
    return (found.lstrip(Style.SUPERIOR) for found in NOTE_FIGURES.findall(words))


ENDLESS = 10_000
"""More rows than any page has."""


class NoteLines(NamedTuple):
    """Some lines of a note: from `start` to before `end`."""

    note: Matter
    start: int
    end: int

    @property
    def lines(self) -> int:
        """How many lines these are."""
        return self.end - self.start


def notes_in(matter: Matter, start: int, end: int) -> list[NoteLines]:
    """The notes that some lines of matter refer to; what has no figure in them belongs to the last line of all."""
    if not matter.notes:
        return []
    figures = [set(_figures(_words(line))) for line in matter.lines]
    found, place = list[NoteLines](), None
    for note in matter.notes:
        # what another note refers to stands with that
        named = next((number for number, here in enumerate(figures) if _figure(note) in here), place)
        place = len(figures) - 1 if named is None else named
        if start <= place < end:
            found.append(NoteLines(note, 0, len(note.lines)))
    return found


def _words(line: SetLine) -> str:
    return " ".join((line.words, *(cell.words for cell in line.more)))


def _figure(note: Matter) -> str:
    return note.initials[0].words.rstrip(".") if note.initials else ""


class Foot(NamedTuple):
    """The notes at the foot of a page, and what of them goes over to the next."""

    placed: tuple[NoteLines, ...] = ()
    over: tuple[NoteLines, ...] = ()

    @property
    def lines(self) -> int:
        """How many lines of notes there are."""
        return sum(note.lines for note in self.placed)

    @property
    def rows(self) -> int:
        """How many rows they take from the text, with the white over them."""
        return rows_for(self.lines) if self.placed else 0

    @property
    def alone(self) -> int:
        """How many rows they take on a page that has no text."""
        return 1 + math.ceil((self.lines - 1) * NOTE_SIZE - 1e-9)

    def least_with(self, notes: Sequence[NoteLines]) -> int:
        """The fewest rows that they take with more notes, the last of which may go over; a whole page if none may."""
        *others, last = notes
        count = KEPT if last.lines >= 2 * KEPT else last.lines
        return ENDLESS if self.over else rows_for(self.lines + sum(note.lines for note in others) + count)

    def slots(self, rows: int) -> tuple[Slot, ...]:
        """Their places on a page of so many rows, the last line on the last row."""
        row, found = rows - 1 - (self.lines - 1) * NOTE_SIZE, list[Slot]()
        for note, start, end in self.placed:
            found.append(Slot(note, start, end, row))
            row += (end - start) * NOTE_SIZE
        return tuple(found)

    def filled(self, notes: Sequence[NoteLines], room: int) -> Foot:
        """With as many lines of more notes as go on so many rows in all; the others go over."""
        placed, over, left = list(self.placed), list(self.over), lines_in(room) - self.lines
        for note in notes:
            here = min(max(left, 0), note.lines) if not over else 0
            here -= KEPT - 1 if note.lines - here == 1 and here > KEPT else 0
            left -= here
            placed += [note._replace(end=note.start + here)] if here else []
            over += [note._replace(start=note.start + here)] if here < note.lines else []
        return Foot(tuple(placed), tuple(over))

    def holds(self, notes: Sequence[NoteLines], room: int) -> bool:
        """Whether more notes have room on so many rows in all, the last of them perhaps not all of it."""
        if not notes:
            return self.rows <= room
        left = lines_in(room) - self.lines - sum(note.lines for note in notes)
        last = notes[-1].lines
        return not self.over and (left >= 0 or (last >= 2 * KEPT and last + left >= KEPT))


NO_NOTES = Foot()


def rows_for(lines: int) -> int:
    """How many rows some lines of notes take at the foot of a page.

    >>> [rows_for(lines) for lines in (0, 1, 2, 5)]
    [0, 2, 3, 5]
    """
    return math.ceil((lines - 1) * NOTE_SIZE + WHITE - 1e-9) if lines else 0


def lines_in(rows: int) -> int:
    """How many lines of notes have room on so many rows at the foot of a page.

    >>> [lines_in(rows) for rows in (0, 1, 2, 3, 5)]
    [0, 0, 1, 2, 5]
    """
    return max(0, 1 + math.floor((rows - WHITE) / NOTE_SIZE + 1e-9)) if rows >= WHITE else 0


def carried(over: Sequence[NoteLines], rows: int) -> Foot:
    """What goes on from the page before at the foot of one of so many rows, which has some left for its text."""
    left = FEWEST_OVER if rows >= 2 * FEWEST_OVER else 1
    beside = NO_NOTES.filled(over, rows - left)
    # on a page of hardly a line they stand alone, without the white over them
    return beside if beside.placed or not over else NO_NOTES.filled(over, rows + 1)
