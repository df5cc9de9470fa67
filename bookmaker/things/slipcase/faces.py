"""The faces of a slipcase: a colour and a picture for each, and a title on the back."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path as FilePath

from pydantic import Field

from ...ground.art import NOTHING, Filled, Group, Pictured
from ...ground.drawing import Art, Colour, contrast
from ...ground.geometry import Path, Rect, Size, Transform
from ...ground.pictures import Picture, covering, load_picture
from ...ground.problems import Problem, ShelfFileError
from ...sheets.flat import Flat, Role
from ...shelf_file.fields.entry import Entry
from ...shelf_file.fields.words import Flag, Ink, PictureFile, Title
from ..answers import Clothes
from ..book.designs.artwork import on_ground, picture_problems
from ..book.designs.design import Dress, Titling
from ..book.designs.letters.lettering import Hand, letters_for, written
from ..book.designs.letters.titling import Placed, fit_text, place_centred
from ..book.designs.letters.wording import with_subtitle
from ..book.designs.ornament.ornaments import rule, stamp
from ..seen_text import LOWEST_CONTRAST, seen_text

__all__ = ["BoxFace", "BoxFaces", "dress_box", "load_faces"]

FACES = (Role.LEFT, Role.RIGHT, Role.BACK, Role.TOP, Role.BOTTOM)

DARK, LIGHT = Colour.from_hex("#1d1a17"), Colour.from_hex("#f6f0e2")

PLAIN_HAND = Hand("text bold", "text", DARK, LIGHT)
"""That of a box that does not look like its books."""

LARGEST_TITLE = 8.0
"""The em of the title in mm at the most."""

ORNAMENT, LARGEST_ORNAMENT = 0.16, 5.0
"""The ornament of the books takes this share of the back's height; it is no larger, in mm."""

TITLE_INSET = 0.12
"""The title keeps this share of the back's width and height from its edges."""

TURNED_BEYOND = 1.25
"""The title runs down a back that is so many times taller than wide."""

GAIN_OF_A_LINE = 1.3
"""A line more down the back makes the title so many times larger."""


class BoxFace(Entry):
    """What one face of a slipcase shows."""

    colour: Ink | None = Field(None, description="ground of this face; that of the whole box, if not given")
    picture: PictureFile | None = Field(None, description="picture file that fills this face")


class BoxFaces(Entry):
    """What a slipcase shows; left and right are those of the box as its spines are seen."""

    as_books: Flag = Field(False, description="yes: dressed in the cover design of its first book")
    colour: Ink = Field(Colour.from_hex("#3b4a3f"), description='ground of all faces, such as "#3b4a3f"')
    title: Title | None = Field(None, description="what stands on the back")
    ink: Ink | None = Field(None, description="colour of the title; light or dark as the ground asks, if not given")
    left: BoxFace = Field(BoxFace(), description="the left side")
    right: BoxFace = Field(BoxFace(), description="the right side")
    back: BoxFace = Field(BoxFace(), description="the back")
    top: BoxFace = Field(BoxFace(), description="the top")
    bottom: BoxFace = Field(BoxFace(), description="the bottom")

    def face(self, role: Role) -> BoxFace:
        """What was written about one face."""
        face: BoxFace = getattr(self, role.value)
        return face


def load_faces(entry: BoxFaces, folder: FilePath) -> dict[Role, Picture]:
    """Read the pictures.

    Raises:
        ShelfFileError: with every picture that is missing or cannot be used.
    """
    pictures: dict[Role, Picture] = {}
    problems: list[Problem] = []
    for role in FACES:
        name = entry.face(role).picture
        if name is None:
            continue
        try:
            pictures[role] = load_picture(folder / name, name)
        except ShelfFileError as refusal:
            problems += [replace(problem, field=(role.value, "picture")) for problem in refusal.problems]
    if problems:
        raise ShelfFileError(problems)
    return pictures


