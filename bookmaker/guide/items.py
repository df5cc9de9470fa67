"""What a page of the guide is made of: headings, paragraphs, steps to tick, rows of tables, drawings.

Every item knows how high it is in a given width, and how to draw itself below a point. All lengths are mm.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Protocol

from ..ground.art import Group, Written
from ..ground.drawing import BLACK, Art, Colour, Pen
from ..ground.geometry import Point, Rect, Transform
from ..ground.typefaces import TextLine
from ..things.making import Figure
from ..things.views.ink import GREY, HAIRLINE, box, line
from .wrapping import wrapped

__all__ = [
    "Beside",
    "Column",
    "Gap",
    "Heading",
    "Item",
    "Paragraph",
    "TableRow",
    "Tick",
    "columns",
    "figure_room",
    "lines_below",
    "table",
]

BODY, LEADING = 3.2, 4.15
"""The em of the text, 9 pt, and the distance of its lines."""

SMALL, SMALL_LEADING = 2.7, 3.6
"""The same for captions and rows of tables."""

BOX, BOX_ROOM = 2.8, 5.5
"""A box to tick, and the room it takes beside its step."""

AFTER = 1.0
"""Between one item and the next."""

BETWEEN, WIDE_ENOUGH = 6.0, 150.0
"""Between drawings side by side, and the width of a page that holds two of them."""

BOX_PEN = Pen(0.18)


class Item(Protocol):
    """A part of a page; one that `leads` is not left alone at the foot of a page."""

    @property
    def leads(self) -> bool:
        """Whether it belongs to what follows."""

    def height(self, width: float) -> float:
        """How high it is, with the space below it."""

    def below(self, corner: Point, width: float) -> Art:
        """Its art, with its upper left corner at a point."""


def lines_below(corner: Point, lines: Sequence[TextLine], leading: float, colour: Colour = BLACK) -> Group:
    """Lines of text below a point."""
    down = ((line, number * leading - 0.36 * line.size) for number, line in enumerate(lines, start=1))
    return Group(tuple(Written(line, corner.plus(0, -drop), colour) for line, drop in down))


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; `level` 1 is the largest."""

    text: str
    level: int = 2
    leads: bool = True

    @property
    def _size(self) -> float:
        return {1: 6.2, 2: 4.0}.get(self.level, 3.2)

    @property
    def _above(self) -> float:
        return 0.0 if self.level == 1 else self._size * 0.5

    def height(self, width: float) -> float:
        """Its lines, with space above and below."""
        return self._above + len(self._lines(width)) * self._size * 1.25 + self._size * 0.3

    def below(self, corner: Point, width: float) -> Art:
        """Its lines, some space down."""
        return lines_below(corner.plus(0, -self._above), self._lines(width), self._size * 1.25)

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.text, "sans bold", self._size, width)


@dataclass(frozen=True, slots=True)
class Gap:
    """White between two chapters, with a line across it."""

    space: float
    leads: bool = True

    def height(self, width: float) -> float:  # noqa: ARG002 - as high in any width
        """The white."""
        return self.space

    def below(self, corner: Point, width: float) -> Art:
        """The line, in the middle of the white."""
        y = corner.y - self.space / 2
        return line(Point(corner.x, y), Point(corner.x + width, y), HAIRLINE)


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running text."""

    text: str
    quiet: bool = False
    leads: bool = False

    def height(self, width: float) -> float:
        """Its lines and the space below."""
        return len(self._lines(width)) * LEADING + AFTER

    def below(self, corner: Point, width: float) -> Art:
        """Its lines."""
        return lines_below(corner, self._lines(width), LEADING, GREY if self.quiet else BLACK)

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.text, "sans", BODY, width)


@dataclass(frozen=True, slots=True)
class Tick:
    """A step, with a box to tick when it is done."""

    text: str
    leads: bool = False

    def height(self, width: float) -> float:
        """Its lines and the space below."""
        return len(self._lines(width)) * LEADING + AFTER

    def below(self, corner: Point, width: float) -> Art:
        """The box, and the lines beside it."""
        beside = lines_below(corner.plus(BOX_ROOM, 0), self._lines(width), LEADING)
        return Group((_box(corner.plus(0, (LEADING - BOX) / 2 - LEADING)), beside))

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.text, "sans", BODY, width - BOX_ROOM)


def _box(corner: Point) -> Art:
    """A box to tick, its lower left corner at a point."""
    return box(Rect(*corner, BOX, BOX), pen=BOX_PEN)


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table, from one share of its width to another; `ends` sets its texts to the right."""

    start: float
    end: float
    ends: bool = False


