"""Outlines with corners cut off, and parts moved to the origin."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import dist, sqrt
from typing import NamedTuple

from .....ground.geometry import Point, Rect
from .....sheets.flat import Flat, Fold

__all__ = ["Corner", "at_origin", "cut_off"]


SAME = 1e-9
"""Two corners closer than this, in mm, are one."""


class Corner(NamedTuple):
    """A corner of a board on a flat, and which way it points: −1 is left or down, +1 right or up."""

    at: Point
    right: int
    up: int


def cut_off(outline: Sequence[Point], corner: Corner, away: float, *, keep: int = -1) -> tuple[Point, ...]:
    """An outline cut at 45° across a corner, `away` mm outside it, or inside if that is negative.

    What lies further out is cut off, or with `keep` +1 what lies further in. The outline is convex and stays so.
    """

    def kept_by(point: Point) -> float:
        out = (corner.right * (point.x - corner.at.x) + corner.up * (point.y - corner.at.y)) / sqrt(2)
        return keep * (out - away)

    kept: list[Point] = []
    for start, end in zip(outline, (*outline[1:], outline[0]), strict=True):
        before, after = kept_by(start), kept_by(end)
        if before >= 0:
            kept.append(start)
        if before * after < 0:
            share = before / (before - after)
            kept.append(Point(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share))
    return tuple(point for point, last in zip(kept, (kept[-1], *kept), strict=False) if dist(point, last) > SAME)


def at_origin(flat: Flat) -> Flat:
    """The same part with the lower left of its outline at the origin, and its panels within the outline's box.

    Cuts may leave nothing of an edge: the turn-in between a spine piece and a large corner is a triangle.
    """
    box = Rect.around(flat.outline)

    def moved(point: Point) -> Point:
        return Point(min(max(point.x, box.x), box.right) - box.x, min(max(point.y, box.y), box.top) - box.y)

    return replace(
        flat,
        outline=tuple(map(moved, flat.outline)),
        folds=tuple(Fold(fold.kind, moved(fold.start), moved(fold.end)) for fold in flat.folds),
        panels=tuple(
            replace(panel, rect=Rect.around([moved(point) for point in panel.rect.corners])) for panel in flat.panels
        ),
    )
