"""Marbled paper, each kind made as marblers make it: colours float on a bath, and combs and pins are drawn through.

The colours lie in long streaks, as the first rake leaves them, in a narrow column of the sheet that repeats from edge
to edge, as the teeth of a comb do. At 1:12 the teeth of a fine comb, 3 to 4 mm apart, are 0.25 to 0.33 mm apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from math import ceil, cos, hypot, pi, sin
from random import Random
from typing import Literal

from .....ground.art import Filled, Group, Repeated
from .....ground.drawing import Art, Colour
from .....ground.geometry import Path, Point, Rect, polygon
from ...bath import BATH, floating
from ..chance import one_of
from ..ornament.shapes import gathered, snapped
from ..tones import darker
from .combs import Pass, after, combed, curled, raked, waved

__all__ = ["MARBLINGS", "Marbling", "marbled"]

CombedKind = Literal["gelgit", "nonpareil", "feather", "bouquet", "curl"]
Marbling = Literal["stone", "Spanish wave"] | CombedKind

STONES = 0.42
"""A sheet is so much finer than a bath in which books are dipped."""

DROPS, DROPS_SHAKEN = (150, 0.62, 0.3), (70, 0.85, 0.42)
"""How many drops a bath has, and the radii of the first and of the last in mm, before that."""

BATHS = 3
"""So many baths of each kind are made; every sheet has its own colours, and begins elsewhere."""

LOTS, LOTS_SHAKEN, APART = 8, 4, 0.618
"""The drops fall in so many lots, one turned from the next by that share of a right angle: the bath of each repeats,
all of them together do not. No two lots are turned alike, as multiples of the golden section never come together."""

HIGH = 5.4
"""The colours of a column begin anew after so many mm."""

STREAK = (0.05, 0.2)
"""How high a streak of colour is, in mm."""

DRIFT = 0.1
"""Columns lie so far up or down, in mm, as the hand of the marbler wanders."""

STEP, TRUE = 0.02, 0.006
"""The edge of a streak is followed in such steps, and drawn so true, in mm."""


@dataclass(frozen=True, slots=True)
class Combed:
    """A combed pattern: how wide the column that repeats is, and the passes in order."""

    wide: float
    passes: tuple[Pass, ...]


TOOTH = 0.29
NONPAREIL = combed(TOOTH, 0.34)

COMBED: Mapping[CombedKind, Combed] = {
    "gelgit": Combed(5 * TOOTH, (raked(2.5 * TOOTH, 0.9),)),
    "nonpareil": Combed(5 * TOOTH, (NONPAREIL,)),
    "feather": Combed(3.2 * TOOTH, (raked(1.6 * TOOTH, 0.85), combed(0.8 * TOOTH, 0.12, 0.3))),
    "bouquet": Combed(6 * TOOTH, (NONPAREIL, waved(6 * TOOTH, HIGH / 3, 0.55))),
    "curl": Combed(6 * TOOTH, (NONPAREIL, curled(Point(6 * TOOTH, HIGH / 4), 0.86, 1.3))),
}
MARBLINGS: Sequence[Marbling] = ("stone", "Spanish wave", *COMBED)


def marbled(area: Rect, bath: Sequence[Colour], chance: Random, kind: Marbling | None = None) -> Iterator[Art]:
    """Fill an area; `bath` are the colours, the lightest last. The kind is left to chance, if none is named."""
    chosen = kind if kind is not None else one_of(MARBLINGS, chance)
    if chosen == "stone":
        return _stones(area, bath, chance)
    return _shaken(area, bath, chance) if chosen == "Spanish wave" else _combed(area, bath, chance, chosen)


def _stones(area: Rect, bath: Sequence[Colour], chance: Random) -> Iterator[Art]:
    """Drops as they fell: the first colours drawn out to veins, the last in round spots between them."""
    veins, *paints = _in_order_of_fall(bath, chance)
    yield Filled.box(area, veins)
    yield from _drops(area, paints, chance, DROPS, LOTS)


def _drops(
    area: Rect, paints: Sequence[Colour], chance: Random, drops: tuple[int, float, float], count: int
) -> Iterator[Repeated]:
    """Drops of all colours, one after the other, in lots that each repeat in a direction of their own."""
    outlines = floating(f"sheet {int(chance.random() * BATHS)}", *drops, 10)
    lots: list[list[Filled]] = [[] for _ in range(count)]
    for number, outline in enumerate(outlines):
        turn = int((number / len(outlines)) ** 0.8 * len(paints) + 0.5 * chance.random())
        path = polygon([Point(x * STONES, y * STONES) for x, y in outline])
        lots[number * count // len(outlines)].append(Filled(snapped(path.commands), paints[min(turn, len(paints) - 1)]))
    first = chance.random()
    for number, lot in enumerate(lots):
        turned = (first + number * APART) % 1 * pi / 2
        yield Repeated(tuple(lot), tuple(_places(area, BATH * STONES, turned, chance)))


def _places(area: Rect, side: float, turned: float, chance: Random) -> Iterator[Point]:
    """The corners of a net of squares that was turned, wherever a bath that begins there reaches into an area."""
    reach = area.grown(side * 1.1, side * 1.1, side * 0.1, side * 0.1)
    dx, dy = side * cos(turned), side * sin(turned)
    middle = reach.centre.plus(side * chance.random(), side * chance.random())
    far = ceil(hypot(reach.width, reach.height) / 2 / side) + 1
    for row in range(-far, far + 1):
        for column in range(-far, far + 1):
            place = middle.plus(column * dx - row * dy, column * dy + row * dx)
            if reach.contains(Rect(*place, 0.0, 0.0)):
                yield place


def _in_order_of_fall(bath: Sequence[Colour], chance: Random) -> list[Colour]:
    """The darkest first, for the veins; the others as chance has it."""
    dark, *others = sorted(bath, key=sum)
    return [dark, *chance.sample(others, len(others))]


def _shaken(area: Rect, bath: Sequence[Colour], chance: Random) -> Iterator[Art]:
    """Stones on a sheet that was rocked as it was laid down: folds of shade run slantwise across it."""
    veins, *paints = _in_order_of_fall(bath, chance)
    yield Filled.box(area, veins)
    seed, length, lean = chance.random(), 1.0 + 0.5 * chance.random(), 0.3 + 0.4 * chance.random()
    for wide, dark in ((0.0, 0.0), (0.65, 0.08), (0.28, 0.18)):
        shaded = [darker(colour, dark) for colour in paints]
        shade = tuple(_drops(area, shaded, Random(seed), DROPS_SHAKEN, LOTS_SHAKEN))
        yield Group(shade, clip=gathered(_folds(area, length, wide * length, lean)) if wide else None)


def _folds(area: Rect, length: float, wide: float, lean: float) -> Iterator[Path]:
    """Slanting strips of a width, each from where a fold begins, their edges a little wavy."""
    rise = [area.y + area.height * step / 8 for step in range(9)]
    for fold in range(ceil((area.width + area.height * lean) / length) + 1):
        x = area.x - area.height * lean + length * fold
        edge = [Point(x + lean * (y - area.y) + 0.2 * sin(y * 0.6 + 0.4 * fold), y) for y in rise]
        yield polygon([*edge, *(point.plus(wide, 0) for point in reversed(edge))])


def _combed(area: Rect, bath: Sequence[Colour], chance: Random, kind: CombedKind) -> Iterator[Art]:
    """Streaks of colour that combs were drawn through, column beside column."""
    wide, streaks = COMBED[kind].wide, _streaks(kind, int(chance.random() * BATHS))
    yield Filled.box(area, bath[0])
    layers = tuple(map(Filled, streaks, _unlike_neighbours(bath, len(streaks), chance)))
    start, top = area.x - chance.random() * wide, area.top + 1.5 + HIGH * chance.random()
    yield Repeated(
        layers,
        tuple(
            Point(start + wide * column, top - HIGH * (row + 1) + DRIFT * sin(0.37 * column + top))
            for row in range(ceil((top - area.y) / HIGH) + 1)
            for column in range(-1, ceil((area.right - start) / wide) + 1)
        ),
    )


def _unlike_neighbours(bath: Sequence[Colour], count: int, chance: Random) -> list[Colour]:
    """So many colours in a ring, none beside itself."""
    chosen = [one_of(bath, chance)]
    while len(chosen) < count:
        near = (chosen[-1], chosen[0]) if len(chosen) == count - 1 else (chosen[-1],)
        chosen.append(one_of([colour for colour in bath if colour not in near] or bath, chance))
    return chosen


@cache
def _streaks(kind: CombedKind, number: int) -> tuple[Path, ...]:
    """The streaks of a column from its head to its foot, after all passes."""
    chance, pattern = Random(f"{kind} {number}"), COMBED[kind]
    heights = [HIGH]
    while heights[-1] > 2 * STREAK[1]:
        heights.append(heights[-1] - STREAK[0] - (STREAK[1] - STREAK[0]) * chance.random() ** 1.6)
    heights.append(0.0)
    waves = [(0.05 * chance.random(), 2 * pi * chance.random()) for _ in heights[:-1]]
    steps = ceil(pattern.wide / STEP)
    xs = [pattern.wide * step / steps for step in range(steps + 1)]
    edges = []
    for y, (rise, turn) in zip(heights, [*waves, waves[0]], strict=True):
        edge = [Point(x, y + rise * sin(2 * pi * x / pattern.wide + turn)) for x in xs]
        edges.append(_simplified([after(pattern.passes, point) for point in edge]))
    return tuple(_between(over, under) for over, under in pairwise(edges))


def _between(over: Sequence[Point], under: Sequence[Point]) -> Path:
    """A streak between its edges; a hair of it lies under the next, that no seam shows."""
    return snapped(polygon([*over, *(point.plus(0, -0.02) for point in reversed(under))]).commands)


def _simplified(points: Sequence[Point]) -> list[Point]:
    """The points without those from which a straight line would hardly be off (Douglas and Peucker, 1973)."""
    if len(points) < 3:
        return list(points)
    (x0, y0), (x1, y1) = points[0], points[-1]
    long = hypot(x1 - x0, y1 - y0) or 1e-9
    off = [abs((x - x0) * (y1 - y0) - (y - y0) * (x1 - x0)) / long for x, y in points]
    farthest = max(range(len(points)), key=off.__getitem__)
    if off[farthest] <= TRUE:
        return [points[0], points[-1]]
    return _simplified(points[: farthest + 1])[:-1] + _simplified(points[farthest:])
