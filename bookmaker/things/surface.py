"""What one surface of a thing shows: a colour, a picture, a cover design of the library, a text over all.

Any kind of thing may have a group of these keys for a side of it. Files are read once, by `read_surface`; then
`dress_surface` draws the surface upright, its lower left corner at the origin, out to its bleed.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from pydantic import Field

from ..ground.art import Filled, Group, Pictured
from ..ground.drawing import WHITE, Art, Colour, contrast
from ..ground.geometry import Path as Outline
from ..ground.geometry import Rect, Size
from ..ground.pictures import Picture, covering, load_picture
from ..ground.problems import Problem, ShelfFileError, gathered, within
from ..sheets.flat import Flat, Panel, Role
from ..shelf_file.fields.entry import Entry
from ..shelf_file.fields.words import Ink, Lines, PictureFile
from .book.designs.artwork import NO_ARTWORK, Artwork, on_ground, picture_problems
from .book.designs.design import Dress, TypefaceName, Words
from .book.designs.kinds import AnyDesign
from .book.designs.letters.lettering import Hand, letters_for
from .book.designs.letters.titling import Placed, fit_text, place_centred
from .seen_text import seen_text

__all__ = ["PLAIN_SURFACE", "Surface", "SurfaceEntry", "dress_surface", "read_surface"]

DARK, LIGHT = Colour.from_hex("#1d1a17"), Colour.from_hex("#f6f0e2")

INSET = 0.1
"""A text keeps this share of the width and height of its surface from the edges."""

LARGEST_TEXT = 8.0
"""The em of a text in mm at the most."""


Part = Literal["middle", "head", "foot", "left", "right"]


class SurfaceEntry(Entry):
    """What a surface shows."""

    colour: Ink | None = Field(None, description="its ground; that of the whole, if not given")
    picture: PictureFile | None = Field(None, description="picture file that fills it")
    keeps: Part = Field("middle", description="what of a picture is kept where it is cropped")
    design: AnyDesign | None = Field(None, description="a design as covers have it, drawn as their front")
    text: Lines | None = Field(None, description="what stands on it")
    ink: Ink | None = Field(None, description="colour of the text; light or dark as the ground asks, if not given")
    face: TypefaceName = Field("text bold", description="typeface of the text")


@dataclass(frozen=True, slots=True)
class Surface:
    """A surface as it was written, with what its files hold."""

    entry: SurfaceEntry
    picture: Picture | None = None
    artwork: Artwork = NO_ARTWORK


PLAIN_SURFACE = Surface(SurfaceEntry())
"""One on which nothing is printed."""


def read_surface(entry: SurfaceEntry, folder: Path) -> Surface:
    """Read the files it names.

    Raises:
        ShelfFileError: files cannot be used; fields are relative to the surface.
    """
    problems: list[Problem] = []
    picture, artwork = None, NO_ARTWORK
    with gathered(problems, "picture"):
        picture = load_picture(folder / entry.picture, entry.picture) if entry.picture else None
    with gathered(problems, "design"):
        artwork = entry.design.load(folder) if entry.design else NO_ARTWORK
    if problems:
        raise ShelfFileError(problems)
    return Surface(entry, picture, artwork)


def dress_surface(surface: Surface, size: Size, reach: Rect, words: Words, ground: Colour | None = None) -> Dress:
    """Draw a surface of a size in mm out to `reach`, which is the surface with its bleed.

    `ground` is the colour that lies under it already; `words` are what a design letters, if no text is given. Fields
    are relative to the surface.
    """
    entry, face = surface.entry, Rect(0, 0, *size)
    colour = entry.colour or ground
    layers: list[Art] = [Filled.box(reach, entry.colour)] if entry.colour else []
    problems: list[Problem] = []
    if surface.picture:
        picture = on_ground(surface.picture, colour or WHITE)
        layers.append(Pictured(picture, _keeping(entry.keeps, covering(picture, reach), reach)))
        problems += picture_problems(picture, face.size, "picture")
    if entry.design:
        title = " ".join(entry.text.split("\n")) if entry.text else words.title
        dress = entry.design.dress(surface.artwork, _cover_of(face, reach), Words(title, words.author))
        layers.append(dress.art)
        problems += within(("design",), dress.problems)
    elif entry.text:
        under = colour or WHITE
        text = _text(entry, entry.text, face, under)
        layers.append(text)
        problems += seen_text(text, under, "the text", "the text fits", "text", "write fewer words")
    return Dress(Group((Group(tuple(layers)),), clip=Outline.rectangle(reach)) if layers else Group(), tuple(problems))


def _keeping(part: Part, picture: Rect, reach: Rect) -> Rect:
    """A picture that covers a surface, moved so that a part of it is not cropped."""
    match part:
        case "head":
            return picture._replace(y=reach.top - picture.height)
        case "foot":
            return picture._replace(y=reach.y)
        case "left":
            return picture._replace(x=reach.x)
        case "right":
            return picture._replace(x=reach.right - picture.width)
        case "middle":
            return picture


def _cover_of(face: Rect, reach: Rect) -> Flat:
    """The surface as the front of a cover, alone on a flat."""
    bleed = max(face.x - reach.x, face.y - reach.y, reach.right - face.right, reach.top - face.top)
    return Flat("surface", "surface", "", face.corners, (), (Panel(Role.FRONT, face),), bleed=bleed)


def _text(entry: SurfaceEntry, text: str, face: Rect, ground: Colour) -> Placed:
    """The text in the middle, as large as it can be."""
    aside, above = face.width * INSET, face.height * INSET
    box = face.grown(-aside, -above, -aside, -above)
    ink = entry.ink or max(DARK, LIGHT, key=lambda tone: contrast(tone, ground))
    letters, _ = letters_for("title", text, Hand(entry.face, entry.face, ink, ink))
    return place_centred(fit_text(letters, " ".join(text.split("\n")), box.size, LARGEST_TEXT), box, ink)
