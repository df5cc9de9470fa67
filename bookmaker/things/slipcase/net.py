"""The net of a slipcase: back, two sides, top, bottom and glue tabs in one piece, open at the front.

Printed face up, the back lies in the middle and the box is seen from behind: the side on the left of the net
is the right side of the box as its spines are seen. All folds are mountains.

The sides carry tabs at their upper and lower edges; these are folded in, and top and bottom are glued over
them. So the back is taller than the room inside by two laps, a lap being a tab and its film of glue, and top
and bottom are wider by the thickness of both sides, whose edges they cover. The sides reach up to the top
wherever no tab is folded from them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from math import acos, ceil, cos, pi, sin
from typing import NamedTuple

from ...ground.geometry import Axis, Point, Rect
from ...paper.stock import Stock
from ...sheets.flat import Flat, Fold, FoldKind, Panel, Role
from ..book.covers.bending import bend_allowance

__all__ = ["TAB_TAPER", "BoxSize", "Tabs", "lap_of", "outside_of", "slipcase_net", "tab_length", "tabs_of"]

BLEED = 1.0
"""How far print runs past the edges of the faces, in mm: the net is cut before it is folded."""

TAB_INSET = 1.0
"""Tabs end this far, and one caliper more, from the back and from the opening, in mm."""

TAB_TAPER = 0.3
"""A tab narrows on each side by this share of its width."""

USUAL_TAB = 5.0
"""Width of the tabs in mm, if the box is wide enough for two beside each other."""

SMALLEST_TAB = 3.0
"""A narrower tab does not hold, in mm (common practice)."""

CURVE_ERROR = 0.005
"""The chords of a thumb cut keep this near to its arc, in mm."""


class BoxSize(NamedTuple):
    """Sides of a box in mm, as it stands: width along the shelf, height, depth from the opening to the back."""

    width: float
    height: float
    depth: float


class Tabs(NamedTuple):
    """Width of the tabs in mm, and whether those of the two sides lie behind one another instead of face to face."""

    width: float
    staggered: bool


def lap_of(stock: Stock) -> float:
    """What a tab and its film of glue take under the panel that laps it, in mm."""
    return stock.covered + stock.glue


def outside_of(inside: BoxSize, stock: Stock) -> BoxSize:
    """The box with its walls: two sides; top and bottom, each over a tab; one back.

    A room of 30 × 25 × 17 mm in card of 0.3 mm with films of glue of 0.03 mm stands 30.6 × 26.26 × 17.3 mm.
    """
    wall = stock.covered
    return BoxSize(
        inside.width + 2 * wall,
        inside.height + 2 * (wall + lap_of(stock)),
        inside.depth + wall,
    )


def tabs_of(inside: BoxSize, wanted: float | None) -> Tabs:
    """Tabs as wide as wanted, or as usual if the box allows; staggered where two do not fit side by side."""
    width = min(USUAL_TAB, max(SMALLEST_TAB, inside.width / 2)) if wanted is None else wanted
    return Tabs(width, staggered=2 * width > inside.width + 1e-9)


def tab_length(inside: BoxSize, stock: Stock, tabs: Tabs) -> float:
    """Length of a tab at its narrow end, in mm."""
    return _tab_span(inside, stock, tabs, front=False).length - 2 * TAB_TAPER * tabs.width


class _Span(NamedTuple):
    """A stretch of a side's depth, measured from the back."""

    start: float
    end: float

    @property
    def length(self) -> float:
        return self.end - self.start


def _tab_span(inside: BoxSize, stock: Stock, tabs: Tabs, *, front: bool) -> _Span:
    """Where a tab is folded from a side: along its depth, or along the half of it at the front or at the back."""
    inset = TAB_INSET + stock.covered
    start, end, middle = inset, inside.depth - inset, inside.depth / 2
    if not tabs.staggered:
        return _Span(start, end)
    return _Span(middle, end) if front else _Span(start, middle)


@dataclass(frozen=True, slots=True)
class _Net:
    """Lines of the net. x counts from the middle of the back, y from its middle, so that all is symmetrical."""

    inside: BoxSize
    stock: Stock
    tabs: Tabs
    thumb: float

    @property
    def half_fold(self) -> float:
        """What a fold takes of the panel on either side of it."""
        return bend_allowance(90, 0, self.stock.covered) / 2

    @property
    def back_edge(self) -> float:
        """From the middle to the fold between back and side."""
        return self.inside.width / 2 + self.half_fold

    @property
    def opening(self) -> float:
        """From the middle to the front edge of a side."""
        return self.back_edge + self.half_fold + self.inside.depth

    @property
    def side_top(self) -> float:
        """From the middle to the free edge of a side, which is where the back begins to bend into the top."""
        return self.inside.height / 2 + lap_of(self.stock)

    @property
    def tab_fold(self) -> float:
        """From the middle to the fold of a tab."""
        return self.inside.height / 2 + self.half_fold

    @property
    def tab_end(self) -> float:
        """From the middle to the tip of a tab."""
        return self.tab_fold + self.half_fold + self.tabs.width

    @property
    def top_fold(self) -> float:
        """From the middle to the fold between back and top."""
        return self.side_top + self.half_fold

    @property
    def top_end(self) -> float:
        """From the middle to the front edge of the top."""
        return self.top_fold + self.half_fold + self.inside.depth

    @property
    def top_edge(self) -> float:
        """From the middle to the edge of the top, which covers the edges of the sides."""
        return self.inside.width / 2 + self.stock.covered

    def along(self, depth: float) -> float:
        """From the middle to what lies `depth` mm in front of the back on a side."""
        return self.back_edge + self.half_fold + depth


