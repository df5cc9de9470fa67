"""Sheets folded flat: their panels, the strips of paper that go round the folds, and the packet that comes of it.

A sheet is folded along one axis, and the packet then along the other. Panels are reckoned in the middle of the paper,
as those of boxes are: a fold that climbs so many levels takes a strip as many calipers high. Where a packet is folded,
its outermost layer goes the longest way. Folds run straight across the sheet, so all layers have as much paper there
as that one needs; what the inner ones have to spare puckers within the fold, and nothing stands out of the packet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from ...ground.geometry import Axis, Point, Rect, Size
from ...sheets.flat import Face, Fold, FoldKind
from .chains import ONE_PANEL, Chain

__all__ = ["Cell", "FoldedSheet", "Span"]

NEAR_END = 0.12
"""Where on a fold its number stands, as a share of the sheet."""


class Cell(NamedTuple):
    """A panel of a sheet: its row from the head, its column from the left."""

    row: int
    column: int


class Span(NamedTuple):
    """From where to where something lies along an axis, in mm from the head or from the left."""

    start: float
    end: float


@dataclass(frozen=True, slots=True)
class FoldedSheet:
    """A sheet of a size in mm, of paper of a caliper, folded into columns and rows.

    `first` is the axis along which the panels of the first folds lie: Y for rows. Folded `outside`, its print comes
    out. What is folded in is shorter by the `allowance`. Where other sheets lie in this one or around it, `deep` is how
    many layers all have after the first folds, and the levels of its chain are those among them.
    """

    size: Size
    caliper: float
    columns: Chain = ONE_PANEL
    rows: Chain = ONE_PANEL
    first: Axis = Axis.Y
    outside: bool = False
    allowance: float = 0.0
    deep: int = 0

    @property
    def one(self) -> Chain:
        """The first folds."""
        return self.rows if self.first is Axis.Y else self.columns

    @property
    def two(self) -> Chain:
        """The second folds."""
        return self.columns if self.first is Axis.Y else self.rows

    @property
    def packet(self) -> int:
        """The layers after the first folds."""
        return self.deep or self.one.deep

    @property
    def layers(self) -> int:
        """The layers of the whole packet."""
        return self.packet * self.two.deep

    @property
    def thickness(self) -> float:
        """How thick the packet is, pressed flat, in mm."""
        return self.layers * self.caliper

    @property
    def cells(self) -> tuple[Cell, ...]:
        """All panels as they are read, from the head."""
        across, down = range(len(self.columns.levels)), range(len(self.rows.levels))
        return tuple(Cell(row, column) for row in down for column in across)

    @property
    def root(self) -> Cell:
        """The panel that stays."""
        return Cell(self.rows.root, self.columns.root)

    def cell(self, first: int, second: int) -> Cell:
        """The panel of a number in the first and one in the second folds."""
        return Cell(first, second) if self.first is Axis.Y else Cell(second, first)

    def places(self, cell: Cell) -> tuple[int, int]:
        """The number of a panel in the first and in the second folds."""
        return (cell.row, cell.column) if self.first is Axis.Y else (cell.column, cell.row)

    def level(self, cell: Cell) -> int:
        """How high a panel lies in the packet."""
        first, second = self.places(cell)
        return self._level(self.one.levels[first], second)

    def _level(self, layer: int, panel: int) -> int:
        """How high a layer of the first packet lies in a panel of the second folds, which may have turned it over."""
        within = self.packet - 1 - layer if self.two.flipped[panel] else layer
        return self.two.levels[panel] * self.packet + within

    def is_flipped(self, cell: Cell) -> bool:
        """Whether a panel lies with its print the other way up than the one that stays."""
        return self.rows.flipped[cell.row] is not self.columns.flipped[cell.column]

    @property
    def outer(self) -> tuple[tuple[Cell, Face], tuple[Cell, Face]]:
        """What is seen of the packet: the panel that stays, and the one that lies farthest from it, each its face."""
        top = max(self.cells, key=self.level)
        printed = self.is_flipped(top) is self.outside
        return (self.root, Face.FRONT if self.outside else Face.REVERSE), (top, Face.FRONT if printed else Face.REVERSE)

    # ---- where panels lie on the sheet

    def rect(self, cell: Cell) -> Rect:
        """A panel on the sheet, between the strips that go round its folds."""
        across, down = self.spans(cell)
        return Rect(across.start, self.size.height - down.end, across.end - across.start, down.end - down.start)

    def whole(self, cell: Cell) -> Rect:
        """A panel on the sheet from fold to fold, or to the edge of the sheet."""
        places = self.places(cell)
        edges = [
            Span(*[0.0, *_middles(spans), side][place : place + 2])
            for place, spans, side in zip(places, (self._along_first, self._along_second), self._sides, strict=True)
        ]
        across, down = edges[::-1] if self.first is Axis.Y else edges
        return Rect(across.start, self.size.height - down.end, across.end - across.start, down.end - down.start)

    def spans(self, cell: Cell) -> tuple[Span, Span]:
        """From where to where a panel lies, from the left and from the head."""
        first, second = self.places(cell)
        spans = self._along_first[first], self._along_second[second]
        return spans[::-1] if self.first is Axis.Y else spans

    @property
    def _along_first(self) -> list[Span]:
        return self._along(self.one, self.one.climbs, self._sides[0])

    @property
    def _along_second(self) -> list[Span]:
        return self._along(self.two, self.highest, self._sides[1])

    @property
    def _sides(self) -> Size:
        """The sheet along the first and along the second folds."""
        return self.size.turned if self.first is Axis.Y else self.size

    def _along(self, chain: Chain, climbs: Sequence[int], whole: float) -> list[Span]:
        strips = [climb * self.caliper for climb in climbs]
        longest = chain.longest(whole - sum(strips), self.allowance)
        return _laid_out(chain.lengths(longest, self.allowance), strips)

    @property
    def highest(self) -> list[int]:
        """How many levels the outermost layer climbs at each of the second folds."""
        climbs = [self._climbs(layer) for layer in range(self.packet)]
        return [max(of_layers) for of_layers in zip(*climbs, strict=True)]

    def inside_by(self, cell: Cell, fold: int) -> float:
        """How far inside the outermost layer a panel ends at one of the second folds, in mm: a caliper a layer."""
        first, _ = self.places(cell)
        return (self.highest[fold] - self._climbs(self.one.levels[first])[fold]) / 2 * self.caliper

    def climb(self, cell: Cell, fold: int) -> int:
        """How many levels the layer of a panel climbs at one of the second folds."""
        return self._climbs(self.one.levels[self.places(cell)[0]])[fold]

    def _climbs(self, layer: int) -> list[int]:
        levels = [self._level(layer, panel) for panel in range(len(self.two.levels))]
        return [abs(low - high) for low, high in pairwise(levels)]

    # ---- folds

    @property
    def folds(self) -> tuple[Fold, ...]:
        """The folds as the front is seen, in the middle of their strips; the second ones bend from layer to layer."""
        return (*self._first_folds(), *self._second_folds())

    @property
    def order(self) -> Iterator[tuple[int, Point]]:
        """The number of each fold in the order of folding, and a point of it near its end."""
        near = NEAR_END * self._sides[1], NEAR_END * self._sides[0]
        for step, middle in zip(self.one.steps, _middles(self._along_first), strict=True):
            yield step, self._at(middle, near[0])
        for step, middle in zip(self.two.steps, _middles(self._along_second), strict=True):
            yield max(self.one.steps, default=0) + step, self._at(near[1], middle)

    def _at(self, first: float, second: float) -> Point:
        """A point so far from the head and from the left, by the axis of the first folds."""
        across, down = (second, first) if self.first is Axis.Y else (first, second)
        return Point(across, self.size.height - down)

    def _first_folds(self) -> Iterator[Fold]:
        for fold, middle in enumerate(_middles(self._along_first)):
            cells = self.cell(fold, 0), self.cell(fold + 1, 0)
            yield self._fold(*cells, middle, Span(0.0, self._sides[1]))

    def _second_folds(self) -> Iterator[Fold]:
        edges = [0.0, *_middles(self._along_first), self._sides[0]]
        for fold, middle in enumerate(_middles(self._along_second)):
            for first, reach in enumerate(pairwise(edges)):
                yield self._fold(self.cell(first, fold), self.cell(first, fold + 1), middle, Span(*reach))

    def _fold(self, one: Cell, other: Cell, at: float, reach: Span) -> Fold:
        """The fold between two panels, so far from the left or from the head; `reach` is the way it goes."""
        high = self.size.height
        if one.row != other.row:
            return Fold(self.bend(one, other), Point(reach.start, high - at), Point(reach.end, high - at))
        return Fold(self.bend(one, other), Point(at, high - reach.end), Point(at, high - reach.start))

    def bend(self, one: Cell, other: Cell) -> FoldKind:
        """How the paper bends between two panels that lie side by side, as the front is seen."""
        up = self.level(other) > self.level(one)
        valley = (up is not self.is_flipped(one)) is not self.outside
        return FoldKind.VALLEY if valley else FoldKind.MOUNTAIN


def _laid_out(lengths: Sequence[float], strips: Sequence[float]) -> list[Span]:
    """Lengths one after the other, with strips between them."""
    spans, at = list[Span](), 0.0
    for length, strip in zip(lengths, [*strips, 0.0], strict=True):
        spans.append(Span(at, at + length))
        at += length + strip
    return spans


def _middles(spans: Sequence[Span]) -> list[float]:
    """The middles of the strips between panels."""
    return [(before.end + after.start) / 2 for before, after in pairwise(spans)]
