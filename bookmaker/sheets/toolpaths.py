"""What a cutting machine does to a sheet: pen lines, scores, perforations and cuts, in the order of the work.

The pen draws over the printed alignment crosses first: if it hits them, the knife will hit the pieces. Then
all folds and scores are made while the sheet is whole, and all perforations. Then the pieces are cut, each from
the inside out, holes before outlines, so that nothing lies loose that is still to be cut. No line is made twice.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise
from math import dist

from ..ground.geometry import ORIGIN, Point, Size
from .flat import Stroke
from .layout import Placement, Sheet
from .segments import merged, without

__all__ = ["Tool", "ToolPath", "ToolSheet", "tool_sheet"]


class Tool(StrEnum):
    """What a path is made with, in the order of use; also the names of the layers.

    They are called as processing steps are in ISO 19593-1 (from memory); for crosses it has no word.
    """

    PEN = "Crosses"
    SCORE = "Creasing"
    PERFORATE = "Perforating"
    CUT = "Cutting"


@dataclass(frozen=True, slots=True)
class ToolPath:
    """Points in mm on the sheet, from first to last; a closed path goes back to the first."""

    points: tuple[Point, ...]
    closed: bool = False

    @property
    def end(self) -> Point:
        """Where the tool is lifted."""
        return self.points[0] if self.closed else self.points[-1]

    @property
    def strokes(self) -> tuple[Stroke, ...]:
        """The straight parts."""
        around = (*self.points, self.points[0]) if self.closed else self.points
        return tuple(Stroke(start, end) for start, end in pairwise(around))

    def begun_near(self, place: Point) -> ToolPath:
        """The same path begun as near to a place as it can be: at any corner if it is closed, else at either end."""
        if not self.closed:
            first, last = dist(place, self.points[0]), dist(place, self.points[-1])
            return self if first <= last else ToolPath(self.points[::-1])
        nearest = min(range(len(self.points)), key=lambda number: dist(place, self.points[number]))
        return ToolPath(self.points[nearest:] + self.points[:nearest], closed=True)


@dataclass(frozen=True, slots=True)
class ToolSheet:
    """All paths for one sheet, in the order in which they are to be made; along `perforations` in dashes."""

    size: Size
    pen: tuple[ToolPath, ...]
    scores: tuple[ToolPath, ...]
    cuts: tuple[ToolPath, ...]
    perforations: tuple[ToolPath, ...] = ()

    @property
    def layers(self) -> tuple[tuple[Tool, tuple[ToolPath, ...]], ...]:
        """The paths of each tool, in the order of use; a tool for perforations where there are some."""
        torn = ((Tool.PERFORATE, self.perforations),) if self.perforations else ()
        return (Tool.PEN, self.pen), (Tool.SCORE, self.scores), *torn, (Tool.CUT, self.cuts)


def tool_sheet(sheet: Sheet) -> ToolSheet:
    """The paths for a sheet: crosses, folds and scores, perforations, cuts and holes within pieces, outlines."""
    pen = _in_order([_open(stroke) for stroke in sheet.crosses], ORIGIN)
    pieces = [_Piece(placement) for placement in sheet.placements]
    scores, perforations = (
        _in_order([path for paths in each for path in paths], ORIGIN)
        for each in ([piece.scores for piece in pieces], [piece.perforations for piece in pieces])
    )
    cuts: list[ToolPath] = []
    at, waiting = ORIGIN, list(pieces)
    while waiting:
        nearest = min(waiting, key=lambda piece: dist(at, piece.outline.begun_near(at).points[0]))
        waiting.remove(nearest)
        within = _in_order(nearest.cuts, at)
        at = within[-1].end if within else at
        cuts += [*within, nearest.outline.begun_near(at)]
        at = cuts[-1].end
    return ToolSheet(sheet.size, pen, scores, tuple(cuts), perforations)


class _Piece:
    """The paths of one piece."""

    def __init__(self, placement: Placement) -> None:
        self.outline = ToolPath(placement.outline, closed=True)
        holes = [ToolPath(hole, closed=True) for hole in placement.holes]
        edges = [stroke for path in (self.outline, *holes) for stroke in path.strokes]
        flat = placement.piece.flat
        within = without(merged(placement.on_sheet(flat.cuts)), edges)
        torn = without(merged(placement.on_sheet(flat.perforations)), [*edges, *within])
        folds = [Stroke(fold.start, fold.end) for fold in placement.folds]
        scored = without(merged([*folds, *placement.on_sheet(flat.scores)]), [*edges, *within, *torn])
        self.cuts = [*map(_open, within), *holes]
        self.perforations = [*map(_open, torn)]
        self.scores = [*map(_open, scored)]


def _open(stroke: Stroke) -> ToolPath:
    return ToolPath((stroke.start, stroke.end))


def _in_order(paths: Sequence[ToolPath], at: Point) -> tuple[ToolPath, ...]:
    """Each path after the one that ends nearest to it, from a place on."""
    waiting, ordered = list(paths), []
    while waiting:
        nearest = min(waiting, key=lambda path: dist(at, path.begun_near(at).points[0]))
        waiting.remove(nearest)
        ordered.append(nearest.begun_near(at))
        at = ordered[-1].end
    return tuple(ordered)
