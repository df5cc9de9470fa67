"""What a cover is made of: weave, grain, fibres; and what lies in it: fading, spots.

All grow from a seeded chance. Tones stay so near the ground that titling on them reads as on the plain colour.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, sin, tan
from random import Random

from .....ground.art import Filled, Repeated, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Point, Rect
from ..design import Wear
from ..faces import Faces
from ..ornament.shapes import Commands, blot, snapped
from ..tones import darker, lighter, mixed
from .wear import sunned

__all__ = ["faded_ground", "fibres", "grain", "patches", "spots", "weave"]

FADING_STEPS = 6


def faded_ground(faces: Faces, colour: Colour, wear: Wear = "light") -> Iterator[Art]:
    """The ground out to the bleed; the spine bleached, and the sides too near it, as light leaves them."""
    yield Filled.box(faces.whole, colour)
    bleached = sunned(colour, wear)
    if faces.spine and bleached != colour:
        soft = min(0.9, faces.spine.width)
        for step in range(FADING_STEPS):
            out = soft * (1 - step / FADING_STEPS)
            strip = Rect(faces.spine.x, faces.whole.y, faces.spine.width, faces.whole.height).grown(out, 0, out, 0)
            yield Filled.box(strip, mixed(colour, bleached, (step + 1) / FADING_STEPS))


def weave(area: Rect, colour: Colour, chance: Random, pitch: float = 0.17, strength: float = 0.1) -> Iterator[Art]:
    """Plain weave: threads both ways, each over and under the others in turn, some thicker or darker."""
    tones = [darker(colour, strength), darker(colour, strength * 0.5), lighter(colour, strength * 0.55),
             lighter(colour, strength)]  # fmt: skip
    for upright in (True, False):
        threads: dict[tuple[int, bool], Commands] = {}
        at, end = (area.x, area.right) if upright else (area.y, area.top)
        number = 0
        while at < end:
            tone = min(3, int(chance.random() * 4))
            thick = chance.random() > 0.86
            start = (area.y if upright else area.x) - pitch * (1 + (number + upright) % 2) - chance.random() * 0.03
            stop = area.top if upright else area.right
            line = threads.setdefault((tone, thick), [])
            line += [("M", at, start), ("L", at, stop)] if upright else [("M", start, at), ("L", stop, at)]
            at += pitch * (0.86 + 0.28 * chance.random())
            number += 1
        for (tone, thick), commands in sorted(threads.items()):
            pen = Pen(pitch * (0.78 if thick else 0.55), tones[tone], (pitch, pitch))
            yield Stroked(snapped(commands), pen)


GRAIN_PATCH = 5.3
"""Side of the patch that grain is made of, in mm."""

PATCH = 17.0
"""Side of a patch of fibres, in mm."""


def grain(area: Rect, colour: Colour, chance: Random, strength: float = 0.11) -> Iterator[Art]:
    """Leather: small cushions with creases between them, a light and a dark side to each; finer or coarser by skin."""
    size = 0.29 + 0.09 * chance.random()
    dark: Commands = []
    light: Commands = []
    count = round(GRAIN_PATCH / size)
    step = GRAIN_PATCH / count
    for row in range(count):
        for column in range(count):
            x = (column + 0.5 * (row % 2) + 0.7 * (chance.random() - 0.5)) * step
            y = (row + 0.7 * (chance.random() - 0.5)) * step
            radius = step * (0.3 + 0.24 * chance.random())
            turn = chance.random() * 1.8 - 0.4
            dark += _arc(x, y, radius, pi * 1.05 + turn, pi * 2.0 + turn)
            light += _arc(x, y, radius * 0.72, pi * 0.15 + turn, pi * 0.85 + turn)
    layers: tuple[tuple[Commands, Pen], ...] = (
        (dark, Pen(0.07, darker(colour, strength * 1.5))),
        (light, Pen(0.06, lighter(colour, strength * 0.7))),
    )
    places = tuple(patches(area, GRAIN_PATCH, chance))
    yield Repeated(tuple(Stroked(snapped(commands), pen) for commands, pen in layers), places)


def patches(area: Rect, side: float, chance: Random) -> Iterator[Point]:
    """Where square patches of texture lie to cover an area and half a mm more, from a start that chance picks."""
    start_x, start_y = area.x - 0.5 - chance.random() * side, area.y - 0.5 - chance.random() * side
    for row in range(int((area.top + 0.5 - start_y) / side) + 1):
        for column in range(int((area.right + 0.5 - start_x) / side) + 1):
            yield Point(start_x + column * side, start_y + row * side)


def _arc(x: float, y: float, radius: float, start: float, end: float) -> Commands:
    """A part of a circle as one curve; angles in radians."""
    handle = radius * 4 / 3 * tan((end - start) / 4)
    from_x, from_y, to_x, to_y = radius * cos(start), radius * sin(start), radius * cos(end), radius * sin(end)
    out_x, out_y, in_x, in_y = -handle * sin(start), handle * cos(start), handle * sin(end), -handle * cos(end)
    return [
        ("M", x + from_x, y + from_y),
        ("C", x + from_x + out_x, y + from_y + out_y, x + to_x + in_x, y + to_y + in_y, x + to_x, y + to_y),
    ]


def fibres(area: Rect, colour: Colour, chance: Random, density: float = 1.1, strength: float = 0.12) -> Iterator[Art]:
    """Paper: short hairs, darker and lighter, lying every way."""
    places = tuple(patches(area, PATCH, chance))
    layers: list[Stroked] = []
    for tone in (darker(colour, strength), lighter(colour, strength), darker(colour, strength * 2)):
        commands: Commands = []
        for _ in range(int(PATCH * PATCH * density / 3)):
            x, y = chance.random() * PATCH, chance.random() * PATCH
            turn, length = chance.random() * 2 * pi, 0.15 + 0.5 * chance.random() ** 2
            dx, dy = length * cos(turn), length * sin(turn)
            bend = 0.3 * (chance.random() - 0.5) * length
            commands += [("M", x, y), ("C", x + dx / 3 - bend, y + dy / 3 + bend, x + dx * 2 / 3 - bend,
                                       y + dy * 2 / 3 + bend, x + dx, y + dy)]  # fmt: skip
        layers.append(Stroked(snapped(commands), Pen(0.045, tone)))
    yield Repeated(tuple(layers), places)


def spots(area: Rect, colour: Colour, chance: Random, count: int, largest: float = 0.5) -> Iterator[Art]:
    """Foxing: small brown spots, most of them tiny."""
    for tone in (mixed(colour, Colour.from_hex("#8a5a2b"), 0.22), mixed(colour, Colour.from_hex("#6e4420"), 0.38)):
        commands: Commands = []
        for _ in range(count):
            x, y = area.x + chance.random() * area.width, area.y + chance.random() * area.height
            commands += blot(Point(x, y), 0.06 + largest * chance.random() ** 4, chance)
        yield Filled(snapped(commands), tone)
