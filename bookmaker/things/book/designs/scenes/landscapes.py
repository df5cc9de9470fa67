"""Landscapes in a few flat inks: coast, hills, mountains over a lake, ploughed fields, a wood of firs."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor

from .....ground.art import Filled, Stroked
from .....ground.drawing import Colour, Pen
from .....ground.geometry import Path, Point, Rect, Transform, polygon
from ..ornament.devices import DEVICES
from ..ornament.ornaments import petal
from ..ornament.shapes import Commands, gathered, snapped
from ..tones import darker, lighter, mixed
from .stage import Height, Inks, Mark, Stage, along, clouds, ground, layered, sky, skyline, sun, water

__all__ = ["coast", "fields", "firs", "hills", "mountains"]


def coast(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Headlands out of a sea under a low sun, boats, a shore in front."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    yield from sun(stage, inks, 0.42, 0.075, inks.accent)
    horizon = 0.36
    for number, (base, rise) in enumerate(((0.35, 0.05), (0.315, 0.085))):
        line = skyline(stage, base, rise, 1.5 - 0.4 * number, 3 + number)
        sea = stage.level(horizon - 0.02)
        yield ground(stage, lambda x, line=line, sea=sea: max(sea, line(x)), layered(inks, 0.1 + 0.25 * number))  # type: ignore[misc]
    yield from water(stage, horizon, inks, 10)
    boats, hulls = [], DEVICES["boat"]
    for x, chance in along(stage, stage.high * 0.55, 30):
        size = stage.high * (0.06 + 0.09 * chance.random())
        y = stage.level(horizon - 0.02) - size * (0.2 + 0.6 * chance.random())
        boats.append(hulls.transformed(Transform.stretch(size, size).moved(x, y)))
    yield Filled(gathered(boats), mixed(inks.light, inks.near, 0.06))
    shore = skyline(stage, 0.05, 0.045, 0.9, 5)
    yield ground(stage, shore, darker(inks.near, 0.25))
    yield _grass(stage, shore, inks)


def _grass(stage: Stage, shore: Height, inks: Inks) -> Mark:
    blades = []
    for x, chance in along(stage, stage.high * 0.028, 6):
        tall = stage.high * (0.03 + 0.05 * chance.random())
        blade = petal(1.0, 0.12, chance.gauss(0, 14)).transformed(Transform.stretch(tall, tall))
        blades.append(blade.transformed(Transform.move(x, shore(x) - tall * 0.15)))
    return Filled(snapped(gathered(blades).commands), darker(inks.near, 0.25))


def hills(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Rolling country one ridge behind another, hedges and round trees, birds over it."""
    yield from sky(stage, inks)
    yield from sun(stage, inks, 0.44, 0.085)
    for number, (base, rise) in enumerate(((0.36, 0.035), (0.29, 0.045), (0.2, 0.05), (0.08, 0.05))):
        line = skyline(stage, base, rise, 1.25 - 0.2 * number, 3 + number)
        tone = layered(inks, number / 3)
        yield ground(stage, line, tone)
        if number:
            size = stage.high * (0.018 + 0.017 * number)
            crowns: Commands = []
            for x, chance in along(stage, size * 2.6, 40 + number):
                if chance.random() < 0.5:
                    big = size * (0.6 + 0.6 * chance.random())
                    crowns += Path.circle(Point(x, line(x) + big * 0.75), big * 0.7).commands
                    crowns += Path.circle(Point(x + big * 0.6, line(x) + big * 0.45), big * 0.5).commands
                    crowns += Path.rectangle(Rect(x - big * 0.08, line(x) - big * 0.3, big * 0.16, big)).commands
            if crowns:
                yield Filled(snapped(crowns), mixed(tone, inks.near, 0.55) if number < 3 else darker(inks.near, 0.35))
        if number == 2:
            yield _hedges(stage, line, lighter(tone, 0.16))
    yield _birds(stage, inks)


def _hedges(stage: Stage, line: Height, tone: Colour) -> Mark:
    """Lines of field edges that fall down a slope."""
    edges: Commands = []
    for x, chance in along(stage, stage.high * 0.16, 61):
        slant = stage.high * (0.05 + 0.08 * chance.random()) * (1 if chance.random() < 0.5 else -1)
        top = line(x)
        edges += [("M", x, top), ("C", x + slant * 0.2, top - stage.high * 0.03, x + slant * 0.6,
                                  top - stage.high * 0.06, x + slant, top - stage.high * 0.2)]  # fmt: skip
    return Stroked(snapped(edges), Pen(stage.high * 0.005, tone))


def _birds(stage: Stage, inks: Inks) -> Mark:
    wings: Commands = []
    for x, chance in along(stage, stage.high * 0.3, 70):
        for _ in range(2):
            size = stage.high * (0.008 + 0.01 * chance.random())
            at, y = x + stage.high * 0.05 * chance.random(), stage.level(stage.clear - 0.02 - 0.07 * chance.random())
            wings.append(("M", at - size, y + size * 0.5))
            wings.append(("C", at - size * 0.5, y + size * 0.6, at, y + size * 0.3, at, y))
            wings.append(("C", at, y + size * 0.3, at + size * 0.5, y + size * 0.6, at + size, y + size * 0.5))
    return Stroked(snapped(wings), Pen(stage.high * 0.0045, darker(inks.near, 0.2)))