def dress_box(
    entry: BoxFaces | None,
    pictures: Mapping[Role, Picture],
    flat: Flat,
    worn: Clothes = Clothes(),  # noqa: B008 (a frozen value)
) -> Dress:
    """Draw the net of a box out to its bleed; without an entry it stays blank. Fields are relative to the entry.

    `worn` is what a box shows that looks like its books: under faces that have neither colour nor picture of their
    own, and in the hand of its title.
    """
    ground, tone, titling = worn
    if entry is None:
        return Dress(NOTHING)
    layers: list[Art] = [ground]
    problems: list[Problem] = []
    # The back comes last: its neighbours run a little under it, so that no white shows where a fold is off.
    for role in (Role.LEFT, Role.RIGHT, Role.TOP, Role.BOTTOM, Role.BACK):
        area, picture = _area(role, flat), pictures.get(role)
        own = entry.face(role).colour or (tone if ground is not NOTHING and tone else entry.colour)
        picture = picture and on_ground(picture, own)
        if ground is not NOTHING and not picture and entry.face(role).colour is None:
            continue
        # On the net the head of the top lies at the opening: turned, its picture is upright to who sees the spines.
        layers += _face_art(area, own, picture, head_down=role is Role.TOP)
        if picture:
            problems += picture_problems(picture, area.size, role.value, "picture")
    if entry.title:
        under = entry.back.colour or tone or entry.colour
        back = _panel(Role.BACK, flat)
        ink = entry.ink or _ink(under, titling)
        if titling:
            layers += _rules(back, ink, titling)
        title = _title(entry.title, back, ink, titling)
        layers.append(title)
        fits = f"{' '.join(line.text for line in title.block.lines)!r} fits the back"
        problems += seen_text(title, under, "the title on the back", fits, "title", "write a shorter title")
    return Dress(Group(tuple(layers)), tuple(problems))


def _face_art(area: Rect, colour: Colour, picture: Picture | None, *, head_down: bool) -> Iterator[Art]:
    """A rectangle of one colour, filled by a picture if there is one, cropped evenly where it stands out."""
    outline = Path.rectangle(area)
    yield Filled(outline, colour)
    if picture:
        turn = Transform.quarter_turn(2).moved(2 * area.centre.x, 2 * area.centre.y) if head_down else None
        yield Group((Pictured(picture, covering(picture, area)),), turn, outline)


def _panel(role: Role, flat: Flat) -> Rect:
    return next(panel.rect for panel in flat.panels if panel.role is role)


def _area(role: Role, flat: Flat) -> Rect:
    """A face with its bleed: beyond every edge of the net, and beyond the folds of the tabs."""
    face, back, bleed = _panel(role, flat), _panel(Role.BACK, flat), flat.bleed
    match role:
        case Role.RIGHT:
            return Rect(face.x, back.y, face.width, back.height).grown(bleed, bleed, 0, bleed)
        case Role.LEFT:
            return Rect(face.x, back.y, face.width, back.height).grown(0, bleed, bleed, bleed)
        case Role.TOP:
            return face.grown(bleed, 0, bleed, bleed)
        case Role.BOTTOM:
            return face.grown(bleed, bleed, bleed, 0)
    return face


def _ink(ground: Colour, titling: Titling | None) -> Colour:
    """That of the books, if it is read on the back; light or dark, as the ground asks."""
    if titling and contrast(titling.ink, ground) >= LOWEST_CONTRAST:
        return titling.ink
    return max(DARK, LIGHT, key=lambda tone: contrast(tone, ground))


def _rules(back: Rect, ink: Colour, titling: Titling) -> Iterator[Art]:
    """Rules at head and tail as on the books' spines, and their ornament over the lower ones."""
    for end, inward in ((back.y, 1), (back.top, -1)):
        yield rule(end + inward * back.height * 0.045, back.x, back.right, 0.2, ink)
        yield rule(end + inward * back.height * 0.062, back.x, back.right, 0.08, ink)
    if titling.ornament:
        side = min(back.width * 0.4, back.height * ORNAMENT * 0.8, LARGEST_ORNAMENT)
        middle = back.y + back.height * (0.08 + ORNAMENT / 2)
        yield stamp(titling.ornament, Rect(back.centre.x - side / 2, middle - side / 2, side, side), ink)


def _title(title: str, back: Rect, ink: Colour, titling: Titling | None) -> Placed:
    """The title in the middle of the back, in the hand of its books; down it, if that is tall."""
    aside, above = back.width * TITLE_INSET, back.height * TITLE_INSET
    box = back.grown(-aside, -above, -aside, -above)
    if titling and titling.ornament:
        box = Rect(box.x, box.y + back.height * ORNAMENT, box.width, box.height - back.height * ORNAMENT)
    hand = PLAIN_HAND
    if titling:
        name, own = titling.face, titling.own
        hand = Hand(name, name, ink, ink, titling.capitals, tracking=titling.tracking, own=own)
    turned = -90.0 if box.height > TURNED_BEYOND * box.width else 0.0
    room = box.size.turned if turned else box.size
    face, _ = letters_for("title", title, hand, "down" if turned else "across")
    head, under = with_subtitle(written(title, hand))
    gain = GAIN_OF_A_LINE if turned else 1.0
    setting = fit_text(face, head, Size(*room), LARGEST_TITLE, subtitle=under, gain=gain)
    return place_centred(setting, box, ink, turned)
