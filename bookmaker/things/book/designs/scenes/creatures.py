"""What lives: geese over a marsh, fish among weed, moths, mushrooms, poppies in corn."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, sin

from .....ground.art import Filled, Stroked
from .....ground.drawing import Pen, luminance
from .....ground.geometry import Path, Point, Rect, Transform
from ..ornament.ornaments import petal
from ..ornament.shapes import Commands, snapped
from ..tones import darker, lighter, mixed
from .stage import Inks, Mark, Stage, along, clouds, ground, layered, outlined, sky, skyline, sun, water

__all__ = ["fish", "geese", "moths", "mushrooms", "poppies"]

NIGHT = 0.12
"""On a sky less luminous than this, birds are pale."""

GOOSE = ((-0.9, 0.02), (-0.5, 0.09), (-0.25, 0.08), (-0.45, 0.62), (0.1, 0.16), (0.4, 0.13), (0.8, 0.22), (0.95, 0.2),
         (0.82, 0.13), (0.45, 0.02), (0.15, -0.03), (0.05, -0.42), (-0.2, -0.02), (-0.6, -0.03))  # fmt: skip
"""A goose in flight, seen from the side, from bill to tail about 2 long."""


def geese(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A skein of geese over a marsh, reeds before it."""
    yield from sky(stage, inks)
    yield from sun(stage, inks, 0.36, 0.1, inks.accent)
    yield ground(stage, skyline(stage, 0.26, 0.012, 1.3, 3), layered(inks, 0.2))
    yield from water(stage, 0.235, inks, 10)
    high, birds = stage.high, Commands()
    for number in range(-6, 5):
        way = 1 if number < 0 else 0.6
        at = (stage.middle + high * (0.1 + 0.105 * -abs(number) + 0.06 * (number > 0)),
              stage.level(0.52 - 0.026 * abs(number) * way - (0.05 if number > 0 else 0)))  # fmt: skip
        birds += outlined(at, high * 0.045, *GOOSE)
    yield Filled(snapped(birds), inks.light if luminance(inks.sky) < NIGHT else darker(inks.near, 0.35))
    stems, heads = Commands(), Commands()
    for x, chance in along(stage, high * 0.036, 6):
        tall, lean = high * (0.12 + 0.14 * chance.random()), high * 0.03 * chance.gauss(0, 1)
        stems += [("M", x, stage.area.y), ("C", x, stage.low, x + lean * 0.3, stage.low + tall * 0.6, x + lean,
                   stage.low + tall)]  # fmt: skip
        if chance.random() < 0.5:
            head = petal(high * 0.05, high * 0.016, -8 * chance.random())
            heads += head.transformed(Transform.move(x + lean, stage.low + tall - high * 0.02)).commands
    yield Stroked(snapped(stems), Pen(high * 0.007, darker(inks.near, 0.25)))
    yield Filled(snapped(heads), mixed(inks.accent, inks.near, 0.5))
    yield ground(stage, skyline(stage, 0.03, 0.02, 0.6, 7), darker(inks.near, 0.35))


