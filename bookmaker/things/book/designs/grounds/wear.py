"""What hands and shelves did to a cover: edges rubbed pale, blunt corners, creases, and a spine bleached by light.

Cloth loses its nap thread by thread, leather lightens on the tops of its grain, paper is rubbed down to its pale
core. The harm lies inside the edges, here and there, most at the corners and at head and tail of the spine; nothing of
it goes on evenly.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import cos, pi, sin
from random import Random

from .....ground.art import NOTHING, Awaited, Filled, Stroked
from .....ground.drawing import Art, Colour, Pen, luminance
from .....ground.geometry import Point, polygon
from ..design import Wear
from ..faces import Faces
from ..ornament.shapes import Commands, snapped
from ..palettes import Material
from ..tones import apart, darker, lighter, mixed
from .exposed import CORNERS, Corner, Edge, Uneven, board_edges, corners, spine_edges

__all__ = ["BOARD", "creased", "rubbed", "sunned"]

BOARD = Colour.from_hex("#cdb998")
"""What shows where the covering is worn through: the board under it."""

CORE = Colour.from_hex("#f3ecdd")
"""What shows where the colour of paper is rubbed off."""

TAN = Colour.from_hex("#b98d5e")
"""Where leather is going when its dye is rubbed off."""

SUN = Colour.from_hex("#e6d9b4")
"""Where all dyes are going in the light: paler, and a little yellow."""

SUNNED: Mapping[Wear, float] = {"none": 0.0, "light": 0.06, "heavy": 0.11}
"""How far the spine has gone there."""


@dataclass(frozen=True, slots=True)
class _Harm:
    """How far rubbing reaches in from an edge and from a corner, in mm; rubbed places on a mm; how pale it gets."""

    reach: float
    corner: float
    places: float
    pale: float


HARM: Mapping[Wear, _Harm] = {
    "light": _Harm(reach=0.2, corner=0.55, places=2.2, pale=0.55),
    "heavy": _Harm(reach=0.5, corner=1.4, places=4.2, pale=0.95),
}

TONES = (0.3, 0.58, 0.9)
"""The tones of wear, the faintest first: shares of the way from the colour to what lies under it."""

MARK = {Material.CLOTH: 0.03, Material.LEATHER: 0.045, Material.PAPER: 0.035}
"""How large a mark is, in mm, from its middle: half the thickness of a thread, the top of the grain, a chip."""

HALO = (1.25, 1.7)
"""Around a rubbed place the next fainter tone is so many times as long and as deep: what is rubbed has no outline."""

SPREAD = {Material.CLOTH: 1.0, Material.LEATHER: 1.0, Material.PAPER: 0.6}
"""How densely rubbed places lie: what is printed on paper comes off in fewer flakes."""

AROUND = 0.12
"""What is rubbed at an edge goes on so many mm around it."""


def sunned(colour: Colour, wear: Wear) -> Colour:
    """A colour as light has left it on the spine."""
    return mixed(colour, SUN, SUNNED[wear])


def rubbed(
    faces: Faces, stuff: Material, colour: Colour, wear: Wear, seed: int, sides: tuple[Material, Colour] | None = None
) -> Art:
    """The harm done to a covering of a colour; `sides` says what the edges of the sides are made of, if of something
    else than spine and corners.
    """
    if wear == "none":
        return NOTHING
    return Awaited(lambda: _marks(faces, (stuff, colour), HARM[wear], sides, Random(seed)))


def _marks(
    faces: Faces,
    covering: tuple[Material, Colour],
    harm: _Harm,
    sides: tuple[Material, Colour] | None,
    chance: Random,
) -> Iterator[Art]:
    stuff, tones = covering[0], _tones(*covering, harm)
    spine, boards = spine_edges(faces), board_edges(faces, CORNERS if sides else 0.0)
    if sides:
        yield from _along(boards, sides[0], _tones(*sides, harm), harm, chance)
    yield from _along(spine if sides else [*boards, *spine], stuff, tones, harm, chance)
    yield from _at_corners(faces, stuff, tones, harm, chance)
    if stuff is Material.LEATHER and not sides:
        yield from _scuffs(faces, tones[0], harm, chance)


def _bare(stuff: Material, colour: Colour) -> Colour:
    """What a covering is rubbed down to: always a tone that is seen on it."""
    if stuff is Material.PAPER:
        return CORE if apart(colour, CORE) > 0.09 else darker(BOARD, 0.12)
    if stuff is Material.LEATHER:
        tan = mixed(lighter(colour, 0.1), TAN, 0.8)
        return tan if apart(tan, colour) > 0.14 else mixed(colour, CORE, 0.55)
    if luminance(colour) > 0.42:  # pale cloth does not get paler but dirty
        return mixed(darker(colour, 0.28), BOARD, 0.5)
    return mixed(lighter(colour, 0.5), BOARD, 0.55)


def _along(edges: list[Edge], stuff: Material, tones: list[Colour], harm: _Harm, chance: Random) -> Iterator[Art]:
    """Along the edges, one by one, places where they are rubbed, and marks beside these that thin out inwards."""
    places: list[Commands] = [[], [], []]
    marks = Marks(stuff)
    for edge in edges:
        if edge.length < 0.4:
            continue
        worn = Uneven(edge, (chance.random() * 2 * pi, chance.random() * 2 * pi, chance.random() * 2 * pi))
        for _ in range(round(edge.length * harm.places * SPREAD[stuff])):
            share = chance.random()
            here, hand = worn(share), edge.inward or (1 if chance.random() < 0.5 else -1)
            if chance.random() < here:
                deep = harm.reach * min(1.0, here) * (0.12 + 0.5 * chance.random() ** 2)
                tone = min(2, int(3 * here * chance.random()))
                inner, outer = _rubbed_place(edge, deep, hand, chance)
                for fainter in range(min(2, tone + 1)):
                    long, far = (factor**fainter for factor in HALO)
                    ring = [edge.at(share + way * long, off * far) for way, off in inner]
                    places[tone - fainter] += polygon(
                        [*ring, *(edge.at(share + way * long, off) for way, off in outer)]
                    ).commands
            for _ in range(2):
                off = abs(chance.gauss(0.0, 0.6))
                if chance.random() < 0.8 * here:
                    at = edge.at(share + 0.5 * chance.gauss(0, 1) / edge.length, hand * harm.reach * off)
                    marks.add(at, off, chance)
    for outlines, pale in zip(places, tones, strict=True):
        if outlines:
            yield Filled(snapped(outlines), pale)
    yield from marks.drawn(tones)


def _rubbed_place(
    edge: Edge, deep: float, hand: int, chance: Random
) -> tuple[list[tuple[float, float]], list[tuple[float, float]]]:
    """A sliver along an edge, ragged towards the cover: its inner and its outer side, in shares along the edge and mm
    off it."""
    half = min(0.5, 0.1 + 1.6 * deep * chance.random()) / edge.length
    around = -AROUND if edge.inward else -0.3 * deep
    rises = (0.0, 0.4, 0.75, 0.9, 1.0, 0.95, 0.8, 0.45, 0.0)
    rough = [0.5 + chance.random() for _ in range(len(rises) + 1)]
    inner = [(half * (step / 4 - 1), hand * deep * rise * (rough[step] + rough[step + 1]) / 2)
             for step, rise in enumerate(rises)]  # fmt: skip
    return inner, [(half, hand * around), (-half, hand * around)]


def _tones(stuff: Material, colour: Colour, harm: _Harm) -> list[Colour]:
    bare = _bare(stuff, colour)
    if stuff is Material.PAPER:  # what is printed goes off altogether, here more and there less
        return [mixed(colour, bare, harm.pale * (0.45 + 0.5 * tone)) for tone in TONES]
    return [mixed(colour, bare, tone * harm.pale) for tone in TONES]


def _at_corners(faces: Faces, stuff: Material, tones: list[Colour], harm: _Harm, chance: Random) -> Iterator[Art]:
    """Blunt corners, one more than the other: rubbed from both edges inwards, the tip itself worn through."""
    through = CORE if stuff is Material.PAPER else BOARD
    found = [(corner, harm.corner * (0.45 + 0.75 * chance.random() ** 1.5)) for corner in corners(faces)]
    layers = [(1.0, tones[0]), (0.68, tones[1]), (0.36, mixed(tones[2], through, harm.pale))]
    for share, tone in layers[1:] if stuff is Material.PAPER else layers:
        blunt = [command for corner, size in found for command in _blunt(corner, size * share, chance)]
        if blunt:
            yield Filled(snapped(blunt), tone)
    marks = Marks(stuff)
    for corner, size in found:
        for _ in range(int(14 + 22 * size)):
            deep, along = abs(chance.gauss(0.0, 0.5)), chance.random()
            x, y = (along, 1 - along) if chance.random() < 0.5 else (along * 0.3, 1.2 * along)
            far = 1.5 * size * deep
            marks.add(corner.at.plus(corner.across * far * x, corner.up * far * y), deep, chance)
    yield from marks.drawn(tones)


def _blunt(corner: Corner, size: float, chance: Random) -> Commands:
    """The outline of what is rubbed at a corner: far along both edges, hollow between, ragged."""
    wide, high = size * (0.7 + 0.6 * chance.random()), size * (0.7 + 0.6 * chance.random())
    ragged = [(wide * (1 - step / 6) ** 1.7, high * (step / 6) ** 1.7) for step in range(7)]
    inner = [(x * (0.75 + 0.5 * chance.random()), y * (0.75 + 0.5 * chance.random())) for x, y in ragged]
    ring = [(inner[0][0], -AROUND), *inner, (-AROUND, inner[-1][1]), (-AROUND, -AROUND)]
    return list(polygon([corner.at.plus(corner.across * x, corner.up * y) for x, y in ring]).commands)


def _scuffs(faces: Faces, tone: Colour, harm: _Harm, chance: Random) -> Iterator[Art]:
    """Shallow scratches side by side, where a neighbour was pulled out."""
    lines: Commands = []
    for side in faces.sides:
        for _ in range(round(5 * harm.pale)):
            x, y = side.x + side.width * chance.random(), side.y + side.height * chance.random()
            turn = pi / 2 + chance.gauss(0.0, 0.5)
            for _ in range(5):
                long, off_x, off_y = 0.3 + 0.9 * chance.random(), chance.gauss(0.0, 0.16), chance.gauss(0.0, 0.4)
                at = Point(x + off_x, y + off_y)
                lines += [("M", *at), ("L", at.x + long * cos(turn), at.y + long * sin(turn))]
    if lines:
        yield Stroked(snapped(lines), Pen(0.05, tone))


class Marks:
    """The small marks of wear, gathered by their tone: threads of cloth, tops of grain, chips of paper."""

    def __init__(self, stuff: Material) -> None:
        self._stuff = stuff
        self._of_tone: tuple[Commands, Commands, Commands] = ([], [], [])

    def add(self, at: Point, deep: float, chance: Random) -> None:
        """A mark; `deep` is 0 on the edge itself and 1 where wear ends."""
        commands = self._of_tone[2 if deep < 0.3 else 1 if deep < 0.75 else 0]
        size, mark = 0.5 + 0.9 * chance.random() ** 2, MARK[self._stuff]
        if self._stuff is Material.CLOTH:
            long, thick = 0.07 * size, mark * (0.3 + 0.3 * chance.random())
            across, up = (long, thick) if chance.random() < 0.5 else (thick, long)
            lean = 0.3 * thick
            ring = [(-across, lean), (lean, -up), (across, -lean), (-lean, up)]
        else:
            turn, long = chance.random() * 2 * pi, 0.9 + 0.8 * chance.random()
            ring = []
            for side in range(4):
                way, far = turn + pi / 2 * (side + 0.7 * chance.random()), mark * size * (0.4 + 0.7 * chance.random())
                ring.append((far * long * cos(way), far * sin(way)))
        commands += polygon([at.plus(x, y) for x, y in ring]).commands

    def drawn(self, tones: list[Colour]) -> Iterator[Art]:
        """All marks, the faintest first."""
        for commands, tone in zip(self._of_tone, tones, strict=True):
            if commands:
                yield Filled(snapped(commands), tone)


def creased(faces: Faces, colour: Colour, chance: Random, count: int) -> Iterator[Art]:
    """Soft creases across the outer corners of paper sides: pale where the fold broke the colour, blurred beside it."""
    paths: Commands = []
    for side in faces.sides:
        for _ in range(count):
            fore = side.right if faces.outward(side) > 0 else side.x
            corner = Point(fore, side.y if chance.random() < 0.5 else side.top)
            into_x, into_y = -faces.outward(side), 1 if corner.y == side.y else -1
            wide, high = (side.width * (0.1 + 0.3 * chance.random()) for _ in range(2))
            bend = (0.5 + 0.12 * chance.gauss(0.0, 1.0)) * wide, (0.5 + 0.12 * chance.gauss(0.0, 1.0)) * high
            middle = (corner.x + into_x * bend[0], corner.y + into_y * bend[1])
            end = (corner.x, corner.y + into_y * high)
            paths += [("M", corner.x + into_x * wide, corner.y), ("C", *middle, *middle, *end)]
    if paths:
        path = snapped(paths)
        yield Stroked(path, Pen(0.24, mixed(colour, darker(colour, 0.5), 0.1)))
        yield Stroked(path, Pen(0.14, mixed(colour, CORE, 0.25)))
        yield Stroked(path, Pen(0.05, mixed(colour, CORE, 0.7)))
