"""Leaves of tissue before plates: the plate shows through them, and a ghost of it, mirrored, on their backs.

Such leaves kept the ink of an engraving off the page that faces it; with the years they took some of it on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from random import Random

from .....ground.art import Filled, Group, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Rect, Transform
from .....ground.pictures import Picture
from .....typesetting.page import PageFrame
from ...designs.tones import darker
from .plates import CaptionType, Plate, place

__all__ = ["guard", "guarded"]

TISSUE = Colour.from_hex("#efe8d8")

SEEN_THROUGH = ((176, 166, 148), (234, 227, 213))
GHOST = ((214, 203, 181), (238, 231, 216))
"""Shadows and lights of the plate under its tissue, and of what it left on the back of it."""

CREASES, FAINT = 5, 0.05
"""A leaf has at most so many creases, and they are so much darker than it."""


def guarded(pictures: Sequence[Picture], captions: Sequence[str], frame: PageFrame) -> Iterator[Plate]:
    """Each picture on a recto, a leaf of tissue before it; the back of a plate stays blank."""
    page = 1
    for number, picture in enumerate(pictures):
        page += frame.folio(page) % 2 == 0
        yield Plate(picture, page + 2, 1, captions[number] if captions else "", guarded=True)
        page += 4


def guard(plate: Plate, frame: PageFrame, type: CaptionType, *, bleed: bool) -> dict[int, Art]:
    """Both pages of the leaf before a plate, by their number in the part."""
    recto, verso = plate.page - 2, plate.page - 1
    through = _plate(plate, SEEN_THROUGH, frame, type, bleed=bleed)
    ghost = _plate(plate, GHOST, frame, type, bleed=bleed)
    mirror = Transform(a=-1.0, e=frame.width)
    chance = Random(f"tissue {frame.book.seed} {frame.folio(plate.page)}")
    creases = [*_creases(frame.page(), chance)]
    front, back = (Filled.box(frame.inked(number), TISSUE) for number in (recto, verso))
    clip = Path.rectangle(frame.page())
    return {
        recto: Group((front, through, Group(tuple(creases), clip=clip))),
        verso: Group((back, Group((ghost,), mirror), Group(tuple(creases), mirror, clip))),
    }


def _plate(
    plate: Plate,
    tones: tuple[tuple[int, int, int], tuple[int, int, int]],
    frame: PageFrame,
    type: CaptionType,
    *,
    bleed: bool,
) -> Art:
    """The plate in pale tones, in its place, without its caption but as if it had it."""
    pale = replace(plate, picture=plate.picture.in_tones(*tones), unsaid=True)
    return place(pale, frame, type, bleed=bleed)[1][plate.page]


def _creases(page: Rect, chance: Random) -> Iterator[Art]:
    """Soft lines across the leaf, where it was turned carelessly."""
    pen = Pen(0.06, darker(TISSUE, FAINT))
    for _ in range(chance.randint(1, CREASES)):
        x, y = page.x + page.width * chance.random(), page.y + page.height * chance.random()
        dx, dy = (page.width * (chance.random() - 0.5) for _ in range(2))
        bend = page.width * 0.1 * (chance.random() - 0.5)
        curve = ("C", x + dx / 3 + bend, y + dy / 3, x + dx * 2 / 3, y + dy * 2 / 3 + bend, x + dx, y + dy)
        yield Stroked(Path((("M", x, y), curve)), pen)
