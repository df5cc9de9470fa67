"""Imposition: which page stands where on a sheet that is folded into a section, and which way up.

Nothing is looked up in a scheme. A blank sheet is folded on paper, so to say, its pages are numbered through
as they lie in the folded sheet, and it is unfolded again. The inner side lies up at first, as on the
binder's bench; what comes out is told as the outer side is seen, because that is the front of a flat.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from ....sheets.flat import Face, FoldKind

__all__ = ["FOLDINGS", "Cell", "Crease", "Imposed", "Way", "fold_sheet", "on_one_side", "page_in_section"]


class Way(StrEnum):
    """How a sheet that lies with its inner side up is folded in half."""

    ACROSS = "right half over left"
    DOWN = "upper half over lower"


FOLDINGS: Mapping[str, tuple[Way, ...]] = {
    "folio": (Way.ACROSS,),
    "quarto": (Way.DOWN, Way.ACROSS),
    "octavo": (Way.ACROSS, Way.DOWN, Way.ACROSS),
}
"""The folds of a sheet in the order they are made; the last one is the spine."""


@dataclass(frozen=True, slots=True)
class Cell:
    """A page of a sheet: its column from the left, its row from the tail, as the outer side is seen.

    `page` counts from 1 within the sheet. The spine is on the right of even columns and the left of odd ones.
    """

    column: int
    row: int
    page: int
    face: Face
    head_down: bool


@dataclass(frozen=True, slots=True)
class Crease:
    """A fold on the right of a cell (`upright`) or on top of it, its kind as the front is seen."""

    column: int
    row: int
    upright: bool
    kind: FoldKind


@dataclass(frozen=True, slots=True)
class Imposed:
    """A sheet with all its pages and creases, in `columns` × `rows` cells."""

    columns: int
    rows: int
    cells: tuple[Cell, ...]
    creases: tuple[Crease, ...]

    @property
    def pages(self) -> int:
        """How many pages the sheet makes."""
        return len(self.cells)

    def depth(self, page: int) -> int:
        """How many leaves of the folded sheet lie around the leaf of a page, counted from its spine fold outwards.

        An octavo's outermost leaves are those of pages 1 and 16, its innermost those of 7 to 10:

        >>> [fold_sheet(FOLDINGS["octavo"]).depth(page) for page in (1, 2, 3, 7, 10, 16)]
        [0, 0, 1, 3, 3, 0]
        """
        leaf, leaves = (page - 1) // 2, self.pages // 2
        return min(leaf, leaves - 1 - leaf)


@dataclass(frozen=True, slots=True)
class _Layer:
    """One page-sized part of the sheet while it is folded; column and row as the inner side was seen."""

    column: int
    row: int
    inner_up: bool = True
    head_down: bool = False

    def turned(self, way: Way) -> _Layer:
        return replace(self, inner_up=not self.inner_up, head_down=self.head_down != (way is Way.DOWN))


_Stacks = dict[tuple[int, int], tuple[_Layer, ...]]


def fold_sheet(folding: Sequence[Way]) -> Imposed:
    """Fold a sheet, number its pages, unfold it.

    >>> [(cell.page, str(cell.face)) for cell in fold_sheet(FOLDINGS["folio"]).cells]
    [(1, 'front'), (2, 'reverse'), (3, 'reverse'), (4, 'front')]
    """
    columns, rows = 2 ** folding.count(Way.ACROSS), 2 ** folding.count(Way.DOWN)
    stacks: _Stacks = {(column, row): (_Layer(column, row),) for column in range(columns) for row in range(rows)}
    creases: list[Crease] = []
    for way in folding:
        stacks, made = _folded(stacks, way, columns)
        creases += made
    (folded,) = stacks.values()
    cells = [cell for leaf, layer in enumerate(folded) for cell in _leaf(layer, leaf, columns)]
    return Imposed(columns, rows, tuple(cells), tuple(creases))


def _leaf(layer: _Layer, leaf: int, columns: int) -> tuple[Cell, Cell]:
    """Both sides of a leaf: the lowest one has page 1 below and page 2 above."""
    below, above = 2 * leaf + 1, 2 * leaf + 2
    upper, lower = (Face.REVERSE, Face.FRONT) if layer.inner_up else (Face.FRONT, Face.REVERSE)
    column = columns - 1 - layer.column
    return (
        Cell(column, layer.row, below, lower, layer.head_down),
        Cell(column, layer.row, above, upper, layer.head_down),
    )


def _folded(stacks: _Stacks, way: Way, columns: int) -> tuple[_Stacks, list[Crease]]:
    """One half laid over the other: its layers come on top, in reverse order and turned over."""
    axis = 0 if way is Way.ACROSS else 1
    cells = 1 + max(place[axis] for place in stacks)
    folded: _Stacks = {}
    creases: list[Crease] = []
    for place, below in stacks.items():
        if place[axis] >= cells // 2:
            continue
        mirror = cells - 1 - place[axis]
        over = stacks[(mirror, place[1]) if axis == 0 else (place[0], mirror)]
        folded[place] = (*below, *(layer.turned(way) for layer in reversed(over)))
        if mirror == place[axis] + 1:  # the two lie side by side, so the fold runs between them
            creases += [_crease(one, other, way, columns) for one, other in zip(below, over, strict=True)]
    return folded, creases


def _crease(one: _Layer, other: _Layer, way: Way, columns: int) -> Crease:
    """What lies up comes together, so it is a valley there, and a mountain as seen from the other side."""
    kind = FoldKind.MOUNTAIN if one.inner_up else FoldKind.VALLEY
    column = columns - 1 - max(one.column, other.column)
    return Crease(column, min(one.row, other.row), way is Way.ACROSS, kind)


def on_one_side(sheet: Imposed) -> Imposed:
    """A folio sheet as a strip of four panels, printed on one side: the outer spread, then the inner one.

    The middle fold lies at the fore-edge; folded there, every page has its verso on its back.

    >>> [cell.page for cell in on_one_side(fold_sheet(FOLDINGS["folio"])).cells]
    [4, 1, 2, 3]
    """
    outer = sorted((cell for cell in sheet.cells if cell.face is Face.FRONT), key=lambda cell: cell.column)
    inner = sorted((cell for cell in sheet.cells if cell.face is Face.REVERSE), key=lambda cell: -cell.column)
    strip = [replace(cell, column=column, face=Face.FRONT) for column, cell in enumerate((*outer, *inner))]
    kinds = (FoldKind.MOUNTAIN, FoldKind.MOUNTAIN, FoldKind.VALLEY)
    creases = [Crease(column, 0, True, kind) for column, kind in enumerate(kinds)]
    return Imposed(4, 1, tuple(strip), tuple(creases))


def page_in_section(page: int, sheet: int, on_sheet: int, in_section: int) -> int:
    """The page of a section that a page of one of its sheets becomes; the outermost sheet is sheet 0.

    Two folio sheets, one in the other: the outer has 8|1 and 2|7, the inner 6|3 and 4|5.

    >>> [page_in_section(page, 1, 4, 8) for page in (4, 1, 2, 3)]
    [6, 3, 4, 5]
    """
    around = sheet * on_sheet // 2
    return around + page if page <= on_sheet // 2 else in_section - on_sheet + page - around
