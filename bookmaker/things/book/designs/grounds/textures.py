"""What a cover is made of: weave, grain, fibres; and what lies in it: fading, spots.

All grow from a seeded chance. Tones stay so near the ground that titling on them reads as on the plain colour.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import cos, pi, sin
from random import Random

from .....ground.art import Filled, Repeated, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Point, Rect, polygon
from ..design import Wear
from ..faces import Faces
from ..ornament.shapes import Commands, blot, snapped
from ..tones import darker, lighter, mixed
from .wear import sunned

__all__ = ["faded_ground", "fading", "fibres", "grain", "patches", "spots", "weave"]

FADING = 0.9
"""So many mm from the spine light has bleached the sides no more; near it a little."""


def faded_ground(faces: Faces, colour: Colour, wear: Wear = "light") -> Iterator[Art]:
    """The ground out to the bleed; the spine bleached, and the sides too near it, as light leaves them."""
    yield Filled.box(faces.whole, colour)
    bleached = sunned(colour, wear)
    if bleached != colour:
        yield from (Filled.box(strip, mixed(colour, bleached, share)) for strip, share in fading(faces, 6))


def fading(faces: Faces, steps: int) -> Iterator[tuple[Rect, float]]:
    """The spine and what is bleached beside it, in strips that lie on one another, the widest first; each with the
    share of the spine's bleaching."""
    if faces.spine:
        soft = min(FADING, faces.spine.width)
        for step in range(steps):
            out = soft * (1 - step / steps)
            strip = Rect(faces.spine.x, faces.whole.y, faces.spine.width, faces.whole.height)
            yield strip.grown(out, 0, out, 0), (step + 1) / steps


PATCH = 6.0
"""Side of the square after which a texture repeats, in mm."""

PEBBLED, SPECKLED = 0.078 * 48, 5.0
"""The same for pebbles, of which there are a whole number of rows, and for specks."""


def patched(area: Rect, layers: Iterable[Stroked | Filled], chance: Random, side: float = PATCH) -> Repeated:
    """Layers that fill a patch, over an area and half a mm more, from a start that chance picks."""
    return Repeated(tuple(layers), tuple(patches(area, side, chance)))


def patches(area: Rect, side: float, chance: Random) -> Iterator[Point]:
    """Where square patches of texture lie to cover an area and half a mm more, from a start that chance picks."""
    start_x, start_y = area.x - 0.5 - chance.random() * side, area.y - 0.5 - chance.random() * side
    for row in range(int((area.top + 0.5 - start_y) / side) + 1):
        for column in range(int((area.right + 0.5 - start_x) / side) + 1):
            yield Point(start_x + column * side, start_y + row * side)


def weave(area: Rect, colour: Colour, chance: Random, thread: float = 0.03, strength: float = 0.038) -> Iterator[Art]:
    """Cloth: a tone, for its threads are finer than print, and in it the slubs, where a thread is thicker or paler.

    Book cloth has 22 to 32 threads a centimetre, 0.026 to 0.038 mm apart at 1:12; they are as wide as a printer's dot,
    and drawn evenly would beat with it.
    """
    layers = []
    for tone in (darker(colour, strength), lighter(colour, strength), darker(colour, strength * 1.3)):
        for upright in (False, True):
            commands: Commands = []
            for _ in range(int(PATCH * PATCH * 0.085 / thread)):
                x, y, long = chance.random() * PATCH, chance.random() * PATCH, thread * (3 + 11 * chance.random() ** 3)
                commands += [("M", x, y), ("L", x, y + long) if upright else ("L", x + long, y)]
            layers.append(Stroked(snapped(commands), Pen(thread * (0.8 if upright else 1.0), tone)))
    yield patched(area, layers, chance)


