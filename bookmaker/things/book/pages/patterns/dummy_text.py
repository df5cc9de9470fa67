"""Dummy text: pages that look like set text, for books nobody will open.

Nothing can be read, for the words are of no language, but the shapes are those of a book: justified paragraphs with
short last lines, sentences, chapters that begin low on a page under a heading and end before a page is full. Each book
has a tongue of its own. What is left to chance is settled by the book, so it looks the same whenever it is made.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from random import Random
from typing import Literal, NamedTuple

from pydantic import Field

from .....ground.art import NOTHING
from .....ground.drawing import BLACK, Canvas
from .....ground.geometry import Point
from .....ground.typefaces import Run, TextLine, Typeface, bundled
from .....ground.units import from_pt
from .....shelf_file.fields.counts import Count
from .....shelf_file.fields.measures import TypeSize
from .....shelf_file.fields.words import Flag, Ink
from .....typesetting.dummy_words import SENTENCE, DummyTongue, punctuated
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import UnreadPart
from ..prose.sizes import type_too_large

__all__ = ["DummyLine", "DummyPage", "DummyText"]

LEADING = 1.25
"""From line to line, in ems."""

ASCENDER, DESCENDER = 0.78, -0.24
"""How far letters reach over and under the baseline, in ems (common practice)."""

SPACE, LEAST = 0.25, 0.13
"""Between words, in ems, where nothing is justified, and at least (common practice)."""

FACE = "text"
"""The typeface: sturdy enough for such sizes."""

TRIES, NEAR = 24, 6.0
"""So many words are tried where a line has only so many ems left, and that which fills it best is taken."""

RESERVE, RESERVES, WIDE = 0.2, 6, 0.4
"""A line whose capitals and stops do not fit, or leave gaps that are wider, is tried with so many ems less to fill, up
to so many times as much."""

SINK = 1 / 4
"""Share of the lines of a page that stay free over the first line of a chapter."""

HEADING = 1.6
"""Size of a chapter's heading as a multiple of the text's."""

SHORTEST, SHORTEST_ALONE = 0.15, 0.5
"""Of the measure, how far the last line of a paragraph reaches at least, and one that is a paragraph by itself."""

FEWEST_ROWS = 8
"""Pages with fewer lines have no sunk chapter openings, and their paragraphs end where they end."""


class DummyText(UnreadPart):
    """Lines that look like text; 12 pt type would be 1 pt at 1:12."""

    kind: Literal["dummy text"] = "dummy text"
    size: TypeSize = Field(from_pt(1.0), description="size of the type it mimics, such as 1 pt")
    ink: Ink = Field(BLACK, description="colour of the lines")
    chapter: Count = Field(12, description="about so many pages make a chapter; 0: no chapters")
    opening: Literal["new page", "recto"] = Field("new page", description="where chapters begin")
    numbers: Flag = Field(True, description="page numbers, yes or no")
    has_size = True

    def compose(self, frame: PageFrame) -> Inside:
        """Pages of lines to the last page, numbered if asked."""
        largest = frame.type_area(1).height / (ASCENDER - DESCENDER)
        if self.size > largest + 1e-9:
            return Inside(frame.with_blanks(), (type_too_large("dummy text", self.size, largest, frame),))
        rows: dict[int, list[DummyLine]] = {}
        chance = Random(frame.book.seed)
        for first, last in _chapters(self, frame, chance):
            for page, row in _chapter(self, frame, first, last, chance):
                rows.setdefault(page, []).append(row)
        pages = tuple(
            DummyPage(self, frame, number, tuple(rows[number])) if number in rows else NOTHING
            for number in range(1, frame.pages + 1)
        )
        return Inside(numbered(pages, frame, largest=self.size) if self.numbers else pages)


class DummyLine(NamedTuple):
    """A line of a page: which, counted from the top, and from where to where, as shares of the measure.

    A `heading` stands in the middle and is larger; a paragraph `opens` with its first line.
    """

    row: int
    start: float
    end: float
    heading: bool = False
    opens: bool = False


@dataclass(frozen=True, slots=True)
class DummyPage:
    """One page of lines; its words are thought up when it is drawn."""

    entry: DummyText
    frame: PageFrame
    number: int
    rows: tuple[DummyLine, ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw the lines from the top of the type area down."""
        area, size, face = self.frame.type_area(self.number), self.entry.size, bundled(FACE)
        tongue, folio = DummyTongue(self.frame.book.seed), self.frame.folio(self.number)
        prose, headings = tongue.bare(folio), tongue.bare(-folio)
        so_far = _SoFar((), Random(f"{tongue.seed} {folio}").randint(*SENTENCE))
        for row in self.rows:
            baseline = area.top - (ASCENDER + row.row * LEADING) * size
            em = size * HEADING if row.heading else size
            # where a line begins is on the right in books that are read from there
            begins, ends = (1 - row.end, 1 - row.start) if self.frame.right_to_left else (row.start, row.end)
            start, end = area.x + begins * area.width, area.x + ends * area.width
            measure = (end - start) / em
            if row.heading:
                runs = _heading(headings, face, measure)
            else:
                runs, so_far = _line(prose, face, row, measure, so_far, f"{tongue.seed} {folio} {row.row}")
            line = TextLine(em, tuple((left * em, run) for left, run in _spread(runs, measure, row)))
            x = end - line.width if self.frame.right_to_left and not row.heading else start
            canvas.text(line, Point(x, baseline), self.entry.ink)


