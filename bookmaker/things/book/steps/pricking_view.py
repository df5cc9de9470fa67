"""Marks pricked through to the back of a sheet: they stand on the printed side, and the work is on the other one."""

from __future__ import annotations

from collections.abc import Iterator

from ....ground.art import Filled, Group, Stroked
from ....ground.drawing import WHITE, Art, Pen
from ....ground.geometry import Point, Rect, polygon
from ...making import Manner
from ...views.ink import EDGE, PAPER, SCORED, box, line, word
from ...views.signs import HIDDEN, bent_arrow, hole, pointed
from ...views.stages import staged

__all__ = ["PRICKED", "pricked_marks"]

PRICKED = "marks pricked through"

PART = Rect(8.0, 4.5, 20.0, 15.0)
"""The cover on its sheet, in mm; its marks stand above and below it."""

AT = 12.0, 15.0
"""How far from its left edge two folds lie as they are printed, in mm."""

MARK = Pen(0.2)
NEEDLE = Pen(0.35)


def pricked_marks(room: float) -> Manner:
    """Pricked on the front, found again on the back, joined there."""
    caption = (
        "Marks pricked through. a: print up, the needle goes through the mark at each end of a fold, beside the cover. "
        "b: the sheet is turned over like a page: what was on the left is on the right. c: on the back a rule lies "
        "from hole to hole, and the line is scored, or drawn, along it."
    )
    return Manner(PRICKED, staged((_front(), _turned(), _joined()), room, caption))


def _sheet() -> Art:
    return box(PART.grown(4.0, 3.5, 4.0, 3.5), WHITE, HIDDEN)


def _folds() -> list[float]:
    return [PART.x + at for at in AT]


def _turned_folds() -> list[float]:
    """Where the folds are seen from the back."""
    return [PART.right - at for at in AT]


def _marks(folds: list[float]) -> Iterator[Art]:
    for x in folds:
        yield line(Point(x, PART.top + 0.6), Point(x, PART.top + 2.8), MARK)
        yield line(Point(x, PART.y - 0.6), Point(x, PART.y - 2.8), MARK)


def _holes(folds: list[float]) -> Iterator[Art]:
    for x in folds:
        yield hole(Point(x, PART.top + 1.6))
        yield hole(Point(x, PART.y - 1.6))


def _needle(tip: Point) -> Art:
    """A needle with its point on a mark."""
    eye = tip.plus(6.5, 3.4)
    blade = polygon([tip, eye.plus(-0.25, 0.45), eye.plus(0.25, -0.45)])
    return Group((Filled(blade, WHITE), Stroked(blade, MARK)))


def _front() -> Art:
    folds = _folds()
    tip = Point(folds[-1], PART.top + 1.6)
    named = pointed("mark", Point(10.0, 24.6), Point(folds[0], PART.top + 2.4))
    names = word("front, with print", Point(PART.centre.x, PART.centre.y), 2.1, room=18.0)
    return Group((_sheet(), box(PART, PAPER), *_marks(folds), *_holes(folds[:1]), _needle(tip), names, named))


def _turned() -> Art:
    folds = _turned_folds()
    over = bent_arrow(Point(5.5, 25.4), Point(30.5, 25.4), 0.0)
    name = word("back", Point(PART.right - 4.0, PART.centre.y), 2.1)
    return Group((_sheet(), box(PART, WHITE, HIDDEN), *_holes(folds), name, over))


def _joined() -> Art:
    folds = _turned_folds()
    rule = Rect(folds[-1] - 6.0, 1.2, 5.2, 22.0)
    scored = (line(Point(x, PART.y - 1.6), Point(x, PART.top + 1.6), SCORED) for x in folds)
    named = word("rule", rule.centre, 2.1, upright=True)
    folder = bent_arrow(Point(folds[-1] + 7.0, PART.top - 1.0), Point(folds[-1] + 0.6, PART.y + 3.0), 1.5)
    return Group((_sheet(), box(PART, WHITE, HIDDEN), *_holes(folds), *scored, box(rule, PAPER, EDGE), named, folder))
