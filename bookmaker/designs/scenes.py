"""Small landscapes in flat colours, as blocked on pictorial covers: sea, hills or a town under a sun or moon."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi, sin
from random import Random

from ..drawing import Art, Colour
from ..geometry import Path, Point, Rect, Transform, polygon
from .devices import DEVICES
from .ornaments import petal
from .shapes import Shape, block, gathered
from .tones import darker, lighter, mixed

__all__ = ["scene"]

Commands = list[tuple[str | float, ...]]


def scene(area: Rect, focus: Rect, sky: Colour, land: Colour, light: Colour, chance: Random) -> Iterator[Art]:
    """A landscape over an area; what there is to look at stands in `focus`, the front.

    The upper half stays sky, for the titling.
    """
    yield block(area, sky)
    low, high = focus.y, focus.height
    disc = Point(focus.x + focus.width * (0.3 + 0.4 * chance.random()), low + high * 0.44)
    radius = min(focus.width, high) * 0.17
    yield Shape(Path.circle(disc, radius * 1.5), mixed(sky, light, 0.18))
    yield Shape(Path.circle(disc, radius * 1.22), mixed(sky, light, 0.4))
    yield Shape(Path.circle(disc, radius), light)
    kind = chance.random()
    if kind < 0.45:
        yield from _sea(area, focus, sky, land, light, chance)
    elif kind < 0.8:
        yield from _hills(area, focus, sky, land, chance)
    else:
        yield from _town(area, focus, sky, land, light, chance)


def _ridge(area: Rect, base: float, rise: float, length: float, chance: Random) -> Path:
    """A rolling skyline from edge to edge, filled down to the foot."""
    waves = [(length * factor, chance.random() * 2 * pi, rise / weight) for factor, weight in ((1, 1), (0.43, 2.4))]
    steps = max(12, int(area.width / 0.4))
    points = [
        Point(x, base + sum(high * sin(2 * pi * x / wave + turn) for wave, turn, high in waves))
        for x in (area.x + area.width * step / steps for step in range(steps + 1))
    ]
    return polygon([Point(area.x, area.y), *points, Point(area.right, area.y)])


def _hills(area: Rect, focus: Rect, sky: Colour, land: Colour, chance: Random) -> Iterator[Art]:
    low, high = focus.y, focus.height
    for number, share in enumerate((0.4, 0.31, 0.22, 0.12)):
        tone = mixed(mixed(sky, land, 0.3 + 0.2 * number), land, 0.25 * number)
        base = low + high * share
        yield Shape(_ridge(area, base, high * 0.05, focus.width * (0.9 - 0.12 * number), chance), tone)
        if number in (1, 2):
            yield Shape(_trees(area, base, high * (0.05 + 0.025 * number), chance), darker(tone, 0.28))


def _trees(area: Rect, base: float, size: float, chance: Random) -> Path:
    trees = []
    x = area.x + size * chance.random()
    while x < area.right:
        tall = size * (0.7 + 0.6 * chance.random())
        tree = petal(1.0, 0.46).transformed(Transform.stretch(tall, tall).moved(x, base - tall * 0.3))
        trees.append(tree)
        x += size * (0.5 + 2.6 * chance.random())
    return gathered(trees)


def _sea(
    area: Rect, focus: Rect, sky: Colour, land: Colour, light: Colour, chance: Random
) -> Iterator[Art]:
    low, high = focus.y, focus.height
    horizon = low + high * 0.38
    yield block(Rect(area.x, area.y, area.width, horizon - area.y), mixed(sky, land, 0.55))
    boat = DEVICES["boat"].transformed(Transform.stretch(high * 0.3, high * 0.3))
    middle = focus.x + focus.width * (0.35 + 0.3 * chance.random())
    yield Shape(boat.transformed(Transform.move(middle, horizon - high * 0.01)), mixed(land, light, 0.85))
    for number in range(4):
        base = low + high * (0.27 - 0.085 * number)
        tone = mixed(mixed(sky, land, 0.7), land, 0.33 * number)
        yield Shape(_swell(area, base, high * 0.045, focus.width * (0.3 + 0.05 * number), chance), tone)


def _swell(area: Rect, base: float, rise: float, length: float, chance: Random) -> Path:
    """Waves with pointed crests."""
    commands: Commands = [("M", area.x, area.y)]
    x = area.x - length * chance.random()
    commands.append(("L", x, base))
    while x < area.right:
        trough = base - rise * 0.6
        commands.append(("C", x + length * 0.3, trough, x + length * 0.7, trough, x + length, base + rise))
        commands.append(("C", x + length, base + rise * 0.4, x + length * 1.04, base, x + length * 1.08, base))
        x += length * 1.08
    return Path((*commands, ("L", area.right + length, area.y), ("Z",)))


def _town(
    area: Rect, focus: Rect, sky: Colour, land: Colour, light: Colour, chance: Random
) -> Iterator[Art]:
    low, high = focus.y, focus.height
    for number in range(3):
        tone = mixed(sky, land, 0.4 + 0.28 * number)
        roofs, windows = _houses(area, low + high * (0.26 - 0.1 * number), high * (0.19 - 0.02 * number), chance)
        yield Shape(roofs, tone)
        yield Shape(windows, mixed(light, tone, 0.15) if number else lighter(tone, 0.2))


def _houses(area: Rect, base: float, size: float, chance: Random) -> tuple[Path, Path]:
    roofs, windows = [], []
    x = area.x
    while x < area.right:
        wide, tall = size * (0.45 + 0.4 * chance.random()), size * (0.45 + 0.5 * chance.random())
        gable = tall + wide * (0.3 + 0.5 * chance.random())
        roofs.append(polygon((Point(x, area.y), Point(x, base + tall), Point(x + wide / 2, base + gable),
                              Point(x + wide, base + tall), Point(x + wide, area.y))))  # fmt: skip
        for column in (0.28, 0.62):
            if chance.random() < 0.7:
                windows.append(Path.rectangle(Rect(x + wide * column, base + tall * 0.55, wide * 0.13, wide * 0.2)))
        x += wide
    return gathered(roofs), gathered(windows)
