"""Marbled paper: drops of colour on a bath, left as stones, drawn into waves, or combed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, pi, sin
from random import Random

from .....ground.art import Filled, Repeated
from .....ground.drawing import Art, Colour
from .....ground.geometry import Path, Point, Rect
from ..ornament.shapes import Commands, snapped
from ..tones import darker, mixed
from .textures import patches

__all__ = ["marbled"]

PATCH = 6.2
"""Side of a patch of stones, in mm."""


def marbled(area: Rect, bath: Sequence[Colour], chance: Random) -> Iterator[Art]:
    """Fill an area; `bath` are the colours, the lightest last."""
    kind = chance.random()
    if kind < 0.4:
        yield from _stones(area, bath, chance)
    elif kind < 0.75:
        yield from _drawn(area, bath, chance, tooth=0.95, deep=0.62, row=0.3)
    else:
        yield from _drawn(area, bath, chance, tooth=2.3, deep=0.5, row=0.3)


def _stones(area: Rect, bath: Sequence[Colour], chance: Random) -> Iterator[Art]:
    """Round drops of every size pressed against one another, the ground between them as veins."""
    ground, *drops = sorted(bath, key=sum)
    yield Filled.box(area, ground)
    places = tuple(patches(area, PATCH, chance))
    shapes: list[Filled] = []
    sizes = ((0.52, 0.5), (0.34, 1.0), (0.19, 1.5))
    for layer, (radius, number) in enumerate(sizes):
        for share, colour in enumerate(drops):
            veins: Commands = []
            stones: Commands = []
            for _ in range(int(PATCH * PATCH * number / len(drops))):
                x, y = chance.random() * PATCH, chance.random() * PATCH
                size = radius * (0.5 + 0.7 * chance.random())
                shape = _stone(x, y, size, chance)
                stones += shape
                veins += _stone(x, y, size + 0.05, Random(int(size * 1e6)))
            vein = darker(ground, 0.15) if (layer + share) % 2 else ground
            shapes += [Filled(snapped(veins), vein), Filled(snapped(stones), mixed(colour, ground, 0.06 * layer))]
    yield Repeated(tuple(shapes), places)


def _stone(x: float, y: float, radius: float, chance: Random) -> Commands:
    """A drop, a little out of round: four curves."""
    radii = [radius * (0.8 + 0.35 * chance.random()) for _ in range(4)]
    ring = [(x + r * cos(pi / 2 * i), y + r * sin(pi / 2 * i)) for i, r in enumerate(radii)]
    commands: Commands = [("M", *ring[0])]
    for i in range(4):
        this, following = pi / 2 * i, pi / 2 * (i + 1)
        (x0, y0), (x1, y1) = ring[i], ring[(i + 1) % 4]
        handle = 0.5523 * (radii[i] + radii[(i + 1) % 4]) / 2
        commands.append(
            ("C", x0 - handle * sin(this), y0 + handle * cos(this),
             x1 + handle * sin(following), y1 - handle * cos(following), x1, y1)
        )  # fmt: skip
    return [*commands, ("Z",)]


def _drawn(
    area: Rect, bath: Sequence[Colour], chance: Random, *, tooth: float, deep: float, row: float
) -> Iterator[Art]:
    """Stripes of colour through which a comb was drawn; a few shapes of stripe serve the whole sheet."""
    yield Filled.box(area, bath[0])
    stripes = [_stripe(area.width, tooth, deep, row * (1.5 + chance.random()), chance) for _ in range(3)]
    last = -1
    y = area.top + 2 * deep
    while y > area.y - 2 * deep:
        colour = int(chance.random() * len(bath))
        last = colour = (colour + 1) % len(bath) if colour == last else colour
        stripe = stripes[int(chance.random() * len(stripes))]
        yield Repeated((Filled(stripe, bath[colour]),), (Point(area.x, y),))
        y -= row * (0.55 + 0.9 * chance.random())


def _stripe(width: float, tooth: float, deep: float, high: float, chance: Random) -> Path:
    """One stripe: its upper edge hangs in festoons between the teeth, its lower edge follows below."""
    count = int(width / tooth) + 2
    knots = [(number - 0.5) * tooth + 0.1 * tooth * (chance.random() - 0.5) for number in range(count + 1)]
    dips = [deep * (0.85 + 0.3 * chance.random()) for _ in range(count)]
    commands: Commands = [("M", knots[0], 0.0)]
    for left, right, dip in zip(knots, knots[1:], dips, strict=False):
        third = (right - left) * 0.16
        commands.append(("C", left + third, -dip * 1.5, right - third, -dip * 1.5, right, 0.0))
    commands.append(("L", knots[-1], -high))
    for left, right, dip in reversed(list(zip(knots, knots[1:], dips, strict=False))):
        third = (right - left) * 0.16
        commands.append(("C", right - third, -high - dip * 1.5, left + third, -high - dip * 1.5, left, -high))
    return snapped([*commands, ("Z",)])
