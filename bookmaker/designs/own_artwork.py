"""The maker's own cover: one picture of the whole flat, made over a template, or a scan of a real cover."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field

from ..drawing import Art, Colour, Drawn
from ..errors import Problem, Severity, ShelfFileError
from ..flat import Flat, Role
from ..geometry import Rect, Size
from ..imported import ImportedPage, load_pages
from ..pictures import Picture
from ..spec.entry import Entry
from ..spec.words import Ink, Text
from ..units import print_mm
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
    picture: Text = Field(description="picture or PDF file of the whole cover")
    shows: Literal["flat", "book"] = Field(
        "flat", description="flat: all of the template, bleed included; book: a scan, back, spine and front only"
    )
    run_on: RunOn = Field("mirror", description="what is printed beyond a scan's edges: mirror, stretch, colour")
    colour: Ink = Field(Colour.from_hex("#f4ecd8"), description="ground under the picture and beyond its edges")


@dataclass(frozen=True, slots=True)
class Artwork:
    """The picture or the page of a PDF file, and what is not as it is in the file."""

    picture: Picture | ImportedPage
    notes: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """The name of the file."""
        return self.picture.path.name

    @property
    def size(self) -> Size:
        """Width and height: pixels of a picture, mm of a page."""
        if isinstance(self.picture, Picture):
            return Size(self.picture.width_px, self.picture.height_px)
        return self.picture.size


def load(entry: OwnArtwork, folder: FilePath) -> Artwork:
    """Read the picture, or the first page of the PDF file.

    Raises:
        ShelfFileError: it is missing or cannot be used.
    """
    if not entry.picture.casefold().endswith(".pdf"):
        return Artwork(load_artwork({"picture": entry.picture}, folder)["picture"])
    try:
        (page, *rest), notes = load_pages(folder / entry.picture)
    except ShelfFileError as refusal:
        raise ShelfFileError([replace(problem, field=("picture",)) for problem in refusal.problems]) from None
    return Artwork(page, (*notes, *(("has several pages: only the first is printed",) if rest else ())))


def dress(entry: OwnArtwork, artwork: Artwork, flat: Flat, _words: Words) -> Dress:
    """Draw one flat."""
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    layers: list[Art] = [block(inked, entry.colour)]
    face = _face(entry, artwork, flat, inked)
    if face is None:
        return Dress(Drawn(tuple(layers)))
    layers += run_on(artwork.picture, face, inked, entry.run_on)
    problems = [*_problems(artwork, face.size), *_cropped(artwork, face.size, entry)]
    return Dress(Drawn(tuple(layers)), tuple(problems))


def _face(entry: OwnArtwork, artwork: Artwork, flat: Flat, inked: Rect) -> Rect | None:
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
    width = seen.height * artwork.size.width / artwork.size.height
    if panels[Role.FRONT]:
        return Rect(seen.right - width, seen.y, width, seen.height)
    if panels[Role.BACK]:
        return Rect(seen.x, seen.y, width, seen.height)
    return Rect(seen.centre.x - width / 2, seen.y, width, seen.height)


def _problems(artwork: Artwork, place: Size) -> Iterator[Problem]:
    if isinstance(artwork.picture, Picture):
        yield from picture_problems(artwork.picture, place, "picture")
    for note in artwork.notes:
        yield Problem(f"{artwork.name} {note}", severity=Severity.NOTE, field=("picture",))


def _cropped(artwork: Artwork, place: Size, entry: OwnArtwork) -> Iterator[Problem]:
    """Said where the proportions are not those of the cover, for then something of the picture is lost."""
    ratio = (artwork.size.width / artwork.size.height) / (place.width / place.height)
    if abs(ratio - 1) <= CLOSE_ENOUGH:
        return
    lost, where = (1 - 1 / ratio, "left and right") if ratio > 1 else (1 - ratio, "head and tail")
    wanted = f"{print_mm(place.width, 2)} × {print_mm(place.height, 2)}"
    if isinstance(artwork.picture, Picture):
        wanted = f"{artwork.size.height * place.width / place.height:.0f} × {artwork.size.height:.0f} pixels"
    yield Problem(
        f"{artwork.name} has not the proportions of the {entry.shows}: {lost:.0%} of it is cropped at {where}",
        f"draw it over the template that make --templates writes, or {wanted} large",
        Severity.WARNING,
        field=("picture",),
    )
