"""Plates that are no landscapes, in a few flat inks: night, plants, cut paper, stones on a beach."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

from .....ground.art import Filled
from .....ground.geometry import Path, Point, Rect, Transform, polygon
from ..ornament.ornaments import petal
from ..ornament.shapes import Commands, blot, snapped
from ..tones import darker, lighter, mixed
from .stage import Inks, Mark, Stage, along, ground, layered, sky, skyline

__all__ = ["cut_paper", "night", "plants", "shingle"]


def night(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Stars and a waning moon over dark hills, one window lit."""
    area = stage.area
    yield Filled.box(area, inks.sky)
    for share, dark in ((0.42, 0.06), (0.36, 0.12), (0.3, 0.18)):
        yield ground(stage, skyline(stage, share, 0.02, 1.0, 50), darker(inks.sky, dark))
    stars: Commands = []
    for x, chance in along(stage, stage.high * 0.045, 3):
        for _ in range(2):
            size = stage.high * (0.004 + 0.011 * chance.random() ** 3)
            y = stage.level(stage.clear - 0.24 * chance.random())
            stars += _star(x + size * 3 * chance.random(), y, size)
    yield Filled(snapped(stars), inks.light)
    at, radius = Point(stage.middle, stage.level(stage.clear - 0.12)), stage.high * 0.06
    yield Filled(_crescent(at, radius), inks.light)
    for number, (base, rise) in enumerate(((0.24, 0.05), (0.16, 0.05), (0.06, 0.045))):
        yield ground(stage, skyline(stage, base, rise, 1.1 - 0.2 * number, 5 + number),
                     darker(layered(inks, 0.3 + 0.35 * number), 0.3 + 0.12 * number))  # fmt: skip
    yield from _cottages(stage, inks)


def _star(x: float, y: float, size: float) -> Commands:
    thin = size * 0.26
    return list(polygon([Point(x, y + size), Point(x + thin, y + thin), Point(x + size, y), Point(x + thin, y - thin),
                         Point(x, y - size), Point(x - thin, y - thin), Point(x - size, y),
                         Point(x - thin, y + thin)]).commands)  # fmt: skip


def _crescent(at: Point, radius: float) -> Path:
    unit = Path((("M", 0.35, 1.0), ("C", -1.25, 0.75, -1.25, -0.75, 0.35, -1.0),
                 ("C", -0.4, -0.55, -0.4, 0.55, 0.35, 1.0), ("Z",)))  # fmt: skip
    return unit.transformed(Transform.stretch(radius, radius).moved(*at))


def _cottages(stage: Stage, inks: Inks) -> Iterator[Mark]:
    walls, lit = Commands(), Commands()
    line = skyline(stage, 0.06, 0.045, 0.7, 7)
    for x, _ in along(stage, stage.high * 0.8, 9):
        size, y = stage.high * 0.075, line(x) - stage.high * 0.02
        walls += polygon([Point(x, y), Point(x, y + size * 0.6), Point(x + size * 0.5, y + size * 1.1),
                          Point(x + size, y + size * 0.6), Point(x + size, y)]).commands  # fmt: skip
        lit += Path.rectangle(Rect(x + size * 0.55, y + size * 0.25, size * 0.2, size * 0.24)).commands
    yield Filled(snapped(walls), darker(inks.near, 0.6))
    yield Filled(snapped(lit), mixed(inks.accent, inks.light, 0.5))


