"""Places where people live, in a few flat inks: a harbour, roofs at dusk, a bridge of arches over a valley."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor, pi, sin
from random import Random

from .....ground.art import Filled, Stroked
from .....ground.drawing import Pen
from .....ground.geometry import Path, Point, Rect, polygon
from ..ornament.shapes import Commands, snapped
from ..tones import darker, lighter, mixed
from .stage import Inks, Mark, Stage, along, clouds, ground, layered, sky, skyline, sun, water

__all__ = ["bridge", "harbour", "roofs"]


def harbour(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Tall houses on a quay, moored boats with their masts, reflections."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    yield ground(stage, skyline(stage, 0.33, 0.03, 1.3, 3), layered(inks, 0.12))
    quay = 0.2
    houses: tuple[Commands, ...] = ([], [], [])
    roofs_of, panes = Commands(), Commands()
    for x, chance in along(stage, stage.high * 0.088, 4):
        wall = houses[int(chance.random() * 3)]
        _house(stage, x, quay, stage.high * 0.1, chance, (wall, roofs_of, panes))
    for wall, tone in zip(houses, (layered(inks, 0.45), inks.light, inks.accent), strict=True):
        if wall:
            yield Filled(snapped(wall), mixed(tone, inks.near, 0.12))
    yield Filled(snapped(roofs_of), darker(inks.near, 0.12))
    yield Filled(snapped(panes), darker(inks.near, 0.3))
    yield from water(stage, quay - 0.012, inks, 10)
    area, top = stage.area, stage.level(quay)
    yield Filled.box(Rect(area.x, top - stage.high * 0.028, area.width, stage.high * 0.034), darker(inks.near, 0.3))
    yield from _moored(stage, inks)


def _house(
    stage: Stage, x: float, foot: float, wide: float, chance: Random, into: tuple[Commands, Commands, Commands]
) -> None:
    """Walls, roof and windows of one house whose left wall stands at `x`."""
    low, tall = stage.level(foot), wide * (0.9 + 0.75 * chance.random())
    peak = wide * (0.35 + 0.35 * chance.random())
    wall, roof, panes = into
    wall += Path.rectangle(Rect(x, low, wide, tall)).commands
    over = wide * 0.05
    roof += polygon([Point(x - over, low + tall), Point(x + wide + over, low + tall),
                     Point(x + wide / 2, low + tall + peak)]).commands  # fmt: skip
    roof += Path.rectangle(Rect(x + wide * 0.68, low + tall + peak * 0.2, wide * 0.13, peak * 0.8)).commands
    for row in range(int(tall / (wide * 0.38))):
        for column in range(3):
            if chance.random() < 0.8:
                at = Rect(x + wide * (0.14 + 0.28 * column), low + wide * (0.14 + 0.36 * row), wide * 0.14, wide * 0.2)
                panes += Path.rectangle(at).commands


def _moored(stage: Stage, inks: Inks) -> Iterator[Mark]:
    hulls, masts, sails = Commands(), Commands(), Commands()
    for x, chance in along(stage, stage.high * 0.24, 30):
        size = stage.high * (0.07 + 0.05 * chance.random())
        y = stage.level(0.06 + 0.06 * chance.random())
        keel, stem = (x - size * 0.8, y - size * 0.15), (x + size * 0.95, y + size * 0.32)
        hulls += [("M", x - size, y + size * 0.25), ("C", *keel, x + size * 0.6, y - size * 0.12, *stem),
                  ("L", x + size * 0.5, y + size * 0.2), ("Z",)]  # fmt: skip
        masts += [("M", x, y + size * 0.1), ("L", x, y + size * (1.7 + 0.6 * chance.random())),
                  ("M", x - size * 0.06, y + size * 0.35), ("L", x + size * 0.8, y + size * 0.42)]  # fmt: skip
        if chance.random() < 0.5:
            sails += polygon([Point(x + size * 0.07, y + size * 0.5), Point(x + size * 0.07, y + size * 1.5),
                              Point(x + size * 0.7, y + size * 0.52)]).commands  # fmt: skip
    yield Filled(snapped(hulls), darker(inks.near, 0.4))
    yield Stroked(snapped(masts), Pen(stage.high * 0.006, darker(inks.near, 0.4)))
    if sails:
        yield Filled(snapped(sails), inks.light)


def roofs(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Gables one row behind another, chimneys, lit windows, smoke."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    yield from sun(stage, inks, 0.5, 0.06)
    for number, (foot, wide) in enumerate(((0.25, 0.075), (0.15, 0.1), (0.02, 0.13))):
        tone = layered(inks, 0.1 + 0.45 * number)
        walls, lit, smoke = Commands(), Commands(), Commands()
        for x, chance in along(stage, stage.high * wide * 0.8, 4 + number):
            _gable(stage, x, foot, stage.high * wide * 1.3, chance, (walls, lit, smoke))
        if smoke and number:
            yield Stroked(snapped(smoke), Pen(stage.high * 0.008, mixed(inks.sky, inks.light, 0.2)))
        yield Filled(snapped(walls), tone)
        if lit:
            yield Filled(snapped(lit), mixed(inks.accent, inks.light, 0.45) if number else lighter(tone, 0.2))


def _gable(
    stage: Stage, x: float, foot: float, wide: float, chance: Random, into: tuple[Commands, Commands, Commands]
) -> None:
    """One roof seen from its gable or from its eaves, with a chimney."""
    low, tall = stage.level(foot), wide * (0.3 + 0.5 * chance.random())
    peak = wide * (0.45 + 0.4 * chance.random())
    walls, lit, smoke = into
    across = 0.5 if chance.random() < 0.6 else 0.24
    walls += polygon([Point(x, stage.area.y), Point(x + wide, stage.area.y), Point(x + wide, low + tall),
                      Point(x + wide * (1 - across), low + tall + peak), Point(x + wide * across, low + tall + peak),
                      Point(x, low + tall)]).commands  # fmt: skip
    stack = x + wide * (0.2 + 0.5 * chance.random())
    walls += Path.rectangle(Rect(stack, low + tall, wide * 0.11, peak * 1.15)).commands
    if chance.random() < 0.35:
        top = low + tall + peak * 1.15
        smoke += [("M", stack, top), ("C", stack + wide * 0.4, top + wide * 0.3, stack - wide * 0.2, top + wide * 0.5,
                   stack + wide * 0.3, top + wide * 0.9)]  # fmt: skip
    for column in (0.2, 0.45, 0.68):
        if chance.random() < 0.5:
            lit += Path.rectangle(Rect(x + wide * column, low + tall * (0.2 + 0.4 * chance.random()), wide * 0.11,
                                       wide * 0.17)).commands  # fmt: skip


def bridge(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A long bridge of arches over a valley with a river."""
    yield from sky(stage, inks)
    yield from sun(stage, inks, 0.45, 0.08)
    yield ground(stage, skyline(stage, 0.34, 0.05, 1.2, 3), layered(inks, 0.1))
    yield ground(stage, skyline(stage, 0.26, 0.05, 0.9, 4), layered(inks, 0.35))
    step, deck = stage.high * 0.105, stage.level(0.335)
    area, spring = stage.area, stage.level(0.275)
    pier, half = step * 0.17, step * 0.415
    outline: Commands = []
    for place in range(floor((area.x - stage.origin) / step) - 1, floor((area.right - stage.origin) / step) + 2):
        x = stage.origin + step * place
        outline += Path.rectangle(Rect(x - pier / 2, area.y, pier, spring - area.y)).commands
        arch = [Point(x + step / 2 - half * sin(pi / 2 - turn), spring + half * 0.98 * sin(turn))
                for turn in (pi * number / 10 for number in range(11))]  # fmt: skip
        over = [Point(x + step, spring), Point(x + step, deck), Point(x, deck)]
        outline += polygon([Point(x, spring), *arch, *over]).commands
    stone = mixed(inks.light, inks.near, 0.25)
    yield Filled(snapped(outline), stone)
    yield Filled.box(Rect(area.x, deck - stage.high * 0.004, area.width, stage.high * 0.016), darker(stone, 0.22))
    yield ground(stage, skyline(stage, 0.14, 0.04, 0.8, 5), layered(inks, 0.65))
    yield from _river(stage, inks)
    yield ground(stage, skyline(stage, 0.02, 0.025, 0.7, 6), darker(inks.near, 0.25))


def _river(stage: Stage, inks: Inks) -> Iterator[Mark]:
    area = stage.area
    upper, lower = (skyline(stage, base, 0.012, 0.6, 7 + number) for number, base in enumerate((0.1, 0.045)))
    count = max(8, round(area.width / 0.6))
    xs = [area.x + area.width * number / count for number in range(count + 1)]
    banks = [Point(x, upper(x)) for x in xs] + [Point(x, lower(x)) for x in reversed(xs)]
    yield Filled(snapped(polygon(banks).commands), mixed(inks.sky, inks.light, 0.45))
