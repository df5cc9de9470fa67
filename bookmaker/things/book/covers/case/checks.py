"""What can be wrong with a case before anything is drawn, and what there is to say about one that can be made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from .....ground.problems import Problem, Severity
from .....ground.thin import print_caliper
from .....ground.told import print_range, rounded_down, rounded_up
from .....ground.units import MM_PER_INCH, print_mm
from .....paper.stock import Stock
from ...blocks.block_plan import BlockPlan
from ...blocks.stiffness import THICKEST_COVER, THICKEST_STRIP, too_thick_folds
from .keys import CaseKeys
from .sizes import Sizes

__all__ = ["folding_problems", "problems_of", "remarks_on"]

SQUARES_PER_BOARD = 3.0
"""A board is at most so many squares thick (common practice): beyond, it looks like a box around the pages."""

NARROWEST_BOARD = 1.0
"""A narrower board cannot be cut and covered, in mm."""

LEAST_TURN_IN, LEAST_FOLDED_IN = 3.0, 1.0
"""A narrower turn-in does not hold; on the inside of the board at least so much must lie, in mm (common practice)."""

LEAST_LAP = 0.5
"""A narrower lap shows the board when the sides are laid a little off, in mm (common practice)."""

THINNEST_BOARD = 0.012 * MM_PER_INCH
"""Binder's board has at least 0.012 in (M. Roberts & D. Etherington, *Bookbinding and the Conservation of Books*)."""

FREE_JOINT = 1.2
"""A joint of fewer boards hinders the board when it opens (common practice)."""


def problems_of(entry: CaseKeys, sizes: Sizes) -> Iterator[Problem]:
    """Everything that keeps the case from being made; fields count from the book."""
    if entry.binding != "full" and entry.spine_stock is None:
        what = f"a {entry.binding} binding has no stock for its spine"
        yield _problem("spine_stock", what, "add spine_stock: a name from stocks")
    yield from _board_problems(sizes)
    if entry.stiffener != "none" and sizes.spine < sizes.stiffener:
        stock = entry.stiffener_stock or entry.boards
        yield _problem(
            "stiffener_stock",
            f"the stiffener is {print_mm(sizes.spine, 2)} wide, but {stock} is {print_mm(sizes.stiffener, 2)} thick",
            "name a thinner card as stiffener_stock, or write stiffener: none",
        )
    if sizes.boards.width >= max(NARROWEST_BOARD, sizes.joint):
        yield from _turn_in_problems(sizes)
        if entry.binding != "full":
            yield from _piece_problems(entry, sizes)


def folding_problems(entry: CaseKeys, stocks: Mapping[str, Stock]) -> Iterator[Problem]:
    """Coverings and endpapers of stock that cannot be folded; a spine piece may be leather, which yields."""
    yield from too_thick_folds("a covering", stocks[entry.stock], THICKEST_COVER, ("cover", "stock"))
    if entry.endpapers:
        yield from too_thick_folds("an endpaper", stocks[entry.endpapers], THICKEST_STRIP, ("cover", "endpapers"))


def _problem(key: str, message: str, remedy: str, limit: str = "") -> Problem:
    return Problem(message, remedy, field=("cover", key), limit=limit)


def _board_problems(sizes: Sizes) -> Iterator[Problem]:
    most = rounded_down(min((sizes.page.width + sizes.square) / 2, sizes.page.width + sizes.square - NARROWEST_BOARD))
    if sizes.boards.width < max(NARROWEST_BOARD, sizes.joint):
        yield _problem(
            "joint",
            f"a joint of {print_mm(sizes.joint, 2)} is wider than the board, which keeps "
            f"{print_mm(max(0.0, sizes.boards.width), 2)}",
            f"write a joint of {print_mm(most)} or less, or a wider book",
            print_mm(most),
        )
    if sizes.board > SQUARES_PER_BOARD * sizes.square + 1e-9:
        thick, wide = rounded_down(SQUARES_PER_BOARD * sizes.square), rounded_up(sizes.board / SQUARES_PER_BOARD)
        thinner = f"choose boards of {print_mm(thick)} or less, or " if thick else ""
        yield _problem(
            "square",
            f"boards of {print_mm(sizes.board, 2)} are too thick for a square of {print_mm(sizes.square, 2)}: at most "
            f"{SQUARES_PER_BOARD:g} times the square (common practice)",
            f"{thinner}write square: {print_mm(wide)} or more",
            print_mm(thick),
        )


