"""From the moves of the search back to where every item lies."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple, Optional

from .blocks import Block, Size

__all__ = ["Lie", "Move", "Stack", "trace"]

Stack = tuple[int, int, Optional["Stack"], int]
"""Width and height of the top rectangle, the stack below it, and the area of all rectangles together."""


class Move(NamedTuple):
    """A block put into the lower left corner of the stack's top rectangle, after the moves before it.

    When `upright`, the rectangle is cut from bottom to top beside the block, else from side to side above it.
    """

    before: Move | None
    stack: Stack
    block: Block
    upright: bool


class Lie(NamedTuple):
    """Where an item of a kind lies, in units: number of the area, lower left corner, size."""

    kind: int
    area: int
    x: int
    y: int
    width: int
    height: int


class _Spot(NamedTuple):
    """An empty rectangle with its place."""

    area: int
    x: int
    y: int
    width: int
    height: int


def trace(areas: Sequence[Size], last: Move) -> list[Lie]:
    """Play the moves once more with places.

    The search drops rectangles that no item fits into, here they are still on the stack. So rectangles are
    dropped until one has the size the search went on with: an equal one would have been dropped as well.
    """
    moves: list[Move] = []
    move: Move | None = last
    while move:
        moves.append(move)
        move = move.before
    spots = [_Spot(number, 0, 0, *area) for number, area in reversed(list(enumerate(areas)))]
    lies: list[Lie] = []
    for step in reversed(moves):
        spot = spots.pop()
        while (spot.width, spot.height) != step.stack[:2]:
            spot = spots.pop()
        lies += _items_of(step.block, spot.area, spot.x, spot.y)
        spots += _remains(spot, step.block, step.upright)
    return lies


def _remains(spot: _Spot, block: Block, upright: bool) -> tuple[_Spot, _Spot]:
    """The two empty rectangles beside and above a block; the one that touches only the block comes last."""
    beside = spot._replace(x=spot.x + block.width, width=spot.width - block.width)
    above = spot._replace(y=spot.y + block.height, height=spot.height - block.height)
    if upright:
        return beside, above._replace(width=block.width)
    return above, beside._replace(height=block.height)


def _items_of(block: Block, area: int, x: int, y: int) -> Iterator[Lie]:
    if not block.parts:
        yield Lie(block.kind, area, x, y, block.width, block.height)
        return
    first, second = block.parts
    yield from _items_of(first, area, x, y)
    step = (first.width, 0) if block.beside else (0, first.height)
    yield from _items_of(second, area, x + step[0], y + step[1])
