"""Dummy text: grey lines that look like a set page at a glance, for books nobody will open.

Nothing can be read, but the shapes are those of a book: indented paragraphs with short last lines, words of
all lengths with letters that reach up and down, chapters that begin low on a page under a heading and end
before a page is full. What is left to chance is settled by the book, so it looks the same whenever it is made.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from random import Random
from typing import Literal, NamedTuple

from pydantic import Field

from .....ground.art import NOTHING
from .....ground.drawing import BLACK, Canvas, Pen
from .....ground.geometry import Path, Point
from .....ground.units import from_pt
from .....shelf_file.fields.counts import Count
from .....shelf_file.fields.measures import TypeSize
from .....shelf_file.fields.words import Flag, Ink
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import UnreadPart
from ..prose.sizes import type_too_large

__all__ = ["DummyLine", "DummyPage", "DummyText"]

LEADING = 1.25
"""From line to line, in ems."""

X_HEIGHT, ASCENDER, DESCENDER = 0.46, 0.72, -0.22
"""How far small letters and their strokes reach over the baseline, in ems (common practice)."""

LETTER, SPACE = 0.48, 0.26
"""Widths of a letter and of the space between words, in ems (common practice)."""

SINK = 1 / 4
"""Share of the lines of a page that stay free over the first line of a chapter."""

HEADING = 1.6
"""Size of a chapter's heading as a multiple of the text's."""

STEMS = (1.0, 1.0, 1.0, 1.0, 1.0, 1.4, 1.0, 1.0, 1.0, 1.8)
ASCENDERS = (1.0, 5.0, 1.0, 9.0, 1.0, 3.0, 1.0, 14.0)
DESCENDERS = (1.0, 13.0, 1.0, 7.0)
"""Strokes and gaps of letters by turns, in strokes' widths: the small ones, those that reach up, and down."""

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
        return Inside(numbered(pages, frame) if self.numbers else pages)


class DummyLine(NamedTuple):
    """A line of a page: which, counted from the top, and from where to where, as shares of the measure.

    A `heading` stands in the middle and is larger.
    """

    row: int
    start: float
    end: float
    heading: bool = False


@dataclass(frozen=True, slots=True)
class DummyPage:
    """One page of lines; its words are thought up when it is drawn."""

    entry: DummyText
    frame: PageFrame
    number: int
    rows: tuple[DummyLine, ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw the lines from the top of the type area down."""
        area, size = self.frame.type_area(self.number), self.entry.size
        chance = Random(f"{self.frame.book.seed}\n{self.frame.folio(self.number)}")
        for row in self.rows:
            baseline = area.top - (ASCENDER + row.row * LEADING) * size
            em = size * HEADING if row.heading else size
            # where a line begins is on the right in books that are read from there
            begins, ends = (1 - row.end, 1 - row.start) if self.frame.right_to_left else (row.start, row.end)
            start, end = area.x + begins * area.width, area.x + ends * area.width
            words = list(_words(chance, (end - start) / em, justified=row.end == 1.0 and not row.heading))
            placed = [(start + left * em, start + right * em) for left, right in words]
            self._draw_words(canvas, placed, baseline, em, chance)

    def _draw_words(
        self, canvas: Canvas, words: list[tuple[float, float]], baseline: float, em: float, chance: Random
    ) -> None:
        """Upright strokes along the line, and some above and below it: each a dashed line as wide as they are high."""
        stroke = max(self.frame.dot, 0.11 * em)
        for bottom, top, strokes, share, skipped in (
            (0.0, X_HEIGHT, STEMS, 1.0, 1),
            (X_HEIGHT, ASCENDER, ASCENDERS, 0.7, 4),
            (DESCENDER, 0.0, DESCENDERS, 0.4, 6),
        ):
            middle = baseline + (bottom + top) / 2 * em
            # beginning on every other place keeps these strokes over and under the small ones
            begun = [
                (start + 2 * int(chance.random() * skipped) * stroke, end)
                for start, end in words
                if chance.random() < share
            ]
            lines = [(Point(start, middle), Point(end, middle)) for start, end in begun if end - start > stroke / 2]
            if lines:
                dash = tuple(width * stroke for width in strokes)
                canvas.stroke(Path.lines(lines), Pen((top - bottom) * em, self.entry.ink, dash))


def _words(chance: Random, measure: float, *, justified: bool) -> Iterator[tuple[float, float]]:
    """Where the words of a line begin and end, in ems from its start; the last ends where the line does."""
    lengths: list[float] = []
    used = -SPACE
    while True:
        letters = 1 + int(4 * chance.random() + 7 * chance.random() ** 3)
        if lengths and used + SPACE + letters * LETTER > measure:
            break
        lengths.append(letters * LETTER)
        used += SPACE + letters * LETTER
    gap = SPACE
    if justified and len(lengths) > 1:
        gap += (measure - used) / (len(lengths) - 1)
    else:
        lengths[-1] = min(max(LETTER, lengths[-1] + measure - used), measure)
    x = 0.0
    for length in lengths:
        yield x, x + length
        x += length + gap


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
        for i in range(start, end):
            left = indent if i == start and start else 0.0
            page, row = lines[i]
            width = 1.0 if i < end - 1 else left + (1 - left) * (0.15 + 0.75 * chance.random())
            yield page, DummyLine(row, left, width)
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
