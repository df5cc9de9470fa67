"""Things that stand alone in a landscape: a lighthouse, a windmill, a castle, a church, an oak, tents."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from math import cos, pi, sin

from .....ground.art import Filled, Stroked
from .....ground.drawing import Pen
from .....ground.geometry import Path, Point, Rect, Transform, polygon
from ..ornament.shapes import Commands, blot, snapped
from ..tones import darker, lighter, mixed
from .stage import Inks, Mark, Stage, along, clouds, ground, layered, outlined, sky, skyline, water

__all__ = ["castle", "church", "lighthouse", "oak", "tents", "windmill"]


def lighthouse(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A banded tower on a skerry, its two beams low over the sea."""
    yield from sky(stage, inks)
    high, at = stage.high, Point(stage.middle, stage.level(0.2))
    lamp = Point(at.x, at.y + high * 0.28)
    for way in (-1, 1):
        far = [Point(lamp.x + way * high * 0.9, lamp.y + high * up) for up in (0.06, -0.05)]
        yield Filled(polygon([lamp, *far]), mixed(inks.sky, inks.light, 0.38))
    yield from water(stage, 0.27, inks, 10)
    rock = [(-0.42, -0.13), (-0.3, -0.02), (-0.21, -0.04), (-0.1, 0.03), (0.08, 0.03), (0.17, -0.03), (0.25, -0.02),
            (0.38, -0.13)]  # fmt: skip
    yield Filled(snapped(outlined(at, high, *rock)), darker(inks.near, 0.25))
    edges = [(0.052 - 0.02 * step / 5, 0.26 * step / 5) for step in range(6)]
    for number, ((wide, low), (narrow, top)) in enumerate(pairwise(edges)):
        band = outlined(at, high, (-wide, low), (wide, low), (narrow, top), (-narrow, top))
        yield Filled(snapped(band), inks.light if number % 2 == 0 else inks.accent)
    yield Filled(Path.rectangle(Rect(at.x - high * 0.045, at.y + high * 0.255, high * 0.09, high * 0.012)),
                 darker(inks.near, 0.3))  # fmt: skip
    yield Filled(Path.rectangle(Rect(at.x - high * 0.02, lamp.y - high * 0.013, high * 0.04, high * 0.034)), inks.light)
    roof = outlined(lamp, high, (-0.032, 0.02), (0.032, 0.02), (0.0, 0.06))
    yield Filled(snapped(roof), darker(inks.near, 0.3))


