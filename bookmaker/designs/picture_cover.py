"""A publisher's picture cover: the maker's own pictures, or a landscape that runs round the book."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path as FilePath
from random import Random
from typing import Literal

from pydantic import Field

from ..drawing import Art, Drawn
from ..flat import Flat
from ..geometry import Path, Rect
from ..pictures import Picture
from ..spec.words import Text
from .artwork import load_artwork, picture_problems
from .colouring import colours_of, inked
from .design import DrawnDesign, Dress, Words
from .devices import DEVICES
from .faces import Faces, read_faces
from .front import inside, label
from .lettering import Hand, composed
from .ornaments import rule
from .palettes import BONE, GOLD, SOOT, Material
from .poster import poster
from .run_on import RunOn, run_on
from .shapes import Clipped, block
from .spine import Spine, free_room, letter_spine
from .wear import BOARD, rubbed, sunned

__all__ = ["MATERIAL", "PictureCover", "dress", "load"]

MATERIAL = Material.CLOTH


FACES = (("text bold", "text"), ("old style", "old style italic"), ("sans bold", "sans"), ("text bold", "text italic"))
"""Title and author on a drawn cover; the first where the maker brings pictures."""

SKY = 0.46
"""Above this share of a spine's height the sky is plain, and the words stand."""


class PictureCover(DrawnDesign):
    """A cover with pictures."""

    style: Literal["picture"] = "picture"
    front_picture: Text | None = Field(None, description="picture file for the front; a landscape is drawn without it")
    spine_picture: Text | None = Field(None, description="picture file for the spine")
    back_picture: Text | None = Field(None, description="picture file for the back")
    run_on: RunOn = Field("mirror", description="what is printed beyond a picture's edges: mirror, stretch, colour")


@dataclass(frozen=True, slots=True)
class Pictures:
    """The pictures of a cover, read."""

    front: Picture | None = None
    spine: Picture | None = None
    back: Picture | None = None

    @property
    def none(self) -> bool:
        """Whether there is no picture at all."""
        return not (self.front or self.spine or self.back)


def load(entry: PictureCover, folder: FilePath) -> Pictures:
    """Read the pictures.

    Raises:
        ShelfFileError: a picture is missing or cannot be used.
    """
    named = {key: getattr(entry, key) for key in ("front_picture", "spine_picture", "back_picture")}
    found = load_artwork({key: name for key, name in named.items() if name}, folder)
    return Pictures(*(found.get(key) for key in named))


def dress(entry: PictureCover, artwork: Pictures, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, MATERIAL)
    ink = inked(entry, colours.ground, (GOLD, BONE, SOOT) if artwork.none else (BONE, SOOT))
    title, author = FACES[int(chance.random() * len(FACES))] if artwork.none else FACES[0]
    hand = Hand(title, author, ink, colours.ground, capitals=chance.random() < 0.5)
    layers: list[Art] = [block(faces.whole, colours.ground)]
    drawn = poster(entry, faces, colours, words, hand) if artwork.none else None
    layers += drawn.layers if drawn else ()
    placed = list(_placed(faces, artwork, words))
    for _, picture, face, bounds in placed:
        layers.append(Clipped(Drawn(tuple(run_on(picture, face, bounds, entry.run_on))), Path.rectangle(bounds)))
    # where the print is rubbed off a picture the board shows, whatever the ground of the titling
    layers += rubbed(faces, Material.PAPER, BOARD if placed else colours.ground, entry.wear, Random(words.seed))
    texts = []
    if faces.spine:
        art, room = _under_words(faces.spine, artwork, hand)
        layers += art
        on_spine = hand.on_ground(sunned(colours.ground, entry.wear)) if drawn else hand
        spine = Spine(on_spine, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device), rules=True)
        texts.append(letter_spine(room, words, spine))
    if faces.front and entry.front_title and not artwork.front:
        room = inside(faces.front, 0.12, 0.08)
        head = Rect(room.x, room.y + room.height * 0.62, room.width, room.height * 0.38)
        texts.append(label(drawn.front if drawn and drawn.front else head, words, drawn.hand if drawn else hand, 4.6))
    done = composed(layers, texts)
    problems = [problem for key, picture, face, _ in placed for problem in picture_problems(picture, face.size, key)]
    return Dress(done.art, (*done.problems, *problems), done.lettering)


def _under_words(spine: Rect, artwork: Pictures, hand: Hand) -> tuple[list[Art], Rect]:
    """Where the words of a spine stand, and what is drawn for them there."""
    room = free_room(spine)
    if artwork.none:
        return [], Rect(room.x, room.y + room.height * SKY, room.width, room.height * (1 - SKY))
    if artwork.spine:
        # a plate for the words in the upper half: above and below it the picture is seen, across a whole set
        room = Rect(room.x, room.y + room.height * 0.4, room.width, room.height * 0.5)
        plate = room.grown(min(0.2, room.width * 0.05), 0.3, min(0.2, room.width * 0.05), 0.3)
        return [block(plate, hand.ground)], room
    return list(_ends(spine, hand)), inside(room, 0, 0.05)


def _ends(box: Rect, hand: Hand) -> Iterator[Art]:
    """A pair of rules at head and tail of a spine without a picture."""
    for share, wide in ((0.035, 0.22), (0.058, 0.09)):
        for y in (box.y + box.height * share, box.top - box.height * share):
            yield rule(y, box.x, box.right, wide, hand.ink)


def _placed(faces: Faces, artwork: Pictures, words: Words) -> Iterator[tuple[str, Picture, Rect, Rect]]:
    """Each picture with its key, its face, and how far it is printed."""
    if artwork.back and faces.back:
        yield "back_picture", artwork.back, faces.back, faces.to_bleed(faces.back)
    if artwork.front and faces.front:
        yield "front_picture", artwork.front, faces.front, faces.to_bleed(faces.front)
    bounds = faces.spine_to_bleed()
    if artwork.spine and faces.spine and bounds:
        row = faces.spine
        if words.in_set:  # the picture runs across all spines of the set
            row = Rect(row.x - words.in_set.begins, row.y, words.in_set.width, row.height)
        yield "spine_picture", artwork.spine, row, bounds
