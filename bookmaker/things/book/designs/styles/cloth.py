"""Cloth with stamped titling: a weave in one colour, rules and ornaments in gold or ink."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal, get_args

from .....ground.art import Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Rect
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..colouring import Colours, colours_of
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.textures import faded_ground, weave
from ..grounds.wear import rubbed, sunned
from ..letters.front import inside, letter_front
from ..letters.lettering import Hand, composed
from ..letters.spine import Spine, free_room, letter_spine
from ..ornament.devices import DEVICES
from ..ornament.ornaments import BandName, band, choose_fleuron, corner_pieces, frame, rule
from ..palettes import Material
from ..tones import darker

__all__ = ["MATERIAL", "Cloth"]

MATERIAL = Material.CLOTH

FACES = (("text bold", "text"), ("old style", "old style"), ("text bold", "text italic"), ("sans bold", "sans"))
"""Title and author: typefaces a stamp was cut in."""


class Cloth(DrawnDesign):
    """Book cloth with stamped titling."""

    style: Literal["cloth"] = "cloth"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: Cloth, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, Material.LEATHER)
    title, author = FACES[int(chance.random() * len(FACES))]
    hand = Hand(title, author, colours.ink, colours.ground, capitals=chance.random() < 0.5)
    fleuron = choose_fleuron(entry.ornament, chance)
    on_spine = hand.on_ground(sunned(colours.ground, entry.wear))
    spine = Spine(on_spine, entry.spine_title, entry.abbreviate, fleuron if chance.random() < 0.6 else None,
                  DEVICES.get(entry.device), rules=True)  # fmt: skip
    # stamped alike through a set, however much weave each volume takes
    stamps = Random(chance.random())
    layers: list[Art] = [
        *faded_ground(faces, colours.ground, entry.wear),
        *weave(faces.whole, colours.ground, chance),
        *_pressed(faces, colours.ground, stamps),
        *_spine_ends(faces, colours, stamps),
        *rubbed(faces, MATERIAL, colours.ground, entry.wear, Random(words.seed)),
    ]
    texts = []
    if faces.spine:
        texts.append(letter_spine(_between_ends(faces.spine), words, spine))
    if faces.front and entry.front_title:
        texts.append(letter_front(inside(faces.front, 0.17, 0.14), words, hand, fleuron))
    return composed(layers, texts, hand, fleuron)


END = 0.085
"""Share of the spine's height that the ornament at head and tail takes."""


def _between_ends(spine: Rect) -> Rect:
    end = spine.height * END * 0.75
    return free_room(spine).grown(0, -end, 0, -end)


def _spine_ends(faces: Faces, colours: Colours, chance: Random) -> Iterator[Art]:
    """Rules, or a band between rules, at head and tail of the spine; they stop short of the folds' error."""
    name = get_args(BandName)[int(chance.random() * len(get_args(BandName)))]
    plain = chance.random() < 0.45
    if not faces.spine:
        return
    spine = faces.spine
    left, right = spine.x, spine.right
    high = spine.height * END
    for at, way in ((spine.top, -1), (spine.y, 1)):
        yield rule(at + way * high * 0.28, left, right, 0.12, colours.ink)
        if plain or spine.width < 1.6:
            yield rule(at + way * high * 0.5, left, right, 0.06, colours.ink)
            continue
        middle = at + way * high * 0.64
        yield band(name, Rect(left, middle - high * 0.2, right - left, high * 0.4), colours.ink)
        yield rule(at + way * high, left, right, 0.12, colours.ink)


def _pressed(faces: Faces, ground: Colour, chance: Random) -> Iterator[Art]:
    """Blind stamping on the sides: a frame pressed into the cloth, darker than it."""
    kind = chance.random()
    tone = darker(ground, 0.3)
    for side in faces.sides:
        inner = side.grown(-side.width * 0.07)
        yield from frame(inner, tone, 0.16, second=side.width * 0.03)
        if kind > 0.5:
            yield corner_pieces(inner.grown(-side.width * 0.05), side.width * 0.16, tone)
        elif kind > 0.25:
            yield Stroked(Path.rectangle(inner.grown(-side.width * 0.05)), Pen(0.3, tone))
