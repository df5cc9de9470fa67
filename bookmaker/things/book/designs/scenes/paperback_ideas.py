"""What modern paperbacks show: ideas of plain shapes in few inks, each another way to share out a cover.

An idea keeps below the `top` of its field over the spine, where the words stand, and on the front keeps out of
what lies above it, but for the edges.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import cos, floor, pi, sin
from random import Random

from .....ground.art import Filled, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Point, Rect, Transform, polygon
from ..ornament.fleurons import FLEURONS
from ..ornament.ornaments import petal
from ..ornament.shapes import Commands, gathered, rounded, snapped

__all__ = ["BOLD_IDEAS", "IDEAS", "Field", "Idea"]


@dataclass(frozen=True, slots=True)
class Field:
    """Where an idea is drawn: all that is inked; foot and height of the book; the y under which it stays; the front
    and the spine; and what its chance grows from.
    """

    whole: Rect
    level: Rect
    top: float
    front: Rect
    spine: Rect | None
    seed: int

    @property
    def high(self) -> float:
        """From the foot of the book to the top of the field, in mm."""
        return self.top - self.level.y

    @property
    def chance(self) -> Random:
        """The same chance each time."""
        return Random(self.seed)

    def steps(self, step: float) -> Iterator[float]:
        """Places along the whole cover, `step` mm apart, one of them in the middle of the front."""
        middle = self.front.centre.x
        for place in range(floor((self.whole.x - middle) / step) - 1, floor((self.whole.right - middle) / step) + 2):
            yield middle + place * step


Idea = Callable[[Field, Sequence[Colour]], Iterator[Art]]


def stripes(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """Five level stripes of unequal height at the foot."""
    chance, whole = field.chance, field.whole
    heights = [0.15 + chance.random() ** 1.6 for _ in range(5)]
    y, scale = whole.y, field.high / sum(heights)
    for number in range(len(heights)):
        upper = field.level.y + scale * sum(heights[: number + 1])
        yield Filled.box(Rect(whole.x, y, whole.width, upper - y), inks[number % len(inks)])
        y = upper


def blocks(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """Upright blocks side by side, each of its own width and height, some with a cap."""
    chance = field.chance
    x, last = field.whole.x, -1
    while x < field.whole.right:
        wide = field.high * (0.18 + 0.5 * chance.random())
        pick = int(chance.random() * len(inks))
        last = pick = (pick + 1) % len(inks) if pick == last else pick
        tall = field.high * (0.35 + 0.65 * chance.random())
        yield Filled.box(Rect(x, field.whole.y, wide + 0.02, field.level.y + tall - field.whole.y), inks[pick])
        if chance.random() < 0.45:
            cap = field.high * 0.09
            yield Filled.box(Rect(x, field.level.y + tall - cap, wide + 0.02, cap), inks[(pick + 1) % len(inks)])
        x += wide


def slopes(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """Long wedges that cross the cover, rising towards either side."""
    whole, chance = field.whole, field.chance
    for number, ink in enumerate(reversed(inks)):
        left, right = (field.high * (1.0 - 0.23 * number) * (0.15 + 0.85 * chance.random()) for _ in range(2))
        if number % 2:
            left, right = max(left, right), min(left, right) * 0.4
        else:
            left, right = min(left, right) * 0.4, max(left, right)
        low = field.level.y
        yield Filled(polygon([Point(whole.x, whole.y), Point(whole.right, whole.y), Point(whole.right, low + right),
                             Point(whole.x, low + left)]), ink)  # fmt: skip


def arches(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """Arches within arches, side by side, standing on the foot."""
    step = field.high * 0.92
    base = field.level.y + field.high * 0.28
    for number, ink in enumerate(inks):
        radius = step * (0.5 - 0.12 * number)
        if radius <= 0:
            break
        outline = gathered(_arch(x, field.whole.y, base, radius) for x in field.steps(step))
        yield Filled(snapped(outline.commands), ink)


def _arch(x: float, low: float, spring: float, radius: float) -> Path:
    h = radius * 0.5523
    return Path((("M", x - radius, low), ("L", x + radius, low), ("L", x + radius, spring),
                 ("C", x + radius, spring + h, x + h, spring + radius, x, spring + radius),
                 ("C", x - h, spring + radius, x - radius, spring + h, x - radius, spring), ("Z",)))  # fmt: skip


def scales(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """Rows of overlapping scales, a colour a row."""
    step = field.high * 0.3
    rows = int((field.top - field.whole.y) / (step * 0.5))
    for row in range(rows):
        y = field.top - step * 0.5 * (row + 1)
        shift = step / 2 * (row % 2)
        discs = gathered(Path.circle(Point(x + shift, y), step * 0.5) for x in field.steps(step))
        dots = gathered(Path.circle(Point(x + shift, y), step * 0.2) for x in field.steps(step))
        yield Filled(snapped(discs.commands), inks[row % len(inks)])
        yield Filled(snapped(dots.commands), inks[(row + 1) % len(inks)])
    foot = field.top - step * 0.5 * rows
    yield Filled.box(Rect(field.whole.x, field.whole.y, field.whole.width, max(0.0, foot - field.whole.y)), inks[0])


def rays(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """A half sun on the front's foot, its rays going out in two inks; a plain foot runs round the book."""
    at = Point(field.front.centre.x, field.level.y)
    reach = min(field.high, field.front.width * 0.46)
    for number in range(18):
        if number % 2:
            continue
        turns = [pi * (number + part) / 18 for part in (0.1, 0.9)]
        yield Filled(polygon([at, *(at.plus(reach * cos(turn), reach * sin(turn)) for turn in turns)]),
                    inks[number // 2 % 2 if len(inks) > 1 else 0])  # fmt: skip
    yield Filled(Path.circle(at, reach * 0.42), inks[-2])
    foot = field.level.y + field.high * 0.16
    yield Filled.box(Rect(field.whole.x, field.whole.y, field.whole.width, foot - field.whole.y), inks[0])


def vignette(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """One motif alone on the front, a small one on the spine."""
    motif = tuple(FLEURONS.values())[int(field.chance.random() * len(FLEURONS))]
    at = Point(field.front.centre.x, field.level.y + field.high * 0.55)
    side = min(field.front.width * 0.56, field.high * 0.95)
    yield Filled(Path.circle(at, side * 0.5), inks[0])
    yield Filled(motif.transformed(Transform.stretch(side * 0.74, side * 0.74).moved(*at)), inks[1])
    if field.spine:
        small = min(field.spine.width * 0.62, field.high * 0.4)
        beside = Point(field.spine.centre.x, at.y)
        yield Filled(Path.circle(beside, small * 0.5), inks[0])
        yield Filled(motif.transformed(Transform.stretch(small * 0.74, small * 0.74).moved(*beside)), inks[1])


def leaves(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """Large leaves fanned out from the foot all along the cover."""
    step = field.high * 0.75
    for number, (ink, turns) in enumerate(zip(inks, ((-62, 62), (-36, 36), (0,), (-14, 14)), strict=False)):
        fan: Commands = []
        for x in field.steps(step):
            for turn in turns:
                long = field.high * (0.98 if turn == 0 else 0.92 if abs(turn) < 20 else 0.86)
                leaf = petal(1.0, 0.26, float(turn)).transformed(Transform.stretch(long, long))
                fan += leaf.transformed(Transform.move(x, field.level.y)).commands
        yield Filled(snapped(fan), ink)
        if number == 0:
            foot = field.level.y + field.high * 0.1
            yield Filled.box(Rect(field.whole.x, field.whole.y, field.whole.width, foot - field.whole.y), ink)


def lines(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """Contours: waves one over the other, from calm to steep."""
    chance, whole = field.chance, field.whole
    turn, wave = chance.random() * 2 * pi, field.front.width * (0.5 + 0.6 * chance.random())
    count = max(10, round(whole.width / 0.7))
    for number in range(9):
        share = (number + 0.5) / 9
        base, rise = field.level.y + field.high * share * 0.86, field.high * 0.12 * share
        points = [(x, base + rise * sin(2 * pi * (x - field.front.x) / wave + turn + number * 0.35))
                  for x in (whole.x + whole.width * step / count for step in range(count + 1))]  # fmt: skip
        first, *rest = points
        yield Stroked(snapped([("M", *first), *(("L", *point) for point in rest)]),
                   Pen(field.high * 0.034, inks[number % 2 if len(inks) > 1 else 0]))  # fmt: skip


def tickets(field: Field, inks: Sequence[Colour]) -> Iterator[Art]:
    """Rounded tiles in two rows or more, one colour running into the next."""
    step = min(field.high * 0.5, field.front.width * 0.34)
    for row in range(int(field.high / step + 1e-6)):
        for number, x in enumerate(field.steps(step)):
            y = field.top - step * (row + 1)
            tile = Rect(x - step * 0.46, y + step * 0.04, step * 0.92, step * 0.92)
            turns = Random(field.seed + number * 7 + row)
            yield Filled(rounded(tile, step * (0.12 if turns.random() < 0.5 else 0.46)),
                        inks[int(turns.random() * len(inks))])  # fmt: skip


IDEAS: Sequence[Idea] = (stripes, blocks, slopes, arches, scales, rays, vignette, leaves, lines, tickets)

BOLD_IDEAS: Sequence[Idea] = (blocks, slopes, arches, scales, leaves, lines, tickets)
"""Those that may fill a whole side."""
