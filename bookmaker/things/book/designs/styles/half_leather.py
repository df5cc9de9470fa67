"""Half leather: spine and corners in leather, the sides in marbled paper.

On a cover of one piece all three are drawn; where spine, sides and corners are pieces of their own, each is
of its own stuff.
"""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal

from .....ground.art import Filled, Group, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Point, Rect, polygon
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..colouring import colours_of, inked, tooled
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.marbling import marbled
from ..grounds.textures import faded_ground, grain
from ..grounds.wear import rubbed, sunned
from ..letters.front import label
from ..letters.lettering import Hand, composed
from ..letters.spine import Spine
from ..ornament.bands import banded_spine
from ..ornament.devices import DEVICES
from ..ornament.ornaments import choose_fleuron, frame
from ..palettes import BONE, PALETTES, SOOT, Material
from ..tones import darker

__all__ = ["MATERIAL", "HalfLeather", "corners_of", "leather_parts"]

MATERIAL = Material.LEATHER

ONTO_SIDES = 0.2
"""Leather of the spine covers this share of the sides."""

CORNER = 0.3
"""Leather corners reach this share of a side's width along its edges."""


class HalfLeather(DrawnDesign):
    """Leather spine and corners, marbled sides."""

    style: Literal["half leather"] = "half leather"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: HalfLeather, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, Material.LEATHER)
    gold = tooled(entry, colours.ground)
    hand = Hand("text bold", "text", gold, colours.ground, capitals=True)
    on_spine = hand.on_ground(sunned(colours.ground, entry.wear))
    spine = Spine(on_spine, entry.spine_title, entry.abbreviate, choose_fleuron(entry.ornament, chance),
                  DEVICES.get(entry.device))  # fmt: skip
    on_label = (colours.second, inked(entry, colours.second))
    bands, texts = banded_spine(faces, words, spine, on_label, labelled=entry.second_colour is not None)
    bath = _bath(PALETTES[entry.palette].marbling, chance)
    layers: list[Art] = [
        *faded_ground(faces, colours.ground, entry.wear),
        *grain(faces.whole, colours.ground, chance),
        *_paper_sides(faces, bath, colours.ground, chance),
        *bands,
        *rubbed(faces, MATERIAL, colours.ground, entry.wear, Random(words.seed), (Material.PAPER, bath[0])),
    ]
    if faces.front and entry.front_title:
        plate = _plate(faces)
        paper = BONE
        layers += [Filled.box(plate, paper), *frame(plate.grown(-0.25), SOOT, 0.07)]
        front = Hand("text bold", "text italic", SOOT, paper)
        texts.append(label(plate.grown(-0.6), words, front, 3.6))
    return composed(layers, texts, hand, spine.fleuron)


def _bath(colours: tuple[Colour, ...], chance: Random) -> tuple[Colour, ...]:
    """The colours of the marbler's bath for one book: all of them, or one less; the lightest stays last."""
    *strong, pale = colours
    if chance.random() < 0.6:
        strong.pop(int(chance.random() * len(strong)))
    return (*strong, pale)


def _plate(faces: Faces) -> Rect:
    """The label on the front, in the upper half of what paper shows: three fifths as wide, a third as high."""
    front = faces.front
    assert front is not None  # a label stands on a front
    paper = front
    if faces.spine:  # the leather of the spine goes on to the side
        hidden = front.width * ONTO_SIDES
        paper = Rect(front.x + (hidden if faces.outward(front) > 0 else 0), front.y, front.width - hidden, front.height)
    board = faces.shown(front)
    wide, high = paper.width * 0.62, min(board.height * 0.31, front.height)
    return Rect(paper.centre.x - wide / 2, min(board.y + board.height * 0.55, front.top - high), wide, high)


def leather_parts(faces: Faces) -> Iterator[Path]:
    """The outlines of the sides that are not leather, out to the bleed: what is left beside spine and corners."""
    for side in faces.sides:
        out = faces.outward(side)
        reach = faces.to_bleed(side)
        near = side.x + side.width * ONTO_SIDES if out > 0 else side.right - side.width * ONTO_SIDES
        if not faces.spine:
            near = reach.x if out > 0 else reach.right
        far = reach.right if out > 0 else reach.x
        edge = side.right if out > 0 else side.x
        cut = side.width * CORNER if faces.spine else 0.0
        yield _without_corners(side, reach, near, far, edge, cut, out)


def _without_corners(side: Rect, reach: Rect, near: float, far: float, edge: float, cut: float, out: int) -> Path:
    """A side from the leather of its spine to its far edge, its two far corners cut off at 45°."""
    low, high = reach.y, reach.top
    if not cut:
        return polygon([Point(near, low), Point(far, low), Point(far, high), Point(near, high)])
    # The line of a corner is carried on beyond the edges of the board, into the turn-in or the bleed.
    below, beyond = side.y - low, abs(far - edge)
    return polygon(
        [
            Point(near, low),
            Point(edge - out * (cut + below), low),
            Point(far, side.y + cut + beyond),
            Point(far, side.top - cut - beyond),
            Point(edge - out * (cut + below), high),
            Point(near, high),
        ]
    )


def corners_of(faces: Faces, colour: Colour) -> Iterator[Art]:
    """A fine line where the leather ends."""
    for outline in leather_parts(faces):
        yield Stroked(outline, Pen(0.12, colour))


def _paper_sides(faces: Faces, bath: tuple[Colour, ...], skin: Colour, chance: Random) -> Iterator[Art]:
    """Both sides from one sheet, as the binder cuts them."""
    sheet = int(chance.random() * 2**32)
    for outline in leather_parts(faces):
        area = Rect.around(outline.points())
        yield Group(tuple(marbled(area, bath, Random(sheet))), clip=outline)
    yield from corners_of(faces, darker(skin, 0.35))
