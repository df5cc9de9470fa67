"""The ruler page: two 150 mm rules that show what a printer does to lengths."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path as FilePath

from .drawing import Art, Pen
from .errors import CommandError, Problem
from .geometry import Point, Size
from .marks import Line, Note
from .papers import SheetFormat
from .spec.sheets import RULE_LENGTH
from .typefaces import bundled, set_line
from .units import print_mm
from .writers.pdf import PdfFile

__all__ = ["write_ruler"]

EDGE = 15.0
"""The rules keep this far from the edges of the sheet, in mm, so that every printer reaches them."""

BETWEEN = 15.0
"""How far the level rule lies below the upright one, in mm, so that their ticks stay apart."""

PEN = Pen(0.12)
END_TICK, TEN_TICK, FIVE_TICK, ONE_TICK = 9.0, 5.0, 3.6, 2.2

ADVICE = (
    "Print this page at 100 %, no scaling, on the paper you will use.",
    "Measure both rules between the outer edges of their long end ticks,",
    "in mm and to a tenth if you can, and write what you read into the shelf file:",
    "printer: {rules: {across: 149.6 mm, up: 150.2 mm}}",
    "A rule that measures 150 mm needs no entry.",
)


def write_ruler(path: FilePath, sheet: SheetFormat) -> None:
    """Write the page for a sheet format.

    Raises:
        CommandError: the sheet is too small for the rules.
    """
    size = Size(*sheet.size)
    needed = RULE_LENGTH + 2 * EDGE
    if size.width < needed or size.height < needed + BETWEEN:
        raise CommandError(
            (
                Problem(
                    f"the rules of {print_mm(RULE_LENGTH)} do not fit on {sheet.name}",
                    f"use a sheet of at least {print_mm(needed)} × {print_mm(needed + BETWEEN)}, such as A4",
                ),
            )
        )
    with PdfFile(path, title="Ruler page") as pdf, pdf.page(size) as canvas:
        for art in _page(size):
            art.draw(canvas)


def _page(size: Size) -> Iterator[Art]:
    corner = Point(EDGE, size.height - EDGE - RULE_LENGTH)
    yield from _rule(corner.plus(0, -BETWEEN), across=True)
    yield from _rule(corner, across=False)
    sans, left = bundled("sans"), corner.x + 22
    yield Note(set_line(bundled("sans bold"), 5.0, "across"), corner.plus(RULE_LENGTH / 2 - 8, 11 - BETWEEN))
    yield Note(set_line(bundled("sans bold"), 5.0, "up"), corner.plus(11, RULE_LENGTH / 2 - 2))
    for row, words in enumerate(ADVICE):
        yield Note(set_line(sans, 3.6, words), Point(left, corner.y + RULE_LENGTH - 20 - row * 7))


def _rule(start: Point, *, across: bool) -> Iterator[Art]:
    """A line with a tick every millimetre; ticks stand towards the middle of the sheet."""

    def at(along: float, off: float) -> Point:
        return start.plus(along, off) if across else start.plus(off, along)

    yield Line(at(0, 0), at(RULE_LENGTH, 0), PEN)
    last = round(RULE_LENGTH)
    for step in range(last + 1):
        tall = _tick(step, last)
        # The end ticks lie wholly inside the rule, so that their outer edges are what is 150 mm apart.
        inward = PEN.width / 2 * ((step == 0) - (step == last))
        yield Line(at(step + inward, 0), at(step + inward, tall), PEN)
    for step in range(10, last, 10):
        label = set_line(bundled("sans"), 2.4, str(step))
        yield Note(label, at(step, END_TICK - 2).plus(-label.width / 2, -0.8 if across is False else 0))


def _tick(step: int, last: int) -> float:
    if step in (0, last):
        return END_TICK
    return TEN_TICK if step % 10 == 0 else FIVE_TICK if step % 5 == 0 else ONE_TICK
