"""The wrap: a cover of a single piece of paper, which bends at two scores where the spine meets front and back.

Two styles. *Flush*: no turn-in; the print runs past every edge and the cover is trimmed after gluing.
*Turned in*: the paper is folded over the fore-edges, and over head and tail if asked, and glued inside; at
head and tail the turn-in is notched at the spine, and corners are cut at 45°.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import sqrt
from typing import TYPE_CHECKING

from ....ground.geometry import Axis, Point, Rect, Size
from ....ground.problems import Problem, ShelfFileError
from ....ground.told import print_range
from ....ground.units import print_mm
from ....paper.glue import GLUES, glue_films
from ....paper.stock import Stock
from ....paper.thickness import Layer
from ....sheets.flat import Flat, Fold, FoldKind, Panel, Role
from ....sheets.sheet_room import flat_too_large
from ..blocks.block_plan import BlockPlan
from ..blocks.stiffness import THICKEST_COVER, too_thick_folds
from .bending import bend_allowance
from .cover import how_smaller
from .cover_layers import sheets_of
from .cover_plan import CoverPlan
from .wrap_keys import WrapKeys

if TYPE_CHECKING:
    from ...making import Making
    from ..steps.job import BookJob

__all__ = ["Wrap", "side_width", "spine_width"]

FLUSH_BLEED = 2.0
"""How far print runs past an edge that is trimmed after gluing, in mm."""

TURNED_BLEED = 1.0
"""How far print runs past the edge of a turn-in, in mm: it will not show."""

SMALLEST_TURN_IN = 2.0
"""A narrower turn-in does not stay folded, in mm (common practice)."""

CORNER = 1.5
"""Corners of a turned-in cover are cut this many calipers from the corner (common practice)."""


class Wrap(WrapKeys):
    """A one-piece paper cover."""

    def plan(self, page: Size, block: BlockPlan, stocks: Mapping[str, Stock], *, right_to_left: bool) -> CoverPlan:
        """Work out the cover.

        Raises:
            ShelfFileError: a turn-in has no room, the card cannot be folded, or the flat is larger than the sheet.
        """
        _check_turn_ins(self, page)
        stock = stocks[self.stock]
        caliper = stock.covered
        inner = block.thickness.under(*_glue_on_a_block(block))
        lines = _lines(self, page, inner.value, caliper)
        flat = _flat(self, lines, stock, right_to_left)
        field = ("cover", "stock")
        less = how_smaller(block.thickness.value, page.width)
        problems = too_thick_folds("a wrap", stock, THICKEST_COVER, field)
        if problems := (*problems, *flat_too_large("the flat cover", flat, stock, field, less)):
            raise ShelfFileError(problems)
        turn_ins = tuple(_turn_ins(stock)) if self.turn_in > 0 or self.head_turn_in > 0 else ()
        return CoverPlan(
            kind=self.kind,
            spine=lines.spine_right - lines.spine_left,
            thickness=inner.under(*sheets_of("cover paper", stock), *turn_ins),
            height=page.height + 2 * self.square + (2 * caliper if self.head_turn_in else 0.0),
            depth=page.width + self.square + caliper * (2 if self.turn_in else 1),
            flats=(flat,),
            edge=caliper * (2 if turn_ins else 1),
            turned_in=sum(layer.total for layer in turn_ins),
        )

    def making(self, job: BookJob) -> Making:
        """The cover scored, cut, turned in, and glued around the block."""
        from ..steps.wrap import wrap_making

        return wrap_making(job, self)


def spine_width(block_thickness: float, caliper: float) -> float:
    """Spine between fold centres, in mm: T + π/4·c.

    >>> round(spine_width(4.14, 0.21), 3)
    4.305
    """
    return block_thickness + bend_allowance(90, 0, caliper)


def side_width(page_width: float, square: float, caliper: float, *, turned_in: bool) -> float:
    """One side of the cover between fold centres, or from fold centre to edge, in mm.

    W + q + π/8·c, and π/4·c more when a turn-in follows.

    >>> round(side_width(15, 0, 0.21, turned_in=False), 4)
    15.0825
    """
    half_spine_fold = bend_allowance(90, 0, caliper) / 2
    half_turn_in_fold = bend_allowance(180, 0, caliper) / 2 if turned_in else 0.0
    return page_width + square + half_spine_fold + half_turn_in_fold


def _glue_on_a_block(block: BlockPlan) -> Iterator[Layer]:
    """PVA on both faces of a block without pages; one with pages is glued along its spine, or by its own ends."""
    if not block.pages:
        yield glue_films("glue films on the faces of the block", 2, GLUES["pva"])


def _turn_ins(stock: Stock) -> Iterator[Layer]:
    """What is thicker along the edges: T + 2c, + c and a film of glue for each turn-in.

    A gauge shows it at the edge only, but there the book touches its neighbours.
    """
    yield from sheets_of("turn-ins of the cover", stock)
    yield glue_films("glue films under the turn-ins", 2, stock.glue)


def _check_turn_ins(entry: WrapKeys, page: Size) -> None:
    """Each turn-in has room to lie flat: two thirds of the page's width, and half the other way."""
    most_at_fore_edge = min(page.width * 2 / 3, page.height / 2 if entry.head_turn_in else page.width)
    most_at_head = min(page.width * 2 / 3, page.height / 2)
    problems = []
    for key, turn_in, most in (
        ("turn_in", entry.turn_in, most_at_fore_edge),
        ("head_turn_in", entry.head_turn_in, most_at_head),
    ):
        if turn_in and not SMALLEST_TURN_IN <= turn_in <= most + 1e-9:
            problems.append(_turn_in_problem(key, turn_in, most, page))
    if problems:
        raise ShelfFileError(problems)


