"""Work that goes on from one drawing to the next: stages side by side in cells of one size, each with its letter."""

from __future__ import annotations

from collections.abc import Sequence

from ...ground.art import Group
from ...ground.drawing import Art
from ...ground.geometry import Point, Size, Transform
from ..making import Figure
from .ink import word

__all__ = ["CELL", "in_cells", "staged"]

CELL = Size(36.0, 27.0)
"""The room of a stage in mm; two stand side by side in the narrowest column of the guide."""


def staged(stages: Sequence[Art], room: float, caption: str, cell: Size = CELL) -> Figure:
    """Stages a, b, c and so on; each is drawn in a cell, from its lower left corner."""
    lettered = [(chr(ord("a") + number), art) for number, art in enumerate(stages)]
    return in_cells(lettered, room, caption, cell)


def in_cells(named: Sequence[tuple[str, Art]], room: float, caption: str, cell: Size = CELL) -> Figure:
    """Drawings in rows of cells as wide as the room, each named at its upper left corner."""
    across = min(len(named), max(1, int(room // cell.width)))
    rows = -(-len(named) // across)
    size = Size(across * cell.width, rows * cell.height)
    art: list[Art] = []
    for place, (name, drawn) in enumerate(named):
        corner = Point(place % across * cell.width, size.height - (place // across + 1) * cell.height)
        art.append(Group((drawn,), Transform.move(*corner)))
        said = word(name, corner, 2.6)
        art.append(word(name, corner.plus(0.6 + said.line.width / 2, cell.height - 2.0), 2.6))
    return Figure(Group(tuple(art)), size, caption)
