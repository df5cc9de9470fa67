"""The inks of a sheet's marks: pens, notes, blots and white beside the cuts, in nominal millimetres."""

from __future__ import annotations

from collections.abc import Sequence
from math import dist

from ...ground.art import Filled, Group, Stroked, Written
from ...ground.drawing import WHITE, Colour, Pen
from ...ground.geometry import Path, Point, Rect, polygon
from ...ground.typefaces import TextLine
from ..flat import FoldKind

__all__ = [
    "CROSS",
    "CUT",
    "FOLD_PENS",
    "PERFORATION",
    "SCORE",
    "TRIM",
    "bead",
    "blot",
    "casing",
    "hole_casing",
    "note",
]

INK = Colour(0.25, 0.25, 0.25)
CUT = Pen(0.12, INK)
"""Cut marks: a thin unbroken line."""

CASING = 0.4
"""White beside a cut line that crosses print, on the waste, so that the line shows on dark colours too: in mm."""

FOLD_PENS = {
    FoldKind.MOUNTAIN: Pen(0.15, INK, (0.5, 0.15, 0.12, 0.15)),
    FoldKind.VALLEY: Pen(0.15, INK, (0.25, 0.2)),
}
"""Fold marks: mountains in dash and dot, valleys in short dashes."""

BEAD = 0.45
"""The dot at the end of a mountain's mark, in mm: a mark is too short to show by its dashes alone what it is."""

SCORE, PERFORATION = Pen(0.15, INK, (0.8, 0.15)), Pen(0.15, INK, (0.08, 0.22))
"""Marks of scores that stay flat, in long dashes, and of perforations, in dots apart."""

TRIM = Pen(0.12, INK, (0.12, 0.12))
"""Trim marks, dotted, in the paper that is trimmed off."""

CROSS = Pen(0.15)
"""Alignment crosses of a cutting machine."""


def note(line: TextLine, at: Point, quarters: int = 0) -> Written:
    """A line of text at a point, turned counter-clockwise by so many quarters with its piece if that lies turned."""
    return Written(line, at, INK, quarters)


def blot(shape: Path) -> Filled:
    """A filled shape."""
    return Filled(shape, INK)


def bead(mark: Stroked) -> Filled | None:
    """The dot at the outer end of a fold mark, if that is one of a mountain."""
    if mark.pen != FOLD_PENS[FoldKind.MOUNTAIN]:
        return None
    begin, end = mark.path.points()
    share = BEAD / 2 / dist(begin, end)
    centre = Point(end.x + (begin.x - end.x) * share, end.y + (begin.y - end.y) * share)
    return blot(Path.circle(centre, BEAD / 2))


def casing(edges: Sequence[tuple[Point, Point]], outline: Sequence[Point]) -> Group:
    """White along some edges of an outline that runs counter-clockwise, outside of it: none falls on the piece."""
    around = Rect.around(outline).grown(CASING).corners
    # The outer rectangle runs the other way, so that the piece is the hole in it.
    waste = Path((*polygon(around[::-1]).commands, *polygon(outline).commands))
    white = Pen(2 * CASING, WHITE)
    return Group(tuple(Stroked.line(begin, end, white) for begin, end in edges), clip=waste)


def hole_casing(hole: Sequence[Point]) -> Group:
    """White along the edge of a hole, inside of it."""
    edge = polygon(hole)
    return Group((Stroked(edge, Pen(2 * CASING, WHITE)),), clip=edge)
