"""Paper boards: block-printed or plain paper over boards, titles on printed paper labels."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal

from .....ground.art import Filled, Group
from .....ground.drawing import Art, Colour
from .....ground.geometry import Path, Rect
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..colouring import colours_of
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.textures import faded_ground, fibres
from ..grounds.wear import rubbed
from ..letters.front import label
from ..letters.lettering import Hand, Lettered, composed
from ..letters.spine import Spine, as_narrowest, clear_of_folds, free_room, letter_spine, way_for
from ..ornament.devices import DEVICES
from ..ornament.ornaments import choose_fleuron, frame, rule
from ..ornament.repeats import printed_paper
from ..palettes import BONE, SOOT, Material
from ..tones import darker, lighter, mixed

__all__ = ["MATERIAL", "PaperBoards", "label_on_spine"]

MATERIAL = Material.PAPER

FACES = (
    ("text bold", "text italic"),
    ("old style", "old style italic"),
    ("text", "text"),
    ("typewriter", "typewriter"),
)


class PaperBoards(DrawnDesign):
    """Paper over boards with printed labels."""

    style: Literal["paper boards"] = "paper boards"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: PaperBoards, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, Material.CLOTH)
    title, author = FACES[int(chance.random() * len(FACES))]
    paper = mixed(BONE, colours.ground, 0.06)
    hand = Hand(title, author, entry.ink or SOOT, paper)
    fleuron = choose_fleuron(entry.ornament, chance)
    spine = Spine(hand, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device), rules=True)
    layers: list[Art] = [
        *faded_ground(faces, colours.ground, entry.wear),
        *fibres(faces.whole, colours.ground, chance),
    ]
    if fleuron and chance.random() < 0.72:
        layers += _printed(faces, colours.ground, colours.second, chance)
    layers += rubbed(faces, MATERIAL, colours.ground, entry.wear, Random(words.seed))
    texts = []
    if faces.spine and entry.spine_title != "none":
        plate, lettered = label_on_spine(faces.spine, words, spine, colours.second)
        layers += plate
        texts.append(lettered)
    if faces.front and entry.front_title:
        plate_on_front = _plate(faces.front)
        layers += _labelled(plate_on_front, paper, colours.second)
        texts.append(label(plate_on_front.grown(-0.75), words, hand, 3.6))
    return composed(layers, texts, hand)


def _printed(faces: Faces, ground: Colour, ink: Colour, chance: Random) -> Iterator[Art]:
    """The repeat on the sides alone, or all round; never so strong that it outshouts the labels."""
    tone = mixed(ground, ink, 0.62)
    everywhere = chance.random() < 0.4
    sheet = int(chance.random() * 2**32)
    beside = [_beside_spine(faces, side) for side in faces.sides]
    areas = [faces.whole] if everywhere or not beside else beside
    for area in areas:
        yield Group(tuple(printed_paper(area, tone, Random(sheet))), clip=Path.rectangle(area))
    if not everywhere and faces.spine:
        for area in areas:
            x = area.x if area.centre.x > faces.spine.centre.x else area.right
            yield Filled.box(Rect(x - 0.06, area.y, 0.12, area.height), darker(ground, 0.25))


def _beside_spine(faces: Faces, side: Rect) -> Rect:
    """A side, out to the bleed, less a strip along the spine that is left plain."""
    whole = faces.to_bleed(side)
    strip = side.width * 0.12 if faces.spine else 0.0
    return whole.grown(-strip, 0, 0, 0) if faces.outward(side) > 0 else whole.grown(0, 0, -strip, 0)


def label_on_spine(spine: Rect, words: Words, asked: Spine, ink: Colour) -> tuple[list[Art], Lettered]:
    """A paper label near the head, as high as its words need, with a rule at both ends."""
    slim = as_narrowest(spine, words)
    alone = words.on_narrowest()
    way = way_for(free_room(slim), alone, asked)
    high = spine.height * ((0.42 if words.author else 0.3) if way == "across" else 0.68)
    plate, slim_plate = (_on_spine(box, high) for box in (spine, slim))
    edge = max(min(0.35, slim_plate.width * 0.12), clear_of_folds(slim.width) - slim_plate.x + slim.x)
    inner = slim_plate.grown(-edge, -0.55, -edge, -0.55)
    paper = asked.hand.ground
    art: list[Art] = [Filled.box(plate.grown(0.05), darker(paper, 0.3)), Filled.box(plate, paper)]
    for y in (plate.y + 0.28, plate.top - 0.28):
        art.append(rule(y, plate.x + 0.1, plate.right - 0.1, 0.1, ink))
    return art, letter_spine(inner, alone, asked)


def _on_spine(spine: Rect, high: float) -> Rect:
    """Where the label lies on a spine: a little narrower than it, under the head."""
    aside = min(0.22, spine.width * 0.1)
    return Rect(spine.x + aside, spine.top - spine.height * 0.09 - high, spine.width - 2 * aside, high)


def _plate(front: Rect) -> Rect:
    wide, high = front.width * 0.68, front.height * 0.29
    return Rect(front.centre.x - wide / 2, front.y + front.height * 0.56, wide, high)


def _labelled(plate: Rect, paper: Colour, ink: Colour) -> list[Art]:
    return [
        Filled.box(plate.grown(0.06), darker(paper, 0.3)),
        Filled.box(plate, lighter(paper, 0.1)),
        *frame(plate.grown(-0.3), ink, 0.12, second=0.2),
    ]
