"""The stage of a small landscape: its inks, its measures, and skylines and things that stand along it.

A stage goes on for ever to left and right: what stands at an x hangs on that x and on the seed alone, so that the
spines of a set show neighbouring parts of one landscape, and a cover runs on without a seam.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import floor, pi, sin
from random import Random

from .....ground.art import Filled, Stroked
from .....ground.drawing import Colour, contrast, luminance
from .....ground.geometry import Path, Point, Rect, polygon
from ..ornament.shapes import Commands, snapped
from ..tones import mixed

__all__ = [
    "Height",
    "Inks",
    "Mark",
    "Stage",
    "along",
    "clouds",
    "ground",
    "layered",
    "outlined",
    "paling",
    "ridge",
    "sky",
    "skyline",
    "sun",
    "water",
]

Mark = Filled | Stroked
"""What landscapes are drawn of: flat shapes and lines."""

Height = Callable[[float], float]
"""A height for every x."""


SHINING = 1.8
"""A sun has at least this contrast to the sky."""


@dataclass(frozen=True, slots=True)
class Inks:
    """The few inks of a poster: sky; land far off and near; light; and one that is used sparingly."""

    sky: Colour
    far: Colour
    near: Colour
    light: Colour
    accent: Colour

    def through(self, change: Callable[[Colour], Colour]) -> Inks:
        """The inks, each changed."""
        return Inks(*(change(ink) for ink in (self.sky, self.far, self.near, self.light, self.accent)))


@dataclass(frozen=True, slots=True)
class Stage:
    """Where a landscape is drawn, in mm.

    `area` is all that is inked; `low` and `high` are foot and height of what is looked at, `middle` the x of the
    thing to look at; `origin` the x from which the landscape counts, `seed` what it grows from. Above the share
    `clear` of the height the sky stays plain, for titling. What is drawn is `enlarged` so many times, the sky is not.
    """

    area: Rect
    low: float
    high: float
    middle: float
    origin: float
    seed: int
    clear: float = 0.58
    enlarged: float = 1.0

    def level(self, share: float) -> float:
        """A height on the stage."""
        return self.low + self.high * share

    def chance(self, salt: int, cell: int = 0) -> Random:
        """The chance of one thing on the stage, or of one cell of its length."""
        return Random(self.seed * 1_000_003 + salt * 10_007 + cell)


def along(stage: Stage, step: float, salt: int) -> Iterator[tuple[float, Random]]:
    """Places about `step` mm apart, each with its own chance."""
    first = floor((stage.area.x - stage.origin) / step) - 1
    last = floor((stage.area.right - stage.origin) / step) + 1
    for cell in range(first, last + 1):
        chance = stage.chance(salt, cell)
        yield stage.origin + step * (cell + 0.25 + 0.5 * chance.random()), chance


def outlined(at: tuple[float, float], size: float, *points: tuple[float, float]) -> Commands:
    """A shape of straight edges about a place: its points are in shares of `size`."""
    return list(polygon([Point(at[0] + size * x, at[1] + size * y) for x, y in points]).commands)


def skyline(stage: Stage, base: float, rise: float, length: float, salt: int) -> Height:
    """A rolling line about the share `base` of the height; `rise` is a share too, `length` that of its waves."""
    chance = stage.chance(salt)
    waves = [(length * stage.high * part, chance.random() * 2 * pi, high) for part, high in
             ((1.0, 1.0), (0.43, 0.42), (0.17, 0.12))]  # fmt: skip

    def height(x: float) -> float:
        at = x - stage.origin
        return stage.level(base) + rise * stage.high * sum(
            high * sin(2 * pi * at / wave + turn) for wave, turn, high in waves
        )

    return height


def ridge(stage: Stage, line: Height, step: float = 0.5) -> Path:
    """What lies under a skyline, down to the edge of the ink, as one outline with smooth points `step` mm apart."""
    area = stage.area
    count = max(8, round(area.width / step))
    points = [(x, line(x)) for x in (area.x + area.width * number / count for number in range(count + 1))]
    outline: Commands = [("L", *point) for point in points]
    return snapped([("M", area.x, area.y), *outline, ("L", area.right, area.y), ("Z",)])


def ground(stage: Stage, line: Height, colour: Colour) -> Filled:
    """Land under a skyline."""
    return Filled(ridge(stage, line), colour)


def layered(inks: Inks, share: float) -> Colour:
    """The tone of a layer of land: 0 far off, 1 near."""
    return mixed(inks.far, inks.near, share)


PALING = ((0.5, 0.05), (0.45, 0.1), (0.405, 0.16), (0.365, 0.23), (0.33, 0.3))
"""The steps in which a sky pales: below which share of the height, and how far it goes to the light."""


def sky(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Plain above, where titling stands; paler in steps towards the horizon."""
    yield Filled.box(stage.area, inks.sky)
    for (share, _), tone in zip(PALING, paling(inks), strict=True):
        line = skyline(stage, share / stage.enlarged, 0.006, 1.6, 90 + round(share * 100))
        yield Filled(ridge(stage, line, 1.6), tone)


