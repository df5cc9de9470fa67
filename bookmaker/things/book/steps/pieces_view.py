"""In which order the pieces of a quarter or half binding come on the boards, seen from the outside of the case."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ....ground.art import Filled, Group, Stroked
from ....ground.drawing import WHITE, Art, Colour
from ....ground.geometry import Point, Rect, Size, polygon
from ...making import Manner
from ...views.ink import EDGE, PAPER, box, word
from ...views.signs import HIDDEN
from ...views.stages import staged

__all__ = ["PIECES", "pieces_in_order"]

PIECES = "the pieces of a binding in their order"

CELL = Size(29.0, 25.0)
"""Three of these stand side by side in the narrowest column."""

BOARD = Colour(0.8, 0.8, 0.8)
CLOTH = Colour(0.72, 0.72, 0.72)

FRONT, BACK = Rect(16.6, 3.6, 8.5, 15.0), Rect(4.2, 3.6, 8.5, 15.0)
"""The boards, and between them the spine, in mm."""

REACH, LAP, TURN_IN, CORNER = 2.8, 0.9, 2.0, 3.6
"""How far the spine piece goes onto a board, the side over it, all over the edges, and a corner along them."""


def pieces_in_order(room: float, *, corners: bool) -> Manner:
    """Spine piece, corners if it has any, sides."""
    stages = [_laid(), *([_cornered()] if corners else []), _sided(corners=corners)]
    letters = "abc"[: len(stages)]
    told = [
        "the spine piece comes first, pasted to both boards and turned in at head and tail",
        *(["then the corners, turned in over both edges"] if corners else []),
        "the sides come last: their straight edge laps over the spine piece"
        + (", their cut-off corners over the corners" if corners else "")
        + ", and they are turned in on three sides",
    ]
    steps = ". ".join(f"{letter}: {one}" for letter, one in zip(letters, told, strict=True))
    caption = f"The case seen from outside; dashed is what is turned in behind the boards. {steps}."
    return Manner(f"{PIECES}{', with corners' if corners else ''}", staged(stages, room, caption, CELL))


def _shape(points: Sequence[Point], ground: Colour, *, seen: bool = True) -> Art:
    outline = polygon(points)
    return Group((*((Filled(outline, ground),) if seen else ()), Stroked(outline, EDGE if seen else HIDDEN)))


def _boards() -> Iterator[Art]:
    for board in (BACK, FRONT):
        yield box(board, BOARD)


def _spine() -> Iterator[Art]:
    """The piece around the back, and behind the boards what of it is turned in."""
    across = Rect(BACK.right - REACH, FRONT.y, FRONT.x - BACK.right + 2 * REACH, FRONT.height)
    yield box(across.grown(0, TURN_IN, 0, TURN_IN), WHITE, HIDDEN)
    yield box(across, CLOTH)
    yield word("spine", across.centre, 2.0, room=12.0, upright=True)


def _corners() -> Iterator[Art]:
    """A triangle on each outer corner of the boards, and the flaps that go behind."""
    for board, outer in ((BACK, -1), (FRONT, 1)):
        x = board.x if outer < 0 else board.right
        for y, up in ((board.y, -1), (board.top, 1)):
            tip = Point(x, y)
            ends = [tip.plus(-outer * CORNER, 0), tip.plus(0, -up * CORNER)]
            out = [ends[0].plus(0, up * TURN_IN), tip.plus(0, up * TURN_IN), tip.plus(outer * TURN_IN, 0)]
            yield _shape([ends[0], *out, ends[1].plus(outer * TURN_IN, 0), ends[1]], WHITE, seen=False)
            yield _shape([tip, *ends], CLOTH)


def _side(board: Rect, outer: int, *, corners: bool) -> Iterator[Art]:
    inner = (board.right if outer < 0 else board.x) + outer * (REACH - LAP)
    far = board.x if outer < 0 else board.right
    cut = CORNER - LAP if corners else 0.0
    beyond = far + outer * TURN_IN
    flap = [Point(inner, board.top + TURN_IN), Point(beyond, board.top + TURN_IN)]
    flap += [Point(beyond, board.y - TURN_IN), Point(inner, board.y - TURN_IN)]
    yield _shape(flap, WHITE, seen=False)
    face = [Point(inner, board.top), Point(far - outer * cut, board.top), Point(far, board.top - cut)]
    face += [Point(far, board.y + cut), Point(far - outer * cut, board.y), Point(inner, board.y)]
    yield _shape(face, PAPER)
    yield word("side", Point((inner + far) / 2, board.centre.y), 2.0)


def _laid() -> Art:
    return Group(
        (
            *_boards(),
            *_spine(),
            word("board", Point((FRONT.x + REACH + FRONT.right) / 2, FRONT.centre.y), 2.0, room=5.0),
        )
    )


def _cornered() -> Art:
    return Group((*_boards(), *_spine(), *_corners()))


def _sided(*, corners: bool) -> Art:
    return Group(
        (
            *_boards(),
            *_spine(),
            *(_corners() if corners else ()),
            *_side(BACK, -1, corners=corners),
            *_side(FRONT, 1, corners=corners),
        )
    )
