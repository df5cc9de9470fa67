"""Tables in a text: columns side by side on the grid of its lines, with a thin rule under their heads.

Cells stand on one line if they can, in slightly smaller type if they must; else the wide ones are broken. A
table whose longest words have no room beside one another cannot be set in columns.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from ..lines.boxes import Boxes
from ..lines.fount import Style
from ..lines.paragraphs import Lines, Measures
from ..lines.set_lines import SetLine, SetLines
from ..manuscripts.passage import Passage

__all__ = ["SetTable", "cells_of", "in_columns"]

GAP = 0.8
"""Between two columns, in ems."""

SMALLER = 0.85
"""Size of type that is tried if the text's own is too large, as a share of it."""

HALVINGS = 30
"""Steps in the search for the widest columns: far finer than a printer's dot."""


class SetTable(NamedTuple):
    """The lines of a table in type of a `size`, those that are not parted from the one before, what its heads take.

    `begin` lines are its heads and what must stand under them; `wide` are the words parted between letters.

    The rule under the heads goes from `left` to `right`, in mm from the left of the type area.
    """

    lines: tuple[SetLine, ...]
    bound: frozenset[int]
    size: float
    heads: int
    begin: int
    left: float
    right: float
    wide: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class _Columns:
    """Where the columns lie, in ems from the left of the table: the left end and the width of each."""

    widths: tuple[float, ...]

    @property
    def lefts(self) -> tuple[float, ...]:
        """The left ends."""
        return tuple(sum(self.widths[:place]) + place * GAP for place in range(len(self.widths)))

    @property
    def total(self) -> float:
        """From the left of the first to the right of the last."""
        return sum(self.widths) + GAP * (len(self.widths) - 1)


def cells_of(passage: Passage) -> list[list[str]]:
    """The rows of a table, the heads first, each with its cells."""
    return [row.split("\t") for row in passage.text.split("\n")]


def in_columns(
    passage: Passage, lines: Lines, boxes: Boxes, size: float, left: float, measure: float
) -> SetTable | None:
    """A table in the middle of `measure` mm that begin at `left`; None if it has no room."""
    heads, *rows = cells_of(passage)
    rows = [[_headed(cell, lines) for cell in heads], *rows]
    for broken in (False, True):
        for smaller in (size, SMALLER * size):
            columns = _columns(rows, lines, measure / smaller, broken=broken)
            if columns:
                start = left + (measure - columns.total * smaller) / 2
                return _set(rows, passage.mark, lines, boxes, columns, smaller, start)
    return None


def _headed(cell: str, lines: Lines) -> str:
    """The head of a column, in italic if there is one."""
    if not lines.fount.slanted:
        return cell
    return " ".join(Style.ITALIC + word if word and word[0] not in set(Style) else word for word in cell.split(" "))


def _columns(rows: Sequence[Sequence[str]], lines: Lines, room: float, *, broken: bool) -> _Columns | None:
    """Columns as wide as their widest cells; if these may be `broken`, at least as wide as their widest words."""
    by_column = list(zip(*rows, strict=True))
    widest = [max(map(lines.width, cells)) for cells in by_column]
    if _Columns(tuple(widest)).total <= room:
        return _Columns(tuple(widest))
    least = [max(lines.fount.width(word) for cell in cells for word in cell.split(" ")) for cells in by_column]
    if not broken or _Columns(tuple(least)).total > room:
        return None

    def at_most(width: float) -> _Columns:
        """The columns, none of them wider than that if it need not be."""
        return _Columns(tuple(min(wide, max(word, width)) for wide, word in zip(widest, least, strict=True)))

    narrow, wide = 0.0, max(widest)
    for _ in range(HALVINGS):
        middle = (narrow + wide) / 2
        narrow, wide = (middle, wide) if at_most(middle).total <= room else (narrow, middle)
    return at_most(narrow)


def _set(
    rows: Sequence[Sequence[str]], sides: str, lines: Lines, boxes: Boxes, columns: _Columns, size: float, start: float
) -> SetTable:
    """The cells on their lines; those of one row begin on one."""
    found: list[SetLine] = []
    bound: set[int] = set()
    heads, starts, wide, before = 0, list[int](), list[str](), 0
    lefts = columns.lefts
    for row in rows:
        starts.append(len(found))
        cells: list[list[SetLine]] = []
        for cell, side, x, width in zip(row, sides, lefts, columns.widths, strict=True):
            own = _broken(cell, lines, boxes, width)
            indents = (_aligned(side, width - lines.width(line.words)) for line in own.lines)
            cells.append(
                [
                    line._replace(x=start + (x + indent) * size, tracking=lines.fount.after(line.words) * size)
                    for line, indent in zip(own.lines, indents, strict=True)
                ]
            )
            wide += own.wide
        done = before + sum(cell.count(" ") + 1 for cell in row)
        deep = max(map(len, cells))
        bound.update(range(len(found) + 1, len(found) + deep))
        for depth in range(deep):
            first, *others = (cell[depth] for cell in cells if depth < len(cell))
            found.append(first._replace(done=done if depth == deep - 1 else before, more=tuple(others)))
        before = done
        heads = heads or deep
    ends = [*starts[1:], len(found)]
    # no single line stands alone under the heads, neither the first nor the last
    second = ends[1:2] if ends[1:] and ends[1] - ends[0] == 1 else []
    last = starts[-1:] if ends[-1] - starts[-1] == 1 else []
    bound.update((heads, *second, *last))
    begin = ends[min(1 + len(second), len(ends) - 1)]
    right = start + columns.total * size
    return SetTable(tuple(found), frozenset(bound), size, heads, begin, start, right, tuple(wide))


def _broken(cell: str, lines: Lines, boxes: Boxes, width: float) -> SetLines:
    """A cell on its lines in a column of a width in ems; where to break one that fits on a line is not asked."""
    words = cell.split(" ")
    if lines.width(cell) <= min(width, boxes.room):
        return SetLines((SetLine(cell, 0.0, 0.0, len(words)),))
    return lines.broken(words, boxes, boxes.ragged, Measures(0.0, (width + 1e-9,)))


def _aligned(side: str, room: float) -> float:
    """How far a line stands in from the left of its column, if so much room is left over."""
    return {"l": 0.0, "c": room / 2, "r": room}[side]
