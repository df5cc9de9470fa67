"""What eye, printer and hand can do: ladders of type and lines, gratings, a white wedge, a strip to fold and cut."""

from __future__ import annotations

import math
from collections.abc import Iterator

from ..ground.art import Filled, Group, Stroked, Written
from ..ground.drawing import BLACK, Art, Pen
from ..ground.geometry import Point, Transform, polygon
from ..ground.thin import print_caliper, print_um
from ..ground.told import Units, units_told
from ..ground.typefaces import bundled, set_line
from ..ground.units import MM_PER_INCH, from_pt
from ..sheets.flat import FoldKind
from ..sheets.marks import CUT, FOLD_PENS, note

__all__ = ["GRATINGS", "WIDEST_GAP", "fold_strip", "gratings", "lines", "type_sizes", "white_wedge"]

SIZES_PT = (4.0, 3.0, 2.5, 2.2, 1.9, 1.6, 1.3, 1.0)
SENTENCE = "The keeper trimmed the lamp at dusk and wrote: wind north, sea quiet, one sail."
WIDTHS = (0.3, 0.2, 0.15, 0.1, 0.07, 0.05, 0.03, 0.02)
"""Of type in points, of lines in mm."""

GRATINGS = (150, 300, 600, 1200)
"""Dots per inch; each grating has lines and gaps one dot wide."""

PATCH = 8.0
PANEL, STRIP_HEIGHT, PANELS = 12.0, 18.0, 4
LEADING = 3.0


WIDEST_GAP = 0.2
"""The white wedge is so wide at its open end, in mm; on a page in inches 8 mil."""

GAP_LENGTH, BAR = 48.0, 3.0
"""Length of the wedge, and how high the black bars on either side are, in mm: higher than any ink spreads."""

ACROSS_DOTS = math.radians(7)
"""The wedge is turned by so much, so that its edges meet the printer's rows of dots in all ways."""

GAPS = 5
"""Marks stand at so many equal steps along the wedge."""


def white_wedge(corner: Point) -> Iterator[Art]:
    """A white wedge between two black bars, to the right from `corner`: ink spreads from both sides and closes it.

    Marks say how wide it is drawn.
    """
    lower = polygon((Point(0, -BAR), Point(GAP_LENGTH, -BAR), Point(GAP_LENGTH, 0), Point(0, 0)))
    upper = polygon((Point(0, 0), Point(GAP_LENGTH, _widest()), Point(GAP_LENGTH, BAR), Point(0, BAR)))
    marks = [art for step in range(GAPS + 1) for art in _gap_mark(step)]
    cos, sin = math.cos(ACROSS_DOTS), math.sin(ACROSS_DOTS)
    placed = Transform(cos, sin, -sin, cos, *corner)
    yield Group((Filled(lower, BLACK), Filled(upper, BLACK), *marks), placed)


def _gap_mark(step: int) -> Iterator[Art]:
    x = GAP_LENGTH * step / GAPS
    yield Stroked.line(Point(x, -BAR - 0.4), Point(x, -BAR - 1.6), Pen(0.12))
    label = set_line(bundled("sans"), 2.0, print_um(_widest() * step / GAPS))
    yield note(label, Point(x - label.width / 2, -BAR - 4))


def _widest() -> float:
    return WIDEST_GAP if units_told() is Units.MILLIMETRES else 0.008 * MM_PER_INCH


def type_sizes(corner: Point) -> Iterator[Art]:
    """One sentence in smaller and smaller type, downwards from `corner`."""
    face = bundled("text")
    for row, size_pt in enumerate(SIZES_PT):
        y = corner.y - row * LEADING
        yield _label(f"{size_pt:g} pt", Point(corner.x, y))
        yield note(set_line(face, from_pt(size_pt), SENTENCE), Point(corner.x + 9, y))


def lines(corner: Point) -> Iterator[Art]:
    """Thinner and thinner lines, downwards from `corner`."""
    for row, width in enumerate(WIDTHS):
        y = corner.y - row * LEADING
        named = print_caliper(width)
        yield _label(named, Point(corner.x, y))
        yield Stroked.line(Point(corner.x + 10, y + 0.6), Point(corner.x + 30, y + 0.6), Pen(width))


def gratings(corner: Point) -> Iterator[Art]:
    """Patches of upright lines, to the right from `corner`; the finest that is not plain grey shows the resolution."""
    for column, dpi in enumerate(GRATINGS):
        dot = MM_PER_INCH / dpi
        left = corner.x + column * (PATCH + 5)
        for number in range(int(PATCH / (2 * dot))):
            x = left + (2 * number + 0.5) * dot
            yield Stroked.line(Point(x, corner.y), Point(x, corner.y - PATCH), Pen(dot, BLACK))
        yield _label(f"{dpi} dpi", Point(left, corner.y - PATCH - 3))


def fold_strip(corner: Point) -> Iterator[Art]:
    """A strip of four panels with its folds, its lower left corner at `corner`; it is to be cut out and folded."""
    width = PANEL * PANELS
    for y in (0.0, STRIP_HEIGHT):
        yield Stroked.line(corner.plus(0, y), corner.plus(width, y), CUT)
    for x in (0.0, width):
        yield Stroked.line(corner.plus(x, 0), corner.plus(x, STRIP_HEIGHT), CUT)
    for fold in range(1, PANELS):
        pen = FOLD_PENS[FoldKind.VALLEY if fold % 2 else FoldKind.MOUNTAIN]
        yield Stroked.line(corner.plus(fold * PANEL, 0), corner.plus(fold * PANEL, STRIP_HEIGHT), pen)


def _label(words: str, at: Point) -> Written:
    return note(set_line(bundled("sans"), 2.0, words), at)
