"""A school series: smooth cloth in one colour, a heavy frame, a roundel with the number."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal

from .....ground.art import Filled, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Point, Rect, polygon
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..colouring import colours_of, inked
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.textures import faded_ground, weave
from ..grounds.wear import rubbed, sunned
from ..letters.front import inside
from ..letters.lettering import Hand, Lettered, composed, fitted, letter
from ..letters.spine import Spine, as_in_set, free_room, letter_number, letter_spine
from ..ornament.devices import DEVICES
from ..ornament.ornaments import choose_fleuron, stamp
from ..palettes import BONE, SOOT, Material

__all__ = ["MATERIAL", "School"]

MATERIAL = Material.CLOTH


class School(DrawnDesign):
    """A schoolbook of a series."""

    style: Literal["school"] = "school"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: School, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, Material.PAPER)
    ink = inked(entry, colours.ground, (SOOT, BONE))
    hand = Hand("sans bold", "text", ink, colours.ground)
    fleuron = choose_fleuron(entry.ornament, chance)
    layers: list[Art] = [
        *faded_ground(faces, colours.ground, entry.wear),
        *weave(faces.whole, colours.ground, chance, 0.13, 0.05),
        *_frames(faces, ink),
    ]
    texts: list[Lettered] = []
    if faces.spine:
        art, lettered = _spine(faces.spine, words, entry, hand.on_ground(sunned(colours.ground, entry.wear)))
        layers += art
        texts += lettered
    layers += rubbed(faces, MATERIAL, colours.ground, entry.wear, Random(words.seed))
    if faces.front and entry.front_title:
        art, lettered = _front(faces.front, words, hand, fleuron)
        layers += art
        texts += lettered
    return composed(layers, texts, hand, fleuron)


def _cut_frame(rect: Rect, cut: float) -> Path:
    """A rectangle with its corners cut off."""
    x, y, right, top = rect.x, rect.y, rect.right, rect.top
    return polygon(
        [
            Point(x + cut, y), Point(right - cut, y), Point(right, y + cut), Point(right, top - cut),
            Point(right - cut, top), Point(x + cut, top), Point(x, top - cut), Point(x, y + cut),
        ]
    )  # fmt: skip


def _frames(faces: Faces, ink: Colour) -> Iterator[Art]:
    for side in faces.sides:
        outer = inside(side, 0.08, 0.057)
        yield Stroked(_cut_frame(outer, side.width * 0.07), Pen(side.width * 0.026, ink))
        yield Stroked(_cut_frame(outer.grown(-side.width * 0.035), side.width * 0.06), Pen(side.width * 0.008, ink))


def _spine(box: Rect, words: Words, entry: School, hand: Hand) -> tuple[list[Art], list[Lettered]]:
    """Ends in ink, the number in the lower one; the title between. Without a title the number stands on the cloth."""
    end = box.height * (0.18 if words.volume else 0.09)
    titled = entry.spine_title != "none"
    on_end = hand.on_ground(hand.ink, hand.ground) if titled else hand
    art: list[Art] = [
        *([Filled.box(Rect(box.x, box.y, box.width, end), hand.ink)] if titled or not words.volume else []),
        Filled.box(Rect(box.x, box.top - box.height * 0.05, box.width, box.height * 0.05), hand.ink),
        Filled.box(Rect(box.x, box.y + end + 0.3, box.width, 0.16), hand.ink),
        Filled.box(Rect(box.x, box.top - box.height * 0.05 - 0.46, box.width, 0.16), hand.ink),
    ]
    room = as_in_set(free_room(box), words)
    free = Rect(room.x, box.y + end + 0.8, room.width, box.height * 0.95 - end - 1.7)
    spine = Spine(hand, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device), rules=True)
    texts = [letter_spine(free, words.on_narrowest().without("volume"), spine)]
    if words.volume:
        foot = Rect(room.x, box.y + end * 0.2, room.width, end * 0.6)
        texts.append(letter_number(words.volume, foot, words, on_end))
    return art, texts


def _front(front: Rect, words: Words, hand: Hand, fleuron: Path | None) -> tuple[list[Art], list[Lettered]]:
    """Title in the upper half, the roundel under it, the author at the foot."""
    hand = hand.on_front()
    room = inside(front, 0.18, 0.14)
    title = Rect(room.x, room.y + room.height * 0.58, room.width, room.height * 0.4)
    size = fitted("title", words.title, title, hand, "across", 4.6).size
    texts = [letter("title", words.title, title, hand, "across", 4.6)]
    middle = Point(room.centre.x, room.y + room.height * 0.37)
    radius = min(room.width * 0.2, room.height * 0.13)
    art: list[Art] = []
    if words.volume:
        art.append(Filled(Path.circle(middle, radius), hand.ink))
        art.append(Stroked(Path.circle(middle, radius * 1.18), Pen(0.1, hand.ink)))
        box = Rect(middle.x - radius * 0.62, middle.y - radius * 0.55, radius * 1.24, radius * 1.1)
        texts.append(letter("volume", words.volume, box, hand.on_ground(hand.ink, hand.ground), "across", 4.0))
    elif fleuron:
        box = Rect(middle.x - radius, middle.y - radius, 2 * radius, 2 * radius)
        art.append(stamp(fleuron, box, hand.ink))
    if words.author:
        foot = Rect(room.x, room.y, room.width, room.height * 0.15)
        texts.append(letter("author", words.author, foot, hand, "across", size * 0.65))
    return art, texts