class _SoFar(NamedTuple):
    """What lines before have said: the last two words, and how many words are `left` of the last sentence."""

    words: tuple[str, ...]
    left: int


def _filling(words: Iterator[str], face: Typeface, measure: float, before: Sequence[str] = ()) -> list[str]:
    """Words for a line, as many as a measure in ems holds; of the last ones tried that which fills it best."""
    said: list[str] = []
    room = measure
    while not said or room > SPACE * len(said):
        tried = [next(words) for _ in range(TRIES if said and room < NEAR else 1)]
        near = (*before, *said)[-2:]
        fit = [word for word in tried if word not in near and face.shape(word).width <= room]
        if not fit and len(tried) == 1 and tried[0] in near:
            continue
        if not fit:
            break
        said.append(max(fit, key=lambda word: face.shape(word).width))
        room -= face.shape(said[-1]).width + SPACE
    return said


def _line(
    words: Iterator[str], face: Typeface, row: DummyLine, measure: float, before: _SoFar, seed: str
) -> tuple[list[Run], _SoFar]:
    """The words of a line with its capitals and stops, and what has been said then.

    These take room too: a line is filled with so much less until they fit, and until no gap of a full line is wide.
    """
    closes, begun = row.end < 1.0, 0 if row.opens else before.left
    found: list[tuple[float, list[Run], _SoFar]] = []
    for place in range(TRIES):
        said = _filling(words, face, measure - place % RESERVES * RESERVE, before.words)
        if not said:
            break
        shown, left = punctuated(said, begun, Random(f"{seed} {place}" if place else seed), closes=closes)
        runs = [face.shape(word) for word in shown]
        gap = _gap(runs, measure)
        if gap >= LEAST:
            found.append((gap, runs, _SoFar((*before.words, *said)[-2:], left)))
            if closes or gap <= WIDE:
                break
    if found:
        _, runs, so_far = min(found, key=lambda one: one[0])
        return runs, so_far
    word = next(words)
    shown_word = _beginning(face, word.capitalize() if row.opens else word, "." if closes else "", measure)
    return [face.shape(shown_word)], _SoFar((word,), begun or 1)


def _heading(words: Iterator[str], face: Typeface, measure: float) -> list[Run]:
    """The words of a heading, which all have capitals."""
    said = [face.shape(word.capitalize()) for word in _filling(words, face, measure)]
    while said and _gap(said, measure) < SPACE:
        said.pop()
    return said or [face.shape(_beginning(face, next(words).capitalize(), "", measure))]


