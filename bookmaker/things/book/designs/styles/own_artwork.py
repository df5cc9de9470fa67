"""The maker's own cover: one picture of the whole flat, made over a template, or a scan of a real cover.

A cover of several pieces has a flat for each: a PDF file with as many pages gives each piece its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field, model_validator

from .....ground.art import Filled, Group
from .....ground.drawing import Colour
from .....ground.geometry import Rect
from .....ground.imported import load_pages
from .....ground.pictures import Picture
from .....ground.problems import Problem, Severity, ShelfFileError
from .....sheets.flat import Flat, Role
from .....shelf_file.fields.measures import ScanWidths
from .....shelf_file.fields.words import Ink, PictureFile, refuse
from ..artwork import Artwork, load_artwork, on_ground
from ..artwork_fit import flat_problems, picture_problems, scan_problems
from ..design import Design, Dress, Words
from ..grounds.scan import cropped_problems, face_of_scan, scanned
from ..grounds.surround import Surround, surrounded

__all__ = ["OwnArtwork"]

AROUND_FLAP = 1.0
"""So far a scan runs on into the flap of a jacket, in mm: the fold may be off, but a flap shows no mirrored cover."""


class OwnArtwork(Design):
    """A cover drawn by the maker."""

    style: Literal["artwork"] = "artwork"
    picture: PictureFile = Field(
        description="picture or PDF file of the whole cover; or a PDF file, a page for each piece"
    )
    shows: Literal["flat", "book"] = Field(
        "flat", description="flat: all of the template, bleed included; book: a scan, back, spine and front only"
    )
    widths: ScanWidths = Field((), description="back, spine and front of what was scanned, from the left of the scan")
    surround: Surround = Field("folded over", description="what is printed beyond a scan's edges")
    colour: Ink = Field(Colour.from_hex("#f4ecd8"), description="ground under the picture and beyond its edges")

    @model_validator(mode="after")
    def _widths_of_a_scan(self) -> OwnArtwork:
        """The parts of a picture of the whole flat lie where the template has them."""
        if self.widths and self.shows != "book":
            raise refuse("has widths, but not of a scan", "write shows: book beside them, or leave them out")
        return self

    @property
    def ground(self) -> Colour:
        """What is seen where the artwork ends."""
        return self.colour

    def load(self, folder: FilePath) -> Artwork:
        """Read the picture or the PDF file."""
        if not self.picture.casefold().endswith(".pdf"):
            picture = on_ground(load_artwork({"picture": self.picture}, folder).pictures["picture"], self.colour)
            return Artwork(pages=(picture,), notes=picture.notes)
        try:
            pages, notes = load_pages(folder / self.picture, written=self.picture)
        except ShelfFileError as refusal:
            raise ShelfFileError([replace(problem, field=("picture",)) for problem in refusal.problems]) from None
        return Artwork(pages=pages, notes=notes)

    def dress(self, artwork: Artwork, flat: Flat, _words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, artwork, flat)


def dress(entry: OwnArtwork, artwork: Artwork, flat: Flat) -> Dress:
    """Draw one flat."""
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    ground = Filled.box(inked, entry.colour)
    if entry.shows == "flat" and not artwork.page_for_each and artwork.pieces > 1:
        return Dress(ground, (_without_pages(artwork),))
    face = inked if entry.shows == "flat" else face_of_scan(artwork.shown, flat)
    if face is None:
        return Dress(ground)
    scan = scanned(artwork.shown, face, entry.widths if entry.shows == "book" else (), flat)
    art = Group((ground, *surrounded(scan, face, _bounds(face, flat, inked), entry.surround)))
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
