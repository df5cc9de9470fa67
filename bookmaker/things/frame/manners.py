"""How rails are sawn to mitres, wrapped and glued square, drawn for all frames that are made so."""

from __future__ import annotations

from collections.abc import Sequence

from ...ground.art import Filled, Group, Stroked
from ...ground.drawing import WHITE, Art, Colour, Pen
from ...ground.geometry import Point, Rect, Size, polygon
from ..making import Manner
from ..views.ink import EDGE, PAPER, box, chain, line, word
from ..views.signs import HIDDEN, arrow, bent_arrow, pointed, ring
from ..views.stages import in_cells, staged

__all__ = ["MITRED", "SQUARE_HELD", "WRAPPED", "held_square", "mitred_rails", "wrapped_rail"]

MITRED, SQUARE_HELD, WRAPPED = "rails sawn to mitres", "a frame held square", "paper round a rail"

STRIP = Size(72.0, 16.0)
"""The room of a strip as it is drawn, in mm."""

FACE = 6.0
"""How wide a strip is drawn."""


def mitred_rails(room: float, *, rebate: bool) -> Manner:
    """Two rails one after the other from one strip, and how four of them meet."""
    behind = " The step behind it stays on the same, the short side." if rebate else ""
    caption = (
        "Rails sawn to mitres, the strip seen from its face. a: both ends of a rail slant towards each other; what "
        f"lies between two rails goes.{behind} Lengths are measured along the long side. b: the four rails meet, long "
        "sides outside."
    )
    cells = (("a", _strip()), ("b", _four()))
    return Manner(MITRED, in_cells(cells, min(room, STRIP.width), caption, Size(STRIP.width, 27.0)))


def _shape(points: Sequence[tuple[float, float]], ground: Colour = PAPER) -> Art:
    outline = polygon([Point(*point) for point in points])
    return Group((Filled(outline, ground), Stroked(outline, EDGE)))


def _rail(start: float, end: float, y: float) -> Art:
    return _shape([(start, y + FACE), (end, y + FACE), (end - FACE, y), (start + FACE, y)])


def _strip() -> Art:
    y = 8.0
    waste = [Point(6.0, y), Point(68.0, y), Point(68.0, y + FACE), Point(6.0, y + FACE)]
    rest = Group(tuple(line(a, b, HIDDEN) for a, b in ((waste[0], waste[1]), (waste[2], waste[3]))))
    rails = (_rail(9.0, 36.0, y), _rail(38.0, 65.0, y))
    length = (arrow(Point(20.0, y + 9.0), Point(9.0, y + 9.0)), arrow(Point(25.0, y + 9.0), Point(36.0, y + 9.0)))
    names = (word("length", Point(22.5, y + 11.3), 2.1), pointed("goes", Point(37.0, 3.5), Point(37.0, y + 1.5)))
    return Group((rest, *rails, *length, *names))


def _four() -> Art:
    outer = Rect(20.0, 2.0, 32.0, 22.0)
    inner = outer.grown(-FACE + 1.5, -FACE + 1.5, -FACE + 1.5, -FACE + 1.5)
    joints = (line(a, b) for a, b in zip(outer.corners, inner.corners, strict=True))
    return Group((box(outer, PAPER), box(inner, WHITE), *joints))


def held_square(room: float) -> Manner:
    """Against a square of card; both diagonals compared."""
    caption = (
        "A frame held square while its glue dries. a: two rails lie against the square of card, which is pinned to the "
        "board. b: both diagonals are laid off on one strip of paper: they are alike."
    )
    return Manner(SQUARE_HELD, staged((_against(), _diagonals()), room, caption))


def _frame(outer: Rect) -> Art:
    return Group((box(outer, PAPER), box(outer.grown(-2.5, -2.5, -2.5, -2.5), WHITE)))


def _against() -> Art:
    card = _shape([(5.0, 1.5), (31.0, 1.5), (31.0, 5.0), (9.0, 5.0), (9.0, 22.5), (5.0, 22.5)], WHITE)
    pins = tuple(
        Filled(polygon(_round(at)), EDGE.colour) for at in (Point(7.0, 3.2), Point(28.0, 3.2), Point(7.0, 20.0))
    )
    return Group(
        (_frame(Rect(9.4, 5.4, 18.0, 14.0)), card, *pins, pointed("square", Point(24.0, 24.2), Point(7.4, 17.0)))
    )


def _round(at: Point) -> Sequence[Point]:
    return [at.plus(*step) for step in ((0.6, 0.0), (0.3, 0.5), (-0.3, 0.5), (-0.6, 0.0), (-0.3, -0.5), (0.3, -0.5))]


def _diagonals() -> Art:
    outer = Rect(8.0, 4.0, 20.0, 16.0)
    low, right, top, left = outer.corners
    return Group((_frame(outer), line(low, top, HIDDEN), line(right, left, HIDDEN)))


CORE = Rect(11.0, 7.0, 10.0, 6.0)
"""A rail as it is drawn cut through, its face down, in mm."""

PRINTED = Pen(0.4)


def wrapped_rail(room: float) -> Manner:
    """The paper under the core, and round it."""
    caption = (
        "Paper round a rail, cut through, its face down. a: the core lies on the back of the paper, between the two "
        "scores; the sides go up in the order of the numbers. b: the side at the picture (1) ends at the back, the "
        "outer side (2) goes on round it as a flap (3)."
    )
    return Manner(WRAPPED, staged((_laid_on_paper(), _wrapped()), room, caption))


def _core() -> Art:
    return Group((box(CORE, PAPER), word("core", CORE.centre, 2.1)))


def _laid_on_paper() -> Art:
    y, side = CORE.y - 0.4, CORE.height
    paper = line(Point(CORE.x - side, y), Point(CORE.right + 2 * side, y), PRINTED)
    scores = (line(Point(x, y - 0.9), Point(x, y + 0.9), EDGE) for x in (CORE.x, CORE.right, CORE.right + side))
    ways = (
        bent_arrow(Point(CORE.x - 4.5, y + 0.9), Point(CORE.x - 0.7, CORE.top + 0.6), 1.5),
        bent_arrow(Point(CORE.right + 4.5, y + 0.9), Point(CORE.right + 0.7, CORE.top + 0.6), -1.5),
    )
    below = y - 3.0
    rings = (
        ring("1", Point(CORE.x - side / 2, below)),
        ring("2", Point(CORE.right + side / 2, below)),
        ring("3", Point(CORE.right + 1.5 * side, below)),
    )
    return Group((_core(), paper, *scores, *ways, *rings, word("face", Point(CORE.centre.x, below), 2.1)))


def _wrapped() -> Art:
    low, top, left, right = CORE.y - 0.4, CORE.top + 0.4, CORE.x - 0.4, CORE.right + 0.4
    around = chain(
        [Point(left, CORE.top), Point(left, low), Point(right, low), Point(right, top), Point(left + 4.0, top)], PRINTED
    )
    rings = (ring("1", Point(left - 2.4, CORE.centre.y)), ring("2", Point(right + 2.4, CORE.centre.y)))
    flap = ring("3", Point(right - 3.0, top + 2.4))
    names = (word("picture", Point(left - 4.2, low - 1.0), 2.1), word("face", Point(CORE.centre.x, low - 2.6), 2.1))
    return Group((_core(), around, *rings, flap, *names))
