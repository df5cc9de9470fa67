"""Quarter and half binding: a spine piece, two sides that lap over it, and in half binding four corners.

Sides and corners are drawn for the right-hand board and the lower left corner, and mirrored for the others.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import accumulate
from math import sqrt

from .....ground.geometry import Axis, Point, Rect
from .....sheets.flat import Flat, Panel, Role
from .....sheets.mirror import mirrored
from .covering import BLEED, mountain
from .shaping import Corner, at_origin, cut_off
from .sizes import Sizes

__all__ = ["corner_pieces", "side_pieces", "spine_piece"]


def spine_piece(sizes: Sizes, stock: str, *, right_to_left: bool) -> Flat:
    """Stiffener, joints and a strip of each board; what the sides will hide is a tab on either hand."""
    tail, head = sizes.turn_in, sizes.turn_in + sizes.boards.height
    widths = (sizes.lap, sizes.reach, sizes.gap, sizes.spine, sizes.gap, sizes.reach, sizes.lap)
    edges = list(accumulate(widths, initial=0.0))
    roles = (Role.TAB, Role.BACK, Role.JOINT, Role.SPINE, Role.JOINT, Role.FRONT, Role.TAB)
    if right_to_left:
        roles = roles[::-1]
    width, height = edges[-1], head + sizes.turn_in
    return Flat(
        kind="case spine",
        name="spine piece",
        stock=stock,
        outline=Rect(0, 0, width, height).corners,
        folds=(
            *(mountain(x, tail, x, head) for x in edges[2:-2]),
            mountain(0, tail, width, tail),
            mountain(0, head, width, head),
        ),
        panels=(
            *(
                Panel(role, Rect(x, tail, wide, head - tail))
                for role, x, wide in zip(roles, edges, widths, strict=False)
                if wide
            ),
            Panel(Role.TURN_IN, Rect(0, 0, width, tail)),
            Panel(Role.TURN_IN, Rect(0, head, width, tail)),
        ),
        grain=Axis.Y,
        bleed=BLEED,
    )


def side_pieces(sizes: Sizes, stock: str, *, half: bool, right_to_left: bool) -> Iterator[Flat]:
    """The sides, front first; the front is the right-hand board, or the left-hand one of right-to-left books."""
    right_hand = _right_hand_side(sizes, stock, sizes.corner if half else 0.0)
    for role, on_the_right in ((Role.FRONT, not right_to_left), (Role.BACK, right_to_left)):
        side = right_hand if on_the_right else mirrored(right_hand, across=True)
        panels = tuple(replace(panel, role=role) if panel.role is Role.FRONT else panel for panel in side.panels)
        yield replace(side, name=f"{role} side", panels=panels)


def _right_hand_side(sizes: Sizes, stock: str, corner: float) -> Flat:
    """From its edge on the spine piece, at the left, to the turn-in at the fore-edge; `corner` 0 for none."""
    width, tail, head = sizes.boards.width - sizes.reach, sizes.turn_in, sizes.turn_in + sizes.boards.height
    away = -corner / sqrt(2) if corner else sizes.corner_cut(sizes.side)
    outline: Sequence[Point] = Rect(0, 0, width + sizes.turn_in, head + sizes.turn_in).corners
    for y, upwards in ((tail, -1), (head, +1)):
        outline = cut_off(outline, Corner(Point(width, y), +1, upwards), away)
    side = Flat(
        kind="case side",
        name="side",
        stock=stock,
        outline=tuple(outline),
        folds=(
            mountain(width, tail + corner, width, head - corner),
            mountain(0, tail, width - corner, tail),
            mountain(0, head, width - corner, head),
        ),
        panels=(
            Panel(Role.FRONT, Rect(0, tail, width, head - tail)),
            Panel(Role.TURN_IN, Rect(width, tail, sizes.turn_in, head - tail)),
            Panel(Role.TURN_IN, Rect(0, 0, width, tail)),
            Panel(Role.TURN_IN, Rect(0, head, width, tail)),
        ),
        grain=Axis.Y,
        bleed=BLEED,
    )
    return at_origin(side)


def corner_pieces(sizes: Sizes, stock: str, *, right_to_left: bool) -> Iterator[Flat]:
    """Four corners: the front's lower and upper one, then the back's."""
    lower_left = _lower_left_corner(sizes, stock)
    for board, on_the_right in (("front", not right_to_left), ("back", right_to_left)):
        for end, at_the_head in (("lower", False), ("upper", True)):
            piece = mirrored(lower_left, across=on_the_right, up=at_the_head)
            yield replace(piece, name=f"{end} {board} corner")


def _lower_left_corner(sizes: Sizes, stock: str) -> Flat:
    """A trapezoid: its long side lies under the side by the lap, its short one is the cut across the corner."""
    turn_in = sizes.turn_in
    reach = sizes.corner + sizes.lap * sqrt(2)
    corner = Corner(Point(turn_in, turn_in), -1, -1)
    # The square is so large that the slant cuts the two corners where it meets the outer edges.
    outline: Sequence[Point] = Rect(0, 0, reach + 2 * turn_in, reach + 2 * turn_in).corners
    outline = cut_off(outline, corner, -reach / sqrt(2), keep=+1)
    outline = cut_off(outline, corner, sizes.corner_cut(sizes.back))
    return Flat(
        kind="case corner",
        name="corner",
        stock=stock,
        outline=tuple(outline),
        folds=(
            mountain(turn_in, turn_in, turn_in + reach, turn_in),
            mountain(turn_in, turn_in, turn_in, turn_in + reach),
        ),
        panels=(
            Panel(Role.CORNER, Rect(turn_in, turn_in, sizes.corner, sizes.corner)),
            Panel(Role.TURN_IN, Rect(0, turn_in, turn_in, reach + turn_in)),
            Panel(Role.TURN_IN, Rect(turn_in, 0, reach + turn_in, turn_in)),
        ),
        bleed=BLEED,
    )
