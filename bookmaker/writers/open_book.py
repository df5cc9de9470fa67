"""A book that lies open on its covers, as it is seen from its tail."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..ground.art import Filled, Group, Stroked
from ..ground.drawing import WHITE, Art, Colour, Pen
from ..ground.geometry import Path, Point, Rect, Size, Transform
from ..sheets.facsimiles import Facsimile
from ..sheets.flat import Role
from ..things.stance import Opened

__all__ = ["open_book"]

LEAF = Pen(0.05, Colour.from_hex("#b9b2a2"))

APART = 0.25
"""The edges of leaves are drawn so far apart, in mm."""

SINKS = 0.35
"""Towards the fold the leaves go down to this share of their height."""


def open_book(size: Size, opened: Opened, faces: Mapping[Role, Facsimile]) -> Facsimile:
    """The two halves, each of leaves on its cover; `size` is what the book takes, the fold is in its middle.

    The edges of the covers have what their faces show along the tail.
    """
    box = Rect(0.0, 0.0, *size)
    middle = size.width / 2
    halves = [
        *_half(Rect(0.0, 0.0, middle, opened.left), opened.cover, faces.get(Role.FRONT), rises=1),
        *_half(Rect(middle, 0.0, middle, opened.right), opened.cover, faces.get(Role.BACK), rises=-1),
    ]
    return Facsimile(Group(tuple(halves)), box)


def _half(room: Rect, cover: float, face: Facsimile | None, rises: int) -> Iterator[Art]:
    """The leaves sink towards the fold, which is at the right of the half at the left."""
    leaves = max(room.height - cover, 0.0)
    count = max(1, round(leaves / APART))
    outer, fold = (room.x, room.right) if rises > 0 else (room.right, room.x)
    inner = outer + (fold - outer) * 0.8
    for level in range(count, 0, -1):
        high = cover + leaves * level / count
        corners = (Point(outer, cover), Point(outer, high), Point(inner, high), Point(fold, cover + high * SINKS))
        edge = Path((("M", *corners[0]), *(("L", *corner) for corner in (*corners[1:], Point(fold, cover))), ("Z",)))
        yield Filled(edge, WHITE)
        yield Stroked(edge, LEAF)
    board = Rect(room.x, 0.0, room.width, cover)
    if face is None:
        yield Filled.box(board, LEAF.colour)
        return
    stretched = Transform.move(-face.box.x, -face.box.y).then(Transform.stretch(room.width / face.box.width, 1.0))
    yield Group((Group((face.art,), stretched.moved(room.x, 0.0)),), clip=Path.rectangle(board))
