"""Boxes seen from above at the front while they are folded: one drawing a step, and the finished box."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import cos, dist, hypot, radians, sin

from ...ground.art import Filled, Group, Stroked
from ...ground.drawing import Art, Colour, Pen
from ...ground.geometry import Point, Rect, Size, Transform, polygon
from ..making import Figure
from ..views.signs import arrow
from ..views.stages import in_cells
from .folding import Place, Pose, folded
from .net import Hinge, Net, NetPanel, Shown

__all__ = ["folding_figure", "order_of_folds"]

LOOK_DOWN_DEG, TURN_DEG = 32.0, 28.0
"""From how high the box is looked at, and how far it is turned."""

PRINTED, BARE, MOVED = Colour(0.86, 0.86, 0.86), Colour(0.97, 0.97, 0.97), Colour(0.7, 0.7, 0.7)
"""The printed side, the other one, and what is bent in this step."""

EDGE = Pen(0.18)

NEAR = 1e-6

CELL, GAP = Size(36.0, 28.0), 5.0
"""The room of a step, and how much of that stays white around it, in mm."""

WAYPOINTS, SHORTEST_WAY = 7, 3.0
"""Of how many straight lines an arrow is made, and the least way that is worth one, in mm on the page."""

LARGEST = 2.0
"""Small boxes are drawn at most so many times as large as they are."""


def folding_figure(net: Net, room: float, share: float = 1.0) -> Figure:
    """A net after each step of its folding, side by side and numbered, in a room so many mm wide.

    With a `share` under 1 each step is seen on its way, for what folds flat shows nothing of the fold when it is done;
    the finished piece comes last. Arrows show the way of what moves.
    """
    seen: list[tuple[str, Art]] = [
        (str(number), _drawn(net, step, share, _ways(net, panels, step, share)))
        for number, (step, panels) in enumerate(net.creases, start=1)
    ]
    if share < 1:
        seen.append(("done", _drawn(net, net.steps[-1], 1.0, ())))
    caption = f"Folding the {net.name}, step by step; what moves is darker, an arrow shows its way."
    return in_cells(seen, room, caption, CELL)


def order_of_folds(net: Net) -> Iterator[tuple[int, Point]]:
    """The middle of each crease on the flat, with the number of the step in which it is bent."""
    left, foot = net.corner
    for number, (_, panels) in enumerate(net.creases, start=1):
        for panel in panels:
            if panel.hinge:
                (x0, y0), (x1, y1) = panel.hinge.start, panel.hinge.end
                yield number, Point((x0 + x1) / 2 - left, (y0 + y1) / 2 - foot)


def _ways(net: Net, panels: Sequence[NetPanel], step: int, share: float) -> Iterator[list[Place]]:
    """The ways of the outer edges of panels in a step, one for each fold: to where they are drawn, or on from there."""
    shares = [share * part / WAYPOINTS for part in range(WAYPOINTS + 1)]
    if share < 1:
        shares = [share + (1 - share) * part / WAYPOINTS for part in range(WAYPOINTS)]
    poses = [folded(net, step, part) for part in shares]
    folds: dict[tuple[float, float], list[NetPanel]] = {}
    for panel in panels:
        if panel.hinge and panel.hinge.step == step:
            folds.setdefault(_line_of(panel.hinge), []).append(panel)
    for alike in folds.values():
        panel = alike[len(alike) // 2]
        edge = _outer_edge(panel)
        yield [_to_eye(pose[panel.name].of(edge), net.shown) for pose in poses]


def _line_of(hinge: Hinge) -> tuple[float, float]:
    """What creases have in common that lie on one straight line, along the net or across it."""
    (x0, y0), (x1, y1) = hinge.start, hinge.end
    upright = abs(x1 - x0) < abs(y1 - y0)
    return float(upright), round(x0 if upright else y0, 2)


def _outer_edge(panel: NetPanel) -> Point:
    """The middle of the edge that lies farthest from the crease on which a panel hangs."""
    assert panel.hinge is not None  # only such panels are bent
    (x0, y0), (x1, y1) = panel.hinge.start, panel.hinge.end

    def away(point: Point) -> float:
        return round(abs((x1 - x0) * (point.y - y0) - (y1 - y0) * (point.x - x0)), 3)

    farthest = max(map(away, panel.outline))
    ends = [point for point in panel.outline if away(point) == farthest]
    return Point(sum(end.x for end in ends) / len(ends), sum(end.y for end in ends) / len(ends))


def _drawn(net: Net, step: int, share: float, ways: Iterable[Sequence[Place]]) -> Art:
    """A net after a step, or a share of it, as large as a cell takes."""
    poses = folded(net, step, share)
    panels = [_seen(panel, poses[panel.name], step, net.shown) for panel in net.panels]
    seen_ways = [[Point(place.x, place.y) for place in way] for way in ways]
    box = Rect.around(point for outline in (*(panel.outline for panel in panels), *seen_ways) for point in outline)
    scale = min((CELL.width - GAP) / box.width, (CELL.height - GAP) / box.height, LARGEST)
    to_page = Transform(a=scale, d=scale, e=GAP / 2 - box.x * scale, f=GAP / 2 - box.y * scale)
    art: list[Art] = []
    for panel in _from_the_back(panels):
        path = polygon([to_page.apply(point) for point in panel.outline])
        art += [Filled(path, panel.colour), Stroked(path, EDGE)]
    moved = ([to_page.apply(point) for point in way] for way in seen_ways)
    return Group((*art, *(arrow(*way) for way in moved if dist(way[0], way[-1]) > SHORTEST_WAY)))


@dataclass(frozen=True, slots=True)
class _Seen:
    """A panel as the eye sees it: its corners with x to the right, y up and z towards the eye, and its colour."""

    corners: tuple[Place, ...]
    colour: Colour

    @property
    def outline(self) -> list[Point]:
        """Its corners on the page."""
        return [Point(place.x, place.y) for place in self.corners]

    @property
    def away(self) -> float:
        """How far away it is on the whole."""
        return -sum(place.z for place in self.corners) / len(self.corners)

    def covers(self, other: _Seen) -> bool:
        """Whether it lies before another one: wholly on the eye's side of that, or has it wholly behind."""
        if not self._touches(other):
            return False
        mine, others = other._before(self), self._before(other)
        return (min(mine) > -NEAR and max(mine) > NEAR) or (max(others) < NEAR and min(others) < -NEAR)

    def _touches(self, other: _Seen) -> bool:
        return Rect.around(self.outline).overlaps(Rect.around(other.outline), NEAR)

    def _before(self, other: _Seen) -> list[float]:
        """How far the corners of another one are before the plane of this one."""
        a, b, c = self.corners[:3]
        u, v = (tuple(q - p for p, q in zip(one, two, strict=True)) for one, two in ((a, b), (b, c)))
        n = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
        way = 1.0 if n[2] >= 0 else -1.0
        long = hypot(*n) or 1.0
        return [way * sum(k * (q - p) for k, p, q in zip(n, a, at, strict=True)) / long for at in other.corners]


