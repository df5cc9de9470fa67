"""What goes places: a ship, a train, balloons, a biplane, kites; and a street with its lamps."""

from __future__ import annotations

from collections.abc import Iterator

from .....ground.art import Filled, Stroked
from .....ground.drawing import Pen
from .....ground.geometry import Path, Point, Rect, Transform
from ..ornament.ornaments import petal
from ..ornament.shapes import Commands, snapped
from ..tones import darker, mixed
from .stage import Inks, Mark, Stage, along, clouds, ground, layered, outlined, sky, skyline, water

__all__ = ["balloons", "biplane", "kites", "lamps", "ship", "train"]


def ship(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A ship under full sail on a long swell, gulls about her."""
    yield from sky(stage, inks)
    yield from clouds(stage, inks)
    yield from water(stage, 0.26, inks, 10)
    high, at = stage.high, Point(stage.middle, stage.level(0.15))
    hull: Commands = [("M", at.x - high * 0.25, at.y + high * 0.05), ("C", at.x - high * 0.2, at.y - high * 0.04,
                       at.x + high * 0.14, at.y - high * 0.04, at.x + high * 0.2, at.y + high * 0.03),
                      ("L", at.x + high * 0.32, at.y + high * 0.085), ("L", at.x - high * 0.22, at.y + high * 0.045),
                      ("Z",)]  # fmt: skip
    masts, sails, shades = Commands(), Commands(), Commands()
    for x, tall in ((-0.15, 0.29), (0.0, 0.36), (0.12, 0.3)):
        masts += outlined(at, high, (x - 0.004, 0.02), (x + 0.004, 0.02), (x + 0.002, tall + 0.04),
                          (x - 0.002, tall + 0.04))  # fmt: skip
        for row, (low, top) in enumerate(((0.07, 0.42), (0.45, 0.72), (0.75, 1.0))):
            wide = 0.062 - 0.012 * row
            foot, head = at.y + high * (0.04 + tall * low), at.y + high * (0.04 + tall * top)
            left, right, belly = at.x + high * (x - wide), at.x + high * (x + wide), high * 0.016
            sails += [("M", left, foot), ("C", left - belly, foot + belly, left - belly, head - belly, left, head),
                      ("L", right - belly, head), ("L", right, foot), ("Z",)]  # fmt: skip
            shades += outlined((right, foot), 1.0, (0, 0), (-belly, head - foot), (-3 * belly, head - foot),
                               (-1.2 * belly, 0))  # fmt: skip
    jib = outlined(at, high, (0.31, 0.085), (0.15, 0.09), (0.14, 0.27))
    yield Filled(snapped(masts), darker(inks.near, 0.4))
    yield Filled(snapped([*sails, *jib]), inks.light)
    yield Filled(snapped(shades), mixed(inks.light, inks.near, 0.22))
    yield Filled(snapped(hull), darker(inks.near, 0.4))
    for number, base in enumerate((0.12, 0.04)):
        yield ground(stage, skyline(stage, base, 0.014, 0.34 - 0.08 * number, 30 + number),
                     mixed(mixed(inks.sky, inks.far, 0.6), inks.near, 0.35 + 0.3 * number))  # fmt: skip
    yield _gulls(stage, inks)


def _gulls(stage: Stage, inks: Inks) -> Mark:
    wings = Commands()
    for x, chance in along(stage, stage.high * 0.3, 40):
        size, y = stage.high * (0.014 + 0.012 * chance.random()), stage.level(0.34 + 0.16 * chance.random())
        wings += [("M", x - size, y + size * 0.2), ("C", x - size * 0.6, y + size * 0.7, x - size * 0.2, y + size * 0.4,
                   x, y), ("C", x + size * 0.2, y + size * 0.4, x + size * 0.6, y + size * 0.7, x + size,
                   y + size * 0.2)]  # fmt: skip
    return Stroked(snapped(wings), Pen(stage.high * 0.006, inks.light))


def train(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A train of one engine and many coaches on an embankment, its steam blown back."""
    yield from sky(stage, inks)
    for number, (base, rise) in enumerate(((0.33, 0.04), (0.26, 0.03))):
        yield ground(stage, skyline(stage, base, rise, 1.2, 3 + number), layered(inks, 0.05 + 0.3 * number))
    high, level = stage.high, stage.level(0.17)
    front = stage.middle + high * 0.2
    steam = Commands()
    for number in range(9):
        chance = stage.chance(20, number)
        spot = Point(front - high * (0.045 + 0.075 * number), level + high * (0.16 + 0.018 * number))
        steam += Path.circle(spot, high * (0.018 + 0.005 * number) * (0.85 + 0.3 * chance.random())).commands
    yield Filled(snapped(steam), mixed(inks.sky, inks.light, 0.6))
    coaches, panes, wheels = Commands(), Commands(), Commands()
    for number in range(1, 12):
        x = front - high * (0.1 + 0.27 * number)
        coaches += Path.rectangle(Rect(x, level + high * 0.02, high * 0.25, high * 0.085)).commands
        for pane in range(5):
            panes += Path.rectangle(Rect(x + high * (0.02 + 0.046 * pane), level + high * 0.06, high * 0.028,
                                         high * 0.025)).commands  # fmt: skip
        for off in (0.05, 0.2):
            wheels += Path.circle(Point(x + high * off, level + high * 0.014), high * 0.014).commands
    yield Filled(snapped(coaches), inks.accent)
    yield Filled(snapped(panes), inks.light)
    engine = outlined((front, level), high, (-0.1, 0.02), (0.17, 0.02), (0.2, 0.0), (0.2, 0.03), (0.16, 0.045),
                      (0.16, 0.085), (0.13, 0.085), (0.13, 0.13), (0.105, 0.13), (0.105, 0.085), (0.0, 0.085),
                      (0.0, 0.12), (-0.09, 0.12), (-0.09, 0.02))  # fmt: skip
    for x in (-0.05, 0.02, 0.075, 0.13):
        wheels += Path.circle(
            Point(front + high * x, level + high * 0.02), high * (0.02 if x < 0.1 else 0.013)
        ).commands
    yield Filled(snapped([*engine, *wheels]), darker(inks.near, 0.45))
    area = stage.area
    yield Filled.box(Rect(area.x, level - high * 0.012, area.width, high * 0.012), darker(inks.near, 0.3))
    yield ground(stage, lambda _: level - high * 0.01, layered(inks, 0.8))
    yield ground(stage, skyline(stage, 0.06, 0.03, 0.7, 7), darker(inks.near, 0.2))


def balloons(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Balloons with striped envelopes over fields."""
    yield from sky(stage, inks)
    for number, (base, rise) in enumerate(((0.2, 0.03), (0.13, 0.03), (0.05, 0.025))):
        yield ground(stage, skyline(stage, base, rise, 1.0, 3 + number), layered(inks, 0.1 + 0.4 * number))
    high = stage.high
    skins, stripes, baskets = {inks.light: Commands(), inks.accent: Commands()}, Commands(), Commands()
    for number, (aside, up, size) in enumerate(((0.0, 0.4, 0.11), (-0.34, 0.46, 0.06), (0.42, 0.33, 0.075),
                                                (-0.9, 0.37, 0.08), (-1.4, 0.46, 0.05))):  # fmt: skip
        at = Point(stage.middle + high * aside, stage.level(up))
        skin = skins[inks.accent if number % 2 else inks.light]
        for wide, into in ((1.0, skin), (0.36, stripes)):
            r = high * size
            into += [("M", at.x - r * 0.2 * wide, at.y - r * 1.1),
                     ("C", at.x - r * 1.7 * wide, at.y + r * 0.3, at.x - r * 1.1 * wide, at.y + r, at.x, at.y + r),
                     ("C", at.x + r * 1.1 * wide, at.y + r, at.x + r * 1.7 * wide, at.y + r * 0.3,
                      at.x + r * 0.2 * wide, at.y - r * 1.1), ("Z",)]  # fmt: skip
        baskets += outlined(at, high * size, (-0.17, -1.55), (0.17, -1.55), (0.2, -1.3), (-0.2, -1.3))
        for way in (-1, 1):
            baskets += outlined(at, high * size, (0.17 * way, -1.3), (0.2 * way, -1.08), (0.16 * way, -1.08),
                                (0.13 * way, -1.3))  # fmt: skip
    for colour, commands in skins.items():
        yield Filled(snapped(commands), colour)
    yield Filled(snapped(stripes), mixed(inks.accent, inks.near, 0.45))
    yield Filled(snapped(baskets), darker(inks.near, 0.3))


def biplane(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A biplane over clouds and the corners of fields."""
    yield from sky(stage, inks)
    high = stage.high
    for number, (base, rise) in enumerate(((0.24, 0.02), (0.16, 0.03), (0.07, 0.03))):
        yield ground(stage, skyline(stage, base, rise, 1.4 - 0.3 * number, 3 + number),
                     layered(inks, 0.1 + 0.35 * number))  # fmt: skip
    puffs = Commands()
    for x, chance in along(stage, high * 0.3, 10):
        for _ in range(4):
            spot = Point(x + high * 0.07 * chance.gauss(0, 1), stage.level(0.27) + high * 0.02 * chance.random())
            puffs += Path.circle(spot, high * (0.025 + 0.03 * chance.random())).commands
    yield Filled(snapped(puffs), mixed(inks.sky, inks.light, 0.55))
    at = Point(stage.middle, stage.level(0.43))
    body = outlined(at, high, (-0.2, 0.0), (-0.22, 0.06), (-0.185, 0.06), (-0.16, 0.02), (0.06, 0.035), (0.12, 0.02),
                    (0.12, -0.02), (0.04, -0.035), (-0.1, -0.015))  # fmt: skip
    wings = [*outlined(at, high, (-0.03, 0.09), (0.14, 0.09), (0.145, 0.075), (-0.03, 0.075)),
             *outlined(at, high, (-0.05, -0.05), (0.11, -0.05), (0.115, -0.065), (-0.05, -0.065))]  # fmt: skip
    struts = [("M", at.x + high * x, at.y - high * 0.055) for x in (0.0, 0.09)]
    lines = Commands()
    for start, x in zip(struts, (0.02, 0.11), strict=True):
        lines += [start, ("L", at.x + high * x, at.y + high * 0.08)]
    lines += [("M", at.x + high * 0.13, at.y - high * 0.055), ("L", at.x + high * 0.13, at.y + high * 0.055)]
    yield Stroked(snapped(lines), Pen(high * 0.007, darker(inks.near, 0.35)))
    yield Filled(snapped(body), inks.accent)
    yield Filled(snapped(wings), inks.light)
    wheel = Path.circle(Point(at.x + high * 0.05, at.y - high * 0.085), high * 0.018)
    yield Filled(wheel, darker(inks.near, 0.35))


def kites(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Kites over a beach, their tails behind them."""
    yield from sky(stage, inks)
    high = stage.high
    yield from water(stage, 0.26, inks, 10)
    yield ground(stage, skyline(stage, 0.13, 0.02, 1.0, 4), mixed(inks.light, inks.near, 0.15))
    kite = {inks.accent: Commands(), inks.light: Commands(), inks.near: Commands()}
    tails = Commands()
    for number, (x, chance) in enumerate(along(stage, high * 0.27, 5)):
        size, y = high * (0.045 + 0.03 * chance.random()), stage.level(0.36 + 0.14 * chance.random())
        colour = tuple(kite)[int(chance.random() * 3)]
        kite[colour] += outlined((x, y), size, (0, 1), (0.62, 0.25), (0.1, -1), (-0.55, 0.1))
        tails += [("M", x + size * 0.1, y - size), ("C", x + size * 0.9, y - size * 1.6, x - size * 0.6, y - size * 2.1,
                   x + size * 0.2, y - size * (2.6 + 0.1 * (number % 2)))]  # fmt: skip
    yield Stroked(snapped(tails), Pen(high * 0.006, darker(inks.near, 0.2)))
    for colour, commands in kite.items():
        if commands:
            yield Filled(snapped(commands), colour)
    dune = skyline(stage, 0.05, 0.03, 0.7, 7)
    yield ground(stage, dune, mixed(inks.accent, inks.near, 0.5))
    grass = Commands()
    for x, chance in along(stage, high * 0.03, 8):
        tall = high * (0.03 + 0.04 * chance.random())
        grass += (
            petal(tall, tall * 0.16, chance.gauss(0, 16)).transformed(Transform.move(x, dune(x) - tall * 0.2)).commands
        )
    yield Filled(snapped(grass), darker(inks.near, 0.3))


def lamps(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """A wet street by night: lamps in a row, house fronts behind, the light of both on the ground."""
    yield from sky(stage, inks)
    high, kerb = stage.high, stage.level(0.14)
    fronts, lit = Commands(), Commands()
    for x, chance in along(stage, high * 0.13, 3):
        tall = high * (0.2 + 0.14 * chance.random())
        fronts += Path.rectangle(Rect(x, kerb, high * 0.16, tall)).commands
        fronts += outlined((x, kerb + tall), high, (-0.006, 0), (0.166, 0), (0.15, 0.035), (0.02, 0.035))
        for row in range(int(tall / (high * 0.07))):
            for column in range(3):
                if chance.random() < 0.4:
                    lit += Path.rectangle(Rect(x + high * (0.02 + 0.048 * column), kerb + high * (0.025 + 0.07 * row),
                                               high * 0.022, high * 0.034)).commands  # fmt: skip
    yield Filled(snapped(fronts), layered(inks, 0.55))
    yield Filled(snapped(lit), mixed(inks.accent, inks.light, 0.5))
    yield ground(stage, lambda _: kerb, darker(inks.near, 0.3))
    posts, globes, haloes, wet = Commands(), Commands(), Commands(), Commands()
    for x, _ in along(stage, high * 0.36, 6):
        posts += outlined((x, kerb - high * 0.04), high, (-0.02, 0), (0.02, 0), (0.007, 0.03), (0.005, 0.27),
                          (-0.005, 0.27), (-0.007, 0.03))  # fmt: skip
        posts += outlined((x, kerb + high * 0.26), high, (-0.025, 0.018), (0.025, 0.018), (0, 0.05))
        globes += outlined((x, kerb + high * 0.22), high, (-0.012, 0), (0.012, 0), (0.022, 0.058), (-0.022, 0.058))
        haloes += Path.circle(Point(x, kerb + high * 0.25), high * 0.075).commands
        for row in range(5):
            wide = high * (0.02 + 0.008 * row)
            wet += Path.rectangle(Rect(x - wide, kerb - high * (0.05 + 0.018 * row), 2 * wide, high * 0.006)).commands
    yield Filled(snapped(haloes), mixed(layered(inks, 0.55), inks.light, 0.3))
    yield Filled(snapped(posts), darker(inks.near, 0.6))
    yield Filled(snapped(globes), inks.light)
    yield Filled(snapped(wet), mixed(inks.near, inks.light, 0.5))
