"""The table of contents: what begins where, with dots that lead to the page numbers."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field

from ..drawing import BLACK, NOTHING, Art, Canvas, Pen
from ..errors import Problem, Severity
from ..geometry import Path, Point
from ..spec.measures import TypeSize
from ..spec.words import Flag, Text, Title
from ..typefaces import TextLine, Typeface, set_line
from ..units import from_pt
from .book_type import Family
from .display import bound, broken, filled
from .faces import family_for, family_of, missing_glyphs
from .fount import Style
from .page import Heading, Inside, PageFrame, numbered
from .part import Part
from .phrases import phrases_in, spoken
from .punctuation import with_apostrophes
from .sizes import too_large, too_small

__all__ = ["Contents", "ContentsPage", "Row", "compose", "extent", "load"]

LEADING = 1.35
"""From line to line, in ems."""

TITLE_SIZE, TITLE_ROWS = 1.35, 2
"""Size of the heading as a multiple of the lines', and how many lines it takes with the space under it."""

DOT_PITCH = 0.5
"""From dot to dot, in ems."""

BESIDE_DOTS = 0.3
"""Least space between words and dots, and between dots and numbers, in ems."""

LEADER = 2 * BESIDE_DOTS + 2 * DOT_PITCH
"""Ems between words and numbers in which there is always room for two dots."""

FIGURES = "00"
"""Room for the page numbers: for two figures, or three if there are so many pages."""

SHRINK = 0.94
"""A table with a word that is wider than its lines is tried again so much smaller."""

SMALLEST = 0.05
"""But not under this share of its size."""

HANGING = 0.8
"""Indent of the second and later lines of one heading, in ems."""


class Contents(Part):
    """What begins on the pages that follow; in the whole book, if the table stands at its end."""

    kind: Literal["contents"] = "contents"
    title: Title | None = Field(None, description="what stands over it")
    size: TypeSize = Field(from_pt(2.2), description="size of type, such as 2.2 pt")
    face: Text | None = Field(None, description="name of a bundled typeface, or path of a TTF or OTF file")
    numbers: Flag = Field(True, description="page numbers, yes or no")


@dataclass(frozen=True, slots=True)
class Row:
    """A line of the table: its words, its indent in mm, and the page number if it is the last of a heading with one."""

    words: TextLine
    indent: float = 0.0
    page: int | None = None


@dataclass(frozen=True, slots=True)
class ContentsPage:
    """One page of the table, its rows from the top; the first page has the title over them."""

    typeface: Typeface
    size: float
    frame: PageFrame
    number: int
    title: tuple[TextLine, ...]
    rows: tuple[Row, ...]

    def draw(self, canvas: Canvas) -> None:
        """Set the title, then each row with its dots and its number."""
        area = self.frame.type_area(self.number)
        baseline = area.top - self.typeface.cap_height * self.size * (TITLE_SIZE if self.title else 1.0)
        for line in self.title:
            canvas.text(line, Point(area.centre.x - line.width / 2, baseline), BLACK)
            baseline -= TITLE_ROWS * LEADING * self.size
        for row in self.rows:
            self._draw_row(canvas, row, baseline)
            baseline -= LEADING * self.size

    def _draw_row(self, canvas: Canvas, row: Row, baseline: float) -> None:
        area, right_to_left = self.frame.type_area(self.number), self.frame.right_to_left
        words = row.words
        folio = set_line(self.typeface, self.size, str(row.page)) if row.page is not None else None

        def across(distance: float, width: float = 0.0) -> float:
            """Where something begins that lies so far from the edge where lines begin."""
            return area.right - distance - width if right_to_left else area.x + distance

        canvas.text(words, Point(across(row.indent, words.width), baseline), BLACK)
        if folio is None:
            return
        canvas.text(folio, Point(across(area.width - folio.width, folio.width), baseline), BLACK)
        # dots are counted from the edge of the numbers, so that they stand one below the other
        pitch = DOT_PITCH * self.size
        first = math.ceil((folio.width + BESIDE_DOTS * self.size) / pitch)
        last = math.floor((area.width - row.indent - words.width - BESIDE_DOTS * self.size) / pitch)
        if last > first:
            dot = max(self.frame.line(), 0.08 * self.size)
            begins, ends = (across(area.width - number * pitch) for number in (first, last))
            pen = Pen(dot, BLACK, (dot, pitch - dot))
            canvas.stroke(Path.line(Point(begins, baseline + dot / 2), Point(ends, baseline + dot / 2)), pen)


@dataclass(frozen=True, slots=True)
class Table:
    """The whole table, set: one typeface, one size, all its rows, and the words over them if there are any."""

    typeface: Typeface
    size: float
    title: tuple[TextLine, ...]
    rows: tuple[Row, ...]
    frame: PageFrame

    @property
    def capacity(self) -> tuple[int, int]:
        """How many rows the first page holds under the title, and how many the others hold."""
        rows = max(1, math.floor(self.frame.type_area(1).height / (LEADING * self.size) + 1e-9))
        return max(1, rows - TITLE_ROWS) if self.title else rows, rows

    @property
    def pages(self) -> list[list[Row]]:
        """Its rows, page after page; no heading is parted that has room on the next page. One page at least."""
        first, others = self.capacity
        pages: list[list[Row]] = [[]]
        room, heading = first, list[Row]()
        for row in self.rows:
            heading.append(row)
            if row.page is None:
                continue
            if room < len(heading) <= others:
                pages.append([])
                room = others
            for part in heading:
                if not room:
                    pages.append([])
                    room = others
                pages[-1].append(part)
                room -= 1
            heading = []
        return pages

    def page(self, number: int, rows: Sequence[Row]) -> Art:
        """One of its pages."""
        head = self.title if number == 1 else ()
        if not rows and not head:
            return NOTHING
        return ContentsPage(self.typeface, self.size, self.frame, number, head, tuple(rows))


