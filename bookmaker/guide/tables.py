"""Tables of the guide, row by row."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..ground.art import Group, Tagged
from ..ground.drawing import Art, Role, Tag
from ..ground.geometry import Point
from ..ground.typefaces import TextLine
from ..things.views.ink import HAIRLINE, line
from .items import AFTER, SMALL, SMALL_LEADING, Item, Space, lines_below, tick_box
from .wrapping import wrapped

__all__ = ["Column", "TableRow", "columns", "table"]


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
            parts.append(tick_box(corner.plus(0, -SMALL_LEADING)))
        return Tagged(Group(tuple(parts)), Tag(Role.TEXT))

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

    One that does so leads to what follows it.

    Rows to be `ticked` have a box each. Without rows there is no table.
    """
    if rows:
        yield TableRow(head, columns, bold=True, leads=True)
        for number, row in enumerate(rows, start=1):
            # none stands by itself at the foot of a page, or at the head of one
            leads = together or number == 1 < len(rows) or number == len(rows) - 1
            yield TableRow(row, columns, leads=leads, ticked=ticked)
        yield Space(AFTER, leads=together)