def slipcase_net(name: str, inside: BoxSize, stock: Stock, tabs: Tabs, thumb: float) -> Flat:
    """The net around a room; `thumb` is the radius of the half-round cuts at the opening, 0 for none."""
    net = _Net(inside, stock, tabs, thumb)
    move = _from_corner(net)
    return Flat(
        kind="slipcase",
        name=name,
        stock=stock.name,
        outline=tuple(move(point) for point in _outline(net)),
        folds=tuple(Fold(FoldKind.MOUNTAIN, move(start), move(end)) for start, end in _folds(net)),
        panels=tuple(
            Panel(role, Rect.around([move(Point(left, bottom)), move(Point(right, top))]))
            for role, left, bottom, right, top in _panels(net)
        ),
        grain=Axis.Y,
        bleed=BLEED,
    )


def _from_corner(net: _Net) -> Callable[[Point], Point]:
    """From the middle of the back to the lower left corner of the net."""
    return lambda point: point.plus(net.opening, net.top_end)


def _outline(net: _Net) -> Iterator[Point]:
    """Counter-clockwise from the front edge of the bottom, on its left."""
    yield from _right_half(net, front_tab=True)
    yield from (Point(-point.x, point.y) for point in reversed(_right_half(net, front_tab=False)))


def _right_half(net: _Net, *, front_tab: bool) -> list[Point]:
    """From the bottom, around the opening of the side on the right of the net, to the top."""
    upper = _top_right(net, front_tab=front_tab)
    lower = [Point(point.x, -point.y) for point in reversed(upper)]
    return [*lower, *_thumb_cut(net), *upper]


def _top_right(net: _Net, *, front_tab: bool) -> list[Point]:
    """From the opening of the right side along its tab to the front edge of the top."""
    start, end = _tab_span(net.inside, net.stock, net.tabs, front=front_tab)
    near, far = net.along(start), net.along(end)
    taper = TAB_TAPER * net.tabs.width
    return [
        Point(net.opening, net.side_top),
        Point(far, net.side_top),
        Point(far, net.tab_fold),
        Point(far - taper, net.tab_end),
        Point(near + taper, net.tab_end),
        Point(near, net.tab_fold),
        Point(near, net.side_top),
        Point(net.back_edge, net.side_top),
        Point(net.top_edge, net.side_top + 2 * net.half_fold),
        Point(net.top_edge, net.top_end),
    ]


def _thumb_cut(net: _Net) -> list[Point]:
    """A half circle into the front edge of the right side, from below, as chords."""
    radius = net.thumb
    if not radius:
        return []
    chords = ceil(pi / (2 * acos(1 - min(CURVE_ERROR / radius, 1.0))))
    turns = [pi * step / chords for step in range(chords + 1)]
    return [Point(net.opening - radius * sin(turn), -radius * cos(turn)) for turn in turns]


def _folds(net: _Net) -> Iterator[tuple[Point, Point]]:
    for x in (-net.back_edge, net.back_edge):
        yield Point(x, -net.side_top), Point(x, net.side_top)
    for y in (-net.top_fold, net.top_fold):
        yield Point(-net.back_edge, y), Point(net.back_edge, y)
    for way, start, end in _tab_spans(net):
        for y in (-net.tab_fold, net.tab_fold):
            low, high = sorted((way * net.along(start), way * net.along(end)))
            yield Point(low, y), Point(high, y)


def _tab_spans(net: _Net) -> Iterator[tuple[int, float, float]]:
    for way, front in ((-1, False), (1, True)):
        yield way, *_tab_span(net.inside, net.stock, net.tabs, front=front)


def _panels(net: _Net) -> Iterator[tuple[Role, float, float, float, float]]:
    yield Role.BACK, -net.back_edge, -net.top_fold, net.back_edge, net.top_fold
    yield Role.RIGHT, -net.opening, -net.tab_fold, -net.back_edge, net.tab_fold
    yield Role.LEFT, net.back_edge, -net.tab_fold, net.opening, net.tab_fold
    yield Role.TOP, -net.top_edge, net.top_fold, net.top_edge, net.top_end
    yield Role.BOTTOM, -net.top_edge, -net.top_end, net.top_edge, -net.top_fold
    for way, start, end in _tab_spans(net):
        low, high = sorted((way * net.along(start), way * net.along(end)))
        yield Role.TAB, low, net.tab_fold, high, net.tab_end
        yield Role.TAB, low, -net.tab_end, high, -net.tab_fold
