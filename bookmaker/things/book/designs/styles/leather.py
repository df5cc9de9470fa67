"""Full leather: grained skin, raised bands, a title label, gold fillets round the sides."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal

from .....ground.drawing import Art, Colour
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..colouring import colours_of, inked, tooled
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.textures import faded_ground, grain
from ..grounds.wear import rubbed, sunned
from ..letters.front import inside, letter_front
from ..letters.lettering import Hand, composed
from ..letters.spine import Spine
from ..ornament.bands import banded_spine
from ..ornament.devices import DEVICES
from ..ornament.ornaments import choose_fleuron, corner_pieces, frame
from ..palettes import Material

__all__ = ["MATERIAL", "Leather"]

MATERIAL = Material.LEATHER


class Leather(DrawnDesign):
    """Leather with raised bands and a title label."""

    style: Literal["leather"] = "leather"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: Leather, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, Material.LEATHER)
    gold = tooled(entry, colours.ground)
    hand = Hand("text bold", "text", gold, colours.ground, capitals=True)
    fleuron = choose_fleuron(entry.ornament, chance)
    on_spine = hand.on_ground(sunned(colours.ground, entry.wear))
    spine = Spine(on_spine, entry.spine_title, entry.abbreviate, fleuron, DEVICES.get(entry.device))
    on_label = (colours.second, inked(entry, colours.second))
    bands, texts = banded_spine(faces, words, spine, on_label, labelled=entry.second_colour is not None)
    layers: list[Art] = [
        *faded_ground(faces, colours.ground, entry.wear),
        *grain(faces.whole, colours.ground, chance),
        *_tooled_sides(faces, gold, chance),
        *bands,
        *rubbed(faces, MATERIAL, colours.ground, entry.wear, Random(words.seed)),
    ]
    if faces.front and entry.front_title:
        texts.append(letter_front(inside(faces.front, 0.22, 0.2), words, hand, fleuron, 4.0))
    return composed(layers, texts, hand, fleuron)


def _tooled_sides(faces: Faces, gold: Colour, chance: Random) -> Iterator[Art]:
    """Fillets round each side, corner pieces within them."""
    wide = chance.random() < 0.5
    for side in faces.sides:
        yield from frame(inside(side, 0.06, 0.045), gold, 0.1, second=0.3)
        if wide:
            inner = inside(side, 0.14, 0.105)
            yield from frame(inner, gold, 0.06)
            yield corner_pieces(inner, side.width * 0.13, gold)
        else:
            yield corner_pieces(inside(side, 0.095, 0.07), side.width * 0.15, gold)
