"""The measures of the ruler page: two rules, the square with its diagonals, and the stairs at the edges."""

from __future__ import annotations

from collections.abc import Iterator

from ..ground.art import Stroked
from ..ground.drawing import Art, Pen
from ..ground.geometry import Point, Size, Transform
from ..ground.typefaces import bundled, set_line
from ..paper.printer_entry import RULE_LENGTH, SQUARE
from ..sheets.marks import note

__all__ = ["BETWEEN", "EDGE", "STAIRS", "rules", "square", "stairs"]

EDGE = 15.0
"""The rules keep this far from the edges of the sheet, in mm, so that every printer reaches them."""

BETWEEN = 15.0
"""How far the level rule lies below the upright one, in mm, so that their ticks stay apart."""

PEN = Pen(0.12)
DASHED = Pen(0.12, dash=(1.0, 0.8))
END_TICK, TEN_TICK, FIVE_TICK, ONE_TICK = 9.0, 5.0, 3.6, 2.2

ARM = 4.0
"""Length of the lines that meet in a corner of the square, in mm."""

STAIRS = 14
"""Lines stand so many mm deep from every edge, one every millimetre."""


def rules(corner: Point) -> Iterator[Art]:
    """Both rules: the upright one begins at `corner`, the level one below it."""
    yield from _rule(corner.plus(0, -BETWEEN), across=True)
    yield from _rule(corner, across=False)
    bold = bundled("sans bold")
    yield note(set_line(bold, 4.2, "across"), corner.plus(RULE_LENGTH / 2 - 8, 10.5 - BETWEEN))
    yield note(set_line(bold, 4.2, "up"), corner.plus(11, RULE_LENGTH / 2 - 2))


def _rule(start: Point, *, across: bool) -> Iterator[Art]:
    """A line with a tick every millimetre; ticks stand towards the middle of the sheet."""

    def at(along: float, off: float) -> Point:
        return start.plus(along, off) if across else start.plus(off, along)

    yield Stroked.line(at(0, 0), at(RULE_LENGTH, 0), PEN)
    last = round(RULE_LENGTH)
    for step in range(last + 1):
        tall = _tick(step, last)
        # The end ticks lie wholly inside the rule, so that their outer edges are what is 150 mm apart.
        inward = PEN.width / 2 * ((step == 0) - (step == last))
        yield Stroked.line(at(step + inward, 0), at(step + inward, tall), PEN)
    for step in range(10, last, 10):
        label = set_line(bundled("sans"), 2.4, str(step))
        place = at(step, END_TICK - 2) if across else at(step, END_TICK - 1).plus(0, -0.8)
        yield note(label, place.plus(-label.width / 2, 0))


def _tick(step: int, last: int) -> float:
    if step in (0, last):
        return END_TICK
    return TEN_TICK if step % 10 == 0 else FIVE_TICK if step % 5 == 0 else ONE_TICK


def square(corner: Point) -> Iterator[Art]:
    """The corners of a square: where two lines cross is what to measure between."""
    for x in (0.0, SQUARE):
        for y in (0.0, SQUARE):
            at = corner.plus(x, y)
            yield Stroked.line(at.plus(-ARM, 0), at.plus(ARM, 0), PEN)
            yield Stroked.line(at.plus(0, -ARM), at.plus(0, ARM), PEN)
    for name, low, up in (("rising", 0.0, 1), ("falling", SQUARE, -1)):
        for x, way in ((0.0, 1), (SQUARE, -1)):
            start = corner.plus(x, low if way > 0 else SQUARE - low)
            yield Stroked.line(
                start.plus(way * ARM, way * up * ARM), start.plus(way * 3 * ARM, way * up * 3 * ARM), DASHED
            )
        yield note(set_line(bundled("sans bold"), 3.2, name), corner.plus(3.4 * ARM, low + up * 3.2 * ARM - 1.0))


def stairs(size: Size, low: float) -> Iterator[Art]:
    """At every edge lines 0 mm, 1 mm, 2 mm … from it, longer and longer; those at the sides begin at height `low`."""
    flip_across, flip_up = Transform(a=-1, e=size.width), Transform(d=-1, f=size.height)
    lying = Transform(a=0, b=1, c=1, d=0)
    for step in range(STAIRS + 1):
        for upright, move in ((True, Transform()), (True, flip_across), (False, Transform()), (False, flip_up)):
            begin = low if upright else size.width / 2 - 30
            ends = Point(step, begin), Point(step, begin + 4 + step)
            placed = move if upright else lying.then(move)
            start, end = map(placed.apply, ends)
            yield Stroked.line(start, end, PEN)
            if step % 5 == 0 and step:
                label = set_line(bundled("sans"), 2.0, str(step))
                x, y = placed.apply(Point(step, begin + 5.5 + step))
                yield note(label, Point(x - label.width / 2, y) if upright else Point(x, y - 0.7))