def columns(*edges: float, texts: int) -> tuple[Column, ...]:
    """Columns side by side between some edges; all but the first `texts` of them set their texts to the right."""
    return tuple(Column(start, end, ends=number >= texts) for number, (start, end) in enumerate(pairwise(edges)))


@dataclass(frozen=True, slots=True)
class TableRow:
    """A row of a table, ruled off below; texts longer than their columns run over several lines.

    One to be `ticked` has a box at its beginning, which the first column must leave room for.
    """

    cells: tuple[str, ...]
    columns: tuple[Column, ...]
    bold: bool = False
    leads: bool = False
    ticked: bool = False

    def height(self, width: float) -> float:
        """Its highest cell."""
        return max(len(lines) for _, lines in self._cells(width)) * SMALL_LEADING + (1.8 if self.ticked else 1.0)

    def below(self, corner: Point, width: float) -> Art:
        """All cells, and the rule below."""
        foot = corner.y - self.height(width) + 0.2
        parts: list[Art] = [line(Point(corner.x, foot), Point(corner.x + width, foot), HAIRLINE)]
        corner = corner.plus(0, -0.4) if self.ticked else corner
        for column, lines in self._cells(width):
            for number, text in enumerate(lines):
                x = column.end * width - text.width if column.ends else column.start * width
                parts.append(lines_below(corner.plus(x, -number * SMALL_LEADING), [text], SMALL_LEADING))
        if self.ticked:
            parts.append(_box(corner.plus(0, -SMALL_LEADING)))
        return Group(tuple(parts))

    def _cells(self, width: float) -> Iterator[tuple[Column, Sequence[TextLine]]]:
        face = "sans bold" if self.bold else "sans"
        for column, text in zip(self.columns, self.cells, strict=True):
            yield column, wrapped(text, face, SMALL, (column.end - column.start) * width - 1.5)


def table(
    columns: tuple[Column, ...],
    head: tuple[str, ...],
    rows: Sequence[tuple[str, ...]],
    *,
    together: bool = False,
    ticked: bool = False,
) -> Iterator[Item]:
    """A table row by row, so that a long one may run on over several pages unless it stays `together`.

    Rows to be `ticked` have a box each. Without rows there is no table.
    """
    if rows:
        yield TableRow(head, columns, bold=True, leads=True)
        for row in rows:
            yield TableRow(row, columns, leads=together, ticked=ticked)
        yield Space(AFTER)


@dataclass(frozen=True, slots=True)
class Space:
    """Nothing, so many mm high."""

    high: float
    leads: bool = False

    def height(self, width: float) -> float:  # noqa: ARG002 (as high in any width)
        """As high as it is."""
        return self.high

    def below(self, corner: Point, width: float) -> Art:  # noqa: ARG002 (nothing has no place)
        """Nothing."""
        return Group()


@dataclass(frozen=True, slots=True)
class Illustration:
    """A drawing with its caption below."""

    figure: Figure
    leads: bool = False

    def height(self, width: float) -> float:
        """The drawing, its caption, some space above and below."""
        return self.figure.size.height + len(self._lines(width)) * SMALL_LEADING + 3 * AFTER

    def below(self, corner: Point, width: float) -> Art:
        """The drawing with its caption."""
        at = corner.plus(0, -self.figure.size.height - AFTER)
        caption = lines_below(at.plus(0, -AFTER * 0.5), self._lines(width), SMALL_LEADING, GREY)
        return Group((Group((self.figure.art,), Transform.move(*at)), caption))

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.figure.caption, "sans", SMALL, width) if self.figure.caption else ()


@dataclass(frozen=True, slots=True)
class Beside:
    """Items side by side where the page is wide enough for that, else one below the other."""

    items: tuple[Item, ...]
    leads: bool = False

    def height(self, width: float) -> float:
        """The highest of them, or all."""
        heights = [item.height(figure_room(width)) for item in self.items]
        return max(heights) if _side_by_side(width) else sum(heights)

    def below(self, corner: Point, width: float) -> Art:
        """All of them."""
        room = figure_room(width)
        parts: list[Art] = []
        at = corner
        for item in self.items:
            parts.append(item.below(at, room))
            at = at.plus(room + BETWEEN, 0) if _side_by_side(width) else at.plus(0, -item.height(room))
        return Group(tuple(parts))


def figure_room(width: float) -> float:
    """How wide a drawing may be on a page of this width: half of a wide one.

    >>> figure_room(180.0), figure_room(118.0)
    (87.0, 118.0)
    """
    return (width - BETWEEN) / 2 if _side_by_side(width) else width


def _side_by_side(width: float) -> bool:
    return width >= WIDE_ENOUGH
