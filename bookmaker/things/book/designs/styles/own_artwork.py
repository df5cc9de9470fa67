"""The maker's own cover: one picture of the whole flat, made over a template, or a scan of a real cover.

A cover of several pieces has a flat for each: a PDF file with as many pages gives each piece its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field, model_validator

from .....ground.art import Filled, Group
from .....ground.drawing import Colour
from .....ground.geometry import Rect
from .....ground.imported import ImportedPage, load_pages
from .....ground.pictures import Picture
from .....ground.problems import Problem, Severity, ShelfFileError
from .....sheets.flat import Flat, Role
from .....shelf_file.fields.entry import Entry
from .....shelf_file.fields.measures import ScanWidths
from .....shelf_file.fields.words import Ink, Text, refuse
from ..artwork import load_artwork, on_ground
from ..artwork_fit import flat_problems, picture_problems, scan_problems
from ..design import Dress, Words
from ..grounds.run_on import RunOn, carried_on
from ..grounds.scan import cropped_problems, face_of_scan, scanned

__all__ = ["OwnArtwork", "dress", "load", "part"]

AROUND_FLAP = 1.0
"""So far a scan runs on into the flap of a jacket, in mm: the fold may be off, but a flap shows no mirrored cover."""


class OwnArtwork(Entry):
    """A cover drawn by the maker."""

    style: Literal["artwork"] = "artwork"
    picture: Text = Field(description="picture or PDF file of the whole cover; or a PDF file, a page for each piece")
    shows: Literal["flat", "book"] = Field(
        "flat", description="flat: all of the template, bleed included; book: a scan, back, spine and front only"
    )
    widths: ScanWidths = Field((), description="back, spine and front of what was scanned, from the left of the scan")
    run_on: RunOn = Field("mirror", description="what is printed beyond a scan's edges: mirror, stretch, colour")
    colour: Ink = Field(Colour.from_hex("#f4ecd8"), description="ground under the picture and beyond its edges")

    @model_validator(mode="after")
    def _widths_of_a_scan(self) -> OwnArtwork:
        """The parts of a picture of the whole flat lie where the template has them."""
        if self.widths and self.shows != "book":
            raise refuse("has widths, but not of a scan", "write shows: book beside them, or leave them out")
        return self


@dataclass(frozen=True, slots=True)
class Artwork:
    """The picture, or the pages of a PDF file, and what is not as it is in the file.

    `piece` says for which piece of the cover it is, counted from 0, and `pieces` of how many it is made.
    """

    pages: tuple[Picture | ImportedPage, ...]
    notes: tuple[str, ...] = ()
    piece: int = 0
    pieces: int = 1

    @property
    def name(self) -> str:
        """The name of the file."""
        return self.pages[0].path.name

    @property
    def page_for_each(self) -> bool:
        """Whether there are as many pages as pieces."""
        return len(self.pages) == self.pieces

    @property
    def shown(self) -> Picture | ImportedPage:
        """What the piece shows."""
        return self.pages[self.piece if self.page_for_each else 0]

    @property
    def label(self) -> str:
        """What the piece shows, in words."""
        return f"page {self.piece + 1} of {self.name}" if self.pieces > 1 and self.page_for_each else self.name


def load(entry: OwnArtwork, folder: FilePath) -> Artwork:
    """Read the picture or the PDF file.

    Raises:
        ShelfFileError: it is missing or cannot be used.
    """
    if not entry.picture.casefold().endswith(".pdf"):
        picture = on_ground(load_artwork({"picture": entry.picture}, folder)["picture"], entry.colour)
        return Artwork((picture,), picture.notes)
    try:
        return Artwork(*load_pages(folder / entry.picture, written=entry.picture))
    except ShelfFileError as refusal:
        raise ShelfFileError([replace(problem, field=("picture",)) for problem in refusal.problems]) from None


def part(artwork: Artwork, piece: int, pieces: int) -> Artwork:
    """The artwork of one piece of a cover that is made of several."""
    return replace(artwork, piece=piece, pieces=pieces)


def dress(entry: OwnArtwork, artwork: Artwork, flat: Flat, _words: Words) -> Dress:
    """Draw one flat."""
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    ground = Filled.box(inked, entry.colour)
    if entry.shows == "flat" and not artwork.page_for_each and artwork.pieces > 1:
        return Dress(ground, (_without_pages(artwork),))
    face = inked if entry.shows == "flat" else face_of_scan(artwork.shown, flat)
    if face is None:
        return Dress(ground)
    scan = scanned(artwork.shown, face, entry.widths if entry.shows == "book" else (), flat)
    art = Group((ground, *carried_on(scan, face, _bounds(face, flat, inked), entry.run_on)))
    return Dress(art, tuple(_problems(entry, artwork, face, flat)))


def _bounds(face: Rect, flat: Flat, inked: Rect) -> Rect:
    """How far the edges of a scan run on."""
    if not any(panel.role is Role.FLAP for panel in flat.panels):
        return inked
    return Rect(face.x - AROUND_FLAP, inked.y, face.width + 2 * AROUND_FLAP, inked.height)


def _without_pages(artwork: Artwork) -> Problem:
    pages = f"the {len(artwork.pages)} pages" if len(artwork.pages) > 1 else "one picture"
    return Problem(
        f"this cover is cut in {artwork.pieces} pieces, and {artwork.name} has {pages}: no piece is printed",
        f"name a PDF file of {artwork.pieces} pages, one for each piece as in the template that make --templates "
        "writes; or a picture of the closed book, spine in the middle, and write shows: book",
        field=("picture",),
    )


def _problems(entry: OwnArtwork, artwork: Artwork, face: Rect, flat: Flat) -> Iterator[Problem]:
    """What was changed for print, and how the artwork fits its place."""
    for note in artwork.notes:
        yield Problem(f"{artwork.name} {note}", severity=Severity.NOTE, field=("picture",))
    if len(artwork.pages) > 1 and not artwork.page_for_each:
        said = f"{artwork.name} has several pages: only the first is printed"
        yield Problem(said, severity=Severity.NOTE, field=("picture",))
    if entry.shows == "book" and entry.widths:
        yield from cropped_problems(artwork.shown, face, entry.widths, flat)
    if isinstance(artwork.shown, Picture):
        yield from picture_problems(artwork.shown, face.size, entry.shows, fitted=bool(entry.widths))
    elif entry.shows == "flat":
        yield from flat_problems(artwork.shown, artwork.label, face.size, flat.name)
    elif not entry.widths:
        yield from scan_problems(artwork.shown, face.size)
