"""A ledger: canvas sides, spine and corners in leather, broad bands, a label, a number."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from random import Random
from typing import Literal

from .....ground.art import Filled, Group
from .....ground.drawing import Art, Colour
from .....ground.geometry import Rect
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..colouring import colours_of, tooled
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.textures import faded_ground, grain, weave
from ..grounds.wear import rubbed, sunned
from ..letters.front import label
from ..letters.lettering import Hand, Lettered, best_ink, composed, together
from ..letters.spine import Spine, as_in_set, free_room, letter_number, letter_spine, way_along, way_for
from ..ornament.devices import DEVICES
from ..ornament.ornaments import frame, rule
from ..ornament.tooling import ridge
from ..palettes import BONE, SOOT, Material
from ..tones import darker, mixed
from .half_leather import corners_of, leather_parts

__all__ = ["MATERIAL", "LedgerDesign"]

MATERIAL = Material.CLOTH


class LedgerDesign(DrawnDesign):
    """An account book."""

    style: Literal["ledger"] = "ledger"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: LedgerDesign, flat: Flat, words: Words) -> Dress:
    """Draw one flat: `colour` is the canvas, `second_colour` the leather."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, Material.LEATHER)
    canvas, leather = mixed(colours.ground, BONE, 0.12), colours.second
    gold = tooled(entry, leather)
    layers: list[Art] = [*faded_ground(faces, leather, entry.wear), *grain(faces.whole, leather, chance)]
    for outline in leather_parts(faces):
        area = Rect.around(outline.points())
        stuff = (Filled.box(area, canvas), *weave(area, canvas, Random(chance.random()), 0.24, 0.13))
        layers.append(Group(stuff, clip=outline))
    layers += corners_of(faces, darker(leather, 0.4))
    hand = Hand("text bold", "text", gold, leather)
    texts: list[Lettered] = []
    if faces.spine:
        pale = sunned(leather, entry.wear)
        places, lettered = _on_spine(faces.spine, words, entry, hand.on_ground(pale))
        layers += _ridges(faces, places, pale, gold)
        texts.append(lettered)
    layers += rubbed(faces, Material.LEATHER, leather, entry.wear, Random(words.seed), (Material.CLOTH, canvas))
    if faces.front and entry.front_title:
        plate = _plate(faces.front)
        red = best_ink(BONE, (leather, SOOT))
        layers += [Filled.box(plate, BONE), *frame(plate.grown(-0.3), red, 0.14, second=0.25)]
        texts.append(label(plate.grown(-0.8), words, Hand("text bold", "script", entry.ink or SOOT, BONE), 4.0))
    return composed(layers, texts, hand)


PLACES = (0.1, 0.3, 0.7, 0.9)
"""Where the bands lie, as shares of the spine's height."""

LARGEST_NUMBER = 1.8
"""The em of a number between the lower bands, in mm at the most."""

PLACES_ALONG = (0.06, 0.18, 0.82, 0.94)
"""Where they lie when the words run along the spine and need more of its length."""


def _ridges(faces: Faces, places: Sequence[float], leather: Colour, gold: Colour) -> Iterator[Art]:
    """Four broad bands, with a fillet on both sides of each."""
    box = faces.spine
    if not box:
        return
    high = min(1.3, box.height * 0.045)
    for share in places:
        y = box.y + box.height * share
        if box.width >= 2.2:
            yield from ridge(box, y, high, leather)
        for off in (-0.75, 0.75):
            yield rule(y + off * high, box.x, box.right, 0.12, gold)


def _on_spine(box: Rect, words: Words, entry: LedgerDesign, hand: Hand) -> tuple[Sequence[float], Lettered]:
    """Where the bands lie, and the words: across, the title stands between the middle ones and the number under it."""
    room = as_in_set(free_room(box), words)
    spine = Spine(hand, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device), rules=True)
    words = words.on_narrowest()
    between = _between(room, box, PLACES)
    if entry.spine_title == "none":
        return PLACES, Lettered()
    long = _between(room, box, PLACES_ALONG)
    if way_for(long, words, spine) != "across" or way_for(between, words, spine) != "across":
        along = replace(spine, way=way_along(words)) if spine.way == "auto" else spine
        return PLACES_ALONG, letter_spine(long, words, along)
    number = words.volume or words.date
    if not number:
        return PLACES, letter_spine(between, words, spine)
    rest = words.without("volume" if words.volume else "date")
    below = Rect(room.x, box.y + box.height * 0.15, room.width, box.height * 0.1)
    numbered = letter_number(number, below, words, hand, LARGEST_NUMBER)
    return PLACES, together((letter_spine(between, rest, spine), numbered))


def _between(room: Rect, box: Rect, places: Sequence[float]) -> Rect:
    """The room between the middle bands, clear of them."""
    low, high = (box.y + box.height * (share + off) for share, off in ((places[1], 0.05), (places[2], -0.05)))
    return Rect(room.x, low, room.width, high - low)


def _plate(front: Rect) -> Rect:
    wide, high = front.width * 0.58, front.height * 0.28
    return Rect(front.centre.x - wide / 2 + front.width * 0.06, front.y + front.height * 0.5, wide, high)
