"""A publisher's picture cover: the maker's own pictures, or a landscape that runs round the book."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path as FilePath
from random import Random
from typing import Literal

from pydantic import Field

from .....ground.art import Filled, Group
from .....ground.drawing import Art, Colour
from .....ground.geometry import Path, Rect
from .....ground.pictures import Picture
from .....sheets.flat import Flat
from .....shelf_file.fields.words import PictureFile
from ..artwork import Artwork, Pictures, load_artwork, on_ground, picture_problems, pictures_named_by
from ..colouring import colours_of, grounds, inked
from ..design import Dress, SpineTitle, Wear, Words
from ..faces import Faces, read_faces
from ..grounds.surround import Surround, surrounded_picture
from ..grounds.textures import faded_ground, weave
from ..grounds.wear import BOARD, rubbed, sunned
from ..letters.backs import BackedDesign, BackName, back_matter
from ..letters.eras import year_in
from ..letters.front import inside, label
from ..letters.lettering import Hand, composed
from ..letters.spine import Spine, free_room, letter_spine
from ..ornament.devices import DEVICES
from ..ornament.ornaments import BandName, band, double_rule, rule
from ..palettes import BONE, GOLD, SOOT, Material
from ..scenes.manners import MannerName
from ..scenes.scenes import Plate, SceneName, choose_plate
from .look import chosen_hand
from .poster import Poster, poster, rise_of

__all__ = ["MATERIAL", "PictureCover"]

MATERIAL = Material.CLOTH

TYPEFACES = (
    ("clarendon", "clarendon"),
    ("old style", "old style italic"),
    ("geometric", "geometric"),
    ("humanist bold", "humanist"),
    ("inscriptional", "caslon"),
    ("didone", "caslon italic"),
)
"""Title and author on a drawn cover; the first where the maker brings pictures."""

ROWS: tuple[BandName, ...] = ("leaves", "lozenges", "waves", "dots", "chain")
"""Small tools at the ends of a spine without a picture."""

SKY = 0.49
"""Above this share of a spine's height the sky is plain, and the words stand."""


class PictureCover(BackedDesign):
    """A cover with pictures."""

    style: Literal["picture"] = "picture"
    front_picture: PictureFile | None = Field(
        None, description="picture file for the front; a landscape is drawn without it"
    )
    spine_picture: PictureFile | None = Field(None, description="picture file for the spine")
    back_picture: PictureFile | None = Field(None, description="picture file for the back")
    scene: Literal[SceneName, "auto"] = Field("auto", description="what is drawn; auto leaves it to the book")
    manner: Literal[MannerName, "auto"] = Field(
        "auto", description="how it is printed, as in which age; auto leaves it to the book"
    )
    surround: Surround = Field("folded over", description="what is printed beyond a picture's edges")
    material = MATERIAL

    @property
    def picture_across(self) -> str | None:
        """The picture of the spine, if it has one."""
        return self.spine_picture

    @property
    def is_landscape(self) -> bool:
        """Whether it has no pictures."""
        return not (self.front_picture or self.spine_picture or self.back_picture)

    @property
    def scene_named(self) -> bool:
        """Whether the maker named the scene it shows."""
        return self.scene != "auto"

    def scene_for(self, words: Words) -> str | None:
        """Its scene, unless it has pictures."""
        return self.plate(words).scene if self.is_landscape else None

    def plate(self, words: Words) -> Plate:
        """Motif and manner of its landscape, on the ground that it has for a book with these words."""
        ground = grounds(self, words.kin, MATERIAL)[0]
        return choose_plate(self.scene, self.manner, ground, year_in(words.dated), words.kin)

    def load(self, folder: FilePath) -> Artwork:
        """Read the pictures."""
        return load_artwork(pictures_named_by(self), folder)

    def dress(self, artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, artwork.pictures, flat, words)


