"""The plain design: one colour all over, title and author on spine and front, pictures if given."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field

from .....ground.art import Filled, Group, Pictured
from .....ground.drawing import Art, Colour, contrast
from .....ground.geometry import Path, Rect
from .....ground.pictures import covering
from .....ground.problems import Problem
from .....sheets.flat import Flat, Panel, Role
from .....shelf_file.fields.words import Flag, Ink, PictureFile
from ..artwork import Artwork, Pictures, load_artwork, on_ground, picture_problems, pictures_named_by
from ..design import Dress, LetteredDesign, Lettering, Titling, Words
from ..faces import read_faces
from ..letters.front import inside, title_and_author
from ..letters.lettering import Hand, Lettered
from ..letters.spine import Spine, free_room, letter_spine

__all__ = ["Plain"]

DARK, LIGHT = Colour.from_hex("#1d1a17"), Colour.from_hex("#f6f0e2")

TYPEFACES = "text bold", "text"
"""Typefaces of spine and front: one family, sturdy enough for the smallest spine."""

LARGEST_ON_FRONT = 6.0
"""A size of titling (the em, in mm) that nothing larger than a folio asks for at 1:12."""

AUTHOR_SHARE = 0.75
"""The author is set no larger than this share of the title."""

FRONT_INSET = 0.1
"""Titling keeps this share of the front's width, and of its height, from its edges."""


class Plain(LetteredDesign):
    """One colour, with titling and pictures."""

    style: Literal["plain"] = "plain"
    colour: Ink = Field(Colour.from_hex("#7a2f2a"), description='ground colour, such as "#7a2f2a"')
    ink: Ink | None = Field(None, description="colour of the titling; light or dark as the ground asks, if not given")
    spine_title: Literal["down", "up", "across", "none"] = Field("down", description="how the spine is lettered")
    front_title: Flag | None = Field(None, description="title on the front: yes unless there is a front picture")
    front_picture: PictureFile | None = Field(None, description="picture file for the front")
    back_picture: PictureFile | None = Field(None, description="picture file for the back")

    @property
    def ground(self) -> Colour:
        """The one colour."""
        return self.colour

    def load(self, folder: FilePath) -> Artwork:
        """Read the pictures."""
        return load_artwork(pictures_named_by(self), folder)

    def dress(self, artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, artwork.pictures, flat, words)


def dress(entry: Plain, pictures: Pictures, flat: Flat, words: Words) -> Dress:
    """Draw the cover on its flat, out to the bleed."""
    layers: list[Art] = [Filled.box(Rect(0, 0, *flat.size).grown(flat.bleed), entry.colour)]
    problems: list[Problem] = []
    lettering: list[Lettering] = []
    for panel in flat.panels:
        if _is_strip(panel, flat):
            continue
        key = f"{panel.role}_picture"
        if key in pictures:
            picture = on_ground(pictures[key], entry.colour)
            area = _picture_area(panel.rect, flat)
            layers.append(Group((Pictured(picture, covering(picture, area)),), clip=Path.rectangle(area)))
            problems += picture_problems(picture, area.size, key)
        for lettered in _titling(entry, panel, flat, words, has_picture=key in pictures):
            layers += lettered.art
            problems += lettered.problems
            lettering += lettered.lettering
    hand = _hand(entry, words)
    titling = Titling(hand.title, hand.capitals, hand.ink, tracking=hand.tracking, own=hand.own)
    return Dress(Group(tuple(layers)), tuple(problems), tuple(lettering), titling)


def _hand(entry: Plain, words: Words) -> Hand:
    hand = Hand(*TYPEFACES, _ink(entry), entry.colour, entry.case == "capitals", tracking=entry.tracking)
    return replace(hand.in_face(entry.face), language=words.language, own=words.own)


def _ink(entry: Plain) -> Colour:
    return entry.ink or max(DARK, LIGHT, key=lambda tone: contrast(tone, entry.colour))


def _is_strip(panel: Panel, flat: Flat) -> bool:
    """Whether it is only the edge of a side, which goes on under another piece: a spine piece has a tab there."""
    return panel.role in (Role.FRONT, Role.BACK) and any(other.role is Role.TAB for other in flat.panels)


def _picture_area(face: Rect, flat: Flat) -> Rect:
    """The face, and beyond its outer edges as far as print runs there."""
    reach = flat.bleed
    outside = Rect(0, 0, *flat.size).grown(reach)
    on_the_right = read_faces(flat).outward(face) > 0
    grown = face.grown(0 if on_the_right else reach, reach, reach if on_the_right else 0, reach)
    return grown if outside.contains(grown) else face


def _titling(entry: Plain, panel: Panel, flat: Flat, words: Words, *, has_picture: bool) -> Iterator[Lettered]:
    hand = _hand(entry, words)
    if panel.role is Role.SPINE and entry.spine_title != "none":
        yield letter_spine(free_room(panel.rect), words, Spine(hand, entry.spine_title, abbreviate=None))
    if panel.role is Role.FRONT and (not has_picture if entry.front_title is None else entry.front_title):
        room = inside(flat.clear_of_cuts(panel.rect), FRONT_INSET, FRONT_INSET)
        yield from title_and_author(room, words, hand, (0.5, 0.45), 0.2, AUTHOR_SHARE, LARGEST_ON_FRONT)