def windmill(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A mill on a rise, its sails with their lattice, corn before it."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    for number, (base, rise) in enumerate(((0.3, 0.03), (0.22, 0.04))):
        yield ground(stage, skyline(stage, base, rise, 1.3 - 0.3 * number, 3 + number),
                     layered(inks, 0.1 + 0.35 * number))  # fmt: skip
    high, at = stage.high, Point(stage.middle, stage.level(0.13))
    body = outlined(at, high, (-0.085, -0.02), (0.085, -0.02), (0.05, 0.23), (-0.05, 0.23))
    yield Filled(snapped(body), mixed(inks.light, inks.near, 0.2))
    shade = outlined(at, high, (0.01, -0.02), (0.085, -0.02), (0.05, 0.23), (0.01, 0.23))
    yield Filled(snapped(shade), mixed(inks.light, inks.near, 0.45))
    yield Filled(snapped(outlined(at, high, (-0.062, 0.225), (0.062, 0.225), (0.03, 0.28), (-0.03, 0.28))),
                 inks.accent)  # fmt: skip
    hub = Point(at.x, at.y + high * 0.25)
    sails, arms = Commands(), Commands()
    for turn in (0.35 + pi / 2 * number for number in range(4)):
        reach = Transform.turn(turn * 180 / pi).then(Transform.move(*hub))
        sails += Path.rectangle(Rect(high * 0.035, 0.0, high * 0.14, high * 0.04)).transformed(reach).commands
        arms += [("M", *hub), ("L", hub.x + high * 0.18 * cos(turn), hub.y + high * 0.18 * sin(turn))]
    yield Filled(snapped(sails), inks.light)
    yield Stroked(snapped(arms), Pen(high * 0.008, darker(inks.near, 0.3)))
    corn = skyline(stage, 0.12, 0.02, 0.9, 8)
    yield ground(stage, corn, mixed(inks.accent, inks.near, 0.45))
    ears = Commands()
    for x, chance in along(stage, high * 0.022, 9):
        tall = high * (0.02 + 0.02 * chance.random())
        ears += [("M", x, corn(x) - high * 0.02), ("L", x + tall * 0.2, corn(x) + tall)]
    yield Stroked(snapped(ears), Pen(high * 0.007, mixed(inks.accent, inks.near, 0.45)))
    yield ground(stage, skyline(stage, 0.02, 0.02, 0.7, 12), darker(inks.near, 0.25))


def castle(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Towers and battlements on a crag, a road that winds up to them."""
    yield from sky(stage, inks)
    high, at = stage.high, Point(stage.middle, stage.level(0.29))
    for number, (base, rise) in enumerate(((0.32, 0.05), (0.24, 0.04))):
        yield ground(stage, skyline(stage, base, rise, 1.1, 3 + number), layered(inks, 0.05 + 0.25 * number))
    crag = [(-0.62, -0.3), (-0.4, -0.16), (-0.27, -0.12), (-0.2, 0.0), (0.2, 0.0), (0.26, -0.09), (0.38, -0.13),
            (0.6, -0.3)]  # fmt: skip
    yield Filled(snapped(outlined(at, high, *crag)), layered(inks, 0.62))
    walls, roofs, slits = Commands(), Commands(), Commands()
    for x, wide, tall in ((-0.19, 0.06, 0.12), (-0.06, 0.08, 0.19), (0.05, 0.055, 0.14), (0.14, 0.06, 0.1)):
        walls += outlined(at, high, (x, -0.02), (x + wide, -0.02), (x + wide, tall), (x, tall))
        roofs += outlined(at, high, (x - 0.01, tall), (x + wide + 0.01, tall), (x + wide / 2, tall + wide * 1.15))
        slits += outlined(at, high, (x + wide * 0.4, tall * 0.55), (x + wide * 0.6, tall * 0.55),
                          (x + wide * 0.6, tall * 0.8), (x + wide * 0.4, tall * 0.8))  # fmt: skip
    walls += outlined(at, high, (-0.18, -0.02), (0.19, -0.02), (0.19, 0.055), (-0.18, 0.055))
    for number in range(9):
        x = -0.17 + 0.04 * number
        walls += outlined(at, high, (x, 0.05), (x + 0.02, 0.05), (x + 0.02, 0.075), (x, 0.075))
    yield Filled(snapped(walls), mixed(inks.light, inks.near, 0.28))
    yield Filled(snapped(roofs), inks.accent)
    yield Filled(snapped(slits), darker(inks.near, 0.3))
    road = [(-0.02, 0.0), (0.03, 0.0), (0.12, -0.07), (-0.04, -0.13), (0.14, -0.24), (0.04, -0.24), (-0.13, -0.13),
            (0.07, -0.07)]  # fmt: skip
    yield Filled(snapped(outlined(at, high, *road)), mixed(inks.light, inks.near, 0.42))
    yield ground(stage, skyline(stage, 0.06, 0.03, 0.8, 6), darker(inks.near, 0.2))


def church(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A village round its spire, orchards and a wall before it."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    yield ground(stage, skyline(stage, 0.32, 0.03, 1.2, 3), layered(inks, 0.12))
    green = skyline(stage, 0.2, 0.02, 1.4, 4)
    yield ground(stage, green, layered(inks, 0.4))
    high = stage.high
    walls, roofs = Commands(), Commands()
    for x, chance in along(stage, high * 0.13, 5):
        size = high * (0.07 + 0.03 * chance.random())
        at = (x, green(x) - high * 0.035)
        walls += outlined(at, size, (0, 0), (1.15, 0), (1.15, 0.6), (0, 0.6))
        roofs += outlined(at, size, (-0.08, 0.58), (1.23, 0.58), (0.95, 1.05), (0.2, 1.05))
    yield Filled(snapped(walls), mixed(inks.light, inks.near, 0.25))
    yield Filled(snapped(roofs), mixed(inks.accent, inks.near, 0.25))
    at = (stage.middle, stage.level(0.16))
    nave = outlined(at, high, (0.0, 0.0), (0.2, 0.0), (0.2, 0.1), (0.0, 0.1))
    tower = outlined(at, high, (-0.075, 0.0), (0.005, 0.0), (0.005, 0.2), (-0.075, 0.2))
    yield Filled(snapped([*nave, *tower]), inks.light)
    tops = outlined(at, high, (-0.01, 0.1), (0.21, 0.1), (0.18, 0.16), (0.0, 0.16))
    spire = outlined(at, high, (-0.085, 0.2), (0.015, 0.2), (-0.035, 0.4))
    yield Filled(snapped([*tops, *spire]), darker(inks.near, 0.2))
    panes = Commands()
    for x in (0.04, 0.09, 0.14, -0.045):
        panes += outlined(at, high, (x, 0.03), (x + 0.022, 0.03), (x + 0.022, 0.07), (x + 0.011, 0.085), (x, 0.07))
    yield Filled(snapped(panes), darker(inks.near, 0.2))
    meadow = skyline(stage, 0.11, 0.02, 0.9, 7)
    yield ground(stage, meadow, layered(inks, 0.75))
    crowns = Commands()
    for x, chance in along(stage, high * 0.1, 8):
        size = high * (0.02 + 0.018 * chance.random())
        crowns += Path.circle(Point(x, meadow(x) + size * 0.5), size).commands
    yield Filled(snapped(crowns), darker(inks.near, 0.1))
    yield ground(stage, skyline(stage, 0.03, 0.015, 0.7, 9), darker(inks.near, 0.3))


def oak(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """One old tree in a field, sheep in its shade, a fence."""
    yield from sky(stage, inks)
    for number, (base, rise) in enumerate(((0.26, 0.03), (0.17, 0.025))):
        yield ground(stage, skyline(stage, base, rise, 1.3, 3 + number), layered(inks, 0.1 + 0.4 * number))
    high, at = stage.high, Point(stage.middle, stage.level(0.12))
    trunk = [
        (-0.055, 0), (-0.028, 0.05), (-0.028, 0.14), (-0.1, 0.24), (-0.085, 0.25), (-0.01, 0.19), (0.0, 0.28),
        (0.02, 0.28), (0.02, 0.18), (0.1, 0.25), (0.11, 0.235), (0.028, 0.13), (0.03, 0.05), (0.06, 0),
    ]  # fmt: skip
    yield Filled(snapped(outlined(at, high, *trunk)), darker(inks.near, 0.4))
    for salt, tone, lift in ((20, darker(inks.near, 0.1), 0.0), (21, mixed(inks.near, inks.accent, 0.4), 0.02)):
        crown = Commands()
        for number in range(13 - 5 * (salt - 20)):
            chance = stage.chance(salt, number)
            turn, far = pi * (number / 12) * 0.98, 0.14 if number % 2 else 0.08
            spot = Point(at.x + high * 1.25 * far * cos(turn), at.y + high * (0.25 + lift + far * 0.75 * sin(turn)))
            crown += blot(spot, high * (0.078 if salt == 20 else 0.034), chance, 7)
        yield Filled(snapped(crown), tone)
    field = skyline(stage, 0.11, 0.012, 1.1, 6)
    yield ground(stage, field, layered(inks, 0.8))
    sheep, rails = Commands(), Commands()
    for x, chance in along(stage, high * 0.16, 9):
        size = high * (0.014 + 0.008 * chance.random())
        y = field(x) - high * (0.01 + 0.04 * chance.random())
        sheep += Path.circle(Point(x, y), size).commands
        sheep += Path.circle(Point(x + size, y + size * 0.3), size * 0.55).commands
    yield Filled(snapped(sheep), inks.light)
    for x, _ in along(stage, high * 0.09, 11):
        rails += Path.rectangle(Rect(x, stage.area.y, high * 0.008, stage.level(0.055) - stage.area.y)).commands
    for up in (0.02, 0.042):
        area = stage.area
        rails += Path.rectangle(Rect(area.x, stage.level(up), area.width, high * 0.007)).commands
    yield Filled(snapped(rails), darker(inks.near, 0.4))


def tents(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A camp by a lake under peaks: tents, a fire and its smoke."""
    yield from sky(stage, inks)
    high = stage.high
    peaks = Commands()
    for x, chance in along(stage, high * 0.3, 3):
        size = high * (0.22 + 0.1 * chance.random())
        peaks += outlined((x, stage.level(0.22)), size, (-0.9, 0), (-0.3, 0.62), (-0.12, 0.55), (0.1, 1), (0.3, 0.7),
                          (0.42, 0.74), (1, 0))  # fmt: skip
    yield Filled(snapped(peaks), layered(inks, 0.2))
    yield from water(stage, 0.23, inks, 10)
    shore = skyline(stage, 0.13, 0.015, 1.0, 5)
    yield ground(stage, shore, layered(inks, 0.8))
    cloth, doors = {inks.light: Commands(), inks.accent: Commands()}, Commands()
    for x, chance in along(stage, high * 0.24, 6):
        size, foot = high * (0.1 + 0.03 * chance.random()), shore(x) - high * 0.035
        cloth[inks.light if chance.random() < 0.5 else inks.accent] += outlined((x, foot), size, (-0.75, 0), (0.75, 0),
                                                                                (0, 1.05))  # fmt: skip
        doors += outlined((x, foot), size, (-0.2, 0), (0.2, 0), (0, 0.8))
    for colour, commands in cloth.items():
        if commands:
            yield Filled(snapped(commands), colour)
    yield Filled(snapped(doors), darker(inks.near, 0.4))
    at = Point(stage.middle, stage.level(0.07))
    smoke: Commands = [("M", at.x, at.y), ("C", at.x + high * 0.08, at.y + high * 0.12, at.x - high * 0.08,
                        at.y + high * 0.22, at.x + high * 0.03, at.y + high * 0.36)]  # fmt: skip
    yield Stroked(snapped(smoke), Pen(high * 0.012, mixed(inks.sky, inks.light, 0.35)))
    yield ground(stage, skyline(stage, 0.05, 0.015, 0.8, 8), darker(inks.near, 0.25))
    for size, tone in ((0.045, inks.accent), (0.026, lighter(inks.light, 0.2))):
        flame = outlined((at.x, at.y - high * 0.02), high * size, (-0.5, 0), (0.5, 0), (0.35, 0.5), (0, 1.3),
                         (-0.2, 0.7), (-0.4, 0.8))  # fmt: skip
        yield Filled(snapped(flame), tone)
