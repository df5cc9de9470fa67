"""Albums: photographs on dark paper, held at their corners, with captions in white ink."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath
from random import Random
from typing import Literal

from pydantic import Field

from .....ground.art import Filled, Group, Pictured, Stroked
from .....ground.drawing import Art, Colour, Pen, luminance
from .....ground.geometry import Point, Rect, Size, Transform, polygon
from .....ground.pictures import Picture, fitting
from .....ground.problems import Problem
from .....ground.typefaces import bundled
from .....ground.units import from_pt
from .....shelf_file.fields.counts import PicturesOnPage
from .....shelf_file.fields.words import Ink
from .....typesetting.page import Inside, PageFrame
from ....lettering import line_of
from ...designs.tones import darker, lighter
from ..part import LoadedPart, some_empty
from ..prose.sizes import type_too_small
from .captions import letters_missing
from .folders import FolderPart, PicturesSource, listed_names, passed_over, picture_notes
from .toning import Tone, toned

__all__ = ["AlbumInside", "LoadedAlbum"]

MARGIN, BETWEEN = 0.07, 0.05
"""What stays free round all and between photographs, as shares of the page's width."""

BORDER = 0.3
"""The white border of a print in mm: 3 to 4 mm in life (common practice)."""

PRINT = Colour.from_hex("#f1ead9")

CORNER, LARGEST_CORNER, BEYOND = 0.18, 1.1, 0.12
"""The legs of a paper corner as a share of a print's shorter side, and at most in mm: 13 mm in life; and how far the
corner stands out beyond the print."""

ASKEW = 0.7
"""Prints are mounted so many degrees out of true at most."""

CAPTION, ABOVE = 1 / 24, 1.5
"""The em of a caption as a share of the page's height; and the room for it, in ems."""

LARGEST_CAPTION = from_pt(3.0)

WHITE_INK, BLACK_INK = Colour.from_hex("#efe9dc"), Colour.from_hex("#2a2622")

DARK = 0.3
"""On paper of less luminance captions are white."""

Cells = tuple[int, int]
UPRIGHT: Sequence[Cells] = ((1, 1), (1, 2), (1, 3), (2, 2), (2, 3), (2, 3))
"""Columns and rows for one photograph and more, on a page higher than wide."""


class AlbumInside(FolderPart):
    """An album of photographs."""

    kind: Literal["album"] = "album"
    on_page: PicturesOnPage = Field(1, description="how many photographs are on a page")
    paper: Ink = Field(Colour.from_hex("#3b342d"), description="colour of its leaves")
    tone: Tone = Field("sepia", description="how the photographs are toned")

    def load(self, folder: FilePath) -> LoadedAlbum:
        """Read all pictures of the folder.

        Raises:
            ShelfFileError: there is no such folder, it holds no pictures, or some cannot be used; or the captions.
        """
        return LoadedAlbum(self, self.source(folder))


@dataclass(frozen=True, slots=True)
class Mounted:
    """A photograph in its place on a page: the whole print, and its caption, if it has one."""

    picture: Picture
    place: Rect
    caption: str = ""

    @property
    def window(self) -> Rect:
        """Where the picture is within its border."""
        return fitting(self.picture, self.place.grown(-_border(self.place)))

    @property
    def print(self) -> Rect:
        """The picture with its border."""
        return self.window.grown(_border(self.place))


def _border(place: Rect) -> float:
    return min(BORDER, min(place.size) * 0.06)


