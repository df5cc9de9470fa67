"""An atlas: a large cloth book with broad frames, a globe of meridians, capitals."""

from __future__ import annotations

from collections.abc import Iterator
from math import cos, pi, radians, sin
from random import Random
from typing import Literal

from .....ground.art import Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Point, Rect
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..colouring import colours_of
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.textures import faded_ground, weave
from ..grounds.wear import rubbed, sunned
from ..letters.front import inside
from ..letters.lettering import Hand, Lettered, composed, fitted, letter
from ..letters.spine import Spine, as_narrowest, free_room, letter_spine
from ..ornament.devices import DEVICES
from ..ornament.ornaments import band, corner_pieces, frame, rule
from ..ornament.shapes import gathered
from ..palettes import Material
from ..tones import darker

__all__ = ["MATERIAL", "Atlas", "globe"]

MATERIAL = Material.CLOTH


class Atlas(DrawnDesign):
    """A book of maps."""

    style: Literal["atlas"] = "atlas"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: Atlas, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, Material.LEATHER)
    hand = Hand("text bold", "text", colours.ink, colours.ground, capitals=True)
    turn = chance.random() * 30
    layers: list[Art] = [
        *faded_ground(faces, colours.ground, entry.wear),
        *weave(faces.whole, colours.ground, chance, 0.2, 0.08),
        *_frames(faces, darker(colours.ground, 0.32)),
    ]
    texts: list[Lettered] = []
    if faces.spine:
        on_spine = hand.on_ground(sunned(colours.ground, entry.wear))
        spine = Spine(on_spine, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device), rules=True)
        art, lettered = _spine(faces.spine, words, spine, turn)
        layers += art
        texts.append(lettered)
    layers += rubbed(faces, MATERIAL, colours.ground, entry.wear, Random(words.seed))
    if faces.front and entry.front_title:
        art, lettered_front = _front(faces.front, words, hand, turn)
        layers += art
        texts += lettered_front
    return composed(layers, texts, hand)


def _frames(faces: Faces, tone: Colour) -> Iterator[Art]:
    for side in faces.sides:
        yield from frame(inside(side, 0.05, 0.035), tone, 0.28, second=0.4)
        yield corner_pieces(inside(side, 0.09, 0.064), side.width * 0.12, tone)


def _spine(box: Rect, words: Words, spine: Spine, turn: float) -> tuple[list[Art], Lettered]:
    """Bands of a Greek key at head and tail, a small globe over the tail if there is room for one."""
    ink = spine.hand.ink
    slim = as_narrowest(box, words)
    room = free_room(slim)
    high = box.height * 0.035
    art: list[Art] = []
    for y, inward in ((box.y + box.height * 0.05, 1), (box.top - box.height * 0.05, -1)):
        art += [rule(y, box.x, box.right, 0.14, ink), rule(y + inward * high * 1.9, box.x, box.right, 0.14, ink)]
        if box.width >= 1.6:
            art.append(band("key", Rect(box.x, y + inward * high * 0.95 - high / 2, box.width, high), ink))
    end = box.height * 0.05 + high * 1.9 + 0.5
    free = Rect(room.x, box.y + end, room.width, box.height - 2 * end)
    side = min(room.width * 0.8, box.height * 0.14)
    if slim.width >= 2.6:
        art += globe(Point(box.centre.x, free.y + side / 2 + 0.2), side / 2, ink, turn)
        free = free.grown(0, -side - 0.6, 0, 0)
    return art, letter_spine(free, words.on_narrowest(), spine)


def _front(front: Rect, words: Words, hand: Hand, turn: float) -> tuple[list[Art], list[Lettered]]:
    """Title over a globe, the author under it."""
    hand = hand.on_front()
    room = inside(front, 0.17, 0.13)
    title = Rect(room.x, room.y + room.height * 0.66, room.width, room.height * 0.34)
    size = fitted("title", words.title, title, hand, "across", 5.0).size
    texts = [letter("title", words.title, title, hand, "across", 5.0)]
    if words.author:
        foot = Rect(room.x, room.y, room.width, room.height * 0.13)
        texts.append(letter("author", words.author, foot, hand, "across", size * 0.6))
    radius = min(room.width * 0.36, room.height * 0.2)
    return list(globe(Point(room.centre.x, room.y + room.height * 0.39), radius, hand.ink, turn)), texts


def globe(centre: Point, radius: float, ink: Colour, turned_deg: float) -> Iterator[Art]:
    """A sphere seen from over the equator: meridians every 30° and parallels, as ellipses and chords."""
    fine = Pen(max(0.05, radius * 0.03), ink)
    lines = [_meridian(centre, radius, longitude + turned_deg % 30) for longitude in range(-90, 90, 30)]
    for latitude in (-60, -30, 0, 30, 60):
        half, y = radius * cos(radians(latitude)), centre.y + radius * sin(radians(latitude))
        lines.append(Path.line(Point(centre.x - half, y), Point(centre.x + half, y)))
    yield Stroked(gathered(lines), fine)
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
