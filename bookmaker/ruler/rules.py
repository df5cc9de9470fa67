"""The measures of the ruler page: two rules, the square with its diagonals, and the stairs at the edges."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ..ground.art import Stroked
from ..ground.drawing import Art, Pen
from ..ground.geometry import Point, Size, Transform
from ..ground.told import MM_PER_INCH, Units, in_units, units_told
from ..ground.typefaces import bundled, set_line
from ..paper.printer_entry import RULE_LENGTH, SQUARE
from ..sheets.marks import note

__all__ = ["BETWEEN", "EDGE", "Division", "division", "rules", "square", "stairs"]

EDGE = 15.0
"""The rules keep this far from the edges of the sheet, in mm, so that every printer reaches them."""

BETWEEN = 15.0
"""How far the level rule lies below the upright one, in mm, so that their ticks stay apart."""

PEN = Pen(0.12)
DASHED = Pen(0.12, dash=(1.0, 0.8))
END_TICK, LONG_TICK, MIDDLE_TICK, SHORT_TICK = 9.0, 5.0, 3.6, 2.2

ARM = 4.0
"""Length of the lines that meet in a corner of the square, in mm."""


@dataclass(frozen=True, slots=True)
class Division:
    """How a ruler page is divided; lengths in mm.

    `rule` and `square` are the length of the rules and the side of the square. A tick stands on a rule every `tick`,
    a longer one every `middle` ticks, a long one with a number every `long` ticks. On grids and stairs a line stands
    every `step`, a bold one with a number every five; grids reach `reach` steps each way, stairs `deep` from an edge.
    """

    rule: float
    square: float
    tick: float
    middle: int
    long: int
    step: float
    reach: int
    deep: int

    def number(self, steps: int) -> str:
        """What stands at a line of a grid or of the stairs."""
        return in_units(f"{steps}", f"{steps * self.step / MM_PER_INCH:g}")


MILLIMETRES = Division(RULE_LENGTH, SQUARE, tick=1.0, middle=5, long=10, step=1.0, reach=10, deep=14)
TWENTIETH = MM_PER_INCH / 20
INCHES = Division(
    6 * MM_PER_INCH, 4 * MM_PER_INCH, MM_PER_INCH / 16, middle=4, long=16, step=TWENTIETH, reach=8, deep=11
)


def division() -> Division:
    """How a page is divided in the units that are told."""
    return INCHES if units_told() is Units.INCHES else MILLIMETRES


def rules(corner: Point) -> Iterator[Art]:
    """Both rules: the upright one begins at `corner`, the level one below it."""
    yield from _rule(corner.plus(0, -BETWEEN), across=True)
    yield from _rule(corner, across=False)
    bold = bundled("sans bold")
    yield note(set_line(bold, 4.2, "across"), corner.plus(division().rule / 2 - 8, 10.5 - BETWEEN))
    yield note(set_line(bold, 4.2, "up"), corner.plus(11, division().rule / 2 - 2))


def _rule(start: Point, *, across: bool) -> Iterator[Art]:
    """A line with ticks; they stand towards the middle of the sheet."""

    def at(along: float, off: float) -> Point:
        return start.plus(along, off) if across else start.plus(off, along)

    by = division()
    yield Stroked.line(at(0, 0), at(by.rule, 0), PEN)
    last = round(by.rule / by.tick)
    for step in range(last + 1):
        tall = _tick(step, last, by)
        # The end ticks lie wholly inside the rule, so that their outer edges are what is its length apart.
        inward = PEN.width / 2 * ((step == 0) - (step == last))
        yield Stroked.line(at(step * by.tick + inward, 0), at(step * by.tick + inward, tall), PEN)
    for step in range(by.long, last, by.long):
        number = in_units(f"{step * by.tick:g}", f"{step // by.long}")
        label = set_line(bundled("sans"), 2.4, number)
        place = at(step * by.tick, END_TICK - 2) if across else at(step * by.tick, END_TICK - 1).plus(0, -0.8)
        yield note(label, place.plus(-label.width / 2, 0))


def _tick(step: int, last: int, by: Division) -> float:
    if step in (0, last):
        return END_TICK
    return LONG_TICK if step % by.long == 0 else MIDDLE_TICK if step % by.middle == 0 else SHORT_TICK


def square(corner: Point) -> Iterator[Art]:
    """The corners of a square: where two lines cross is what to measure between."""
    side = division().square
    for x in (0.0, side):
        for y in (0.0, side):
            at = corner.plus(x, y)
            yield Stroked.line(at.plus(-ARM, 0), at.plus(ARM, 0), PEN)
            yield Stroked.line(at.plus(0, -ARM), at.plus(0, ARM), PEN)
    for name, low, up in (("rising", 0.0, 1), ("falling", side, -1)):
        for x, way in ((0.0, 1), (side, -1)):
            start = corner.plus(x, low if way > 0 else side - low)
            yield Stroked.line(
                start.plus(way * ARM, way * up * ARM), start.plus(way * 3 * ARM, way * up * 3 * ARM), DASHED
            )
        yield note(set_line(bundled("sans bold"), 3.2, name), corner.plus(3.4 * ARM, low + up * 3.2 * ARM - 1.0))


def stairs(size: Size, low: float) -> Iterator[Art]:
    """At every edge lines at it and one, two, three … steps from it, longer and longer; at the sides from `low` up."""
    flip_across, flip_up = Transform(a=-1, e=size.width), Transform(d=-1, f=size.height)
    lying = Transform(a=0, b=1, c=1, d=0)
    by = division()
    for step in range(by.deep + 1):
        off = step * by.step
        for upright, move in ((True, Transform()), (True, flip_across), (False, Transform()), (False, flip_up)):
            begin = low if upright else size.width / 2 - 30
            ends = Point(off, begin), Point(off, begin + 4 + off)
            placed = move if upright else lying.then(move)
            start, end = map(placed.apply, ends)
            yield Stroked.line(start, end, PEN)
            if step % 5 == 0 and step:
                label = set_line(bundled("sans"), 2.0, by.number(step))
                x, y = placed.apply(Point(off, begin + 5.5 + off))
                yield note(label, Point(x - label.width / 2, y) if upright else Point(x, y - 0.7))