def _turn_in_problems(sizes: Sizes) -> Iterator[Problem]:
    """Turn-ins hold on the inside of the board, and neither reach across it nor meet."""
    around = sizes.turn_in - sizes.folded_in(max(sizes.side, sizes.back))
    least = rounded_up(max(LEAST_TURN_IN, around + LEAST_FOLDED_IN))
    most = rounded_down(min(sizes.boards.width, sizes.boards.height / 2) + around - 0.1)
    if least <= sizes.turn_in <= most:
        return
    if sizes.turn_in < least:
        why = f"does not hold around a board of {print_mm(sizes.board, 2)}"
    else:
        why = f"meets the other or crosses the board of {print_mm(sizes.boards.width, 1)} × " + print_mm(
            sizes.boards.height, 1
        )
    limit = print_range(least, most)
    remedy = f"write {limit}" if least <= most else "write a larger book, or thinner boards"
    yield _problem("turn_in", f"a turn-in of {print_mm(sizes.turn_in, 2)} {why}", remedy, limit)


def _piece_problems(entry: CaseKeys, sizes: Sizes) -> Iterator[Problem]:
    """Spine piece, sides and corners leave one another room, and lap enough to stick."""
    width, height = sizes.boards
    if sizes.lap < LEAST_LAP:
        least = print_mm(LEAST_LAP)
        what = f"sides that lap {print_mm(sizes.lap, 2)} over the spine piece leave a gap at the first slip"
        yield _problem("lap", what, f"write lap: {least} or more", least)
    if not sizes.lap < sizes.reach < width - sizes.lap:
        limit = print_range(sizes.lap + 0.1, width - sizes.lap - 0.1, 1)
        yield _problem(
            "spine_reach",
            f"the spine piece reaches {print_mm(sizes.reach, 2)} onto a board of {print_mm(width, 2)}, "
            f"and the sides lap {print_mm(sizes.lap, 2)} over it",
            f"write spine_reach: {limit}, or a smaller lap",
            limit,
        )
        return
    side = width - sizes.reach
    most = rounded_down(min(side, height / 2) - 1.5 * sizes.lap)
    if entry.binding == "half" and not sizes.lap <= sizes.corner <= most:
        limit = print_range(sizes.lap, most, 1)
        yield _problem(
            "corner",
            f"corners of {print_mm(sizes.corner, 2)} do not suit a side of {print_mm(side, 2)} × {print_mm(height, 2)}",
            f"write corner: {limit}" if sizes.lap <= most else "write binding: quarter, or a smaller spine_reach",
            limit,
        )


def remarks_on(entry: CaseKeys, sizes: Sizes, block: BlockPlan) -> Iterator[Problem]:
    """Notes on a case that can be made."""
    if block.pages and not block.pastedowns and entry.endpapers is None:
        yield _note(
            "endpapers",
            "the block has no blank ends to glue to the boards",
            "add endpapers: a name from stocks, or glue down its first and last leaf",
        )
    if sizes.joint < FREE_JOINT * sizes.board - 1e-9:
        yield _note(
            "joint",
            f"a joint of {print_mm(sizes.joint, 2)} is under {FREE_JOINT:g} boards (common practice): "
            "the boards open freely only under thin cloth",
            f"write joint: {FREE_JOINT:g} boards or more",
        )
    if sizes.board < THINNEST_BOARD - 1e-9:
        yield _note(
            "boards",
            f"{entry.boards} of {print_caliper(sizes.board)} is paper or card; binder's board has at least "
            f"{print_caliper(THINNEST_BOARD)}",
            "choose a thicker board if the covers shall stay flat",
        )


def _note(key: str, message: str, remedy: str) -> Problem:
    return Problem(message, remedy, Severity.NOTE, field=("cover", key))