def mountains(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Peaks with snow on their lit side, a lake, firs in front."""
    yield from sky(stage, inks)
    yield from sun(stage, inks, 0.47, 0.05, inks.accent)
    for number, (foot, high, wide) in enumerate(((0.24, 0.27, 0.42), (0.22, 0.17, 0.27))):
        slopes, shades, snow = [], [], []
        for x, chance in along(stage, stage.high * wide, 3 + number):
            grown = 0.55 + 0.5 * chance.random()
            tall, half = stage.high * high * grown, stage.high * wide * (0.3 + 0.5 * grown)
            base = stage.level(foot)
            top = Point(x, base + tall)
            knee = Point(x + half * 0.12, base + tall * 0.45)
            slopes.append(polygon([Point(x - half, base), top, Point(x + half, base)]))
            shades.append(polygon([top, knee, Point(x - half * 0.1, base), Point(x + half, base)]))
            cap = tall * 0.3
            side = half * cap / tall
            teeth = [Point(x - side * far, top.y - cap * deep) for far, deep in ((1, 1), (0.45, 0.72), (0.1, 1.15))]
            snow.append(polygon([top, *teeth, Point(x + half * 0.05, top.y - cap * 0.6)]))
        tone = layered(inks, 0.1 + 0.35 * number)
        yield Filled(gathered(slopes), lighter(tone, 0.1))
        yield Filled(gathered(shades), darker(tone, 0.16))
        yield Filled(gathered(snow), inks.light)
    yield from water(stage, 0.235, inks, 10)
    yield ground(stage, skyline(stage, 0.03, 0.02, 1.0, 7), darker(inks.near, 0.3))
    yield Filled(_fir_row(stage, skyline(stage, 0.02, 0.02, 1.0, 7), 0.09, 8), darker(inks.near, 0.3))


def _fir_row(stage: Stage, line: Height, tall: float, salt: int) -> Path:
    """Firs in a row: tiers of drooping boughs."""
    trees: Commands = []
    for x, chance in along(stage, stage.high * tall * 0.34, salt):
        high = stage.high * tall * (0.55 + 0.75 * chance.random())
        foot = line(x) - high * 0.06
        half = high * 0.2
        right = [(half * (1 - step / 4), high * (0.1 + 0.22 * step)) for step in range(4)]
        points = [Point(x - half * 0.15, foot)]
        for wide, up in right:
            points += [Point(x - wide, foot + up), Point(x - wide * 0.5, foot + up + high * 0.13)]
        points.append(Point(x, foot + high))
        for wide, up in reversed(right):
            points += [Point(x + wide * 0.5, foot + up + high * 0.13), Point(x + wide, foot + up)]
        trees += polygon([*points, Point(x + half * 0.15, foot)]).commands
    return snapped(trees)


def firs(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A wood: rows of firs paler into the distance, mist between them."""
    yield from sky(stage, inks)
    yield from sun(stage, inks, 0.47, 0.07)
    for number, (base, tall) in enumerate(((0.27, 0.13), (0.19, 0.17), (0.08, 0.23), (-0.06, 0.27))):
        line = skyline(stage, base, 0.025, 1.1, 3 + number)
        tone = layered(inks, (number + 0.3) / 3.3)
        yield Filled(_fir_row(stage, line, tall, 20 + number), tone)
        yield ground(stage, line, tone)
        if number < 3:
            mist = skyline(stage, base - 0.06, 0.012, 0.7, 30 + number)
            yield ground(stage, mist, mixed(tone, inks.light, 0.16))


def fields(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Furrows that run together at a farm on the horizon, poplars along the road."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    yield from sun(stage, inks, 0.46, 0.07, inks.accent)
    yield ground(stage, skyline(stage, 0.34, 0.02, 1.4, 3), layered(inks, 0.1))
    horizon = stage.level(0.32)
    area = stage.area
    yield Filled.box(Rect(area.x, area.y, area.width, horizon - area.y), layered(inks, 0.55))
    period = stage.high * 1.4
    furrows = []
    first, last = (floor((x - stage.middle) / period) for x in (area.x, area.right))
    for place in range(first, last + 2):
        centre = stage.middle + period * place
        edges = [centre + period * 0.5 * side for side in (-1, 1)]
        for number in range(-9, 10):
            foot = [centre + period * 0.16 * (number + part) for part in (0.0, 0.5)]
            top = [centre + period * 0.012 * (number + part) for part in (0.0, 0.5)]
            outline = _between(foot, top, edges, area.y, horizon)
            if outline:
                furrows.append(outline)
    yield Filled(gathered(furrows), layered(inks, 0.85))
    yield _poplars(stage, horizon, inks)


def _between(foot: list[float], top: list[float], edges: list[float], low: float, high: float) -> Path | None:
    """A furrow from the foot to the horizon, no farther aside than the edges of its field."""
    corners = []
    for x_foot, x_top in zip(foot, top, strict=True):
        out = max(edges[0] - x_foot, x_foot - edges[1], 0.0)
        share = out / abs(x_foot - x_top) if out else 0.0
        corners.append((Point(x_foot + (x_top - x_foot) * share, low + (high - low) * share), Point(x_top, high)))
    (one, over_one), (other, over_other) = corners
    if one.y > high - 0.01 or other.y > high - 0.01:
        return None
    return polygon([one, over_one, over_other, other])


def _poplars(stage: Stage, horizon: float, inks: Inks) -> Mark:
    trees: Commands = []
    for x, chance in along(stage, stage.high * 0.075, 9):
        if chance.random() < 0.62:
            tall = stage.high * (0.05 + 0.07 * chance.random())
            trees += petal(1.0, 0.3).transformed(Transform.stretch(tall, tall).moved(x, horizon - tall * 0.08)).commands
    for x, _ in along(stage, stage.high * 1.1, 12):
        size = stage.high * 0.05
        outline = ((-1, 0), (1, 0), (1, 0.6), (0.6, 1), (-0.6, 1), (-1, 0.6))
        trees += polygon([Point(x + size * across, horizon + size * up) for across, up in outline]).commands
    return Filled(snapped(trees), darker(inks.near, 0.3))
