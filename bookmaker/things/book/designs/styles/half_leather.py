"""Half leather: spine and corners in leather, the sides in marbled paper.

On a cover of one piece all three are drawn; where spine, sides and corners are pieces of their own, each is
of its own stuff.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random
from typing import Literal

from .....ground.art import Group, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Point, Rect, polygon
from ..colouring import Colours
from ..design import DrawnDesign
from ..faces import Faces
from ..grounds.marbling import marbled
from ..grounds.textures import faded_ground, grain
from ..letters.front import pasted_label
from ..palettes import BONE, PALETTES, SOOT, Material
from ..tones import darker
from .leather import Leather
from .look import ArtAndWords, Dressing, SkeletonDesign, Stuff

__all__ = ["HalfLeather", "outlines_of_sides", "seams"]

ONTO_SIDES = 0.2
"""Leather of the spine covers this share of the sides."""

CORNER = 0.3
"""Leather corners reach this share of a side's width along its edges."""


def _bath(entry: DrawnDesign, _colours: Colours, chance: Random) -> Stuff:
    """Paper in the colours of a marbler's bath: all of them, or one less; the lightest stays last."""
    *strong, pale = PALETTES[entry.palette].marbling
    if chance.random() < 0.6:
        strong.pop(int(chance.random() * len(strong)))
    return Stuff(Material.PAPER, (*strong, pale))


def _covering(cover: Dressing, chance: Random) -> Iterator[Art]:
    """Both sides from one sheet, as the binder cuts them."""
    assert cover.sides is not None  # the table below says of what
    yield from faded_ground(cover.faces, cover.ground, cover.entry.wear)
    yield from grain(cover.faces.whole, cover.ground, chance)
    sheet, bath = int(chance.random() * 2**32), cover.sides.colours
    for outline in outlines_of_sides(cover.faces):
        yield Group(tuple(marbled(Rect.around(outline.points()), bath, Random(sheet))), clip=outline)
    yield from seams(cover.faces, darker(cover.ground, 0.35))


def _front(cover: Dressing, front: Rect) -> ArtAndWords:
    hand = cover.hand_on_label("caslon", "caslon italic", SOOT, BONE)
    hand = replace(hand, capitals=False)
    return pasted_label(_plate(cover.faces, front), cover.words, hand, SOOT, 0.25, 0.6, 0.07)


def _plate(faces: Faces, front: Rect) -> Rect:
    """The label on the front, in the upper half of what paper shows: three fifths as wide, a third as high."""
    paper = front
    if faces.spine:  # the leather of the spine goes on to the side
        hidden = front.width * ONTO_SIDES
        paper = Rect(front.x + (hidden if faces.outward(front) > 0 else 0), front.y, front.width - hidden, front.height)
    board = faces.shown(front)
    wide, high = paper.width * 0.62, min(board.height * 0.31, front.height)
    return Rect(paper.centre.x - wide / 2, min(board.y + board.height * 0.55, front.top - high), wide, high)


def outlines_of_sides(faces: Faces) -> Iterator[Path]:
    """The outlines of the sides that are not leather, out to the bleed: what is left beside spine and corners."""
    for side in faces.sides:
        out, reach = faces.outward(side), faces.to_bleed(side)
        far, edge = (reach.right, side.right) if out > 0 else (reach.x, side.x)
        if not faces.spine:
            near = reach.x if out > 0 else reach.right
            yield polygon(
                [Point(x, y) for x, y in ((near, reach.y), (far, reach.y), (far, reach.top), (near, reach.top))]
            )
            continue
        near, cut = (side.x if out > 0 else side.right) + out * side.width * ONTO_SIDES, side.width * CORNER
        # The line of a corner is carried on beyond the edges of the board, into the turn-in or the bleed.
        below, beyond = side.y - reach.y, abs(far - edge)
        inner = edge - out * (cut + below)
        yield polygon(
            [
                Point(near, reach.y),
                Point(inner, reach.y),
                Point(far, side.y + cut + beyond),
                Point(far, side.top - cut - beyond),
                Point(inner, reach.top),
                Point(near, reach.top),
            ]
        )


def seams(faces: Faces, colour: Colour) -> Iterator[Art]:
    """A fine line where the leather ends."""
    for outline in outlines_of_sides(faces):
        yield Stroked(outline, Pen(0.12, colour))


class HalfLeather(SkeletonDesign):
    """Leather spine and corners, marbled sides."""

    style: Literal["half leather"] = "half leather"
    material = Material.LEATHER
    look = replace(Leather.look, sides=_bath, covering=_covering, front=_front)