@dataclass(frozen=True, slots=True)
class LoadedAlbum(LoadedPart):
    """An album, read."""

    written: AlbumInside
    pictures: PicturesSource

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is wrong with the captions."""
        return self.pictures.problems

    def extent(self, frame: PageFrame) -> int | None:
        """The pages that all photographs need; all that are left of a book whose pages are given."""
        return self._needed if frame.asked is None else None

    @property
    def _needed(self) -> int:
        return -(-len(self.pictures.pictures) // self.written.on_page)

    def compose(self, frame: PageFrame) -> Inside:
        """Some photographs on each page, all of it on dark paper."""
        source, size = self.pictures, min(frame.height * CAPTION, LARGEST_CAPTION)
        problems = [*self._count(frame), *passed_over(source), *source.problems]
        if source.captions:
            remedy = "leave captions out, or make the book larger"
            script = bundled("script")
            problems += type_too_small("the captions", script, size, frame, remedy, ("captions",))
            problems += letters_missing(script, source.captions, "write the captions without them")
        pages: list[Art] = []
        for number in range(1, frame.pages + 1):
            mounted = [*self._mounted(frame, number, size)]
            chance = Random(f"album {frame.book.seed} {frame.folio(number)}")
            prints = (art for one in mounted for art in _drawn(one, self.written.paper, chance))
            lines = (_caption(one, self.written.paper, size) for one in mounted if one.caption)
            pages.append(Group((Filled.box(frame.inked(number), self.written.paper), *prints, *lines)))
            for one in mounted:
                problems += picture_notes(one.picture, one.window.size)
        return Inside(tuple(pages), tuple(dict.fromkeys(problems)))

    def _mounted(self, frame: PageFrame, number: int, caption: float) -> Iterator[Mounted]:
        """The photographs of a page, each in the middle of its cell over its caption."""
        source, many = self.pictures, self.written.on_page
        first = (number - 1) * many
        cells = _cells(frame.page(), many)
        for at, cell in zip(range(first, min(first + many, len(source.pictures))), cells, strict=False):
            said = source.captions[at] if source.captions else ""
            place = cell.grown(0, -caption * ABOVE, 0, 0) if source.captions else cell
            yield Mounted(toned(source.pictures[at], self.written.tone), place, said)

    def _count(self, frame: PageFrame) -> Iterator[Problem]:
        source, needed = self.pictures, self._needed
        lost = [picture.path.name for picture in source.pictures[frame.pages * self.written.on_page :]]
        if lost:
            yield Problem(
                f"{len(lost)} of {len(source.pictures)} photographs of {source.folder} do not fit in {frame.count}: "
                f"{listed_names(lost)}",
                f"write {frame.to_write(needed)}, or more on_page",
                field=("folder",),
            )
        elif frame.pages - needed > 1:  # one page over is the back of the last leaf
            yield some_empty(source.folder, needed, frame, "folder")


def _cells(page: Rect, many: int) -> Sequence[Rect]:
    """Where the photographs of a page go, line by line from the top."""
    columns, rows = UPRIGHT[many - 1] if page.height >= page.width else UPRIGHT[many - 1][::-1]
    free, gap = page.grown(-MARGIN * page.width), BETWEEN * page.width
    each = Size((free.width - gap * (columns - 1)) / columns, (free.height - gap * (rows - 1)) / rows)
    return [
        Rect(free.x + column * (each.width + gap), free.top - each.height - row * (each.height + gap), *each)
        for row in range(rows)
        for column in range(columns)
    ]


def _drawn(one: Mounted, paper: Colour, chance: Random) -> Iterator[Art]:
    """A print with its shadow and its corners, a little askew."""
    whole = one.print
    shade = Filled.box(whole.moved(0.07, -0.09), darker(paper, 0.4))
    art: tuple[Art, ...] = (shade, Filled.box(whole, PRINT), Pictured(one.picture, one.window), *_corners(whole, paper))
    yield Group(art, Transform.turn(ASKEW * (2 * chance.random() - 1), whole.centre))


def _corners(print_: Rect, paper: Colour) -> Iterator[Art]:
    """Four triangles of paper that hold the print, each with an edge that catches the light."""
    leg = min(LARGEST_CORNER, CORNER * min(print_.size))
    colour = lighter(paper, 0.16) if luminance(paper) < DARK else darker(paper, 0.2)
    for corner in print_.grown(BEYOND).corners:
        right, up = (1 if corner.x < print_.centre.x else -1), (1 if corner.y < print_.centre.y else -1)
        ends = corner.plus(right * leg, 0), corner.plus(0, up * leg)
        yield Filled(polygon((corner, *ends)), colour)
        yield Stroked.line(*ends, Pen(0.05, lighter(colour, 0.35)))


def _caption(one: Mounted, paper: Colour, size: float) -> Art:
    ink = WHITE_INK if luminance(paper) < DARK else BLACK_INK
    at = Point(one.print.centre.x, one.print.y - size * (ABOVE * 0.5 + 0.35))
    return line_of(one.caption, "script", size, at, ink, align="middle", room=one.place.width)
