"""The sizes of a case: boards, stiffener, joint, and the covering between them.

Seen from above, the closed book lies with its back at x = 0 and its pages towards x = W. The stiffener stands
behind the back, the boards begin one joint in front of it, and the covering goes around the outside of all
three:

          stiffener    joint            board
              ┌─┐                ┌──────────────────┐
              │ │                └──────────────────┘  ┐ q
              │ │├──── block, W wide, T thick ──────┤
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import hypot

from .....ground.geometry import Size
from .....paper.stock import Stock
from ..bending import bend_allowance
from .keys import USUAL_JOINT, CaseKeys

__all__ = ["Sizes", "board_size", "joint_on_the_flat", "size_up", "stiffener_width"]

QUARTER_SHARE, HALF_SHARE = 1 / 8, 1 / 4
"""How much of the board the spine piece takes (M. Roberts & D. Etherington, 1982, from memory)."""

LAPS_REACHED = 1.5
"""On a narrow board the spine piece shows so many laps at least, so that it does not vanish (common practice)."""

CORNER_CUT = 1.5
"""Corners are cut so many times board and covering away from the board's corner (common practice)."""


def board_size(page: Size, square: float, joint: float) -> Size:
    """A board, in mm: W + q − joint wide, H + 2q high.

    >>> board_size(Size(15, 21), 0.4, 1.5)
    Size(width=13.9, height=21.8)
    """
    return Size(page.width + square - joint, page.height + 2 * square)


def stiffener_width(rule: str, block: float, board: float) -> float:
    """The stiffener, in mm: T + 2B (Johnson 2003) or T (P. Adam, *Practical Bookbinding*, 1903, ch. VI).

    Without a stiffener the covering still spans T + 2B.

    >>> stiffener_width("sections and boards", 4.25, 1.0), stiffener_width("sections", 4.25, 1.0)
    (6.25, 4.25)
    """
    return block if rule == "sections" else block + 2 * board


def joint_on_the_flat(joint: float, stiffener: float, level: float, caliper: float) -> float:
    """The covering from the stiffener's edge to the board's, in mm: √((joint + S)² + level²) + π/4·c.

    In the closed book the joint lies between the board and the back; the covering comes from the outer face
    of the stiffener, S further out, and turns a right angle on its way. A stiffener of the block's own width
    lies `level` lower than the board's face, one board. Without this the squares at the fore-edge would be
    short by the thickness of the stiffener.

    >>> round(joint_on_the_flat(1.5, 1.0, 0.0, 0.21), 3)
    2.665
    """
    return hypot(joint + stiffener, level) + bend_allowance(90, 0, caliper)


@dataclass(frozen=True, slots=True)
class Sizes:
    """Lengths in mm. `spine` is the stiffener's width, or the back's without one; `gap` is the joint on the flat.

    `board` and `stiffener` are thicknesses; `side` and `back` are the calipers of the covering on the boards
    and over the joints. `reach`, `corner` and `lap` are those of quarter and half bindings.
    """

    page: Size
    block: float
    square: float
    board: float
    stiffener: float
    side: float
    back: float
    joint: float
    boards: Size
    spine: float
    gap: float
    turn_in: float
    reach: float
    corner: float
    lap: float

    def folded_in(self, caliper: float) -> float:
        """How far a turn-in lies on the inside of the board: what board and folds leave of it."""
        return self.turn_in - self.board - bend_allowance(180, 0, caliper)

    def corner_cut(self, caliper: float) -> float:
        """How far from the board's corner the covering's corner is cut off."""
        return CORNER_CUT * (self.board + caliper)


def size_up(entry: CaseKeys, page: Size, block: float, stocks: Mapping[str, Stock]) -> Sizes:
    """Work out all sizes around a block `block` mm thick with its endpapers; nothing is refused here."""
    board = stocks[entry.boards].caliper
    side = stocks[entry.stock].covered
    back = stocks[entry.spine_stock].covered if entry.binding != "full" and entry.spine_stock else side
    stiffener = 0.0 if entry.stiffener == "none" else stocks[entry.stiffener_stock or entry.boards].caliper
    joint = (entry.joint or USUAL_JOINT).of(board)
    boards = board_size(page, entry.square, joint)
    spine = stiffener_width(entry.stiffener, block, board)
    share = HALF_SHARE if entry.binding == "half" else QUARTER_SHARE
    usual = max(boards.width * share, LAPS_REACHED * entry.lap)
    reach = usual if entry.spine_reach is None else entry.spine_reach
    return Sizes(
        page=page,
        block=block,
        square=entry.square,
        board=board,
        stiffener=stiffener,
        side=side,
        back=back,
        joint=joint,
        boards=boards,
        spine=spine,
        gap=joint_on_the_flat(joint, stiffener, (block + 2 * board - spine) / 2, back),
        turn_in=entry.turn_in,
        reach=reach,
        corner=reach if entry.corner is None else entry.corner,
        lap=entry.lap,
    )