def _gap(runs: Sequence[Run], measure: float) -> float:
    """How far apart words stand that fill a measure, in ems; one alone that has room is as good as any."""
    spare = measure - sum(run.width for run in runs)
    return spare / (len(runs) - 1) if len(runs) > 1 else math.copysign(SPACE, spare)


def _beginning(face: Typeface, word: str, stop: str, measure: float) -> str:
    """As much of a word as there is room for, a letter at least."""
    ways = (word[:end] + stop for end in range(len(word), 0, -1))
    return next((way for way in ways if face.shape(way).width <= measure), word[:1])


def _spread(runs: Sequence[Run], measure: float, row: DummyLine) -> Iterator[tuple[float, Run]]:
    """Where each word begins, in ems: a full line reaches from edge to edge, with even gaps; a heading is centred."""
    spare, gaps = measure - sum(run.width for run in runs), len(runs) - 1
    gap = SPACE if row.heading or row.end < 1.0 else spare / max(gaps, 1)
    gap = min(gap, spare / gaps) if gaps else gap
    x = (spare - gap * gaps) / 2 if row.heading else 0.0
    for run in runs:
        yield x, run
        x += run.width + gap


def _chapters(entry: DummyText, frame: PageFrame, chance: Random) -> Iterator[tuple[int, int]]:
    """The first and the last page of each chapter; the last chapter goes on to the last page."""
    first = 1
    while first <= frame.pages:
        if entry.opening == "recto" and frame.folio(first) % 2 == 0 and first < frame.pages:
            first += 1
        length = max(1, round(entry.chapter * (0.6 + 0.8 * chance.random()))) if entry.chapter else frame.pages
        last = first + length - 1
        if frame.pages - last < length / 2:
            last = frame.pages
        yield first, last
        first = last + 1


def _chapter(
    entry: DummyText, frame: PageFrame, first: int, last: int, chance: Random
) -> Iterator[tuple[int, DummyLine]]:
    """The lines of a chapter, each with its page."""
    height = frame.type_area(1).height
    rows = max(1, 1 + math.floor((height / entry.size - ASCENDER + DESCENDER) / LEADING + 1e-9))
    roomy = rows >= FEWEST_ROWS
    sink = round(rows * SINK) if entry.chapter and roomy else 0
    if sink:
        half = 0.12 + 0.2 * chance.random()
        yield first, DummyLine(sink // 2, 0.5 - half, 0.5 + half, heading=True)
    ends = max(1, round(rows * (0.3 + 0.6 * chance.random())))
    lines = [
        (page, row)
        for page in range(first, last + 1)
        for row in range(sink if page == first else 0, max(sink + 1, ends) if page == last else rows)
    ]
    indent = min(entry.size / frame.type_area(1).width, 0.25)
    start = 0
    while start < len(lines):
        end = _paragraph_end(lines, start, chance, keep_together=roomy)
        least = SHORTEST_ALONE if end - start == 1 else SHORTEST
        for i in range(start, end):
            left = indent if i == start and start else 0.0
            page, row = lines[i]
            width = 1.0 if i < end - 1 else left + (1 - left) * (least + (0.9 - least) * chance.random())
            yield page, DummyLine(row, left, width, opens=i == start)
        start = end


def _paragraph_end(lines: list[tuple[int, int]], start: int, chance: Random, *, keep_together: bool) -> int:
    """Where a paragraph ends; none leaves a line alone at the head or the foot of a page, if pages are high enough."""
    length = 1 if start and chance.random() < 0.2 else 2 + int(8 * chance.random() ** 1.5)
    end = min(start + length, len(lines))
    if not keep_together:
        return end
    if end - start > 1 and lines[end - 1][0] != lines[end - 2][0]:
        end -= 1
    if end + 1 < len(lines) and lines[end][0] != lines[end + 1][0]:
        end += 1
    return end