def paling(inks: Inks) -> tuple[Colour, ...]:
    """The tones of a sky under its plain part."""
    return tuple(mixed(inks.sky, inks.light, pale) for _, pale in PALING)


def sun(stage: Stage, inks: Inks, share: float, size: float, colour: Colour | None = None) -> Iterator[Mark]:
    """A disc with two haloes, no higher than the sky is plain; `size` is its radius as a share of the height."""
    at = Point(stage.middle, stage.level(min(share, stage.clear - 1.6 * size)))
    radius = stage.high * size
    if at.x + 2 * radius < stage.area.x or at.x - 2 * radius > stage.area.right:
        return
    brighter = colour and luminance(colour) > luminance(inks.sky) and contrast(colour, inks.sky) > SHINING
    disc = colour if colour and brighter else inks.light
    for far, pale in ((1.6, 0.2), (1.27, 0.42)):
        yield Filled(Path.circle(at, radius * far), mixed(inks.sky, disc, pale))
    yield Filled(Path.circle(at, radius), disc)


def clouds(stage: Stage, inks: Inks) -> Iterator[Mark]:
    """Banks of cloud with level feet, low enough to leave the sky plain for titling."""
    banks: Commands = []
    for x, chance in along(stage, stage.high * 0.34, 80):
        long, y = stage.high * (0.05 + 0.09 * chance.random()), stage.level(stage.clear - 0.03 - 0.1 * chance.random())
        for part, up, size in ((-0.45, 0.0, 0.5), (0.1, 0.012, 0.62), (0.55, 0.0, 0.4)):
            left, right, foot = x + long * (part - size), x + long * (part + size), y + stage.high * up * 0.4
            high = stage.high * (0.016 + up) * (0.7 + 0.5 * chance.random())
            banks += [("M", left, foot), ("L", right, foot),
                      ("C", right - long * 0.1, foot + high * 1.4, left + long * 0.1, foot + high * 1.4, left, foot),
                      ("Z",)]  # fmt: skip
    yield Filled(snapped(banks), mixed(inks.sky, inks.light, 0.2))


def water(stage: Stage, horizon: float, inks: Inks, salt: int) -> Iterator[Mark]:
    """Water from a horizon down, darker towards the foot, with glints that grow longer and rarer."""
    area, top = stage.area, stage.level(horizon)
    yield Filled.box(Rect(area.x, area.y, area.width, top - area.y), mixed(inks.sky, inks.far, 0.5))
    for number, share in enumerate((0.7, 0.42, 0.2)):
        line = skyline(stage, horizon * share, 0.008, 0.5 - 0.1 * number, salt + number)
        yield ground(stage, line, mixed(mixed(inks.sky, inks.far, 0.6), inks.near, 0.16 + 0.22 * number))
    glints: Commands = []
    for row in range(9):
        deep = horizon * (0.96 - 0.1 * row)
        for x, chance in along(stage, stage.high * (0.07 + 0.02 * row), salt + 20 + row):
            near = abs(x - stage.middle) < stage.high * (0.1 + 0.012 * row)
            if chance.random() < (0.9 if near else 0.16):
                long, y = stage.high * (0.02 + 0.006 * row) * (0.5 + chance.random()), stage.level(deep)
                high = stage.high * 0.004
                glint = [Point(x - long, y), Point(x, y + high), Point(x + long, y), Point(x, y - high)]
                glints += polygon(glint).commands
    yield Filled(snapped(glints), mixed(inks.sky, inks.light, 0.75))
