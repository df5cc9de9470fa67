"""The ruler page: what stands where on its front and on its reverse."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path as FilePath
from typing import BinaryIO

from ..ground.art import Stroked
from ..ground.drawing import Art, Pen
from ..ground.geometry import Path, Point, Size, Transform
from ..ground.problems import CommandError, Problem
from ..ground.typefaces import bundled, set_line
from ..ground.units import print_mm
from ..paper.papers import SheetFormat
from ..paper.printer_entry import RULE_LENGTH, SKEW_BASE, PrinterEntry
from ..paper.reverse import correction
from ..paper.stock import calibration
from ..sheets.marks import blot, note
from ..writers.pdf import PdfFile
from .ladders import fold_strip, gratings, lines, type_sizes
from .rules import BETWEEN, EDGE, rules, square, stairs

__all__ = ["write_ruler"]

LOWER = 75.0
"""What the ladders take below the rules, in mm; the smallest of the usual sheets is letter."""

PEN, FINE, BOLD = Pen(0.12), Pen(0.06), Pen(0.25)
GRID = 10
"""The grid on the reverse reaches so many mm each way."""

LINE = 4.4
"""From line to line of the words, in mm: five lines stay clear of the crosses below them."""

ADVICE = (
    "Print this page at 100 %, no scaling, on the paper and through the tray you will use,",
    "on both sides if your printer can. Then run: bookmaker ruler --measured PROFILE.yaml",
    "It asks for what you measure, in mm, to a tenth or better. Or write into the shelf file:",
    "printer: {rules: {across: 149.6 mm, up: 150.2 mm}}",
    "A true rule measures 150 mm between the outer edges of its long end ticks.",
)
PROOF = (
    "Proof of {name}.",
    "The rules must measure 150 mm now and both diagonals 141.4 mm.",
    "If they do not, measure a plain ruler page again.",
)
REVERSE = (
    "Reverse of the ruler page. Prick a pin through the three dots on the front.",
    "Here the holes show how far the reverse is off. In the middle: read how far the hole",
    "lies to the right of the middle of its grid, and how far up, in mm, to a tenth by eye.",
    "Above and below: how much farther to the right it lies on the upper grid than on the",
    "lower one. Few sheets go in alike: take the mean of three of them.",
)


def write_ruler(to: FilePath | BinaryIO, sheet: SheetFormat, printer: PrinterEntry | None = None) -> None:
    """Write the page for a sheet format, front and reverse; corrected by the profile of a printer to prove it.

    Raises:
        CommandError: the sheet is too small for the page.
    """
    size = Size(*sheet.size)
    needed = Size(RULE_LENGTH + 2 * EDGE, RULE_LENGTH + 2 * EDGE + BETWEEN + LOWER)
    if size.width < needed.width or size.height < needed.height:
        raise CommandError(
            (
                Problem(
                    f"the rules of {print_mm(RULE_LENGTH)} do not fit on {sheet.name}",
                    f"use a sheet of at least {print_mm(needed.width)} × {print_mm(needed.height)}, such as A4",
                ),
            )
        )
    stretched = calibration(printer, sheet) if printer else Transform()
    moved = correction(printer, size) if printer else Transform()
    words = [line.format(name=printer.name or printer.profile) for line in PROOF] if printer else ADVICE
    with PdfFile(to, title="Ruler page") as pdf:
        for page, to_page in ((_front(size, words), stretched), (_reverse(size), moved.then(stretched))):
            with pdf.page(size) as canvas, canvas.placed(to_page):
                for art in page:
                    art.draw(canvas)


def _front(size: Size, words: Sequence[str]) -> Iterator[Art]:
    corner = Point(EDGE, size.height - EDGE - RULE_LENGTH)
    yield from rules(corner)
    yield from square(corner.plus(32, 20))
    yield from _dots(size)
    yield from _text(words, corner.plus(28, RULE_LENGTH - 6))
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


def _reverse(size: Size) -> Iterator[Art]:
    """Grids of millimetres: in the middle of the sheet, where the printer's stretch is nil, above it and below it."""
    for middle in _pricked(size):
        yield from _grid(middle)
    yield from _text(REVERSE, Point(size.width / 2 - 70, size.height / 2 + 40))


def _grid(middle: Point) -> Iterator[Art]:
    for step in range(-GRID, GRID + 1):
        pen = BOLD if step == 0 else PEN if step % 5 == 0 else FINE
        reach = GRID + (2 if step % 5 == 0 else 0)
        yield Stroked.line(middle.plus(step, -reach), middle.plus(step, reach), pen)
        yield Stroked.line(middle.plus(-reach, step), middle.plus(reach, step), pen)
        if step % 5 == 0:
            label = set_line(bundled("sans"), 2.0, f"{step}")
            yield note(label, middle.plus(step - label.width / 2, -reach - 2.2))
            yield note(label, middle.plus(-reach - 0.6 - label.width, step - 0.7))
    for words, at in (("right", middle.plus(GRID + 4, -0.9)), ("up", middle.plus(-2, GRID + 4))):
        yield note(set_line(bundled("sans bold"), 2.8, words), at)


def _pricked(size: Size) -> tuple[Point, Point, Point]:
    """The middle of the sheet, the upper hole and the lower one."""
    middle = Point(size.width / 2, size.height / 2)
    return middle, middle.plus(0, SKEW_BASE / 2), middle.plus(0, -SKEW_BASE / 2)


def _dots(size: Size) -> Iterator[Art]:
    """The dots to prick through, and lines that lead to each."""
    for at, words in zip(_pricked(size), ("prick here for the reverse", "prick here", "prick here"), strict=True):
        yield blot(Path.circle(at, 0.2))
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
            yield Stroked.line(at.plus(dx, dy), at.plus(4 * dx, 4 * dy), PEN)
        yield note(set_line(bundled("sans"), 2.2, words), at.plus(5, -0.8))


def _text(words: Sequence[str], corner: Point) -> Iterator[Art]:
    for row, line in enumerate(words):
        yield note(set_line(bundled("sans"), 3.0, line), corner.plus(0, -LINE * row))
