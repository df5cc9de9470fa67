"""The covering of a full case: one flat with turn-ins all around and its corners cut off.

All folds are mountains: the printed face is the outside. They lie at the edges of boards and stiffener, so
the same marks show where these are glued down.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

from .....ground.geometry import Axis, Point, Rect
from .....sheets.flat import Flat, Fold, FoldKind, Panel, Role
from .shaping import Corner, cut_off
from .sizes import Sizes

__all__ = ["BLEED", "covering", "mountain"]

BLEED = 1.0
"""How far print runs past the edge of a turn-in, in mm: it will not show."""


def mountain(from_x: float, from_y: float, to_x: float, to_y: float) -> Fold:
    """A fold of a cover."""
    return Fold(FoldKind.MOUNTAIN, Point(from_x, from_y), Point(to_x, to_y))


def covering(sizes: Sizes, stock: str, *, right_to_left: bool) -> Flat:
    """The whole covering: 2·(board + joint on the flat) + stiffener + 2·turn-in wide, board + 2·turn-in high."""
    turn_in, tail, head = sizes.turn_in, sizes.turn_in, sizes.turn_in + sizes.boards.height
    widths = (sizes.boards.width, sizes.gap, sizes.spine, sizes.gap, sizes.boards.width)
    edges = list(accumulate(widths, initial=turn_in))
    left, right = edges[0], edges[-1]
    width, height = right + turn_in, head + turn_in
    roles = (Role.BACK, Role.JOINT, Role.SPINE, Role.JOINT, Role.FRONT)
    outer = [
        Rect(0, tail, turn_in, head - tail),
        Rect(right, tail, turn_in, head - tail),
        Rect(left, 0, right - left, turn_in),
        Rect(left, head, right - left, turn_in),
    ]
    outline: Sequence[Point] = Rect(0, 0, width, height).corners
    for x, to_right in ((left, -1), (right, +1)):
        for y, upwards in ((tail, -1), (head, +1)):
            outline = cut_off(outline, Corner(Point(x, y), to_right, upwards), sizes.corner_cut(sizes.side))
    return Flat(
        kind="case",
        name="covering",
        stock=stock,
        outline=tuple(outline),
        folds=(
            *(mountain(x, tail, x, head) for x in edges),
            mountain(left, tail, right, tail),
            mountain(left, head, right, head),
        ),
        panels=(
            *(
                Panel(role, Rect(x, tail, wide, head - tail))
                for role, x, wide in zip(reversed(roles) if right_to_left else roles, edges, widths, strict=False)
            ),
            *(Panel(Role.TURN_IN, rect) for rect in outer),
        ),
        grain=Axis.Y,
        bleed=BLEED,
    )
