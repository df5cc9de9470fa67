"""A modern paperback: one colour, and one idea on it that runs round the spine; plain lettering."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from random import Random
from typing import Literal

from .....ground.art import Filled, Group
from .....ground.drawing import Art, Colour
from .....ground.geometry import Path, Rect
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..chance import one_of
from ..colouring import colours_of, inked
from ..design import DrawnDesign, Dress, Wear, Words
from ..faces import Faces, read_faces
from ..grounds.textures import fading
from ..grounds.wear import creased, rubbed, sunned
from ..letters.backs import PART, BackedDesign, back_matter
from ..letters.front import inside, label
from ..letters.lettering import best_ink, composed
from ..letters.spine import Spine, free_room, letter_spine
from ..ornament.devices import DEVICES
from ..ornament.shapes import rounded
from ..palettes import BONE, PALETTES, SOOT, Material
from ..scenes.paperback_ideas import BOLD_IDEAS, IDEAS, Field, Idea
from ..tones import apart, darker, mixed
from .look import chosen_hand

__all__ = ["MATERIAL", "Paperback"]

MATERIAL = Material.CLOTH

TYPEFACES = (
    ("geometric bold", "geometric"),
    ("humanist bold", "humanist"),
    ("caslon", "humanist"),
    ("sans bold", "sans"),
    ("clarendon bold", "clarendon"),
    ("old style", "humanist"),
)

BOLD = 0.42
"""How often an idea fills the sides."""

FOOT = 0.1
"""Share of the spine's height that is inked at its foot beside such sides."""


class Paperback(BackedDesign):
    """A paperback."""

    style: Literal["paperback"] = "paperback"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: Paperback, flat: Flat, words: Words) -> Dress:
    """Draw one flat: the idea lies low on the cover and the words above it, or it fills the sides behind a label."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, MATERIAL)
    hand = chosen_hand(entry, words, TYPEFACES, 0.0, chance)
    hand = hand.on_ground(colours.ground, inked(entry, colours.ground, (BONE, SOOT)))
    level = faces.spine or faces.front or faces.whole
    top = level.y + level.height * (0.26 + 0.16 * chance.random())
    inks, seed = _inks(entry, colours.ground, colours.second), words.kin % 1_000_003
    bold = chance.random() < BOLD
    idea = one_of(BOLD_IDEAS if bold else IDEAS, chance)
    field = Field(faces.whole, level, top, faces.front or faces.whole, faces.spine, seed)
    layers = _bold(faces, field, idea, inks) if bold else _low(faces, field, idea, inks, entry.wear, colours.ground)
    layers += _creases(faces, colours.ground)
    if entry.wear == "heavy":
        layers += creased(faces, colours.ground, Random(words.seed), 1)
    plate = _plate(faces.front, chance) if bold and faces.front else None
    front = hand
    if plate and entry.front_title:
        front = hand.on_ground(BONE, entry.ink or best_ink(BONE, (darker(colours.ground, 0.2), SOOT)))
        round_off = 0.5 if chance.random() < 0.3 else 0.06
        for rect, colour in ((plate.grown(plate.height * 0.06), colours.ground), (plate, BONE)):
            layers.append(Filled(rounded(rect, rect.height * round_off), colour))
    layers.append(rubbed(faces, Material.PAPER, colours.ground, entry.wear, words.seed))
    if faces.back and not (bold or faces.side_alone):
        above = Rect(faces.back.x, top, faces.back.width, faces.back.top - top)
        layers += back_matter(entry.back, above, words, hand, entry.device, PART)
    texts = []
    if faces.spine:
        on_spine = hand.on_ground(sunned(colours.ground, entry.wear))
        spine = Spine(on_spine, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device),
                      author_first=chance.random() < 0.4)  # fmt: skip
        room = free_room(faces.spine)
        foot = faces.spine.y + faces.spine.height * FOOT if bold else top
        texts.append(letter_spine(Rect(room.x, foot + 0.6, room.width, room.top - foot - 0.6), words, spine))
    if faces.front and entry.front_title:
        texts.append(label(inside(plate, 0.12, 0.14) if plate else _above(faces.front, top), words, front, 5.0))
    return composed([Filled.box(faces.whole, colours.ground), *layers], texts, hand)


def _low(faces: Faces, field: Field, idea: Idea, inks: Sequence[Colour], wear: Wear, ground: Colour) -> list[Art]:
    """The idea at the foot all round the book, bleached towards the spine."""
    layers: list[Art] = list(idea(field, inks))
    for strip, share in fading(faces, 4) if wear != "none" else ():
        below, *bleached = (mixed(ink, sunned(ink, wear), share) for ink in (ground, *inks))
        layers.append(Group((Filled.box(strip, below), *idea(field, bleached)), clip=Path.rectangle(strip)))
    return layers


def _bold(faces: Faces, field: Field, idea: Idea, inks: Sequence[Colour]) -> list[Art]:
    """The idea as large as the sides; the spine plain, its foot in the first ink."""
    layers: list[Art] = []
    for side in faces.sides:
        reach = faces.to_bleed(side)
        large = replace(field, whole=reach, level=side, top=side.top * 0.98 + side.y * 0.02, front=side, spine=None)
        layers.append(Group(tuple(idea(large, inks)), clip=Path.rectangle(reach)))
    strip = faces.spine_to_bleed()
    if strip and faces.spine:
        foot = faces.spine.y + faces.spine.height * FOOT
        layers.append(Filled.box(Rect(strip.x, strip.y, strip.width, foot - strip.y), inks[0]))
        layers.append(Filled.box(Rect(strip.x, foot, strip.width, faces.spine.height * 0.012), inks[1]))
    return layers


def _plate(front: Rect, chance: Random) -> Rect:
    """Where the label lies on a front that the idea fills."""
    wide, high = front.width * (0.66 + 0.12 * chance.random()), front.height * (0.27 + 0.08 * chance.random())
    foot = one_of((0.6, 0.5, 0.14), chance)
    return Rect(front.centre.x - wide / 2, front.y + front.height * foot, wide, high)


def _above(front: Rect, top: float) -> Rect:
    """What is left of a front over an idea that ends at `top`."""
    room = inside(front, 0.1, 0.07)
    high = room.top - top - front.height * 0.07
    return Rect(room.x, room.top - high, room.width, high)


def _inks(entry: DrawnDesign, ground: Colour, second: Colour) -> list[Colour]:
    """The colours of the idea: all unlike the ground, the first two unlike one another."""
    papers = [colour for colour in PALETTES[entry.palette].grounds[Material.PAPER] if apart(colour, ground) > 0.15]
    cloths = [colour for colour in PALETTES[entry.palette].grounds[Material.CLOTH]
              if min(apart(colour, ground), apart(colour, second)) > 0.12]  # fmt: skip
    return [second, *papers[:1], *cloths[:1], darker(ground, 0.3)]


def _creases(faces: Faces, ground: Colour) -> Iterator[Art]:
    """Where the cover bends on opening: a fine line beside each fold."""
    for x in faces.folds:
        away = 0.9 if faces.spine and x > faces.spine.centre.x else -0.9
        yield Filled.box(Rect(x + away - 0.025, faces.whole.y, 0.05, faces.whole.height), darker(ground, 0.12))
