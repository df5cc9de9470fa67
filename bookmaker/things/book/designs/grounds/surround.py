"""Pictures carried on beyond their edges, into turn-in and bleed, so that no edge shows white when a fold is off."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from .....ground.art import Group, Imported, Pictured
from .....ground.drawing import Art
from .....ground.geometry import Path, Point, Rect, Transform
from .....ground.imported import ImportedPage
from .....ground.pictures import Picture, covering

__all__ = ["Surround", "filling", "surrounded", "surrounded_picture"]

Surround = Literal["folded over", "pulled out", "ground"]

STRETCHED_EDGE = 0.02
"""The outermost share of a picture that is stretched over what lies beyond it."""


def surrounded_picture(picture: Picture | ImportedPage, face: Rect, bounds: Rect, manner: Surround) -> Iterator[Art]:
    """A picture, or a page of a PDF file, that fills a face, and its edges run on to `bounds`.

    It is cropped evenly where its proportions are not those of the face. With "ground" it ends at the face, and
    the ground shows beyond.
    """
    return surrounded(filling(picture, face), face, bounds, manner)


def surrounded(art: Art, face: Rect, bounds: Rect, manner: Surround) -> Iterator[Art]:
    """The same for any art that fills a face."""
    if manner != "ground":
        for across in (-1, 0, 1):
            for up in (-1, 0, 1):
                if across or up:
                    yield from _beyond(art, face, bounds, (across, up), manner)
    yield art


def filling(picture: Picture | ImportedPage, face: Rect) -> Art:
    """A picture, or a page of a PDF file, that just covers a face, cropped evenly."""
    if isinstance(picture, Picture):
        return Group((Pictured(picture, covering(picture, face)),), clip=Path.rectangle(face))
    scale = max(face.width / picture.size.width, face.height / picture.size.height)
    width, height = picture.size.width * scale, picture.size.height * scale
    into = Rect(face.centre.x - width / 2, face.centre.y - height / 2, width, height)
    return Group((Imported(picture, into),), clip=Path.rectangle(face))


def _beyond(art: Art, face: Rect, bounds: Rect, way: tuple[int, int], manner: Surround) -> Iterator[Art]:
    """The part of `bounds` that lies beyond the face on one side or at one corner."""
    left, right = _span(face.x, face.right, bounds.x, bounds.right, way[0])
    low, high = _span(face.y, face.top, bounds.y, bounds.top, way[1])
    if right - left < 1e-6 or high - low < 1e-6:
        return
    edge = Point(face.right if way[0] > 0 else face.x, face.top if way[1] > 0 else face.y)
    x_factor = _factor(way[0], right - left, face.width, manner)
    y_factor = _factor(way[1], high - low, face.height, manner)
    # A hair of overlap with the face hides the seam that a screen would show.
    strip = Rect(left, low, right - left, high - low).grown(*(0.02 if inner else 0.0 for inner in _inner(way)))
    yield Group((Group((art,), Transform.stretch(x_factor, y_factor, edge)),), clip=Path.rectangle(strip))


def _span(low: float, high: float, outer_low: float, outer_high: float, way: int) -> tuple[float, float]:
    if way < 0:
        return outer_low, low
    return (high, outer_high) if way > 0 else (low, high)


def _inner(way: tuple[int, int]) -> tuple[bool, bool, bool, bool]:
    """Which sides of a strip touch the face: left, bottom, right, top."""
    return way[0] > 0, way[1] > 0, way[0] < 0, way[1] < 0


def _factor(way: int, length: float, face: float, manner: Surround) -> float:
    """How the picture is stretched about its edge: −1 mirrors it."""
    if not way:
        return 1.0
    return -1.0 if manner == "folded over" else -length / (face * STRETCHED_EDGE)