def load(entry: Contents, folder: FilePath) -> Family | None:
    """The typefaces, if any are named.

    Raises:
        ShelfFileError: they cannot be used.
    """
    return family_of(entry.face, folder)


def extent(entry: Contents, source: Family | None, frame: PageFrame) -> int:
    """The pages that the lines need; one if nothing is listed."""
    return len(_table(entry, source, frame).pages)


def compose(entry: Contents, source: Family | None, frame: PageFrame) -> Inside:
    """The table on its pages; lines that find no room are reported."""
    largest = frame.type_area(1).height / (LEADING * (1 + TITLE_ROWS))
    if entry.size > largest + 1e-9:
        problem = too_large("the table of contents", entry.size, largest, frame)
        return Inside((NOTHING,) * frame.pages, (problem,))
    table = _table(entry, source, frame)
    made = table.pages
    shown = [*made, *[[]] * frame.pages][: frame.pages]
    pages = tuple(table.page(number, rows) for number, rows in enumerate(shown, start=1))
    lost = sum(map(len, made[frame.pages :]))
    words = _words_over(entry, frame) + _text(frame)
    problems = (
        *_problems(table, lost),
        *missing_glyphs("table of contents", table.typeface, words),
        *too_small("the table of contents", table.typeface, table.size, frame, "write shorter names", ("size",)),
    )
    return Inside(numbered(pages, frame, table.typeface) if entry.numbers else pages, problems)


def _listed(frame: PageFrame) -> tuple[Heading, ...]:
    """What follows, or everything if nothing does."""
    return tuple(heading for heading in frame.contents if heading.page > frame.first) or frame.contents


def _table(entry: Contents, source: Family | None, frame: PageFrame) -> Table:
    """The table in the largest type, up to its own size, in which every word has room on its line."""
    over = _words_over(entry, frame)
    face = family_for(source, frame, over + _text(frame))[Style.ROMAN]
    right_to_left, width = frame.right_to_left, frame.type_area(1).width
    size = entry.size
    rows = tuple(_rows(face, size, frame))
    while size > entry.size * SMALLEST and _reach(rows) > _room(face, size, frame) + 1e-9:
        size *= SHRINK
        rows = tuple(_rows(face, size, frame))
    title = broken(face, over, size * TITLE_SIZE, width, 1, right_to_left=right_to_left)
    return Table(face, size, title, rows, frame)


def _reach(rows: Sequence[Row]) -> float:
    """How far the longest row reaches, in mm."""
    return max((row.indent + row.words.width for row in rows), default=0.0)


def _room(face: Typeface, size: float, frame: PageFrame) -> float:
    """How far the lines reach, in mm: to where dots and numbers begin, but over half the width at least."""
    figures = max([FIGURES, *(str(heading.page) for heading in _listed(frame))], key=len)
    width = frame.type_area(1).width
    return max(width - (face.shape("0" * len(figures)).width + LEADER) * size, width / 2)


def _rows(face: Typeface, size: float, frame: PageFrame) -> Iterator[Row]:
    right_to_left = frame.right_to_left

    def width(line: str) -> float:
        return face.shape(line, right_to_left=right_to_left).width

    room = _room(face, size, frame) / size
    for heading in _listed(frame):
        inner = HANGING if heading.inner else 0.0
        lines = _broken(with_apostrophes(heading.text, face.covers), width, room - inner)
        for number, line in enumerate(lines, start=1):
            row = TextLine(size, ((0.0, face.shape(line, right_to_left=right_to_left)),))
            indent = (inner + (HANGING if number > 1 else 0.0)) * size
            yield Row(row, indent, heading.page if number == len(lines) and heading.numbered else None)


def _broken(text: str, width: Callable[[str], float], room: float) -> list[str]:
    """The lines of a row, in ems, the second and later ones set in."""
    words = bound(text.split(), lambda both: width(both) <= room - HANGING)
    return list(filled(words, width, room, room - HANGING))


def _words_over(entry: Contents, frame: PageFrame) -> str:
    """The title of the table: the maker's, or that of the language of the book, or none."""
    if entry.title:
        return entry.title
    said = phrases_in(frame.type.language if frame.type else spoken("en", frame.book.title))
    return said.contents if said else ""


def _text(frame: PageFrame) -> str:
    return "".join(heading.text for heading in _listed(frame))


def _problems(table: Table, lost: int) -> Iterator[Problem]:
    if not table.rows:
        yield Problem(
            "the table of contents has nothing to list",
            "add listed_as: with a name to the parts that it shall list",
            Severity.WARNING,
        )
    if lost > 0:
        which = "1 line" if lost == 1 else f"{lost} lines"
        yield Problem(
            f"{which} of the table of contents find no room",
            "leave its pages out, for as many as it needs, or write a smaller size",
            field=("pages",),
        )
