"""A block hung in its case, seen from the tail: pasted over waste paper, then the board closed on it."""

from __future__ import annotations

from collections.abc import Iterator

from ....ground.art import Group, Stroked
from ....ground.drawing import Art, Pen
from ....ground.geometry import Path, Point, Rect, Transform
from ...making import Manner
from ...views.ink import EDGE, PAPER, box, line, word
from ...views.side_view import GLUE
from ...views.signs import HIDDEN, bent_arrow, glued, pointed
from ...views.stages import staged

__all__ = ["HUNG", "hung_in_case"]

HUNG = "a block hung in its case"

BLOCK = Rect(9.0, 5.0, 20.0, 8.0)
"""The block as it is drawn, its spine on the left, in mm."""

BOARD, COVER = 1.4, Pen(0.4)
"""How thick a board is drawn, and how the covering is."""

OPEN_DEG = 28.0
"""How far the upper board still stands open when it is closed on the block."""


def hung_in_case(room: float) -> Manner:
    """Paste over waste paper; then the board comes down."""
    caption = (
        "A block hung in its case, seen from the tail. a: waste paper lies under the leaf that is pasted, and keeps "
        "paste off the others; the spine stays free. b: the waste paper is gone, and the board is closed on the wet "
        "leaf. The book is turned over then, for the other board."
    )
    return Manner(HUNG, staged((_pasted(), _closed()), room, caption))


def _lying() -> Iterator[Art]:
    """The lower board, the spine of the case, and the block on it."""
    foot = BLOCK.y - 0.4 - BOARD
    yield box(Rect(BLOCK.x + 2.0, foot, BLOCK.width - 1.0, BOARD), GLUE)
    yield Stroked(Path.line(Point(BLOCK.right + 1.4, foot - 0.4), Point(BLOCK.x - 1.2, foot - 0.4)), COVER)
    yield Stroked(Path.line(Point(BLOCK.x - 1.2, foot - 0.4), Point(BLOCK.x - 1.2, BLOCK.top + 0.4)), COVER)
    yield box(BLOCK, PAPER)
    yield word("block", BLOCK.centre, 2.0)


def _upper_board(degrees: float) -> Art:
    """The board that is still open, turned around its joint."""
    joint = Point(BLOCK.x - 1.2, BLOCK.top + 0.4)
    board = Rect(joint.x + 3.2, joint.y, BLOCK.width - 1.0, BOARD)
    flat = Group(
        (
            box(board, GLUE),
            line(joint, Point(board.x, board.top + 0.4), COVER),
            line(Point(board.x, board.top + 0.4), Point(board.right + 0.4, board.top + 0.4), COVER),
        )
    )
    return Group((flat,), Transform.turn(degrees, joint))


def _pasted() -> Art:
    leaf = BLOCK.top + 2.2
    waste = line(Point(BLOCK.x + 1.0, BLOCK.top + 1.1), Point(BLOCK.right + 4.0, BLOCK.top + 1.1), HIDDEN)
    raised = line(Point(BLOCK.x, BLOCK.top), Point(BLOCK.x + 2.0, leaf), EDGE)
    over = line(Point(BLOCK.x + 2.0, leaf), Point(BLOCK.right, leaf), EDGE)
    paste = glued(Rect(BLOCK.x + 2.0, leaf, BLOCK.width - 2.0, 1.2).corners)
    names = (
        pointed("paste", Point(15.0, 19.5), Point(15.0, leaf + 0.8)),
        pointed("waste paper", Point(28.0, 19.5), Point(BLOCK.right + 2.5, BLOCK.top + 1.1)),
    )
    return Group((*_lying(), waste, raised, over, paste, *names))


def _closed() -> Art:
    leaf = line(Point(BLOCK.x, BLOCK.top + 0.5), Point(BLOCK.right, BLOCK.top + 0.5), EDGE)
    paste = glued(Rect(BLOCK.x, BLOCK.top + 0.5, BLOCK.width, 1.2).corners)
    down = bent_arrow(Point(25.0, 23.0), Point(30.5, 16.0), 1.5)
    return Group((*_lying(), leaf, paste, _upper_board(OPEN_DEG), down))