def fish(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Shoals under water among weed, bubbles above them."""
    yield Filled.box(stage.area, inks.sky)
    high = stage.high
    for share, tone in ((0.5, 0.12), (0.36, 0.26), (0.2, 0.42)):
        yield ground(stage, skyline(stage, share, 0.012, 0.5, 3 + round(share * 10)),
                     mixed(inks.sky, inks.far, tone * 1.6))  # fmt: skip
    weed = Commands()
    for x, chance in along(stage, high * 0.07, 20):
        for number in range(int(4 + 5 * chance.random())):
            leaf = petal(high * 0.07, high * 0.022, (-1) ** number * 34)
            sway = high * 0.02 * sin(number + 6 * chance.random())
            weed += leaf.transformed(Transform.move(x + sway, stage.low + high * 0.034 * number)).commands
    yield Filled(snapped(weed), layered(inks, 0.7))
    bodies = {inks.light: Commands(), inks.accent: Commands()}
    eyes, gills, foam = Commands(), Commands(), Commands()
    for row in range(5):
        for x, chance in along(stage, high * 0.3, 30 + row):
            size, y = high * (0.04 + 0.035 * chance.random()), stage.level(0.13 + 0.078 * row + 0.02 * chance.random())
            way = 1 if row % 2 else -1
            turned = Transform.stretch(way * size, size).moved(x, y)
            body = [*petal(2.0, 0.95, 90.0, -1.0).commands, *outlined((0, 0), 1.0, (0.75, 0.0), (1.35, 0.42),
                                                                      (1.2, 0.0), (1.35, -0.42))]  # fmt: skip
            bodies[inks.light if chance.random() < 0.5 else inks.accent] += (
                Path(tuple(body)).transformed(turned).commands
            )
            eyes += Path.circle(Point(x - way * size * 0.68, y + size * 0.08), size * 0.07).commands
            gills += Path((("M", -0.42, 0.26), ("C", -0.3, 0.1, -0.3, -0.1, -0.42, -0.26))).transformed(turned).commands
            foam += Path.circle(Point(x - way * size * 1.3, min(y + size, stage.level(0.56))), size * 0.1).commands
    for colour, commands in bodies.items():
        if commands:
            yield Filled(snapped(commands), colour)
    yield Stroked(snapped(gills), Pen(high * 0.004, darker(inks.near, 0.2)))
    yield Filled(snapped(eyes), darker(inks.near, 0.5))
    yield Filled(snapped(foam), mixed(inks.sky, inks.light, 0.7))
    yield ground(stage, skyline(stage, 0.03, 0.02, 0.6, 40), darker(inks.near, 0.2))


def moths(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Moths with eyes on their wings over night-flowering plants."""
    yield Filled.box(stage.area, inks.sky)
    high = stage.high
    yield ground(stage, skyline(stage, 0.3, 0.02, 1.0, 3), mixed(inks.sky, inks.far, 0.4))
    stems = Commands()
    for x, chance in along(stage, high * 0.06, 5):
        tall = high * (0.1 + 0.16 * chance.random())
        for side in (-1, 1):
            leaf = petal(tall, tall * 0.2, side * (8 + 22 * chance.random()))
            stems += leaf.transformed(Transform.move(x, stage.low - high * 0.02)).commands
    yield Filled(snapped(stems), layered(inks, 0.7))
    wings = {inks.light: Commands(), inks.accent: Commands()}
    under, eyes, bodies = Commands(), Commands(), Commands()
    for number, (x, chance) in enumerate(along(stage, high * 0.3, 6)):
        size, y = high * (0.07 + 0.06 * chance.random()), stage.level(0.3 + 0.15 * chance.random())
        size = min(size, (stage.level(0.58) - y) * 0.95)
        place = Transform.turn(chance.gauss(0, 16)).then(Transform.stretch(size, size)).then(Transform.move(x, y))
        upper = wings[inks.light if number % 2 else inks.accent]
        for side in (-1, 1):
            upper += petal(1.0, 0.75, side * 58).transformed(place).commands
            under += petal(0.72, 0.6, side * 112).transformed(place).commands
            spot = Path.circle(Point(side * 0.52, 0.32), 0.13).transformed(place)
            eyes += spot.commands
        bodies += petal(0.85, 0.2, 180, -0.3).transformed(place).commands
    yield Filled(snapped(under), mixed(inks.light, inks.near, 0.4))
    for colour, commands in wings.items():
        if commands:
            yield Filled(snapped(commands), colour)
    yield Filled(snapped([*eyes, *bodies]), darker(inks.near, 0.45))
    yield ground(stage, skyline(stage, 0.03, 0.02, 0.7, 9), darker(inks.near, 0.3))


def mushrooms(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Mushrooms among ferns on the floor of a wood."""
    yield Filled.box(stage.area, inks.sky)
    high = stage.high
    for number, (base, rise) in enumerate(((0.36, 0.05), (0.27, 0.04), (0.15, 0.025))):
        yield ground(
            stage, skyline(stage, base, rise, 0.9 - 0.2 * number, 2 + number), layered(inks, 0.05 + 0.2 * number)
        )
    ferns = Commands()
    for x, chance in along(stage, high * 0.11, 5):
        for turn in (-58, -30, 0, 30, 58):
            frond = petal(high * (0.13 + 0.05 * chance.random()), high * 0.03, turn + 8 * chance.gauss(0, 1))
            ferns += frond.transformed(Transform.move(x, stage.level(0.09))).commands
    yield Filled(snapped(ferns), layered(inks, 0.7))
    stems, caps, spots, gills = Commands(), Commands(), Commands(), Commands()
    for x, chance in along(stage, high * 0.2, 7):
        size, foot = high * (0.06 + 0.06 * chance.random()), stage.level(0.03 + 0.04 * chance.random())
        tall = size * (1.1 + 0.8 * chance.random())
        stems += outlined(
            (x, foot), 1.0, (-size * 0.24, 0), (size * 0.24, 0), (size * 0.14, tall), (-size * 0.14, tall)
        )
        brim = foot + tall
        caps += [("M", x - size, brim), ("C", x - size * 0.9, brim + size * 1.25, x + size * 0.9, brim + size * 1.25,
                  x + size, brim), ("C", x + size * 0.5, brim + size * 0.16, x - size * 0.5, brim + size * 0.16,
                                    x - size, brim), ("Z",)]  # fmt: skip
        gills += outlined((x, brim), size, (-0.98, 0), (0.98, 0), (0.3, -0.2), (-0.3, -0.2))
        for turn in range(5):
            far = size * (0.62 if turn % 2 else 0.34)
            at = Point(
                x + far * cos(pi * (0.12 + 0.19 * turn)),
                brim + size * 0.14 + far * 0.8 * sin(pi * (0.12 + 0.19 * turn)),
            )
            spots += Path.circle(at, size * (0.06 + 0.06 * chance.random())).commands
    yield Filled(snapped(stems), inks.light)
    yield Filled(snapped(gills), mixed(inks.light, inks.near, 0.4))
    yield Filled(snapped(caps), inks.accent)
    yield Filled(snapped(spots), lighter(inks.light, 0.3))
    yield ground(stage, skyline(stage, 0.035, 0.015, 0.5, 9), darker(inks.near, 0.3))


def poppies(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Poppies in corn under a wide sky, a track through it."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    high = stage.high
    yield ground(stage, skyline(stage, 0.31, 0.02, 1.3, 3), layered(inks, 0.15))
    yield Filled.box(Rect(stage.area.x, stage.area.y, stage.area.width, stage.level(0.28) - stage.area.y),
                     mixed(inks.light, inks.near, 0.32))  # fmt: skip
    track = outlined((stage.middle, stage.level(0.28)), high, (-0.008, 0), (0.008, 0), (0.1, -0.4), (-0.14, -0.4))
    yield Filled(snapped(track), mixed(inks.light, inks.near, 0.12))
    for row in range(5):
        size = high * (0.007 + 0.0085 * row)
        heads, stalks, hearts = Commands(), Commands(), Commands()
        for x, chance in along(stage, size * 4.2, 20 + row):
            y = stage.level(0.24 - 0.047 * row + 0.02 * chance.random())
            stalks += [("M", x, y), ("L", x + size * 0.4, y - size * 4)]
            for turn in (-60, 0, 60):
                leaf = petal(size * 1.25, size * 1.2, turn + 10 * chance.gauss(0, 1))
                heads += leaf.transformed(Transform.move(x, y - size * 0.3)).commands
            hearts += Path.circle(Point(x, y + size * 0.1), size * 0.3).commands
        yield Stroked(snapped(stalks), Pen(size * 0.22, darker(inks.near, 0.1)))
        yield Filled(snapped(heads), mixed(inks.accent, inks.sky, 0.28 - 0.07 * row))
        yield Filled(snapped(hearts), darker(inks.near, 0.5))
    yield ground(stage, skyline(stage, -0.01, 0.01, 0.5, 40), darker(inks.near, 0.2))