def plants(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Stems out of the foot of the cover, three deep: leaves in pairs, seed heads, flowers."""
    yield Filled.box(stage.area, inks.sky)
    tones = (mixed(inks.sky, inks.far, 0.55), layered(inks, 0.5), inks.near)
    for number, tone in enumerate(tones):
        leaves, heads = Commands(), Commands()
        for x, chance in along(stage, stage.high * 0.1, 3 + number):
            tall = stage.high * (0.44 - 0.09 * number) * (0.65 + 0.4 * chance.random())
            _stem(Point(x, stage.area.y), stage.low - stage.area.y + tall, stage.high, chance, leaves, heads)
        yield Filled(snapped(leaves), tone)
        yield Filled(snapped(heads), (mixed(inks.sky, inks.light, 0.45), inks.accent, inks.light)[number])


def _stem(foot: Point, tall: float, high: float, chance: Random, leaves: Commands, heads: Commands) -> None:
    """One plant of one of four kinds, upright with a slight lean."""
    lean, wide = chance.gauss(0.0, 0.07) * tall, high * 0.0045
    top = Point(foot.x + lean, foot.y + tall)
    leaves += polygon([Point(foot.x - wide, foot.y), Point(foot.x + wide, foot.y), top]).commands
    kind = int(chance.random() * 4)
    count = 4 + int(chance.random() * 4)
    for pair in range(count):
        share = 0.25 + 0.66 * pair / count
        x, y = foot.x + lean * share, foot.y + tall * share
        long = high * (0.085 if kind != 1 else 0.05) * (1.15 - 0.7 * share)
        for side in (-1, 1):
            leaf = petal(1.0, (0.34, 0.6, 0.16, 0.3)[kind], -side * (38 + 22 * (1 - share)))
            leaves += leaf.transformed(Transform.stretch(long, long).moved(x, y)).commands
    if kind == 0:
        for turn in range(7):
            heads += petal(1.0, 0.34, 360 / 7 * turn, 0.15).transformed(
                Transform.stretch(high * 0.038, high * 0.038).moved(*top)).commands  # fmt: skip
    elif kind == 1:
        for step in range(6):
            at = Point(top.x + high * 0.011 * (-1) ** step, top.y - high * 0.017 * step)
            heads += Path.circle(at, high * 0.0085).commands
    elif kind == 2:
        heads += petal(1.0, 0.22).transformed(
            Transform.stretch(high * 0.09, high * 0.09).moved(top.x, top.y - high * 0.03)).commands  # fmt: skip
    else:
        for turn in (-26, 0, 26):
            heads += petal(1.0, 0.42, turn).transformed(
                Transform.stretch(high * 0.06, high * 0.06).moved(top.x, top.y - high * 0.01)).commands  # fmt: skip


def cut_paper(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Tiles of cut paper at the foot: quarter discs, leaves, halves, in a loose order that thins out upwards."""
    yield Filled.box(stage.area, inks.sky)
    side = stage.high * 0.1
    sheets = {tone: Commands() for tone in (layered(inks, 0.2), layered(inks, 0.75), inks.light, inks.accent)}
    tones = list(sheets)
    first, last = (int((x - stage.origin) / side) for x in (stage.area.x, stage.area.right))
    rows = int((stage.low - stage.area.y) / side) + 1
    for column in range(first - 1, last + 2):
        for row in range(-rows, 5):
            chance = stage.chance(row + 40, column)
            if chance.random() < (1.0, 1.0, 0.92, 0.6, 0.3)[max(row, 0)]:
                at = Point(stage.origin + side * column, stage.low + side * row)
                back, over = (int(chance.random() * 4) for _ in range(2))
                if row < 3:
                    sheets[tones[back]] += Path.rectangle(Rect(*at, side * 1.01, side * 1.01)).commands
                if over != back or row >= 3:
                    sheets[tones[over]] += _piece(at, side, chance)
    for tone, commands in sheets.items():
        if commands:
            yield Filled(snapped(commands), tone)


def _piece(at: Point, side: float, chance: Random) -> Commands:
    """A quarter disc, a leaf, a half or a disc in a square."""
    kind, turns = int(chance.random() * 4), int(chance.random() * 4)
    h = 0.5523
    unit = (
        Path((("M", -0.5, -0.5), ("L", 0.5, -0.5), ("C", 0.5, -0.5 + h, -0.5 + h, 0.5, -0.5, 0.5), ("Z",))),
        Path((("M", -0.5, -0.5), ("C", -0.5, -0.5 + h, 0.5 - h, 0.5, 0.5, 0.5),
              ("C", 0.5, 0.5 - h, -0.5 + h, -0.5, -0.5, -0.5), ("Z",))),
        polygon([Point(-0.5, -0.5), Point(0.5, -0.5), Point(-0.5, 0.5)]),
        Path.circle(Point(0, 0), 0.32),
    )[kind]  # fmt: skip
    turned = unit.transformed(Transform.turn(90.0 * turns))
    return list(turned.transformed(Transform.stretch(side, side).moved(at.x + side / 2, at.y + side / 2)).commands)


SHINE = Path((("M", -0.4, 0.2), ("C", -0.2, 0.42, 0.2, 0.42, 0.4, 0.2), ("C", 0.15, 0.32, -0.15, 0.32, -0.4, 0.2),
              ("Z",)))  # fmt: skip
"""The light on a stone one mm from its middle to its edge."""


def shingle(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Stones on a beach, large at the foot and small towards the sea."""
    yield from sky(stage, inks)
    area = stage.area
    yield ground(stage, skyline(stage, 0.36, 0.004, 1.0, 3), layered(inks, 0.05))
    yield ground(stage, skyline(stage, 0.29, 0.012, 0.8, 4), mixed(inks.sky, inks.light, 0.55))
    yield ground(stage, skyline(stage, 0.275, 0.012, 0.8, 4), layered(inks, 0.5))
    pale, warm = mixed(inks.light, inks.near, 0.3), mixed(inks.accent, inks.near, 0.2)
    tones = [layered(inks, 0.8), pale, layered(inks, 0.3), warm]
    for row in range(5):
        size = stage.high * (0.022 + 0.013 * row)
        y = stage.level(0.235 - 0.058 * row)
        stones: list[Commands] = [[], [], [], []]
        shine: Commands = []
        for x, chance in along(stage, size * 1.75, 10 + row):
            at = Point(x, y + size * 0.5 * chance.gauss(0, 0.4))
            flat = Transform.stretch(1.0, 0.62, at)
            stone = Path(tuple(blot(at, size * (0.85 + 0.3 * chance.random()), chance, 6)))
            stones[int(chance.random() * 4)] += stone.transformed(flat).commands
            shine += SHINE.transformed(Transform.stretch(size, size).moved(*at)).commands
        yield Filled.box(Rect(area.x, area.y, area.width, y - area.y), darker(inks.near, 0.35))
        for tone, commands in zip(tones, stones, strict=True):
            if commands:
                yield Filled(snapped(commands), tone)
        yield Filled(snapped(shine), lighter(tones[1], 0.25))
