"""Small repeats block-printed on paper: sprigs, stripes, dots, scales, trellis, waves."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

from .....ground.art import Filled, Repeated, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Point, Rect, Transform
from .fleurons import FLEURONS
from .shapes import gathered

__all__ = ["REPEATS", "printed_paper"]

REPEATS = ("sprigs", "stripes", "dots", "scales", "trellis", "waves")


def printed_paper(area: Rect, ink: Colour, chance: Random) -> Iterator[Art]:
    """One of the repeats over an area, in one ink."""
    name = REPEATS[int(chance.random() * len(REPEATS))]
    step = 1.1 + 0.9 * chance.random()
    if name == "stripes":
        yield from _stripes(area, ink, step)
    elif name in ("scales", "waves"):
        yield from _rows(area, ink, step, name)
    elif name == "trellis":
        yield from _trellis(area, ink, step * 1.3)
    else:
        motif = tuple(FLEURONS.values())[int(chance.random() * len(FLEURONS))]
        size = step * 0.85
        drawn = motif if name == "sprigs" else Path.circle(Point(0, 0), 0.2)
        shape = Filled(drawn.transformed(Transform.stretch(size, size)), ink)
        yield Repeated((shape,), tuple(_in_quincunx(area, step)))


def _in_quincunx(area: Rect, step: float) -> Iterator[Point]:
    row = 0
    y = area.y
    while y < area.top + step:
        x = area.x + step / 2 * (row % 2)
        while x < area.right + step:
            yield Point(x, y)
            x += step
        y += step * 0.866
        row += 1


def _stripes(area: Rect, ink: Colour, step: float) -> Iterator[Art]:
    x = area.x
    while x < area.right:
        yield Filled.box(Rect(x, area.y, step * 0.34, area.height), ink)
        yield Filled.box(Rect(x + step * 0.6, area.y, step * 0.07, area.height), ink)
        yield Filled.box(Rect(x + step * 0.74, area.y, step * 0.07, area.height), ink)
        x += step


def _rows(area: Rect, ink: Colour, step: float, name: str) -> Iterator[Art]:
    """One row of arcs, repeated; every other row of scales half a step aside."""
    count = int(area.width / step) + 3
    commands: list[tuple[str | float, ...]] = [("M", -step, 0.0)]
    for number in range(count):
        x = step * (number - 1)
        if name == "scales":
            commands.append(("C", x + step * 0.05, step * 0.62, x + step * 0.95, step * 0.62, x + step, 0.0))
        else:
            commands.append(("C", x + step * 0.36, step * 0.6, x + step * 0.64, -step * 0.6, x + step, 0.0))
    rise = step * (0.5 if name == "scales" else 0.42)
    rows = int(area.height / rise) + 2
    aside = step / 2 if name == "scales" else 0.0
    places = tuple(Point(area.x + aside * (row % 2), area.y + rise * row) for row in range(rows))
    yield Repeated((Stroked(Path(tuple(commands)), Pen(step * 0.075, ink)),), places)


def _trellis(area: Rect, ink: Colour, step: float) -> Iterator[Art]:
    lines = []
    x = area.x - area.height
    while x < area.right:
        lines.append(Path.line(Point(x, area.y), Point(x + area.height, area.top)))
        lines.append(Path.line(Point(x, area.top), Point(x + area.height, area.y)))
        x += step
    yield Stroked(gathered(lines), Pen(step * 0.05, ink))
    dot = Filled(Path.circle(Point(0, 0), step * 0.1), ink)
    columns, rows = int(area.width / step) + 2, int(area.height / step) + 2
    first_x = area.x - area.height % step
    middles = [Point(first_x + step * (i + 0.5), area.y + step * j) for i in range(columns + 1) for j in range(rows)]
    yield Repeated((dot,), tuple(middles))
