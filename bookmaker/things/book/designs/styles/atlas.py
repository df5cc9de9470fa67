"""An atlas: a large cloth book with broad frames, a globe of meridians, capitals."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, radians, sin
from random import Random
from typing import Literal

from .....ground.art import Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Point, Rect
from ..design import Words
from ..grounds.textures import faded_ground, weave
from ..letters.front import inside, title_and_author
from ..letters.spine import as_narrowest, free_room, letter_spine
from ..ornament.corners import corner_pieces
from ..ornament.ornaments import band, frame, rule
from ..ornament.shapes import gathered
from ..palettes import Material
from ..tones import darker
from .look import ArtAndWords, Dressing, Look, SkeletonDesign

__all__ = ["Atlas"]


def _covering(cover: Dressing, chance: Random) -> Iterator[Art]:
    chance.random()  # how far the globe is turned
    yield from faded_ground(cover.faces, cover.ground, cover.entry.wear)
    yield from weave(cover.faces.whole, cover.ground, chance, 0.035)
    tone = darker(cover.ground, 0.32)
    for side in cover.faces.sides:
        yield from frame(inside(side, 0.05, 0.035), tone, 0.28, second=0.4)
        yield corner_pieces(inside(side, 0.09, 0.064), side.width * 0.12, tone, cover.words.kin)


def _spine(cover: Dressing, box: Rect) -> ArtAndWords:
    """Bands of a Greek key at head and tail, a small globe over the tail if there is room for one."""
    ink, words, slim = cover.hand.ink, cover.words, as_narrowest(box, cover.words)
    room, high, art = free_room(slim), box.height * 0.035, list[Art]()
    for y, inward in ((box.y + box.height * 0.05, 1), (box.top - box.height * 0.05, -1)):
        art += [rule(y, box.x, box.right, 0.14, ink), rule(y + inward * high * 1.9, box.x, box.right, 0.14, ink)]
        if box.width >= 1.6:
            art.append(band("key", Rect(box.x, y + inward * high * 0.95 - high / 2, box.width, high), ink))
    end = box.height * 0.05 + high * 1.9 + 0.5
    free = Rect(room.x, box.y + end, room.width, box.height - 2 * end)
    side = min(room.width * 0.8, box.height * 0.14)
    if slim.width >= 2.6:
        art += _globe(Point(box.centre.x, free.y + side / 2 + 0.2), side / 2, ink, words)
        free = free.grown(0, -side - 0.6, 0, 0)
    return art, [letter_spine(free, words.on_narrowest(), cover.spine)]


def _front(cover: Dressing, front: Rect) -> ArtAndWords:
    """Title over a globe, the author under it."""
    room = inside(front, 0.17, 0.13)
    radius = min(room.width * 0.36, room.height * 0.2)
    globe = _globe(Point(room.centre.x, room.y + room.height * 0.39), radius, cover.hand.ink, cover.words)
    return list(globe), title_and_author(room, cover.words, cover.hand, (0.66, 0.34), 0.13, 0.6, 5.0)


def _globe(centre: Point, radius: float, ink: Colour, words: Words) -> Iterator[Art]:
    """A sphere seen from over the equator: meridians every 30° and parallels, as ellipses and chords."""
    turned_deg = Random(words.kin).random() * 30
    lines = [_meridian(centre, radius, longitude + turned_deg) for longitude in range(-90, 90, 30)]
    for latitude in (-60, -30, 0, 30, 60):
        half, y = radius * cos(radians(latitude)), centre.y + radius * sin(radians(latitude))
        lines.append(Path.line(Point(centre.x - half, y), Point(centre.x + half, y)))
    yield Stroked(gathered(lines), Pen(max(0.05, radius * 0.03), ink))
    yield Stroked(Path.circle(centre, radius), Pen(max(0.1, radius * 0.07), ink))


def _meridian(centre: Point, radius: float, longitude_deg: float) -> Path:
    """Half an ellipse from pole to pole, of two curves."""
    bulge = radius * sin(radians(longitude_deg))
    handle = 4 / 3 * sin(pi / 8) / cos(pi / 8)
    x, y = centre
    return Path(
        (
            ("M", x, y + radius),
            ("C", x + bulge * handle, y + radius, x + bulge, y + radius * handle, x + bulge, y),
            ("C", x + bulge, y - radius * handle, x + bulge * handle, y - radius, x, y - radius),
        )
    )


class Atlas(SkeletonDesign):
    """A book of maps."""

    style: Literal["atlas"] = "atlas"
    material = Material.CLOTH
    look = Look(
        second=Material.LEATHER,
        typefaces=(
            ("inscriptional", "caslon"),
            ("didone", "caslon"),
            ("caslon", "caslon"),
        ),
        capitals=1.0,
        ornamented=False,
        covering=_covering,
        spine=_spine,
        front=_front,
    )
