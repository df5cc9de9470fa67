"""What hands and shelves did to a cover: edges rubbed pale, blunt corners, creases, and a spine bleached by light.

Cloth loses its nap thread by thread, leather lightens on the tops of its grain, paper is rubbed down to its pale
core. Everywhere the harm is greatest at the corners and at head and tail of the spine, and fades inwards: ribbons
of uneven width along the edges, blots at the corners, and over both a scatter of small marks that thins out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import cos, pi, sin
from random import Random

from .....ground.art import Filled, Stroked
from .....ground.drawing import Art, Colour, Pen, luminance
from .....ground.geometry import Point
from ..design import Wear
from ..faces import Faces
from ..ornament.shapes import Commands, blot, snapped
from ..palettes import Material
from ..tones import apart, darker, lighter, mixed
from .exposed import CORNERS, Edge, Uneven, board_edges, spine_edges, tips

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
    """How far rubbing reaches in from an edge and from a corner, in mm; marks on a mm of edge; how pale it gets."""

    reach: float
    tip: float
    marks: float
    pale: float


HARM: Mapping[Wear, _Harm] = {
    "light": _Harm(reach=0.3, tip=0.55, marks=2.4, pale=0.5),
    "heavy": _Harm(reach=0.95, tip=1.6, marks=6.5, pale=0.95),
}

TONES = (0.34, 0.6, 0.9)
"""The tones of wear, outermost last: shares of the way from the colour to what lies under it."""

MARK = {Material.CLOTH: 0.085, Material.LEATHER: 0.11, Material.PAPER: 0.06}
"""How thick a mark is, in mm: a thread, the top of a cushion, a fibre."""

SPREAD = {Material.CLOTH: 1.0, Material.LEATHER: 1.0, Material.PAPER: 0.45}
"""How densely marks lie: paper is rubbed along its edges more than beside them."""

DARK = 0.06
"""On a ground less luminous than this a rubbed line shines: joints are rubbed here and there, but have no ribbon."""

STEP = 0.55
"""The outline of a ribbon has a point about every so many mm."""


def sunned(colour: Colour, wear: Wear) -> Colour:
    """A colour as light has left it on the spine."""
    return mixed(colour, SUN, SUNNED[wear])


def rubbed(
    faces: Faces,
    stuff: Material,
    colour: Colour,
    wear: Wear,
    chance: Random,
    sides: tuple[Material, Colour] | None = None,
) -> Iterator[Art]:
    """The harm done to a covering of a colour; `sides` says what the edges of the sides are made of, if of
    something else than spine and corners.
    """
    if wear == "none":
        return
    harm = HARM[wear]
    spine, boards = spine_edges(faces), board_edges(faces, CORNERS if sides else 0.0)
    if sides:
        yield from _along(boards, *sides, harm, chance)
        yield from _along(spine, stuff, colour, harm, chance)
    else:
        yield from _along([*boards, *spine], stuff, colour, harm, chance)
    yield from _at_tips(faces, stuff, colour, harm, chance)
    if stuff is Material.LEATHER and not sides:
        yield from _scuffs(faces, _tones(stuff, colour, harm)[0], harm, chance)


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


def _along(edges: list[Edge], stuff: Material, colour: Colour, harm: _Harm, chance: Random) -> Iterator[Art]:
    """Ribbons along the edges, then marks on both sides of them."""
    tones = _tones(stuff, colour, harm)
    wide, narrow = [], []
    marks = Marks(stuff)
    for edge in edges:
        if edge.length < 0.4:
            continue
        worn = Uneven(edge, (chance.random() * 2 * pi, chance.random() * 2 * pi, chance.random() * 2 * pi))
        if not (edge.joint and luminance(colour) < DARK):
            if stuff is not Material.PAPER:
                wide += _ribbon(edge, worn, harm.reach * 0.34, chance)
            narrow += _ribbon(edge, worn, harm.reach * (0.1 if stuff is Material.PAPER else 0.16), chance)
        for at, deep in _scattered(edge, worn, stuff, harm, chance):
            marks.add(at, deep, chance)
    for ribbon, tone in ((wide, tones[0]), (narrow, tones[1])):
        if ribbon:
            yield Filled(snapped(ribbon), tone)
    yield from marks.drawn(tones)


def _scattered(edge: Edge, worn: Uneven, stuff: Material, harm: _Harm, chance: Random) -> Iterator[tuple[Point, float]]:
    """Where marks lie beside an edge, and how deep in the wear."""
    for _ in range(int(edge.length * harm.marks)):
        share, deep = chance.random(), abs(chance.gauss(0.0, 0.5))
        here = worn(share)
        if chance.random() < here * SPREAD[stuff]:
            yield edge.at(share, harm.reach * here * deep * (1 if chance.random() < 0.5 else -1)), deep


def _tones(stuff: Material, colour: Colour, harm: _Harm) -> list[Colour]:
    bare = _bare(stuff, colour)
    if stuff is Material.PAPER:  # what is printed goes off altogether, here more and there less
        return [mixed(colour, bare, harm.pale * (0.45 + 0.5 * tone)) for tone in TONES]
    return [mixed(colour, bare, tone * harm.pale) for tone in TONES]


def _ribbon(edge: Edge, worn: Uneven, half: float, chance: Random) -> Commands:
    """A strip along an edge, as wide as the edge is worn."""
    steps = max(2, round(edge.length / STEP))
    there, back = [], []
    for step in range(steps + 1):
        share = step / steps
        wide = half * worn(share)
        there.append(edge.at(share, wide * (0.7 + 0.6 * chance.random())))
        back.append(edge.at(share, -wide * (0.7 + 0.6 * chance.random())))
    first, *rest = [*there, *reversed(back)]
    return [("M", *first), *(("L", *point) for point in rest), ("Z",)]


def _at_tips(faces: Faces, stuff: Material, colour: Colour, harm: _Harm, chance: Random) -> Iterator[Art]:
    """Blunt corners: blots within blots, and marks around them; smaller ones where the joints end."""
    tones = _tones(stuff, colour, harm)
    worn_through = CORE if stuff is Material.PAPER else BOARD
    places = [(tip, harm.tip * (0.75 + 0.5 * chance.random())) for tip in tips(faces)]
    if faces.spine:
        places += [(Point(x, y), harm.tip * (0.35 + 0.25 * chance.random()))
                   for x in faces.folds for y in (faces.spine.y, faces.spine.top)]  # fmt: skip
    marks = Marks(stuff)
    layers = [(0.78, tones[0]), (0.54, tones[1]), (0.3, mixed(tones[2], worn_through, harm.pale))]
    if stuff is Material.PAPER:  # its colour is gone or it is there
        layers = layers[2:]
    for share, tone in layers:
        blots = [command for tip, size in places for command in blot(tip, size * share, chance, 13)]
        if blots:
            yield Filled(snapped(blots), tone)
    for tip, size in places:
        for _ in range(int(26 * size * (1 + harm.pale))):
            turn, deep = chance.random() * 2 * pi, abs(chance.gauss(0.0, 0.62))
            at = tip.plus(size * deep * cos(turn), size * deep * sin(turn))
            marks.add(at, deep * 0.8, chance)
    yield from marks.drawn(tones)


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
        size = 0.6 + 0.8 * chance.random()
        if self._stuff is Material.CLOTH:
            long = 0.17 * size
            level = chance.random() < 0.5
            commands += [("M", *at), ("L", at.x + long, at.y) if level else ("L", at.x, at.y + long)]
        else:
            turn, long = chance.random() * 2 * pi, 0.1 * size
            commands += [("M", *at), ("L", at.x + long * cos(turn), at.y + long * sin(turn))]

    def drawn(self, tones: list[Colour]) -> Iterator[Art]:
        """All marks, the faintest first."""
        for commands, tone in zip(self._of_tone, tones, strict=True):
            if commands:
                yield Stroked(snapped(commands), Pen(MARK[self._stuff], tone))


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
