"""The jacket: a loose paper cover around a covered book, held by the flaps that are folded in at its fore-edges."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from pydantic import Field

from ....ground.geometry import Axis, Point, Rect
from ....ground.problems import Problem, ShelfFileError
from ....ground.told import print_range
from ....ground.units import print_mm
from ....paper.stock import Stock
from ....paper.thickness import Layer, Thickness
from ....sheets.flat import Flat, Fold, FoldKind, Panel, Role
from ....sheets.sheet_room import flat_too_large
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.measures import Margin
from ....shelf_file.fields.words import StockName
from ..blocks.stiffness import THICKEST_COVER, too_thick_folds
from ..designs.kinds import AnyDesign
from .bending import bend_allowance
from .cover import how_smaller
from .cover_plan import CoverPlan
from .wrap import spine_width

__all__ = ["Jacket", "JacketPlan", "flap_fold"]

BLEED = 1.0
"""How far print runs past the edges, in mm: a jacket is cut before it is folded."""

SMALLEST_FLAP = 3.0
"""A narrower flap does not hold the jacket, in mm (common practice)."""


class Jacket(Entry):
    """A loose jacket around the covered book."""

    stock: StockName = Field(description="name of the jacket paper, as under stocks")
    flap: Margin | None = Field(None, description="how far the flaps reach in from the fore-edges; half the side")
    design: AnyDesign | None = Field(None, description="what the jacket shows; the book's design, if not given")

    def plan(self, cover: CoverPlan, stocks: Mapping[str, Stock], *, right_to_left: bool) -> JacketPlan:
        """Work out the jacket of a covered book; fields of problems count from the book.

        Raises:
            ShelfFileError: a flap is too narrow or too wide, the paper cannot be folded, the flat exceeds its sheet.
        """
        stock = stocks[self.stock]
        flap = _flap(self, cover)
        caliper = stock.covered
        lines = _lines(cover, flap, caliper)
        flat = _flat(lines, cover.height, stock, right_to_left)
        field = ("jacket", "stock")
        less = how_smaller(cover.thickness.value, cover.depth)
        problems = too_thick_folds("a jacket", stock, THICKEST_COVER, field)
        if problems := (*problems, *flat_too_large("the flat jacket", flat, stock, field, less)):
            raise ShelfFileError(problems)
        return JacketPlan(
            spine=lines[3] - lines[2],
            flap=flap,
            thickness=cover.thickness.under(*_layers(stock)),
            height=cover.height,
            depth=cover.depth + cover.edge / 2 + 2 * caliper,
            flat=flat,
        )


@dataclass(frozen=True, slots=True)
class JacketPlan:
    """A jacket worked out.

    `spine` is the width of its spine on the flat, between fold centres; `flap` is how far each flap reaches in;
    `thickness`, `height` and `depth` are those of the book that wears it, all in mm.
    """

    spine: float
    flap: float
    thickness: Thickness
    height: float
    depth: float
    flat: Flat


def flap_fold(edge: float, caliper: float) -> float:
    """Paper that goes around the fore-edge of a side `edge` mm thick, in mm: π·(edge/2 + c/2).

    Around a side of 0.21 mm a jacket of 0.1 mm takes 0.487 mm:

    >>> round(flap_fold(0.21, 0.1), 3)
    0.487
    """
    return bend_allowance(180, edge / 2, caliper)


def _layers(stock: Stock) -> tuple[Layer, ...]:
    """Two layers outside the cover and two flaps inside it."""
    layers = [Layer("jacket and its flaps", 4, stock.caliper, stock.name)]
    if stock.film:
        layers.append(Layer("film over the jacket", 4, stock.film))
    return tuple(layers)


def _flap(entry: Jacket, cover: CoverPlan) -> float:
    """The flap as asked for, or half the side, but no less than holds."""
    most = cover.depth - cover.edge
    flap = max(SMALLEST_FLAP, cover.depth / 2) if entry.flap is None else entry.flap
    if SMALLEST_FLAP <= flap <= most + 1e-9:
        return flap
    if most < SMALLEST_FLAP:
        message = f"a flap needs {print_mm(SMALLEST_FLAP)} to hold, but there are {print_mm(most, 2)} behind the side"
        raise ShelfFileError((Problem(message, "leave the jacket out, or write a wider book", field=("jacket",)),))
    if flap < SMALLEST_FLAP:
        message = f"a flap of {print_mm(flap)} does not hold the jacket"
    else:
        message = f"a flap of {print_mm(flap)} is wider than the side it lies behind, which is {print_mm(most, 2)}"
    # rounded down to a tenth, so that the widest flap offered is one that is taken
    limit = print_range(SMALLEST_FLAP, most, 1)
    raise ShelfFileError((Problem(message, f"write {limit}", field=("jacket", "flap"), limit=limit),))


def _lines(cover: CoverPlan, flap: float, caliper: float) -> tuple[float, ...]:
    """Both edges and the four folds between them, from the left, in mm."""
    half_turn = flap_fold(cover.edge, caliper) / 2
    side = cover.depth + bend_allowance(90, 0, caliper) / 2 + half_turn
    widths = (flap + half_turn, side, spine_width(cover.thickness.value, caliper), side, flap + half_turn)
    lines = [0.0]
    for width in widths:
        lines.append(lines[-1] + width)
    return tuple(lines)


def _flat(lines: tuple[float, ...], height: float, stock: Stock, right_to_left: bool) -> Flat:
    """Seen from the printed face: flap, back, spine, front, flap; front and back change places if mirrored."""
    left, right = (Role.FRONT, Role.BACK) if right_to_left else (Role.BACK, Role.FRONT)
    roles = (Role.FLAP, left, Role.SPINE, right, Role.FLAP)
    return Flat(
        kind="jacket",
        name="jacket",
        stock=stock.name,
        outline=Rect(0, 0, lines[-1], height).corners,
        folds=tuple(Fold(FoldKind.MOUNTAIN, Point(x, 0), Point(x, height)) for x in lines[1:-1]),
        panels=tuple(
            Panel(role, Rect(start, 0, end - start, height))
            for role, start, end in zip(roles, lines[:-1], lines[1:], strict=True)
        ),
        grain=Axis.Y,
        bleed=BLEED,
    )
