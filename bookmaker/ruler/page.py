"""The ruler page: what stands where on its front and on its reverse."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import sqrt
from pathlib import Path as FilePath
from typing import BinaryIO

from ..ground.art import Stroked
from ..ground.drawing import Art, Pen
from ..ground.geometry import Path, Point, Size, Transform
from ..ground.problems import CommandError, Problem
from ..ground.told import in_units, print_mm
from ..ground.typefaces import bundled, set_line
from ..paper.papers import SheetFormat
from ..paper.printer_entry import SKEW_BASE, PrinterEntry
from ..paper.reverse import correction
from ..paper.stock import calibration
from ..sheets.marks import blot, note
from ..writers.pdf import PdfFile
from .ladders import fold_strip, gratings, lines, type_sizes, white_wedge
from .rules import BETWEEN, EDGE, division, rules, square, stairs

__all__ = ["write_ruler"]

LOWER = 75.0
"""What the ladders take below the rules, in mm; the smallest of the usual sheets is letter."""

PEN, FINE, BOLD = Pen(0.12), Pen(0.06), Pen(0.25)
LINE = 4.4
"""From line to line of the words, in mm: five lines stay clear of the crosses below them."""

ADVICE = (
    "Print this page at 100 %, no scaling, on the paper and through the tray you will use,",
    "on both sides if your printer can. Then run: bookmaker ruler --measured PROFILE.yaml",
    "It asks for what you measure, {fine}. Or write into the shelf file:",
    "printer: {{rules: {{{drawn}across: {short}, up: {long}}}}}",
    "A true rule measures {rule} between the outer edges of its long end ticks.",
)
PROOF = (
    "Proof of {name}.",
    "The rules must measure {rule} now and both diagonals {diagonal}.",
    "If they do not, measure a plain ruler page again.",
)
REVERSE = (
    "Reverse of the ruler page. Prick a pin through the three dots on the front.",
    "Here the holes show how far the reverse is off. In the middle: read how far the hole",
    "lies to the right of the middle of its grid, and how far up, {by_eye}.",
    "Above and below: how much farther to the right it lies on the upper grid than on the",
    "lower one. Few sheets go in alike: take the mean of three of them.",
)


def write_ruler(to: FilePath | BinaryIO, sheet: SheetFormat, printer: PrinterEntry | None = None) -> None:
    """Write the page for a sheet format, front and reverse; corrected by the profile of a printer to prove it.

    Raises:
        CommandError: the sheet is too small for the page.
    """
    size = Size(*sheet.size)
    rule = division().rule
    needed = Size(rule + 2 * EDGE, rule + 2 * EDGE + BETWEEN + LOWER)
    if size.width < needed.width or size.height < needed.height:
        raise CommandError(
            (
                Problem(
                    f"the rules of {print_mm(rule)} do not fit on {sheet.name}",
                    f"use a sheet of at least {print_mm(needed.width)} × {print_mm(needed.height)}, such as A4",
                ),
            )
        )
    stretched = calibration(printer, sheet) if printer else Transform()
    moved = correction(printer, size) if printer else Transform()
    words = _words(PROOF, str(printer.name or printer.profile)) if printer else _words(ADVICE)
    with PdfFile(to, title="Ruler page") as pdf:
        for page, to_page in ((_front(size, words), stretched), (_reverse(size), moved.then(stretched))):
            with pdf.page(size) as canvas, canvas.placed(to_page):
                for art in page:
                    art.draw(canvas)


def _words(lines: Sequence[str], name: str = "") -> Sequence[str]:
    """What stands on the page, with the lengths in it."""
    by = division()
    said = {
        "name": name,
        "fine": in_units("in mm, to a tenth or better", "in inches, to five thousandths or better"),
        "by_eye": in_units("in mm, to a tenth by eye", "in inches, to a hundredth by eye"),
        "drawn": in_units("", f"drawn: {print_mm(by.rule)}, "),
        "short": in_units("149.6 mm", "5.98 in"),
        "long": in_units("150.2 mm", "6.01 in"),
        "rule": print_mm(by.rule),
        "diagonal": print_mm(by.square * sqrt(2), 1),
    }
    return [line.format(**said) for line in lines]


def _front(size: Size, words: Sequence[str]) -> Iterator[Art]:
    corner = Point(EDGE, size.height - EDGE - division().rule)
    yield from rules(corner)
    yield from square(corner.plus(32, 20))
    yield from _wedge(corner.plus(37, 60))
    yield from _dots(size)
    yield from _text(words, corner.plus(28, division().rule - 6))
    below = corner.y - BETWEEN
    yield from stairs(size, below - 36)
    for title, x in (("smallest type you can read", 20.0), ("thinnest line", 128.0)):
        yield note(set_line(bundled("sans bold"), 2.6, title), Point(x, below - 6))
    yield from type_sizes(Point(20, below - 11))
    yield from lines(Point(128, below - 11))
    foot = below - 42
    yield note(set_line(bundled("sans bold"), 2.6, "finest lines that stay apart"), Point(20, foot))
    yield from gratings(Point(20, foot - 3.5))
    yield note(set_line(bundled("sans bold"), 2.6, "fold and cut: the panels must lie flush"), Point(100, foot))
    yield from fold_strip(Point(100, foot - 21))
    edges = "white edge: on each side, the first line that is printed whole"
    yield note(set_line(bundled("sans"), 2.2, edges), Point(20, foot - 20))


def _wedge(corner: Point) -> Iterator[Art]:
    """The white wedge in the empty half of the square, and what is to be read on it."""
    for row, words in enumerate(("ink: through a lens, the mark from", "which on the white line is unbroken")):
        yield note(set_line(bundled("sans"), 2.2, words), corner.plus(0, 15 - 3.2 * row))
    yield from white_wedge(corner)


def _reverse(size: Size) -> Iterator[Art]:
    """Grids: in the middle of the sheet, where the printer's stretch is nil, above it and below it."""
    for middle in _pricked(size):
        yield from _grid(middle)
    yield from _text(_words(REVERSE), Point(size.width / 2 - 70, size.height / 2 + 40))


