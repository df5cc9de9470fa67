"""Leaves: single leaves printed on both sides, glued together at the spine.

Leaves lie in a grid on flats that are all alike. The flats are laid on one another, cut as one pile, and the
piles laid on one another: place p of m flats holds the leaves p·m to p·m + m − 1.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from pydantic import Field

from ....ground.geometry import Axis, Point, Rect, Size
from ....ground.problems import Problem, ShelfFileError
from ....paper.glue import glue_films
from ....paper.stock import Stock
from ....paper.thickness import Layer, Thickness
from ....sheets.flat import Face, Flat, Fold, FoldKind, Panel, Role, Stroke
from ....sheets.mirror import mirrored
from ....sheets.sheet_room import part_too_large
from ....shelf_file.fields.measures import SmallLength
from ....shelf_file.fields.words import Flag, StockName
from .block import PagedEntry
from .block_plan import BlockPlan
from .stiffness import stiff_folds
from .trimming import join_strokes, trim_lines, wasteful_trim

if TYPE_CHECKING:
    from ...making import Making
    from ..steps.job import BookJob

__all__ = ["Leaves"]


class Leaves(PagedEntry):
    """Single leaves, perfect bound."""

    kind: Literal["leaves"] = "leaves"
    stock: StockName = Field(description="name of the paper, as under stocks")
    printing: Literal["both sides", "one side"] = Field("both sides", description="which sides are printed")
    trim: SmallLength = Field(0.0, description="paper that is trimmed off at head, tail and fore-edge after gluing")
    scored: Flag = Field(False, description="whether folds are scored: stiff paper must be")

    @property
    def trimmed(self) -> float:
        """What is trimmed off at each edge, in mm."""
        return self.trim

    def plan(self, page: Size, stocks: Mapping[str, Stock], *, right_to_left: bool) -> BlockPlan:
        """Work out the block.

        Raises:
            ShelfFileError: a leaf has no room on the sheet, the trim eats the page, stiff paper is not scored.
        """
        stock = stocks[self.stock] if self.printing == "one side" else stocks[self.stock].on_both_sides
        cell = _cell(self, page)
        problems = _problems(self, page, cell, stock)
        if problems:
            raise ShelfFileError(problems)
        grid = _grid(self.printed_pages // 2, cell, stock)
        flats = [_flat(self, page, grid, number) for number in range(grid.flats)]
        per_page = stock.caliper / 2 if self.printing == "both sides" else stock.caliper + stock.glue / 2
        return BlockPlan(
            kind=self.kind,
            pages=self.printed_pages,
            panels=self.printed_pages,
            bare=_thickness(self, stock).as_measured(self.measured_thickness),
            thickness_of_a_page=per_page,
            flats=tuple(mirrored(flat, across=True) for flat in flats) if right_to_left else tuple(flats),
        )

    def making(self, job: BookJob) -> Making:
        """Flats piled and cut, leaves gathered, the spine glued, the block trimmed."""
        from ..steps.leaves import leaves_making

        return leaves_making(job, self.trim, folded=self.printing == "one side")


@dataclass(frozen=True, slots=True)
class _Grid:
    """How leaves lie on the flats: `flats` of them, each of `columns` × `rows` cells."""

    columns: int
    rows: int
    flats: int
    cell: Size

    def at(self, place: int) -> Rect:
        """A cell, counted in rows from the upper left."""
        row, column = divmod(place, self.columns)
        return Rect(column * self.cell.width, (self.rows - 1 - row) * self.cell.height, *self.cell)


def _cell(entry: Leaves, page: Size) -> Size:
    """One leaf with its trim; printed on one side, a strip of its two pages with the fore-edges in the middle."""
    strips = 1 if entry.printing == "both sides" else 2
    return Size(strips * (page.width + entry.trim), page.height + 2 * entry.trim)


def _problems(entry: Leaves, page: Size, cell: Size, stock: Stock) -> list[Problem]:
    folded = entry.printing == "one side"
    return [
        *wasteful_trim(entry.trim, page),
        *part_too_large("a leaf folded back to back" if folded else "a leaf", cell, stock, Axis.Y, ("block", "stock")),
        *(stiff_folds(stock, scored=entry.scored) if folded else ()),
    ]


def _thickness(entry: Leaves, stock: Stock) -> Thickness:
    """n/2 · t: 420 leaves of 86 µm are 36.12 mm; printed on one side n/2 · (2t + a)."""
    leaves = entry.printed_pages // 2
    if entry.printing == "both sides":
        return Thickness((Layer("leaves", leaves, stock.caliper, stock.name),))
    return Thickness(
        (
            Layer("leaves of two layers", 2 * leaves, stock.caliper, stock.name),
            glue_films("glue films between backs", leaves, stock.glue),
        )
    )


def _grid(leaves: int, cell: Size, stock: Stock) -> _Grid:
    """As few flats as the sheet allows, and on them the smallest grid that holds the leaves."""
    rooms = [
        (int((room.width + 1e-6) / cell.width), int((room.height + 1e-6) / cell.height))
        for room in stock.openings(Axis.Y)
    ]
    widest, highest = max(rooms, key=lambda room: room[0] * room[1])
    flats = -(-leaves // (widest * highest))
    share = -(-leaves // flats)
    grids = ((columns, -(-share // columns)) for columns in range(1, widest + 1))
    columns, rows = min((g for g in grids if g[1] <= highest), key=lambda g: (g[0] * g[1], -g[0]))
    return _Grid(columns, rows, flats, cell)


def _flat(entry: Leaves, page: Size, grid: _Grid, number: int) -> Flat:
    """One flat as its front is seen: rectos in front, each with its verso behind or beside it."""
    size = Size(grid.columns * grid.cell.width, grid.rows * grid.cell.height)
    panels: list[Panel] = []
    trims: list[Stroke] = []
    for place in range(grid.columns * grid.rows):
        leaf = place * grid.flats + number
        if leaf < entry.printed_pages // 2:
            sides = _leaf(entry, page, grid.at(place), leaf)
            panels += sides
            trims += _trims(entry, sides, grid.at(place))
    return Flat(
        kind="leaves",
        name=_name(grid, number),
        stock=entry.stock,
        outline=Rect(0, 0, *size).corners,
        folds=_folds(entry, grid, size),
        panels=tuple(panels),
        grain=Axis.Y,
        cuts=_cuts(grid, size),
        trims=join_strokes(trims),
    )


def _name(grid: _Grid, number: int) -> str:
    if grid.flats == 1:
        return "leaves"
    return f"leaves, {number + 1} of {grid.flats} to pile and cut together"


def _leaf(entry: Leaves, page: Size, cell: Rect, leaf: int) -> tuple[Panel, Panel]:
    """Recto and verso, the spine at the left of the recto."""
    recto = Rect(cell.x, cell.y + entry.trim, *page)
    if entry.printing == "both sides":
        return (
            Panel(Role.PAGE, recto, 2 * leaf + 1),
            Panel(Role.PAGE, recto, 2 * leaf + 2, Face.REVERSE),
        )
    verso = Rect(cell.right - page.width, recto.y, *page)
    return Panel(Role.PAGE, recto, 2 * leaf + 1), Panel(Role.PAGE, verso, 2 * leaf + 2)


def _trims(entry: Leaves, sides: tuple[Panel, Panel], cell: Rect) -> Iterator[Stroke]:
    """Head, tail and fore-edge; a folded leaf has a fore-edge on each side of its fold."""
    if entry.printing == "both sides":
        yield from trim_lines(sides[0].rect, cell)
        return
    left, right = cell.grown(0, 0, -cell.width / 2, 0), cell.grown(-cell.width / 2, 0, 0, 0)
    yield from trim_lines(sides[0].rect, left)
    yield from trim_lines(sides[1].rect, right)


def _folds(entry: Leaves, grid: _Grid, size: Size) -> tuple[Fold, ...]:
    """Leaves printed on one side are folded at the fore-edge, print outwards, and glued back to back."""
    if entry.printing == "both sides":
        return ()
    xs = [(column + 0.5) * grid.cell.width for column in range(grid.columns)]
    return tuple(Fold(FoldKind.MOUNTAIN, Point(x, 0), Point(x, size.height)) for x in xs)


def _cuts(grid: _Grid, size: Size) -> tuple[Stroke, ...]:
    """The lines of the grid, from edge to edge."""
    upright = [column * grid.cell.width for column in range(1, grid.columns)]
    level = [row * grid.cell.height for row in range(1, grid.rows)]
    return (
        *(Stroke(Point(x, 0), Point(x, size.height)) for x in upright),
        *(Stroke(Point(0, y), Point(size.width, y)) for y in level),
    )
