"""What a cover is made of: weave, grain, fibres; and what use did to it: fading, rubbed edges, spots.

All grow from a seeded chance. Tones stay so near the ground that titling on them reads as on the plain colour.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import cos, pi, sin, tan
from random import Random

from ..drawing import Art, Colour, Pen
from ..geometry import Point, Rect
from .design import Wear
from .faces import Faces
from .shapes import Line, Repeated, Shape, block, snapped
from .tones import darker, lighter, mixed

__all__ = ["faded_ground", "fibres", "grain", "patches", "rubbed", "spots", "weave"]

Commands = list[tuple[str | float, ...]]

FADING_STEPS = 6


def faded_ground(faces: Faces, colour: Colour, faded: float = 0.08) -> Iterator[Art]:
    """The ground out to the bleed; the spine a little paler, and the sides too near it, as light leaves them."""
    yield block(faces.whole, colour)
    if faces.spine and faded:
        soft = min(1.2, faces.spine.width)
        for step in range(FADING_STEPS):
            out = soft * (1 - step / FADING_STEPS)
            strip = Rect(faces.spine.x, faces.whole.y, faces.spine.width, faces.whole.height).grown(out, 0, out, 0)
            yield block(strip, lighter(colour, faded * (step + 1) / FADING_STEPS))


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
            yield Line(snapped(commands), pen)


GRAIN_PATCH = 6.0
"""Side of the patch that grain is made of, in mm."""

PATCH = 17.0
"""Side of a patch of fibres, in mm."""


def grain(area: Rect, colour: Colour, chance: Random, size: float = 0.38, strength: float = 0.11) -> Iterator[Art]:
    """Leather: small cushions with creases between them, a light and a dark side to each."""
    dark: Commands = []
    light: Commands = []
    count = round(GRAIN_PATCH / size)
    step = GRAIN_PATCH / count
    for row in range(count):
        for column in range(count):
            x = (column + 0.5 * (row % 2) + 0.35 * (chance.random() - 0.5)) * step
            y = (row + 0.35 * (chance.random() - 0.5)) * step
            radius = step * (0.32 + 0.2 * chance.random())
            turn = chance.random() * 0.9
            dark += _arc(x, y, radius, pi * 1.05 + turn, pi * 2.0 + turn)
            light += _arc(x, y, radius * 0.72, pi * 0.15 + turn, pi * 0.85 + turn)
    layers: tuple[tuple[Commands, Pen], ...] = (
        (dark, Pen(0.085, darker(colour, strength * 1.5))),
        (light, Pen(0.06, lighter(colour, strength * 0.7))),
    )
    places = tuple(patches(area, GRAIN_PATCH, chance))
    for commands, pen in layers:
        yield Repeated(Line(snapped(commands), pen), places)


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
    for tone in (darker(colour, strength), lighter(colour, strength), darker(colour, strength * 2)):
        commands: Commands = []
        for _ in range(int(PATCH * PATCH * density / 3)):
            x, y = chance.random() * PATCH, chance.random() * PATCH
            turn, length = chance.random() * 2 * pi, 0.15 + 0.5 * chance.random() ** 2
            dx, dy = length * cos(turn), length * sin(turn)
            bend = 0.3 * (chance.random() - 0.5) * length
            commands += [("M", x, y), ("C", x + dx / 3 - bend, y + dy / 3 + bend, x + dx * 2 / 3 - bend,
                                       y + dy * 2 / 3 + bend, x + dx, y + dy)]  # fmt: skip
        yield Repeated(Line(snapped(commands), Pen(0.045, tone)), places)


BOARD = Colour.from_hex("#cdb998")
"""What shows where the covering is worn: the board under it."""

REACH = {"none": 0.0, "light": 0.35, "heavy": 0.9}
"""How far rubbing reaches in from an edge, in mm."""


def rubbed(faces: Faces, colour: Colour, wear: Wear, chance: Random) -> Iterator[Art]:
    """Edges that hands and shelves have rubbed pale: corners, the ends of the spine, and along its folds."""
    if wear == "none":
        return
    reach = REACH[wear]
    pale = mixed(colour, BOARD, 0.38)
    flecks: Commands = []
    for start, end in _worn_edges(faces):
        flecks += _flecks(start, end, reach, chance)
    if flecks:
        yield Shape(snapped(flecks), pale)
    scuffs: Commands = []
    for rect in faces.edges:
        for corner in rect.corners:
            scuffs += _scuff(corner, rect, reach * 1.3, chance)
    if scuffs:
        yield Shape(snapped(scuffs), mixed(colour, BOARD, 0.55))


def _worn_edges(faces: Faces) -> Iterator[tuple[Point, Point]]:
    for side in faces.sides:
        fore = side.right if faces.outward(side) > 0 else side.x
        yield Point(fore, side.y), Point(fore, side.top)
        yield Point(side.x, side.y), Point(side.right, side.y)
        yield Point(side.x, side.top), Point(side.right, side.top)
    if faces.spine:
        spine = faces.spine
        for y in (spine.y, spine.top):
            yield Point(spine.x, y), Point(spine.right, y)
        for x in faces.folds:
            yield Point(x, spine.y), Point(x, spine.top)


def _flecks(start: Point, end: Point, reach: float, chance: Random) -> Commands:
    """Slivers along an edge, more of them towards its ends."""
    commands: Commands = []
    length = abs(end.x - start.x) + abs(end.y - start.y)
    level = start.y == end.y
    for _ in range(int(length * 1.6)):
        share = chance.random()
        if chance.random() < 1.6 * share * (1 - share):
            continue
        long, high = 0.2 + chance.random() * 0.7, 0.03 + 0.12 * reach * chance.random()
        off = reach * 0.35 * (chance.random() - 0.5)
        x, y = start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share
        for dx, dy, first in ((-long / 2, 0, True), (0, high, False), (long / 2, 0, False), (0, -high, False)):
            px, py = (x + dx, y + dy + off) if level else (x + dy + off, y + dx)
            commands.append(("M" if first else "L", px, py))
        commands.append(("Z",))
    return commands


def _scuff(corner: Point, rect: Rect, reach: float, chance: Random) -> Commands:
    """A ragged corner, worn along a line from edge to edge."""
    inward_x, inward_y = (1 if corner.x == rect.x else -1), (1 if corner.y == rect.y else -1)
    wide = min(reach, rect.width / 4) * (0.4 + 0.8 * chance.random())
    high = min(reach, rect.height / 4) * (0.4 + 0.8 * chance.random())
    points: Commands = [("M", corner.x, corner.y)]
    for step in range(8):
        share = step / 7
        deep = 0.75 + 0.35 * chance.random()
        points.append(
            ("L", corner.x + inward_x * wide * (1 - share) * deep, corner.y + inward_y * high * share * deep)
        )
    return [*points, ("Z",)]


def spots(area: Rect, colour: Colour, chance: Random, count: int, largest: float = 0.5) -> Iterator[Art]:
    """Foxing: small brown spots, most of them tiny."""
    for tone in (mixed(colour, Colour.from_hex("#8a5a2b"), 0.22), mixed(colour, Colour.from_hex("#6e4420"), 0.38)):
        commands: Commands = []
        for _ in range(count):
            x, y = area.x + chance.random() * area.width, area.y + chance.random() * area.height
            commands += _blot(x, y, 0.06 + largest * chance.random() ** 4, chance)
        yield Shape(snapped(commands), tone)


def _blot(x: float, y: float, radius: float, chance: Random) -> Iterable[tuple[str | float, ...]]:
    turn = chance.random()
    radii = [radius * (0.75 + 0.5 * chance.random()) for _ in range(5)]
    ring = [(x + r * cos(turn + 2 * pi * i / 5), y + r * sin(turn + 2 * pi * i / 5)) for i, r in enumerate(radii)]
    middles = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in zip(ring, ring[1:] + ring[:1], strict=True)]
    yield ("M", *middles[-1])
    for (px, py), (mx, my), (lx, ly) in zip(ring, middles, middles[-1:] + middles[:-1], strict=True):
        yield ("C", lx + (px - lx) * 0.7, ly + (py - ly) * 0.7, mx + (px - mx) * 0.7, my + (py - my) * 0.7, mx, my)
    yield ("Z",)
