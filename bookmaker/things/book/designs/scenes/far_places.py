"""Places far off and near at hand: dunes, islands, a city, a works with its chimneys, a village in snow."""

from __future__ import annotations

from collections.abc import Iterator

from .....ground.art import Filled, Stroked
from .....ground.drawing import Pen
from .....ground.geometry import Path, Point, Rect, Transform
from ..ornament.ornaments import petal
from ..ornament.shapes import Commands, snapped
from ..tones import darker, mixed
from .stage import Inks, Mark, Stage, along, clouds, ground, layered, outlined, sky, skyline, sun, water

__all__ = ["city", "dunes", "islands", "snow", "works"]


def dunes(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Dunes with one side in the shade, a caravan on a crest."""
    yield from sky(stage, inks)
    yield from sun(stage, inks, 0.44, 0.07, inks.accent)
    high = stage.high
    for number, (base, size, step) in enumerate(((0.2, 0.16, 0.42), (0.1, 0.19, 0.55), (-0.03, 0.18, 0.7))):
        lit, shade = Commands(), Commands()
        for x, chance in along(stage, high * step, 3 + number):
            tall, wide = high * size * (0.6 + 0.5 * chance.random()), high * step
            foot, top = stage.level(base), Point(x, stage.level(base) + tall)
            lit += [("M", x - wide, foot), ("C", x - wide * 0.5, foot, x - wide * 0.3, top.y, *top),
                    ("C", x + wide * 0.25, top.y, x + wide * 0.5, foot, x + wide, foot), ("Z",)]  # fmt: skip
            shade += [("M", *top), ("C", x + wide * 0.25, top.y, x + wide * 0.5, foot, x + wide, foot),
                      ("L", x + wide * 0.1, foot), ("C", x + wide * 0.3, foot + tall * 0.3, x - wide * 0.1,
                       foot + tall * 0.6, *top), ("Z",)]  # fmt: skip
        tone = mixed(mixed(inks.light, inks.far, 0.35), inks.near, 0.1 + 0.2 * number)
        yield Filled(snapped(lit), tone)
        yield Filled(snapped(shade), darker(mixed(tone, inks.near, 0.3), 0.12))
        yield ground(stage, lambda _, base=base: stage.level(base) + 0.01, tone)  # type: ignore[misc]
        if number == 0:
            yield _caravan(stage, inks)


def _caravan(stage: Stage, inks: Inks) -> Mark:
    beasts = Commands()
    for number in range(7):
        at = (
            stage.middle + stage.high * (0.085 * number - 0.3),
            stage.level(0.265) + stage.high * 0.004 * (number % 2),
        )
        beasts += outlined(at, stage.high * 0.05, (-0.6, 0), (-0.5, 0), (-0.45, 0.5), (0.2, 0.5), (0.25, 0), (0.35, 0),
                           (0.38, 0.6), (0.7, 1.15), (0.95, 1.1), (0.95, 1.25), (0.62, 1.3), (0.3, 0.85), (0.1, 0.85),
                           (-0.1, 1.2), (-0.3, 0.85), (-0.6, 0.7))  # fmt: skip
    return Filled(snapped(beasts), darker(inks.near, 0.45))


def islands(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Islands in a warm sea, palms on them, a hut on piles."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    high = stage.high
    humps = skyline(stage, 0.27, 0.07, 0.8, 3)
    yield ground(stage, lambda x: max(stage.level(0.26), humps(x)), layered(inks, 0.25))
    yield from water(stage, 0.27, inks, 10)
    beach, trunks, fronds = Commands(), Commands(), Commands()
    for x, chance in along(stage, high * 0.55, 6):
        foot = stage.level(0.08 + 0.05 * chance.random())
        beach += (
            Path.circle(Point(0, 0), 1.0)
            .transformed(Transform.stretch(high * 0.22, high * 0.035).moved(x, foot))
            .commands
        )
        for aside, lean in ((-0.08, -0.05), (0.02, 0.04), (0.09, 0.1)):
            tall = high * (0.2 + 0.1 * chance.random())
            top = Point(x + high * (aside + lean), foot + tall)
            root = x + high * aside
            trunks += [("M", root, foot), ("C", root, foot + tall * 0.5, top.x, foot + tall * 0.6, *top)]
            for turn in (-118, -88, -48, -12, 36, 74, 112):
                leaf = petal(high * 0.09, high * 0.024, turn + 6 * chance.gauss(0, 1))
                fronds += leaf.transformed(Transform.move(*top)).commands
    yield Filled(snapped(beach), inks.light)
    yield Stroked(snapped(trunks), Pen(high * 0.012, darker(inks.near, 0.35)))
    yield Filled(snapped(fronds), darker(inks.near, 0.1))
    at = (stage.middle, stage.level(0.09))
    hut = outlined(at, high, (-0.06, 0.045), (0.06, 0.045), (0.055, 0.1), (-0.055, 0.1))
    for x in (-0.05, 0.0, 0.05):
        hut += outlined(at, high, (x - 0.004, 0), (x + 0.004, 0), (x + 0.004, 0.05), (x - 0.004, 0.05))
    yield Filled(snapped(hut), mixed(inks.accent, inks.near, 0.4))
    yield Filled(snapped(outlined(at, high, (-0.085, 0.095), (0.085, 0.095), (0.03, 0.16), (-0.03, 0.16))), inks.accent)


def city(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Tall buildings in three depths, their windows lit, a river before them."""
    yield from sky(stage, inks)
    high = stage.high
    for number, (most, wide) in enumerate(((0.41, 0.11), (0.33, 0.09), (0.22, 0.1))):
        blocks, panes = Commands(), Commands()
        for x, chance in along(stage, high * wide, 3 + number):
            tall, across = (
                high * most * (0.45 + 0.6 * chance.random() ** 1.5),
                high * wide * (0.75 + 0.4 * chance.random()),
            )
            foot = stage.level(0.1)
            blocks += Path.rectangle(Rect(x, foot, across, tall)).commands
            crown = int(chance.random() * 4)
            if crown == 0:
                blocks += outlined((x, foot + tall), across, (0.2, 0), (0.8, 0), (0.8, 0.25), (0.2, 0.25))
            elif crown == 1:
                blocks += outlined((x, foot + tall), across, (0.1, 0), (0.9, 0), (0.5, 0.45))
            for row in range(int(tall / (high * 0.024))):
                for column in range(int(across / (high * 0.02)) - 1):
                    if chance.random() < 0.26:
                        left, low = x + high * (0.012 + 0.02 * column), foot + high * (0.012 + 0.024 * row)
                        panes += Path.rectangle(Rect(left, low, high * 0.009, high * 0.012)).commands
        tone = layered(inks, 0.1 + 0.4 * number)
        yield Filled(snapped(blocks), tone)
        yield Filled(snapped(panes), mixed(tone, mixed(inks.accent, inks.light, 0.6), 0.35 + 0.3 * number))
    yield from water(stage, 0.115, inks, 10)
    area, quay = stage.area, stage.level(0.11)
    yield Filled.box(Rect(area.x, quay, area.width, high * 0.014), darker(inks.near, 0.35))


def works(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Sheds with toothed roofs, chimneys and their smoke, terraces below."""
    yield from sky(stage, inks)
    yield from sun(stage, inks, 0.4, 0.08, inks.accent)
    high, yard = stage.high, stage.level(0.16)
    yield ground(stage, skyline(stage, 0.26, 0.03, 1.2, 3), layered(inks, 0.1))
    stacks, smoke = Commands(), Commands()
    for x, chance in along(stage, high * 0.22, 4):
        tall = high * (0.2 + 0.12 * chance.random())
        stacks += outlined((x, yard), high, (-0.022, 0), (0.022, 0), (0.013, tall / high), (-0.013, tall / high))
        stacks += outlined((x, yard + tall), high, (-0.019, 0), (0.019, 0), (0.019, 0.014), (-0.019, 0.014))
        for number in range(6):
            spot = Point(x + high * 0.04 * number, min(yard + tall + high * (0.02 + 0.013 * number), stage.level(0.46)))
            smoke += Path.circle(spot, high * (0.012 + 0.005 * number) * (0.8 + 0.4 * chance.random())).commands
    yield Filled(snapped(smoke), mixed(inks.sky, inks.light, 0.3))
    yield Filled(snapped(stacks), mixed(inks.accent, inks.near, 0.35))
    sheds, glass = Commands(), Commands()
    for x, _ in along(stage, high * 0.11, 5):
        sheds += outlined((x, yard), high, (0, 0), (0.12, 0), (0.12, 0.075), (0.02, 0.125), (0.02, 0.075), (0, 0.075))
        glass += outlined((x, yard), high, (0.028, 0.084), (0.028, 0.11), (0.1, 0.074), (0.1, 0.06))
    yield Filled(snapped(sheds), layered(inks, 0.6))
    yield Filled(snapped(glass), mixed(inks.light, inks.sky, 0.25))
    for row, base in enumerate((0.11, 0.02)):
        homes, ends, lit = Commands(), Commands(), Commands()
        for x, chance in along(stage, high * 0.09, 20 + row):
            homes += outlined((x, stage.level(base)), high, (0, -0.4), (0.095, -0.4), (0.095, 0.04), (0, 0.04))
            ends += outlined(
                (x, stage.level(base)), high, (-0.003, 0.038), (0.098, 0.038), (0.098, 0.075), (-0.003, 0.075)
            )
            ends += outlined((x, stage.level(base)), high, (0.04, 0.07), (0.06, 0.07), (0.06, 0.1), (0.04, 0.1))
            if chance.random() < 0.6:
                lit += outlined((x, stage.level(base)), high, (0.02, 0.0), (0.04, 0.0), (0.04, 0.027), (0.02, 0.027))
        yield Filled(snapped(homes), mixed(inks.near, inks.accent, 0.2))
        yield Filled(snapped(ends), darker(inks.near, 0.35))
        yield Filled(snapped(lit), mixed(inks.accent, inks.light, 0.6))


def snow(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Cottages under snow, bare trees, a track of feet."""
    yield from sky(stage, inks)
    high = stage.high
    white = mixed(inks.light, inks.sky, 0.06)
    for number, (base, rise) in enumerate(((0.3, 0.04), (0.2, 0.035), (0.08, 0.03))):
        yield ground(stage, skyline(stage, base, rise, 1.2 - 0.2 * number, 3 + number),
                     mixed(white, inks.sky, 0.42 - 0.19 * number))  # fmt: skip
        if number == 1:
            yield from _cottages_in_snow(stage, inks)
    boughs = Commands()
    for x, chance in along(stage, high * 0.28, 8):
        foot = stage.level(0.06 + 0.03 * chance.random())
        tall = high * (0.2 + 0.12 * chance.random())
        boughs += outlined((x, foot), 1.0, (-tall * 0.03, 0), (tall * 0.03, 0), (0, tall))
        for step in range(5):
            for side in (-1, 1):
                y, long = foot + tall * (0.3 + 0.13 * step), tall * (0.36 - 0.05 * step)
                boughs += outlined((x, y), long, (0, 0), (side * 0.8, 0.75), (side * 0.78, 0.8), (0, 0.1))
    yield Filled(snapped(boughs), darker(inks.near, 0.35))
    steps = Commands()
    for number in range(14):
        at = Point(
            stage.middle + high * (0.16 * (number / 14) ** 2 + 0.012 * (-1) ** number),
            stage.level(0.17 - 0.013 * number),
        )
        steps += Path.circle(at, high * (0.002 + 0.0005 * number)).commands
    yield Filled(snapped(steps), mixed(white, inks.near, 0.35))


def _cottages_in_snow(stage: Stage, inks: Inks) -> Iterator[Mark]:
    high, walls, roofs, lit = stage.high, Commands(), Commands(), Commands()
    line = skyline(stage, 0.2, 0.035, 1.0, 4)
    for x, chance in along(stage, high * 0.26, 6):
        size, at = high * (0.1 + 0.04 * chance.random()), (x, line(x) - high * 0.05)
        walls += outlined(at, size, (-0.7, 0), (0.7, 0), (0.7, 0.5), (-0.7, 0.5))
        walls += outlined(at, size, (0.3, 0.8), (0.46, 0.8), (0.46, 1.25), (0.3, 1.25))
        roofs += outlined(at, size, (-0.85, 0.46), (0.85, 0.46), (0.55, 1.05), (-0.55, 1.05))
        for pane in (-0.45, 0.25):
            lit += outlined(at, size, (pane, 0.14), (pane + 0.2, 0.14), (pane + 0.2, 0.36), (pane, 0.36))
    yield Filled(snapped(walls), mixed(inks.near, inks.accent, 0.25))
    yield Filled(snapped(roofs), inks.light)
    yield Filled(snapped(lit), mixed(inks.accent, inks.light, 0.5))