def _turn_in_problem(key: str, turn_in: float, most: float, page: Size) -> Problem:
    limit = print_range(SMALLEST_TURN_IN, most, 1)
    return Problem(
        f"a turn-in of {print_mm(turn_in)} does not lie flat in a page of "
        f"{print_mm(page.width)} × {print_mm(page.height)}",
        f"write {limit}, or {print_mm(0)} for none",
        field=("cover", key),
        limit=limit,
    )


@dataclass(frozen=True, slots=True)
class _Lines:
    """Where the edges and folds of the flat lie: x from the left edge, y from the tail edge, in mm."""

    left_side: float
    spine_left: float
    spine_right: float
    right_side: float
    width: float
    tail: float
    head: float
    height: float
    corner: float


def _lines(entry: WrapKeys, page: Size, thickness: float, caliper: float) -> _Lines:
    side = side_width(page.width, entry.square, caliper, turned_in=entry.turn_in > 0)
    spine = spine_width(thickness, caliper)
    fold_at_head = bend_allowance(180, 0, caliper) / 2 if entry.head_turn_in else 0.0
    shown = page.height + 2 * entry.square + 2 * fold_at_head
    spine_left = entry.turn_in + side
    return _Lines(
        left_side=entry.turn_in,
        spine_left=spine_left,
        spine_right=spine_left + spine,
        right_side=spine_left + spine + side,
        width=2 * spine_left + spine,
        tail=entry.head_turn_in,
        head=entry.head_turn_in + shown,
        height=2 * entry.head_turn_in + shown,
        corner=CORNER * caliper * sqrt(2) if entry.turn_in and entry.head_turn_in else 0.0,
    )


def _flat(entry: WrapKeys, lines: _Lines, stock: Stock, right_to_left: bool) -> Flat:
    turned = entry.turn_in > 0 or entry.head_turn_in > 0
    return Flat(
        kind="wrap",
        name="cover",
        stock=stock.name,
        outline=_outline(lines),
        folds=_folds(lines),
        panels=_panels(lines, right_to_left),
        grain=Axis.Y,
        bleed=TURNED_BLEED if turned else FLUSH_BLEED,
    )


def _outline(at: _Lines) -> tuple[Point, ...]:
    """Counter-clockwise from the tail of the left side; a flat without turn-ins is a plain rectangle."""
    if not at.tail:
        return Rect(0, 0, at.width, at.height).corners
    lower = [
        *_corner(at, at.left_side, -1)[::-1],
        *_notch(at),
        *_corner(at, at.right_side, +1),
    ]
    upper = [Point(at.width - x, at.height - y) for x, y in lower]
    return (*lower, *upper)


def _corner(at: _Lines, side: float, outward: int) -> list[Point]:
    """The cut at a lower corner, from the tail edge to the fore-edge turn-in.

    Without a fore-edge turn-in the tail turn-in tapers a little, so that it cannot show beyond the edge.
    """
    if not at.left_side:
        return [Point(side - outward * min(0.5, at.tail), 0), Point(side, at.tail)]
    return [
        Point(side + outward * (at.corner - at.tail), 0),
        Point(side + outward * at.left_side, at.tail - at.corner + at.left_side),
    ]


def _notch(at: _Lines) -> list[Point]:
    """The turn-in is cut away across the spine, so that the spine folds freely."""
    return [
        Point(at.spine_left, 0),
        Point(at.spine_left, at.tail),
        Point(at.spine_right, at.tail),
        Point(at.spine_right, 0),
    ]


def _folds(at: _Lines) -> tuple[Fold, ...]:
    """All are mountains: the printed face is the outside of the book."""

    def upright(x: float) -> Fold:
        return Fold(FoldKind.MOUNTAIN, Point(x, at.tail), Point(x, at.head))

    def level(y: float) -> list[Fold]:
        sides = ((at.left_side, at.spine_left), (at.spine_right, at.right_side))
        return [Fold(FoldKind.MOUNTAIN, Point(left, y), Point(right, y)) for left, right in sides]

    folds = [upright(at.spine_left), upright(at.spine_right)]
    if at.left_side:
        folds += [upright(at.left_side), upright(at.right_side)]
    if at.tail:
        folds += level(at.tail) + level(at.head)
    return tuple(folds)


def _panels(at: _Lines, right_to_left: bool) -> tuple[Panel, ...]:
    """Seen from the printed face: back, spine, front from the left, or mirrored for right-to-left books."""
    left, right = (Role.FRONT, Role.BACK) if right_to_left else (Role.BACK, Role.FRONT)
    high = at.head - at.tail

    def panel(role: Role, from_x: float, to_x: float, y: float = at.tail, height: float = high) -> Panel:
        return Panel(role, Rect(from_x, y, to_x - from_x, height))

    panels = [
        panel(left, at.left_side, at.spine_left),
        panel(Role.SPINE, at.spine_left, at.spine_right),
        panel(right, at.spine_right, at.right_side),
    ]
    if at.left_side:
        panels += [panel(Role.TURN_IN, 0, at.left_side), panel(Role.TURN_IN, at.right_side, at.width)]
    if at.tail:
        for from_x, to_x in ((at.left_side, at.spine_left), (at.spine_right, at.right_side)):
            panels += [
                panel(Role.TURN_IN, from_x, to_x, 0, at.tail),
                panel(Role.TURN_IN, from_x, to_x, at.head, at.height - at.head),
            ]
    return tuple(panels)
