"""A table of contents as it is set: its rows on pages, dots and page numbers."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from .....ground.art import NOTHING
from .....ground.drawing import BLACK, Art, Canvas, Pen
from .....ground.geometry import Path, Point
from .....ground.typefaces import TextLine, Typeface, set_line
from .....typesetting.page import PageFrame

__all__ = ["BESIDE_DOTS", "DOT_PITCH", "LEADING", "TITLE_ROWS", "TITLE_SIZE", "ContentsLine", "ContentsPage", "Table"]

LEADING = 1.35
"""From line to line, in ems."""

TITLE_SIZE, TITLE_ROWS = 1.35, 2
"""Size of the heading as a multiple of the lines', and how many lines it takes with the space under it."""

DOT_PITCH = 0.5
"""From dot to dot, in ems."""

BESIDE_DOTS = 0.3
"""Least space between words and dots, and between dots and numbers, in ems."""


@dataclass(frozen=True, slots=True)
class ContentsLine:
    """A line of the table: its words, its indent in mm, and the page number if it is the last of a heading with one.

    `before` are lines left free over it, but not at the head of a page; one that `stays` is not the last of a page.
    """

    words: TextLine
    indent: float = 0.0
    page: int | None = None
    before: float = 0.0
    stays: bool = False


@dataclass(frozen=True, slots=True)
class ContentsPage:
    """One page of the table, its rows from the top; the first page has the title over them."""

    typeface: Typeface
    size: float
    frame: PageFrame
    number: int
    title: tuple[TextLine, ...]
    rows: tuple[ContentsLine, ...]

    def draw(self, canvas: Canvas) -> None:
        """Set the title, then each row with its dots and its number."""
        area = self.frame.type_area(self.number)
        baseline = area.top - self.typeface.cap_height * self.size * (TITLE_SIZE if self.title else 1.0)
        for line in self.title:
            canvas.text(line, Point(area.centre.x - line.width / 2, baseline), BLACK)
            baseline -= TITLE_ROWS * LEADING * self.size
        for number, row in enumerate(self.rows):
            baseline -= row.before * LEADING * self.size if number else 0.0
            self._draw_row(canvas, row, baseline)
            baseline -= LEADING * self.size

    def _draw_row(self, canvas: Canvas, row: ContentsLine, baseline: float) -> None:
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
            # in lines that run down they stand on the axis, half an em under the upper edge of signs
            raised = (self.typeface.cap_height - 0.5) * self.size if self.frame.standing else dot / 2
            canvas.stroke(Path.line(Point(begins, baseline + raised), Point(ends, baseline + raised)), pen)


@dataclass(frozen=True, slots=True)
class Table:
    """The whole table, set: one typeface, one size, all its rows, and the words over them if there are any."""

    typeface: Typeface
    size: float
    title: tuple[TextLine, ...]
    rows: tuple[ContentsLine, ...]
    frame: PageFrame

    @property
    def capacity(self) -> tuple[int, int]:
        """How many rows the first page holds under the title, and how many the others hold."""
        rows = max(1, math.floor(self.frame.type_area(1).height / (LEADING * self.size) + 1e-9))
        return max(1, rows - TITLE_ROWS) if self.title else rows, rows

    @property
    def pages(self) -> list[list[ContentsLine]]:
        """Its rows, page after page, one page at least.

        No heading is parted that has room on the next page, nor a part from the first of what is in it.
        """
        first, others = self.capacity
        pages: list[list[ContentsLine]] = [[]]
        room: float = first
        together: list[ContentsLine] = []
        for row in self.rows:
            together.append(row)
            if row.stays:
                continue
            if room < _deep(together, begins=not pages[-1]) and _deep(together, begins=True) <= others:
                pages.append([])
                room = others
            for part in together:
                if room < _deep([part], begins=not pages[-1]):
                    pages.append([])
                    room = others
                room -= _deep([part], begins=not pages[-1])
                pages[-1].append(part)
            together = []
        return pages

    def page(self, number: int, rows: Sequence[ContentsLine]) -> Art:
        """One of its pages."""
        head = self.title if number == 1 else ()
        if not rows and not head:
            return NOTHING
        return ContentsPage(self.typeface, self.size, self.frame, number, head, tuple(rows))


def _deep(rows: Sequence[ContentsLine], *, begins: bool) -> float:
    """How many lines some rows take; those that begin a page have nothing over them."""
    return len(rows) + sum(row.before for row in rows[begins:])
