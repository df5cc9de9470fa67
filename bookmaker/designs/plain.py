"""The plain design: one colour all over, title and author on spine and front, pictures if given."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil
from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field

from ..drawing import Art, Canvas, Colour, Drawn, contrast
from ..errors import Problem, Severity
from ..flat import Flat, Panel, Role
from ..geometry import Path, Rect, Size, Transform
from ..pictures import Picture, covering, effective_dpi
from ..spec.entry import Entry
from ..spec.measures import Flag, Ink, Text
from ..typefaces import bundled
from ..units import print_mm
from .artwork import load_artwork
from .design import Dress, Words
from .titling import Placed, fit_text, place_centred

__all__ = ["Plain", "PlainArtwork", "dress", "load"]

DARK, LIGHT = Colour.from_hex("#1d1a17"), Colour.from_hex("#f6f0e2")

LARGEST_ON_SPINE, LARGEST_ON_FRONT = 5.0, 6.0
"""Sizes of titling (the em, in mm) that nothing larger than a folio asks for at 1:12."""

AUTHOR_SHARE = 0.75
"""The author is set no larger than this share of the title."""

GAIN_OF_A_SECOND_LINE = 1.45
"""Along the spine a title stays on one line unless a second makes it so many times larger."""

SPINE_INSET = 0.35
"""Titling keeps this far from the folds of the spine, in mm: a fold may be that far off."""

FRONT_INSET = 0.1
"""Titling keeps this share of the front's width from its edges."""

SMALLEST_TYPE = 0.5
"""An em below this, in mm, prints as a grey line at 600 dots per inch (12 dots high)."""

LOWEST_RESOLUTION = 300.0


class Plain(Entry):
    """One colour, with titling and pictures."""

    style: Literal["plain"] = "plain"
    colour: Ink = Field(Colour.from_hex("#7a2f2a"), description='ground colour, such as "#7a2f2a"')
    ink: Ink | None = Field(None, description="colour of the titling; light or dark as the ground asks, if not given")
    spine_title: Literal["down", "up", "across", "none"] = Field("down", description="how the spine is lettered")
    front_title: Flag | None = Field(None, description="title on the front: yes unless there is a front picture")
    front_picture: Text | None = Field(None, description="picture file for the front")
    back_picture: Text | None = Field(None, description="picture file for the back")


@dataclass(frozen=True, slots=True)
class PlainArtwork:
    """The pictures of a plain cover, read."""

    pictures: dict[Role, Picture]


def load(entry: Plain, folder: FilePath) -> PlainArtwork:
    """Read the pictures.

    Raises:
        ShelfFileError: a picture is missing or cannot be used.
    """
    named = {"front_picture": entry.front_picture, "back_picture": entry.back_picture}
    found = load_artwork({key: name for key, name in named.items() if name}, folder)
    roles = {"front_picture": Role.FRONT, "back_picture": Role.BACK}
    return PlainArtwork({roles[key]: picture for key, picture in found.items()})


def dress(entry: Plain, artwork: PlainArtwork, flat: Flat, words: Words) -> Dress:
    """Draw the cover on its flat, out to the bleed."""
    width, height = flat.size
    layers: list[Art] = [Ground(Rect(0, 0, width, height).grown(flat.bleed), entry.colour)]
    problems: list[Problem] = []
    for panel in flat.panels:
        if _is_strip(panel, flat):
            continue
        picture = artwork.pictures.get(panel.role)
        if picture:
            area = _picture_area(panel.rect, flat)
            layers.append(FilledPicture(picture, area))
            problems += _picture_problems(picture, area.size, f"{panel.role}_picture")
        for placed in _titling(entry, panel, flat, words, has_picture=picture is not None):
            layers.append(placed)
            problems += _legibility(placed, panel)
    return Dress(Drawn(tuple(layers)), tuple(problems))


@dataclass(frozen=True, slots=True)
class Ground:
    """A filled rectangle."""

    rect: Rect
    colour: Colour

    def draw(self, canvas: Canvas) -> None:
        """Fill it."""
        canvas.fill(Path.rectangle(self.rect), self.colour)


@dataclass(frozen=True, slots=True)
class FilledPicture:
    """A picture that fills a rectangle, cropped evenly on the sides that stand out."""

    picture: Picture
    area: Rect

    def draw(self, canvas: Canvas) -> None:
        """Place it, clipped to its area."""
        with canvas.placed(Transform(), Path.rectangle(self.area)):
            canvas.picture(self.picture, covering(self.picture, self.area))


