"""Old photographs: prints of the historic sizes, on card mounts or with a white border, toned and faded."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from math import dist, pi, sin
from typing import Literal, NamedTuple

from pydantic import Field

from ....ground.art import Filled, Stroked
from ....ground.drawing import Art, Colour, Pen
from ....ground.geometry import Path, Point, Rect, Size
from ....ground.outlines import Outline, rounded
from ....ground.units import MM_PER_INCH as INCH
from ....paper.stock import Stock
from ....shelf_file.fields.words import Ink, Title
from ...book.designs.tones import mixed
from ...book.pages.pictured.toning import Tone, toned
from ...lettering import line_of
from ..entry import Leaf, PaperEntry, Press
from ..face import FaceEntry, PaperFace, SetFace, dress_face, together

__all__ = ["PRINTS", "Photograph", "PrintSize"]

PrintName = Literal[
    "carte de visite", "cabinet card", "whole plate", "half plate", "quarter plate", "sixth plate", "snapshot"
]


class PrintSize(NamedTuple):
    """A photograph in life, in mm: the whole of it, and the picture on it."""

    whole: Size
    picture: Size


PRINTS: Mapping[PrintName, PrintSize] = {
    # Early Photography, "Studio mounts"; the print of 54 × 89 mm from memory
    "carte de visite": PrintSize(Size(2.5 * INCH, 4.125 * INCH), Size(54, 89)),
    # Getty Art & Architecture Thesaurus, "cabinet photographs"; the print of 4 × 5½ in common practice
    "cabinet card": PrintSize(Size(4.25 * INCH, 6.5 * INCH), Size(4 * INCH, 5.5 * INCH)),
    # "19th Century Photographic Plate Sizes"
    "whole plate": PrintSize(Size(6.5 * INCH, 8.5 * INCH), Size(6.5 * INCH, 8.5 * INCH)),
    "half plate": PrintSize(Size(4.25 * INCH, 5.5 * INCH), Size(4.25 * INCH, 5.5 * INCH)),
    "quarter plate": PrintSize(Size(3.25 * INCH, 4.25 * INCH), Size(3.25 * INCH, 4.25 * INCH)),
    "sixth plate": PrintSize(Size(2.75 * INCH, 3.25 * INCH), Size(2.75 * INCH, 3.25 * INCH)),
    # common practice: 3½ × 5 in with a white border
    "snapshot": PrintSize(Size(3.5 * INCH, 5 * INCH), Size(3.1 * INCH, 4.6 * INCH)),
}

GOLD = Colour.from_hex("#b58a3c")

DECKLE, DEEP = 0.9, 0.1
"""From wave to wave of a deckled edge, and how far it wanders in and out, in mm."""

ROUND = 4.5 / 12
"""Radius of a rounded corner in mm: 4.5 mm in life (common practice)."""


class Photograph(PaperEntry):
    """An old photograph, on its mount or with its border."""

    kind: Literal["photograph"] = "photograph"
    print: PrintName = Field("carte de visite", description="its historic size: that of the mount, where it has one")
    picture: FaceEntry = Field(FaceEntry(), description="what it shows")
    tone: Tone = Field("sepia", description="how a picture is toned")
    edge: Literal["square", "rounded", "deckled"] = Field("square", description="its corners and edges")
    imprint: Title | None = Field(None, description="the studio, at the foot of the mount")
    mount: Ink = Field(Colour.from_hex("#e6d8b8"), description="colour of the mount or of the border")
    back: FaceEntry = Field(FaceEntry(), description="what its back shows")
    ages_behind = True

    def size(self, scale: float) -> Size:
        """As large as it is in life, at scale; lying down if the maker says so with width and height."""
        if self.format or self.width is not None:
            return super().size(scale)
        whole = PRINTS[self.print].whole
        return Size(whole.width / scale, whole.height / scale)

    def leaves(self, size: Size, stock: Stock) -> tuple[Leaf, ...]:
        """One card, cut as its edge is."""
        return tuple(replace(leaf, outline=_outline(self.edge, size)) for leaf in super().leaves(size, stock))

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """The picture on its mount, and the back."""
        area = Rect(0, 0, *press.size)
        reach = area.grown(press.bleed)
        window = self._window(area)
        bleed = reach if window == area else window
        shown = dress_face(self._toned(press.face("picture")), window, bleed, press.words, press.dpi, self.mount)
        mount = () if window == area else tuple(self._mount(reach, window))
        back = dress_face(press.face("back"), area, reach, press.words, press.dpi, self.paper).told_of("back")
        front = together(SetFace(mount), shown.told_of("picture"), SetFace(tuple(self._imprint(area, window))))
        return [(front, back) for _ in leaves]

    def _window(self, area: Rect) -> Rect:
        """Where the picture is: the sides and the top alike, the foot takes the rest, for the name of the studio."""
        life = PRINTS[self.print]
        wide = area.width * life.picture.width / life.whole.width
        high = area.height * life.picture.height / life.whole.height
        aside = (area.width - wide) / 2
        above = min(aside, (area.height - high) / 2)
        return Rect(aside, area.height - above - high, wide, high)

    def _toned(self, face: PaperFace) -> PaperFace:
        """The picture in its tones, the shadows faded with age."""
        picture = face.surface.picture
        if picture is None:
            return face
        return replace(face, surface=replace(face.surface, picture=toned(picture, self.tone, self.age)))

    def _mount(self, reach: Rect, window: Rect) -> Iterator[Art]:
        yield Filled.box(reach, self.mount)
        yield Stroked(Path.rectangle(window.grown(0.08)), Pen(0.06, mixed(self.mount, GOLD, 0.7)))

    def _imprint(self, area: Rect, window: Rect) -> Iterator[Art]:
        if self.imprint and window.y > 0.3:
            size = min(window.y * 0.5, area.height * 0.05)
            at = Point(area.centre.x, window.y / 2 - size * 0.3)
            yield line_of(self.imprint, "script", size, at, GOLD, align="middle", room=window.width)


def _outline(edge: str, size: Size) -> Outline | None:
    """The outline of a card whose corners are rounded or whose edges are deckled; None if it is a rectangle."""
    whole = Rect(0, 0, *size)
    if edge == "rounded":
        return rounded(whole.corners, min(ROUND, min(size) / 4))
    return tuple(_deckled(whole)) if edge == "deckled" else None


def _deckled(rect: Rect) -> Iterator[Point]:
    """Waves along each side, from corner to corner, inwards alone: the size stays what it is."""
    corners = rect.corners
    for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
        length = dist(start, end)
        waves = max(2, round(length / DECKLE))
        along = Point((end.x - start.x) / length, (end.y - start.y) / length)
        for step in range(waves * 6):
            share = step / (waves * 6)
            deep = DEEP * abs(sin(pi * waves * share))
            yield start.plus(along.x * length * share - along.y * deep, along.y * length * share + along.x * deep)