def _grid(middle: Point) -> Iterator[Art]:
    by = division()
    far = by.reach * by.step
    for step in range(-by.reach, by.reach + 1):
        pen = BOLD if step == 0 else PEN if step % 5 == 0 else FINE
        off, reach = step * by.step, far + (2 if step % 5 == 0 else 0)
        yield Stroked.line(middle.plus(off, -reach), middle.plus(off, reach), pen)
        yield Stroked.line(middle.plus(-reach, off), middle.plus(reach, off), pen)
        if step % 5 == 0:
            label = set_line(bundled("sans"), 2.0, by.number(step))
            yield note(label, middle.plus(off - label.width / 2, -reach - 2.2))
            yield note(label, middle.plus(-reach - 0.6 - label.width, off - 0.7))
    for words, at in (("right", middle.plus(far + 4, -0.9)), ("up", middle.plus(-2, far + 4))):
        yield note(set_line(bundled("sans bold"), 2.8, words), at)


def _pricked(size: Size) -> tuple[Point, Point, Point]:
    """The middle of the sheet, the upper hole and the lower one."""
    middle = Point(size.width / 2, size.height / 2)
    return middle, middle.plus(0, SKEW_BASE / 2), middle.plus(0, -SKEW_BASE / 2)


FRONT_ONLY, REVERSE_TOO = ("prick here",), ("prick here", "for the reverse")


def _dots(size: Size) -> Iterator[Art]:
    """The dots to prick through, and lines that lead to each."""
    for at, words in zip(_pricked(size), (REVERSE_TOO, FRONT_ONLY, FRONT_ONLY), strict=True):
        yield blot(Path.circle(at, 0.2))
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            yield Stroked.line(at.plus(dx, dy), at.plus(4 * dx, 4 * dy), PEN)
        for row, line in enumerate(words):
            yield note(set_line(bundled("sans"), 2.2, line), at.plus(5, -0.8 - LINE * row))


def _text(words: Sequence[str], corner: Point) -> Iterator[Art]:
    for row, line in enumerate(words):
        yield note(set_line(bundled("sans"), 3.0, line), corner.plus(0, -LINE * row))
