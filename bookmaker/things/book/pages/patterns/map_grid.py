"""Map pages: the graticule of a chart nobody has drawn yet, with invented coordinates."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from random import Random
from typing import Literal, NamedTuple

from pydantic import Field

from .....ground.drawing import Canvas, Colour, Pen
from .....ground.geometry import Path, Point, Rect, Transform
from .....ground.typefaces import TextLine, bundled, set_line
from .....shelf_file.fields.measures import Spacing
from .....shelf_file.fields.words import Flag, Ink
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import UnreadPart

__all__ = ["MapGrid", "MapPage"]

LABEL_SIZE = 1 / 34
"""Size of the figures (the em) as a share of the page's height."""

STEPS_MINUTES = (1, 5, 10, 15, 20, 30, 60, 120)
"""How many minutes of arc may lie between two lines; which, the book settles."""

HIGHEST = 70 * 60
"""Charts end at this latitude, north and south, in minutes of arc: no grid is square beyond."""

TALLEST = 20 * 60
"""A sheet spans at most so much latitude, unless its lines are too many even for the smallest step."""


class MapGrid(UnreadPart):
    """Meridians and parallels in a graduated frame; the sheets of a book join from page to page."""

    kind: Literal["map grid"] = "map grid"
    spacing: Spacing = Field(2.5, description="distance from line to line, such as 2.5 mm")
    ink: Ink = Field(Colour.from_hex("#7d8f8a"), description="colour of the grid")
    frame_ink: Ink = Field(Colour.from_hex("#2f3a3a"), description="colour of frame and figures")
    labels: Flag = Field(True, description="degrees beside the frame, yes or no")
    numbers: Flag = Field(False, description="page numbers, yes or no")

    def compose(self, frame: PageFrame) -> Inside:
        """Charts that join from page to page; where on the globe, the title of the book settles."""
        chart = _chart(self, frame)
        pages = tuple(MapPage(self, frame, number, chart) for number in range(1, frame.pages + 1))
        return Inside(numbered(pages, frame) if self.numbers else pages)


class Chart(NamedTuple):
    """Where the charts of a book begin: west edge and foot of the first, and the step, in minutes of arc."""

    west: int
    south: int
    step: int


@dataclass(frozen=True, slots=True)
class MapPage:
    """The graticule of one page."""

    entry: MapGrid
    frame: PageFrame
    number: int
    chart: Chart

    def draw(self, canvas: Canvas) -> None:
        """Draw the grid, then the frame, then its figures."""
        neat, line = self.neat_line(), self.frame.line()
        columns, rows = self.counts()
        xs = [neat.x + neat.width * i / columns for i in range(columns + 1)]
        ys = [neat.y + neat.height * i / rows for i in range(rows + 1)]
        grid = [(Point(x, neat.y), Point(x, neat.top)) for x in xs[1:-1]]
        grid += [(Point(neat.x, y), Point(neat.right, y)) for y in ys[1:-1]]
        if grid:
            canvas.stroke(Path.lines(grid), Pen(line, self.entry.ink))
        border = min(3 * line, neat.x / 2)
        for rect in _graduated(neat, columns, rows, border):
            canvas.fill(Path.rectangle(rect), self.entry.frame_ink)
        for outline in (neat, neat.grown(border)):
            canvas.stroke(Path.rectangle(outline), Pen(line, self.entry.frame_ink))
        if self.entry.labels:
            self._figures(canvas, xs, ys, border + 4 * line)

    def neat_line(self) -> Rect:
        """The inner frame: the page without a ninth of its shorter side all around."""
        return self.frame.page().grown(-min(self.frame.width, self.frame.height) / 9)

    def counts(self) -> tuple[int, int]:
        """How many columns and rows the grid has; their width is near the spacing asked for."""
        neat = self.neat_line()
        return (max(1, round(neat.width / self.entry.spacing)), max(1, round(neat.height / self.entry.spacing)))

    def meridians(self) -> Iterator[str]:
        """The longitudes of the lines, from left to right; the next page goes on where this one ends."""
        columns, _ = self.counts()
        sheet = self.frame.folio(self.number) - 1
        start = self.chart.west + (-sheet if self.frame.right_to_left else sheet) * columns * self.chart.step
        for column in range(columns + 1):
            east = (start + column * self.chart.step + 180 * 60) % (360 * 60) - 180 * 60
            yield _print_arc(east, "E", "W")

    def parallels(self) -> Iterator[str]:
        """The latitudes of the lines, from the foot up."""
        _, rows = self.counts()
        for row in range(rows + 1):
            yield _print_arc(self.chart.south + row * self.chart.step, "N", "S")

    def _figures(self, canvas: Canvas, xs: list[float], ys: list[float], away: float) -> None:
        size, face, neat = self.frame.height * LABEL_SIZE, bundled("sans"), self.neat_line()
        across = [set_line(face, size, text) for text in self.meridians()]
        along = [set_line(face, size, text) for text in self.parallels()]
        for i in _kept(across, xs):
            canvas.text(across[i], Point(xs[i] - across[i].width / 2, neat.top + away), self.entry.frame_ink)
        for i in _kept(along, ys):
            upright = Transform.quarter_turn().moved(neat.x - away, ys[i] - along[i].width / 2)
            with canvas.placed(upright):
                canvas.text(along[i], Point(0, 0), self.entry.frame_ink)


def _graduated(neat: Rect, columns: int, rows: int, border: float) -> Iterator[Rect]:
    """Every other stretch of the frame, filled."""
    outer = neat.grown(border)
    wide, high = neat.width / columns, neat.height / rows
    for column in range(0, columns, 2):
        for y in (outer.y, neat.top):
            yield Rect(neat.x + column * wide, y, wide, border)
    for row in range(0, rows, 2):
        for x in (outer.x, neat.right):
            yield Rect(x, neat.y + row * high, border, high)


def _kept(lines: list[TextLine], places: list[float]) -> range:
    """Which figures to print: all but those at the corners, or so many of them that they keep apart."""
    widest = max(line.width for line in lines) * 1.3
    return range(1, len(lines) - 1, max(1, math.ceil(widest / (places[1] - places[0]))))


def _print_arc(minutes: int, positive: str, negative: str) -> str:
    """An angle as charts print it.

    >>> _print_arc(-750, "E", "W")
    "12°30'W"
    """
    degrees, rest = divmod(abs(minutes), 60)
    side = positive if minutes > 0 else negative if minutes < 0 else ""
    return f"{degrees}°{rest:02}'{side}" if rest else f"{degrees}°{side}"


def _chart(entry: MapGrid, frame: PageFrame) -> Chart:
    _, rows = MapPage(entry, frame, 1, Chart(0, 0, 1)).counts()
    chance = Random(frame.book.seed)
    usable = [step for step in STEPS_MINUTES if rows * step <= TALLEST] or [STEPS_MINUTES[0]]
    step = usable[int(chance.random() * len(usable))]
    west = (2 * chance.random() - 1) * 180 * 60
    south = -HIGHEST + chance.random() * (2 * HIGHEST - rows * step)
    return Chart(round(west / step) * step, round(south / step) * step, step)
