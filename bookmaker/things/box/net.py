"""Nets of boxes: panels that hang on one another by creases, each bent in its step of the work.

Panels are reckoned in the middle of the card, where a crease is a line, and each is half a caliper of card to either
side of that. From crease to crease a panel is therefore as long as the room inside and one caliper; what goes round
another panel has its crease one caliper and the play further out. A net lies with its print up, its first panel in
its place; bent away from the print, the others go down.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise
from math import dist, radians, tan
from typing import NamedTuple

from ...ground.geometry import Axis, Point, Rect
from ...ground.outlines import Outline
from ...paper.stock import Stock
from ...sheets.flat import Flat, Fold, FoldKind, Panel, Role

__all__ = ["BLEED", "Card", "Hinge", "Net", "NetPanel", "Room", "Shown", "rect_panel", "tab_beside"]

BLEED = 1.0
"""How far print runs past the edges, in mm: the net is cut before it is folded."""

TAPER_DEG = 12.0
"""Ends of glue flaps slant by so much (common practice: 10 to 15 degrees)."""

FINE = 6
"""Points that agree in so many decimals of a millimetre are one."""

NARROWEST_STRIP = 1.0
"""A strip between two creases that is narrower, in mm, is scored once, along its middle, and rolls round."""


class Shown(StrEnum):
    """How a net is looked at while it is folded: its print up, set on its first panel, or stood upright on its foot."""

    PRINT_UP = "print up"
    ON_FLOOR = "on its floor"
    UPRIGHT = "upright"


class Room(NamedTuple):
    """The room inside a box in mm: along its front, from front to back, and from its floor to its lid."""

    length: float
    width: float
    height: float


class Card(NamedTuple):
    """What a box is made of, in mm: its caliper, films and all, and the film of glue between two layers of it."""

    caliper: float
    glue: float

    @classmethod
    def of(cls, stock: Stock) -> Card:
        """A stock as a box knows it: films over the print go round every fold with the card."""
        return cls(stock.covered, stock.glue)

    @property
    def layer(self) -> float:
        """What a glued flap adds: itself and its film of glue."""
        return self.caliper + self.glue


@dataclass(frozen=True, slots=True)
class Hinge:
    """The crease on which a panel hangs on another, and how far it is bent in which step of the work.

    Degrees above 0 bend away from the print. `eased` is a later step in which it goes to another angle, as a tuck
    that was folded right over does while it is led in.
    """

    to: str
    start: Point
    end: Point
    step: int
    angle: float = 90.0
    eased: tuple[int, float] | None = None


@dataclass(frozen=True, slots=True)
class NetPanel:
    """A panel of a net: convex, its corners counter-clockwise.

    `quarters` is how its head is turned counter-clockwise from the top of the net, when the box stands. Of a wall
    under a lid so many mm at its head are `covered` when it is closed; a `plain` panel shows the ground alone.
    """

    name: str
    role: Role
    outline: Outline
    hinge: Hinge | None = None
    quarters: int = 0
    covered: float = 0.0
    plain: bool = False

    @property
    def rect(self) -> Rect:
        """The rectangle around it."""
        return Rect.around(self.outline)


@dataclass(frozen=True, slots=True)
class Net:
    """One piece of card to cut, score and fold. `glued` names each flap and the panel on whose inside it is glued."""

    name: str
    panels: tuple[NetPanel, ...]
    glued: tuple[tuple[str, str], ...] = ()
    grain: Axis | None = None
    shown: Shown = Shown.ON_FLOOR

    @property
    def by_name(self) -> Mapping[str, NetPanel]:
        """The panels by their names."""
        return {panel.name: panel for panel in self.panels}

    def under(self, lid: float) -> Net:
        """The net with a lid over its walls that reaches so many mm down."""
        walls = (Role.FRONT, Role.BACK, Role.LEFT, Role.RIGHT)
        panels = (replace(panel, covered=lid) if panel.role in walls else panel for panel in self.panels)
        return replace(self, panels=tuple(panels))

    @property
    def steps(self) -> tuple[int, ...]:
        """The steps of its folding."""
        hinges = [panel.hinge for panel in self.panels if panel.hinge]
        return tuple(sorted({hinge.step for hinge in hinges} | {hinge.eased[0] for hinge in hinges if hinge.eased}))

    @property
    def creases(self) -> tuple[tuple[int, tuple[NetPanel, ...]], ...]:
        """The steps of its folding that the hand makes, each with the panels it bends: a narrow strip has one crease.

        Its two bends are made in the step of what lies beyond it.
        """
        bent = {
            step: tuple(one for one in self.panels if one.hinge and one.hinge.step == step and not _is_narrow(one))
            for step in self.steps
        }
        return tuple((step, panels) for step, panels in bent.items() if panels)

    def turns_over(self, panel: NetPanel) -> bool:
        """Whether a panel is folded right over, onto what it hangs on."""
        if panel.hinge is None:
            return False
        strip = self.by_name[panel.hinge.to]
        before = strip.hinge.angle if strip.hinge and _is_narrow(strip) else 0.0
        return panel.hinge.angle + before > 90

    @property
    def corner(self) -> Point:
        """Where the lower left corner of the flat lies on the net."""
        box = Rect.around(point for panel in self.panels for point in panel.outline)
        return Point(box.x, box.y)

    def flat(self, kind: str, stock: str) -> Flat:
        """The net as it is printed, scored and cut."""
        x, y = self.corner

        def moved(point: Point) -> Point:
            return point.plus(-x, -y)

        return Flat(
            kind=kind,
            name=self.name,
            stock=stock,
            outline=tuple(map(moved, _around_all([panel.outline for panel in self.panels]))),
            folds=tuple(Fold(fold.kind, moved(fold.start), moved(fold.end)) for fold in self._folds()),
            panels=tuple(Panel(panel.role, panel.rect.moved(-x, -y)) for panel in self.panels),
            grain=self.grain,
            bleed=BLEED,
        )

    def _folds(self) -> Iterator[Fold]:
        strips = {panel.name for panel in self.panels if _is_narrow(panel)}
        for panel in self.panels:
            hinge = panel.hinge
            if hinge is None or panel.name in strips:
                continue
            kind = FoldKind.MOUNTAIN if hinge.angle > 0 else FoldKind.VALLEY
            start, end = hinge.start, hinge.end
            if hinge.to in strips and (other := self.by_name[hinge.to].hinge):
                start, end = _halfway(start, _nearer(other, start)), _halfway(end, _nearer(other, end))
            yield Fold(kind, start, end)


def rect_panel(name: str, role: Role, rect: Rect, hinge: Hinge | None = None, quarters: int = 0) -> NetPanel:
    """A panel that is a rectangle."""
    return NetPanel(name, role, rect.corners, hinge, quarters)


def tab_beside(name: str, wall: str, start: Point, end: Point, depth: float, step: int) -> NetPanel:
    """A tapered glue flap on an edge of a wall, which runs with the wall on its left: `depth` mm to the right of it."""
    length = dist(start, end)
    along = Point((end.x - start.x) / length, (end.y - start.y) / length)
    out = Point(along.y * depth, -along.x * depth)
    taper = min(depth * tan(radians(TAPER_DEG)), length / 4)
    near, far = start.plus(along.x * taper, along.y * taper), end.plus(-along.x * taper, -along.y * taper)
    outline = (start, near.plus(*out), far.plus(*out), end)
    return NetPanel(name, Role.TAB, outline, Hinge(wall, start, end, step))


def _is_narrow(panel: NetPanel) -> bool:
    """Whether a panel is a strip that takes no two scores."""
    return panel.role is Role.EDGE and min(panel.rect.size) < NARROWEST_STRIP


def _nearer(hinge: Hinge, at: Point) -> Point:
    return min(hinge.start, hinge.end, key=lambda end: dist(end, at))


def _halfway(one: Point, other: Point) -> Point:
    """The point on the middle of a strip: straight across, whichever of its creases is the longer one."""
    if abs(one.x - other.x) > abs(one.y - other.y):
        return Point((one.x + other.x) / 2, one.y)
    return Point(one.x, (one.y + other.y) / 2)


Segment = tuple[Point, Point]


def _around_all(outlines: Sequence[Outline]) -> Outline:
    """The outline around panels that share edges, or parts of them: edges that run both ways lie within."""
    edges = [(_fine(a), _fine(b)) for outline in outlines for a, b in pairwise([*outline, outline[0]])]
    corners = {point for edge in edges for point in edge}
    parts = [part for edge in edges for part in _parted(edge, corners)]
    outer = {start: end for start, end in parts if (end, start) not in set(parts)}
    start = min(outer)
    around = [start]
    while (at := outer[around[-1]]) != start:
        around.append(at)
    assert len(around) == len(outer)  # a net has one outline
    return tuple(_without_straight(around))


def _fine(point: Point) -> Point:
    return Point(round(point.x, FINE) + 0.0, round(point.y, FINE) + 0.0)


def _parted(edge: Segment, corners: Iterable[Point]) -> Iterator[Segment]:
    """An edge in the parts between the corners that lie on it."""
    start, end = edge
    length = dist(start, end)
    on_it = [at for at in corners if abs(dist(start, at) + dist(at, end) - length) < 10**-FINE / 2]
    return pairwise(sorted(on_it, key=lambda at: dist(start, at)))


def _without_straight(around: Sequence[Point]) -> Iterator[Point]:
    """Corners at which an outline turns."""
    for before, at, after in zip((around[-1], *around[:-1]), around, (*around[1:], around[0]), strict=True):
        turn = (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x)
        if abs(turn) > 10**-FINE:
            yield at