def _from_the_back(panels: Sequence[_Seen]) -> Iterator[_Seen]:
    """The panels in an order in which each is drawn over those behind it."""
    waiting = sorted(panels, key=lambda panel: -panel.away)
    while waiting:
        free = (one for one in waiting if not any(one.covers(other) for other in waiting if other is not one))
        chosen = next(free, waiting[0])
        waiting.remove(chosen)
        yield chosen


def _seen(panel: NetPanel, pose: Pose, step: int, shown: Shown) -> _Seen:
    corners = tuple(_to_eye(pose.of(point), shown) for point in panel.outline)
    (ax, ay, _), (bx, by, _), (cx, cy, _) = corners[:3]
    printed = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax) > 0
    moved = panel.hinge is not None and panel.hinge.step == step
    return _Seen(corners, MOVED if moved else PRINTED if printed else BARE)


_DOWN, _TURN = radians(LOOK_DOWN_DEG), radians(TURN_DEG)


def _to_eye(place: Place, shown: Shown) -> Place:
    """A point as the eye has it before itself."""
    x, y, z = place
    match shown:
        case Shown.ON_FLOOR:
            y, z = -y, -z
        case Shown.UPRIGHT:
            y, z = -z, y
    x, y = x * cos(_TURN) - y * sin(_TURN), x * sin(_TURN) + y * cos(_TURN)
    return Place(x, z * cos(_DOWN) + y * sin(_DOWN), z * sin(_DOWN) - y * cos(_DOWN))
