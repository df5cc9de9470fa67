"""Where a cover is exposed to hands and shelves: its outer edges, head and tail, joints, corners."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import exp, hypot, pi, sin

from .....ground.geometry import Point
from ..faces import Faces

__all__ = ["CORNERS", "Corner", "Edge", "Uneven", "board_edges", "corners", "spine_edges"]

CORNERS = 0.3
"""Leather corners and the leather beside the spine take about this share of a side's width."""

END = 1.3
"""So many mm from its ends an edge is worn about as in its middle."""


@dataclass(frozen=True, slots=True)
class Edge:
    """A straight edge; `weight` is 1 for the most exposed ones; `ends` tells where it is worn more: start, end.

    `inward` says on which hand of it the cover is, as seen from its start: 1 left, -1 right, 0 on both, as beside the
    joints, which bend instead of ending.
    """

    start: Point
    end: Point
    weight: float
    inward: int
    ends: tuple[bool, bool] = (True, True)

    @property
    def length(self) -> float:
        """Its length in mm."""
        return hypot(self.end.x - self.start.x, self.end.y - self.start.y)

    def at(self, share: float, off: float) -> Point:
        """A point so far along the edge, and so many mm off to its left."""
        dx, dy = (self.end.x - self.start.x) / self.length, (self.end.y - self.start.y) / self.length
        way = share * self.length
        return Point(self.start.x + dx * way - dy * off, self.start.y + dy * way + dx * off)


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of the book; the cover lies from there towards `across` and `up`, each 1 or -1."""

    at: Point
    across: int
    up: int


@dataclass(frozen=True, slots=True)
class Uneven:
    """How worn an edge is along its length: here much, there not at all, more towards exposed ends."""

    edge: Edge
    turns: tuple[float, float, float]

    def __call__(self, share: float) -> float:
        """From 0 to about 1.5 times the edge's weight, at a share of its length."""
        way = share * self.edge.length
        long, middle, short = (
            sin(turn + way * 2 * pi / wave) for turn, wave in zip(self.turns, (8.3, 3.1, 1.3), strict=True)
        )
        here = max(0.0, 0.1 + 0.34 * long + 0.26 * middle + 0.16 * short)
        exposed = (end for end, counts in zip((way, self.edge.length - way), self.edge.ends, strict=True) if counts)
        return self.edge.weight * (here + max((exp(-end / END) for end in exposed), default=0.0))


def spine_edges(faces: Faces) -> list[Edge]:
    """Head, tail and joints of the spine; and of the strips of leather or cloth beside it."""
    if not faces.spine:
        return []
    box = faces.spine
    left, right = min(rect.x for rect in faces.edges), max(rect.right for rect in faces.edges)
    found = [Edge(Point(x, box.y), Point(x, box.top), 0.45, 0) for x in faces.folds]
    for y, inward in ((box.y, 1), (box.top, -1)):
        found.append(Edge(Point(box.x, y), Point(box.right, y), 1.0, inward))
        if not faces.sides and right > box.right:
            found.append(Edge(Point(left, y), Point(box.x, y), 0.6, inward))
            found.append(Edge(Point(box.right, y), Point(right, y), 0.6, inward))
    return found


def board_edges(faces: Faces, less: float) -> list[Edge]:
    """The three outer edges of each side, as far as no corner is cut from it; `less` is the share of a side's width
    that is of other stuff at corners and spine.
    """
    found: list[Edge] = []
    for side in faces.sides:
        out, off = faces.outward(side), less * side.width
        fore, near = (side.right, side.x) if out > 0 else (side.x, side.right)
        ends = (not less, not less)
        found.append(Edge(Point(fore, side.y + off), Point(fore, side.top - off), 0.8, out, ends))
        if side in faces.edges:
            found += [
                Edge(Point(near + out * off, y), Point(fore - out * off, y), 0.6, out * inward, (False, not less))
                for y, inward in ((side.y, 1), (side.top, -1))
            ]
    return found


def corners(faces: Faces) -> Iterator[Corner]:
    """The corners of the book."""
    for side in faces.sides:
        if side in faces.edges:
            out = faces.outward(side)
            fore = side.right if out > 0 else side.x
            yield from (Corner(Point(fore, y), -out, up) for y, up in ((side.y, 1), (side.top, -1)))
    middle = faces.whole.centre
    for tip in faces.tips:
        yield Corner(tip, 1 if tip.x < middle.x else -1, 1 if tip.y < middle.y else -1)
