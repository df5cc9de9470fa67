"""The table of contents: what begins where, with dots that lead to the page numbers."""

from __future__ import annotations

import math
from collections.abc import Iterator
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
from .display import broken
from .faces import face_of, missing_glyphs
from .page import Heading, Inside, PageFrame, numbered
from .part import Part
from .sizes import too_large

__all__ = ["Contents", "ContentsPage", "Row", "compose", "extent", "load"]

LEADING = 1.35
"""From line to line, in ems."""

TITLE_SIZE, TITLE_ROWS = 1.35, 2
"""Size of the heading as a multiple of the lines', and how many lines it takes with the space under it."""

NUMBER_ROOM = 2.6
"""Ems at the right that belong to the page numbers."""

DOT_PITCH = 0.55
"""From dot to dot, in ems."""

MOST_LINES = 5
"""A heading that needs more is set smaller."""

HANGING = 0.8
"""Indent of the second and later lines of one heading, in ems."""


class Contents(Part):
    """A table of contents of the parts that follow; of the whole book, if it stands at its end."""

    kind: Literal["contents"] = "contents"
    title: Title = Field("Contents", description="what stands over it")
    size: TypeSize = Field(from_pt(2.2), description="size of type, such as 2.2 pt")
    face: Text = Field("text", description="name of a bundled typeface, or path of a TTF or OTF file")
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
        first = math.ceil((folio.width + 0.4 * self.size) / pitch)
        last = math.floor((area.width - row.indent - words.width - 0.4 * self.size) / pitch)
        if last > first:
            dot = max(self.frame.line(), 0.08 * self.size)
            begins, ends = (across(area.width - number * pitch) for number in (first, last))
            pen = Pen(dot, BLACK, (dot, pitch - dot))
            canvas.stroke(Path.line(Point(begins, baseline + dot / 2), Point(ends, baseline + dot / 2)), pen)


def load(entry: Contents, folder: FilePath) -> Typeface:
    """The typeface.

    Raises:
        ShelfFileError: it cannot be used.
    """
    return face_of(entry.face, folder)


def extent(entry: Contents, source: Typeface, frame: PageFrame) -> int:
    """The pages that the lines need; one if nothing is listed."""
    rows, (first, others) = len(list(_rows(entry, source, frame))), _rows_per_page(entry, frame)
    return 1 + math.ceil(max(0, rows - first) / others)


def compose(entry: Contents, source: Typeface, frame: PageFrame) -> Inside:
    """The table on its pages; lines that find no room are reported."""
    largest = frame.type_area(1).height / (LEADING * (1 + TITLE_ROWS))
    if entry.size > largest + 1e-9:
        problem = too_large("the table of contents", entry.size, largest, frame)
        return Inside((NOTHING,) * frame.pages, (problem,))
    rows, (first, others) = list(_rows(entry, source, frame)), _rows_per_page(entry, frame)
    measure = frame.type_area(1).width
    title = broken(source, entry.title, entry.size * TITLE_SIZE, measure, 1, right_to_left=frame.right_to_left)
    pages: list[Art] = []
    for number in range(1, frame.pages + 1):
        start, end = (0, first) if number == 1 else (first + (number - 2) * others, first + (number - 1) * others)
        own = tuple(rows[start:end])
        head = title if number == 1 else ()
        pages.append(ContentsPage(source, entry.size, frame, number, head, own) if own or head else NOTHING)
    lost = len(rows) - first - (frame.pages - 1) * others
    problems = (*_problems(rows, lost), *missing_glyphs("table of contents", source, _text(entry, frame)))
    return Inside(numbered(pages, frame, source) if entry.numbers else tuple(pages), problems)


def _listed(frame: PageFrame) -> tuple[Heading, ...]:
    """What follows, or everything if nothing does."""
    return tuple(heading for heading in frame.contents if heading.page > frame.first) or frame.contents


def _rows(entry: Contents, typeface: Typeface, frame: PageFrame) -> Iterator[Row]:
    width = frame.type_area(1).width
    room = max(width - NUMBER_ROOM * entry.size, width / 2)
    for heading in _listed(frame):
        inner = HANGING * entry.size if heading.inner else 0.0
        lines = broken(
            typeface, heading.text, entry.size, room - inner, MOST_LINES, right_to_left=frame.right_to_left, even=False
        )
        for number, line in enumerate(lines, start=1):
            indent = inner + (HANGING * entry.size if number > 1 else 0.0)
            yield Row(line, indent, heading.page if number == len(lines) and heading.numbered else None)


def _rows_per_page(entry: Contents, frame: PageFrame) -> tuple[int, int]:
    """How many lines the first page holds under the title, and how many the others hold."""
    rows = max(1, math.floor(frame.type_area(1).height / (LEADING * entry.size) + 1e-9))
    return max(1, rows - TITLE_ROWS), rows


def _text(entry: Contents, frame: PageFrame) -> str:
    return entry.title + "".join(heading.text for heading in _listed(frame))


def _problems(rows: list[Row], lost: int) -> Iterator[Problem]:
    if not rows:
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