def grain(area: Rect, colour: Colour, chance: Random, strength: float = 0.09) -> Iterator[Art]:
    """Leather: goat in fine pebbles, smooth calf, or calf that was sprinkled.

    The pebbles of morocco are about 1 mm wide, 0.08 mm at 1:12: little more than a tone.
    """
    skin = chance.random()
    if skin < 0.5:
        yield patched(area, _pebbles(colour, chance, strength), chance, PEBBLED)
    elif skin < 0.8:
        yield patched(area, _pores(colour, chance, strength, 3.0, 0.05), chance, SPECKLED)
    else:
        yield patched(area, _pores(colour, chance, strength * 1.7, 7.0, 0.055), chance, SPECKLED)


def _pebbles(colour: Colour, chance: Random, strength: float) -> Iterator[Stroked]:
    """Creases between pebbles, and the light on these: rows of short dashes that wander, no two alike."""
    light = lighter(colour, strength * 0.8)
    for tone, width, off in ((darker(colour, strength * 1.3), 0.035, 0.0), (light, 0.03, 0.03)):
        for kind in range(3):
            dash = tuple((0.03 if gap else 0.05) + 0.05 * chance.random() for gap in (0, 1) * 5)
            commands: Commands = []
            for row in range(kind, int(PEBBLED / 0.078), 3):
                x, y = -chance.random(), row * 0.078 + off
                commands.append(("M", x, y))
                while x < PEBBLED:
                    one, other = (0.16 * (chance.random() - 0.5) for _ in range(2))
                    commands.append(("C", x + 0.3, y + one, x + 0.6, y + other, x + 0.9, y))
                    x += 0.9
            yield Stroked(snapped(commands), Pen(width, tone, dash))


def _pores(colour: Colour, chance: Random, strength: float, density: float, largest: float) -> Iterator[Filled]:
    """Specks that lie loosely together, most of them tiny."""
    for tone, share in ((darker(colour, strength), 0.6), (lighter(colour, strength * 0.6), 0.2),
                        (darker(colour, strength * 1.6), 0.2)):  # fmt: skip
        commands: Commands = []
        for _ in range(int(SPECKLED * SPECKLED * density * share)):
            at, radius = Point(chance.random() * SPECKLED, chance.random() * SPECKLED), largest * chance.random() ** 3
            corners = [(0.015 + radius * (0.7 + 0.6 * chance.random()), pi / 2 * (side + chance.random() / 2))
                       for side in range(4)]  # fmt: skip
            commands += polygon([at.plus(r * cos(turn), r * sin(turn)) for r, turn in corners]).commands
        yield Filled(snapped(commands), tone)


def fibres(area: Rect, colour: Colour, chance: Random, density: float = 1.0, strength: float = 0.1) -> Iterator[Art]:
    """Paper: short hairs, darker and lighter, lying every way."""
    layers = []
    for tone in (darker(colour, strength), lighter(colour, strength), darker(colour, strength * 2)):
        commands: Commands = []
        for _ in range(int(PATCH * PATCH * density * 2)):
            x, y = chance.random() * PATCH, chance.random() * PATCH
            turn, long = chance.random() * 2 * pi, 0.06 + 0.25 * chance.random() ** 3
            dx, dy, bend = long * cos(turn), long * sin(turn), 0.3 * (chance.random() - 0.5) * long
            commands += [("M", x, y), ("C", x + dx / 3 - bend, y + dy / 3 + bend, x + dx * 2 / 3 - bend,
                                       y + dy * 2 / 3 + bend, x + dx, y + dy)]  # fmt: skip
        layers.append(Stroked(snapped(commands), Pen(0.022, tone)))
    yield patched(area, layers, chance)


def spots(area: Rect, colour: Colour, chance: Random, count: int, largest: float = 0.5) -> Iterator[Art]:
    """Foxing: small brown spots, most of them tiny."""
    for tone in (mixed(colour, Colour.from_hex("#8a5a2b"), 0.22), mixed(colour, Colour.from_hex("#6e4420"), 0.38)):
        commands: Commands = []
        for _ in range(count):
            x, y = area.x + chance.random() * area.width, area.y + chance.random() * area.height
            commands += blot(Point(x, y), 0.06 + largest * chance.random() ** 4, chance)
        yield Filled(snapped(commands), tone)
