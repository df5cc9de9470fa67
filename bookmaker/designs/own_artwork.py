"""The maker's own cover: one picture of the whole flat, made over a template, or a scan of a real cover."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field

from ..drawing import Art, Colour, Drawn
from ..errors import Problem, Severity
from ..flat import Flat, Role
from ..geometry import Rect, Size
from ..pictures import Picture
from ..spec.entry import Entry
from ..spec.measures import Ink, Text
from .artwork import load_artwork, picture_problems
from .design import Dress, Words
from .run_on import RunOn, run_on
from .shapes import block

__all__ = ["OwnArtwork", "dress", "load"]

CLOSE_ENOUGH = 0.02
"""A picture may be so much wider or higher than its place before it is said what is cropped."""

SHOWN = (Role.BACK, Role.SPINE, Role.FRONT, Role.JOINT)


class OwnArtwork(Entry):
    """A cover drawn by the maker."""

    style: Literal["artwork"] = "artwork"
    picture: Text = Field(description="picture file of the whole cover")
    shows: Literal["flat", "book"] = Field(
        "flat", description="flat: all of the template, bleed included; book: a scan, back, spine and front only"
    )
    run_on: RunOn = Field("mirror", description="what is printed beyond a scan's edges: mirror, stretch, colour")
    colour: Ink = Field(Colour.from_hex("#f4ecd8"), description="ground under the picture and beyond its edges")


def load(entry: OwnArtwork, folder: FilePath) -> Picture:
    """Read the picture.

    Raises:
        ShelfFileError: it is missing or cannot be used.
    """
    return load_artwork({"picture": entry.picture}, folder)["picture"]


def dress(entry: OwnArtwork, artwork: Picture, flat: Flat, _words: Words) -> Dress:
    """Draw one flat."""
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    layers: list[Art] = [block(inked, entry.colour)]
    face = _face(entry, artwork, flat, inked)
    if face is None:
        return Dress(Drawn(tuple(layers)))
    layers += run_on(artwork, face, inked, entry.run_on)
    problems = [*picture_problems(artwork, face.size, "picture"), *_cropped(artwork, face.size, entry)]
    return Dress(Drawn(tuple(layers)), tuple(problems))


def _face(entry: OwnArtwork, picture: Picture, flat: Flat, inked: Rect) -> Rect | None:
    """Where the picture lies on a flat.

    A flat that holds only a part of the book shows that part of a scan: the front its right end, the back its
    left end (the other way round where the front lies on the left).
    """
    if entry.shows == "flat":
        return inked
    panels = {role: [panel.rect for panel in flat.panels if panel.role is role] for role in SHOWN}
    rects = [corner for role in SHOWN for rect in panels[role] for corner in rect.corners]
    if not rects:
        return None
    seen = Rect.around(rects)
    if panels[Role.FRONT] and panels[Role.BACK]:
        return seen
    width = seen.height * picture.width_px / picture.height_px
    if panels[Role.FRONT]:
        return Rect(seen.right - width, seen.y, width, seen.height)
    if panels[Role.BACK]:
        return Rect(seen.x, seen.y, width, seen.height)
    return Rect(seen.centre.x - width / 2, seen.y, width, seen.height)


def _cropped(picture: Picture, place: Size, entry: OwnArtwork) -> Iterator[Problem]:
    """Said where the proportions are not those of the cover, for then something of the picture is lost."""
    ratio = (picture.width_px / picture.height_px) / (place.width / place.height)
    if abs(ratio - 1) <= CLOSE_ENOUGH:
        return
    lost, where = (1 - 1 / ratio, "left and right") if ratio > 1 else (1 - ratio, "head and tail")
    wanted = round(picture.height_px * place.width / place.height)
    yield Problem(
        f"{picture.path.name} has not the proportions of the {entry.shows}: {lost:.0%} of it is cropped at {where}",
        f"draw it over the template that make --templates writes, or {wanted} × {picture.height_px} pixels large",
        Severity.WARNING,
        field=("picture",),
    )
