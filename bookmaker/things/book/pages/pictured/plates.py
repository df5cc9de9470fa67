"""Plates: pictures in their places, one a page or across two facing pages, with captions or without."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from .....ground.art import Group, Pictured
from .....ground.drawing import Art
from .....ground.geometry import Path, Rect, Size
from .....ground.pictures import Picture, covering, fitting
from .....ground.problems import Problem
from .....ground.typefaces import TextLine, Typeface
from .....typesetting.display import LEADING, broken, centred
from .....typesetting.page import PageFrame
from ..prose.sizes import type_too_small

__all__ = ["CaptionType", "Plate", "arrange", "place", "small_captions", "type_of_captions"]

CAPTION_SIZE = 1 / 36
"""Size of captions (the em) as a share of the page's height: 0.58 mm on a page of 21 mm; less if one has no room."""

CAPTION_LINES = 2

CAPTION_GAP = 0.4
"""Clear height between a picture and its caption, in ems."""

OVER_THE_FOLD = 0.1
"""Each half of a picture across two pages is printed so far over the fold, in mm, for no fold is exact."""


@dataclass(frozen=True, slots=True)
class Plate:
    """A picture and where it goes: its first page, counted from 1 in the part, and on how many pages it lies.

    A leaf of tissue lies before one that is `guarded`. The caption of one that is `unsaid` has its room, but is not
    printed.
    """

    picture: Picture
    page: int
    pages: int = 1
    caption: str = ""
    guarded: bool = False
    unsaid: bool = False


class CaptionType(NamedTuple):
    """What captions are set in: a typeface, and its size, the em in mm."""

    face: Typeface
    size: float


def arrange(pictures: Sequence[Picture], captions: Sequence[str], spreads: str, frame: PageFrame) -> Iterator[Plate]:
    """A page for each picture, or two that face each other; these begin on a verso, and a page before stays blank.

    `spreads` is ``none``, ``wide`` (pictures wider than high lie across two pages) or ``all``.
    """
    page = 1
    for number, picture in enumerate(pictures):
        wide = spreads == "all" or (spreads == "wide" and picture.width_px > picture.height_px)
        if wide and frame.folio(page) % 2:
            page += 1
        pages = 2 if wide else 1
        yield Plate(picture, page, pages, captions[number] if captions else "")
        page += pages


def place(plate: Plate, frame: PageFrame, type: CaptionType, *, bleed: bool) -> tuple[Size, dict[int, Art]]:
    """The size of the whole picture in mm, and the art of each page of the plate by its number in the part."""
    pages: dict[int, Art] = {}
    numbers = range(plate.page, plate.page + plate.pages)
    # the left page comes first; in books read from right to left that is the second one
    left_to_right = sorted(numbers, key=frame.spine_on_left)
    areas = [
        (frame.inked(number) if bleed else frame.type_area(number)).moved(side * frame.width, 0)
        for side, number in enumerate(left_to_right)
    ]
    whole = Rect.around([corner for area in areas for corner in area.corners])
    caption, height = _caption(plate, frame, type)
    room = whole.grown(0, -height, 0, 0)
    into = (covering if bleed else fitting)(plate.picture, room)
    for side, number in enumerate(left_to_right):
        seen = into.moved(-side * frame.width, 0)
        paper = _half(frame, number) if plate.pages > 1 else room
        page = _within(_common(room.moved(-side * frame.width, 0), paper), Pictured(plate.picture, seen))
        if caption and number == plate.page and not plate.unsaid:
            page = Group((page, caption))
        pages[number] = page
    return into.size, pages


def _within(area: Rect, placed: Pictured) -> Art:
    """A picture on a page, or the part of it that lies there; what stands out of the area is cropped."""
    return placed if area.contains(placed.into) else Group((placed,), clip=Path.rectangle(area))


def _half(frame: PageFrame, number: int) -> Rect:
    """One page of two that face each other, and a little over the fold between them."""
    if frame.spine_on_left(number):
        return frame.inked(number).grown(OVER_THE_FOLD, 0, 0, 0)
    return frame.inked(number).grown(0, 0, OVER_THE_FOLD, 0)


def _common(one: Rect, other: Rect) -> Rect:
    """What two rectangles share."""
    x, y = max(one.x, other.x), max(one.y, other.y)
    return Rect(x, y, min(one.right, other.right) - x, min(one.top, other.top) - y)


def type_of_captions(plates: Sequence[Plate], frame: PageFrame, face: Typeface) -> CaptionType:
    """A typeface in the size of all captions: the largest in which the longest of them has room."""
    usual = CaptionType(face, frame.height * CAPTION_SIZE)
    sets = (_caption_lines(plate, frame, usual) for plate in plates)
    return CaptionType(face, min((lines[0].size for lines in sets if lines), default=usual.size))


def small_captions(plates: Sequence[Plate], type: CaptionType, frame: PageFrame) -> Iterator[Problem]:
    """A note, if there are captions and they are too small to be read."""
    if any(plate.caption for plate in plates):
        remedy = "write shorter captions, or leave them out"
        yield from type_too_small("the captions", type.face, type.size, frame, remedy, ("captions",))


def _caption_lines(plate: Plate, frame: PageFrame, type: CaptionType) -> tuple[TextLine, ...]:
    return broken(
        type.face,
        frame.printed(plate.caption, type.face),
        type.size,
        frame.type_area(plate.page).width,
        CAPTION_LINES,
        right_to_left=frame.right_to_left and not (frame.type and frame.type.vertical),
    )


def _caption(plate: Plate, frame: PageFrame, type: CaptionType) -> tuple[Art | None, float]:
    """The caption at the foot of the type area of the plate's first page, and the height it takes."""
    area, lines = frame.type_area(plate.page), _caption_lines(plate, frame, type)
    if not lines:
        return None, 0.0
    face, size = type
    height = (face.ascent - face.descent + LEADING * (len(lines) - 1) + CAPTION_GAP) * size
    first = area.y + height - (face.ascent + CAPTION_GAP) * size
    return centred(lines, area.centre.x, first), height