def _is_strip(panel: Panel, flat: Flat) -> bool:
    """Whether it is only the edge of a side, which goes on under another piece: a spine piece has a tab there."""
    return panel.role in (Role.FRONT, Role.BACK) and any(other.role is Role.TAB for other in flat.panels)


def _picture_area(face: Rect, flat: Flat) -> Rect:
    """The face, and beyond its outer edges as far as print runs there."""
    width, height = flat.size
    spine = next((panel.rect for panel in flat.panels if panel.role is Role.SPINE), None)
    reach = flat.bleed
    outside = Rect(0, 0, width, height).grown(reach)
    if spine is None:
        grown = face.grown(reach)
    elif face.x >= spine.right - 1e-6:
        grown = face.grown(0, reach, reach, reach)
    else:
        grown = face.grown(reach, reach, 0, reach)
    return grown if outside.contains(grown) else face


def _titling(entry: Plain, panel: Panel, flat: Flat, words: Words, *, has_picture: bool) -> Iterator[Placed]:
    ink = entry.ink or max(DARK, LIGHT, key=lambda tone: contrast(tone, entry.colour))
    if panel.role is Role.SPINE and entry.spine_title != "none":
        yield from _spine(entry.spine_title, panel.rect, words, ink)
    if panel.role is Role.FRONT and (not has_picture if entry.front_title is None else entry.front_title):
        yield from _front(flat.clear_of_cuts(panel.rect), words, ink)


def _spine(way: str, spine: Rect, words: Words, ink: Colour) -> Iterator[Placed]:
    """Title towards the head, author towards the tail, whichever way they read; they share the length two to one."""
    room = spine.grown(-min(SPINE_INSET, spine.width * 0.2), -min(1.5, spine.height * 0.06))
    gap = min(1.5, room.height * 0.08) if words.author else 0.0
    title_height = (room.height - gap) * (0.64 if words.author else 1.0)
    title_box = Rect(room.x, room.top - title_height, room.width, title_height)
    author_box = Rect(room.x, room.y, room.width, room.height - gap - title_height)
    turned = {"down": -90.0, "up": 90.0, "across": 0.0}[way]
    gain = 1.0 if way == "across" else GAIN_OF_A_SECOND_LINE
    title = _fitted("sans bold", words.title, title_box, LARGEST_ON_SPINE, turned, ink, gain)
    yield title
    if words.author:
        yield _fitted("sans", words.author, author_box, title.block.size * AUTHOR_SHARE, turned, ink, gain)


def _front(front: Rect, words: Words, ink: Colour) -> Iterator[Placed]:
    """Title in the upper half, author in a band near the foot."""
    room = front.grown(-front.width * FRONT_INSET, -front.height * FRONT_INSET)
    title_box = Rect(room.x, room.y + room.height * 0.5, room.width, room.height * 0.45)
    title = _fitted("text bold", words.title, title_box, LARGEST_ON_FRONT, 0.0, ink)
    yield title
    if words.author:
        author_box = Rect(room.x, room.y, room.width, room.height * 0.2)
        yield _fitted("text", words.author, author_box, title.block.size * AUTHOR_SHARE, 0.0, ink)


def _fitted(face: str, text: str, box: Rect, largest: float, turned: float, ink: Colour, gain: float = 1.0) -> Placed:
    room = box.size.turned if turned else box.size
    return place_centred(fit_text(bundled(face), text, Size(*room), largest, gain=gain), box, ink, turned)


def _legibility(placed: Placed, panel: Panel) -> Iterator[Problem]:
    size = placed.block.size
    if size < SMALLEST_TYPE:
        text = " ".join(line.text for line in placed.block.lines)
        yield Problem(
            f"{text!r} fits the {panel.role} only {print_mm(size, 2)} high, too small to print",
            "write a shorter text, another spine_title, or thicker paper",
            Severity.WARNING,
            field=("spine_title",) if panel.role is Role.SPINE else (),
        )


def _picture_problems(picture: Picture, size: Size, key: str) -> Iterator[Problem]:
    """What was done to the picture, and whether it is fine enough for the print."""
    for note in picture.notes:
        yield Problem(f"{picture.path.name} {note}", severity=Severity.NOTE, field=(key,))
    resolution = effective_dpi(picture, *covering(picture, Rect(0, 0, *size)).size)
    if resolution < LOWEST_RESOLUTION:
        width, height = (ceil(side * LOWEST_RESOLUTION / resolution) for side in (picture.width_px, picture.height_px))
        yield Problem(
            f"{picture.path.name} prints at only {resolution:.0f} dots per inch",
            f"use a picture of at least {width} × {height} pixels",
            Severity.WARNING,
            field=(key,),
        )