def dress(entry: PictureCover, pictures: Pictures, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, MATERIAL)
    artwork = {key: on_ground(picture, colours.ground) for key, picture in pictures.items()}
    spine_picture = artwork.get("spine_picture")
    ink = inked(entry, colours.ground, (BONE, SOOT) if artwork else (GOLD, BONE, SOOT))
    hand = chosen_hand(entry, words, TYPEFACES[:1] if artwork else TYPEFACES, 0.5, chance)
    hand = hand.on_ground(colours.ground, ink)
    layers: list[Art] = [*_stuff(faces, artwork, colours.ground, entry.wear, words.kin)]
    drawn = None if artwork else poster(entry, entry.plate(words), faces, colours, words, hand)
    layers += drawn.layers if drawn else ()
    placed = list(_placed(faces, artwork, words))
    for _, picture, face, bounds in placed:
        layers.append(
            Group(tuple(surrounded_picture(picture, face, bounds, entry.surround)), clip=Path.rectangle(bounds))
        )
    # where the print is rubbed off a picture the board shows, whatever the ground of the titling
    layers.append(rubbed(faces, Material.PAPER, BOARD if placed else colours.ground, entry.wear, words.seed))
    back = drawn.back if drawn else None if "back_picture" in artwork or faces.side_alone else faces.back
    if back:
        layers += back_matter(_fitting(entry.back, drawn), back, words, hand, entry.device)
    texts = []
    if faces.spine:
        round_it = drawn is not None and drawn.round_it
        art, room = _under_words(faces.spine, artwork, words, hand, entry.spine_title, round_it=round_it)
        layers += art
        faded = not (spine_picture or round_it)
        on_spine = hand.on_ground(sunned(colours.ground, entry.wear)) if faded else hand
        spine = Spine(on_spine, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device), rules=True)
        texts.append(letter_spine(room, _over_landscape(room, words) if round_it else words, spine))
    if faces.front and entry.front_title and "front_picture" not in artwork:
        room = inside(faces.front, 0.12, 0.08)
        head = Rect(room.x, room.y + room.height * 0.62, room.width, room.height * 0.38)
        texts.append(label(drawn.front if drawn and drawn.front else head, words, drawn.hand if drawn else hand, 4.6))
    done = composed(layers, texts, hand)
    problems = [problem for key, picture, face, _ in placed for problem in picture_problems(picture, face.size, key)]
    return replace(done, problems=(*done.problems, *problems))


def _stuff(faces: Faces, artwork: Pictures, ground: Colour, wear: Wear, kin: int) -> Iterator[Art]:
    """The ground; where pictures leave the spine free it is bleached, and with every other book of cloth."""
    yield from faded_ground(faces, ground, wear)
    strip = faces.spine_to_bleed()
    if faces.pieced:
        yield from weave(faces.whole, sunned(ground, wear) if strip else ground, Random(kin))
    elif strip and artwork and "spine_picture" not in artwork and kin % 2:
        threads = weave(strip, sunned(ground, wear), Random(kin))
        yield Group(tuple(threads), clip=Path.rectangle(strip))


def _under_words(
    spine: Rect, artwork: Pictures, words: Words, hand: Hand, way: SpineTitle, *, round_it: bool
) -> tuple[Sequence[Art], Rect]:
    """What is drawn on a spine for its words, and the room they have there."""
    room = free_room(spine)
    if round_it:
        land = SKY * rise_of(spine, words) * (room.height - (words.in_set.shorter if words.in_set else 0.0))
        return (), Rect(room.x, room.y + land, room.width, room.height - land)
    if "spine_picture" not in artwork:
        return list(_ends(spine, hand, words.kin)), inside(room, 0, 0.06)
    if way == "none":
        return (), room
    # a plate for the words in the upper half: above and below it the picture is seen, across a whole set
    room = Rect(room.x, room.y + room.height * 0.4, room.width, room.height * 0.5)
    aside = min(0.2, room.width * 0.05)
    return [Filled.box(room.grown(aside, 0.3, aside, 0.3), hand.ground)], room


def _fitting(asked: BackName, drawn: Poster | None) -> BackName:
    """Over a landscape there is room for little; with nothing asked for it goes on without a word."""
    return "plain" if drawn and drawn.round_it and asked == "auto" else asked


def _over_landscape(room: Rect, words: Words) -> Words:
    """The words for a room over a landscape that is as high on all books of a set."""
    return words.on_lowest(1 - words.in_set.shorter / room.height) if words.in_set else words


def _ends(box: Rect, hand: Hand, kin: int) -> Iterator[Art]:
    """Head and tail of a spine without a picture: rules in pairs, once or twice, or a row of small tools between."""
    manner, high = kin % 3, box.height * 0.03
    for end, inward in ((box.y, 1), (box.top, -1)):
        if manner == 1 and box.width >= 1.6:
            row = Rect(box.x, end + inward * high * 1.8 - high / 2, box.width, high)
            yield band(ROWS[kin // 3 % len(ROWS)], row, hand.ink)
            yield rule(end + inward * high * 0.9, box.x, box.right, 0.1, hand.ink)
            yield rule(end + inward * high * 2.7, box.x, box.right, 0.1, hand.ink)
            continue
        yield from double_rule(end + inward * high, box.x, box.right, inward, hand.ink)
        if manner == 2:
            yield from double_rule(end + inward * high * 2.2, box.x, box.right, -inward, hand.ink)


def _placed(faces: Faces, artwork: Pictures, words: Words) -> Iterator[tuple[str, Picture, Rect, Rect]]:
    """Each picture with its key, its face, and how far it is printed."""
    for key, side in (("back_picture", faces.back), ("front_picture", faces.front)):
        if key in artwork and side:
            yield key, artwork[key], faces.shown(side), faces.to_bleed(side)
    row, bounds = faces.spine, faces.spine_to_bleed()
    if "spine_picture" in artwork and row and bounds:
        place = words.in_set
        if place:  # the picture runs across all spines of the set, which stand on their tails
            row = Rect(row.x - place.begins, row.y, place.width, row.height + place.taller)
        yield "spine_picture", artwork["spine_picture"], row, bounds
