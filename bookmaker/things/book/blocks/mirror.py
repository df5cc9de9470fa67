"""A flat as it is for a book that reads the other way: left and right change places."""

from __future__ import annotations

from dataclasses import replace

from ....ground.geometry import Point, Rect
from ....sheets.flat import Flat, Stroke

__all__ = ["mirrored"]


def mirrored(flat: Flat) -> Flat:
    """The flat with every part moved to the other side; folds keep their kind, pages stay upright.

    Its outline must be a rectangle.
    """
    width = flat.size.width

    def point(at: Point) -> Point:
        return Point(width - at.x, at.y)

    def rect(old: Rect) -> Rect:
        return Rect(width - old.right, old.y, old.width, old.height)

    def stroke(old: Stroke) -> Stroke:
        one, other = sorted((point(old.start), point(old.end)))
        return Stroke(one, other)

    return replace(
        flat,
        folds=tuple(replace(fold, start=point(fold.start), end=point(fold.end)) for fold in flat.folds),
        panels=tuple(replace(panel, rect=rect(panel.rect)) for panel in flat.panels),
        cuts=tuple(map(stroke, flat.cuts)),
        trims=tuple(map(stroke, flat.trims)),
        marks=tuple(replace(mark, rect=rect(mark.rect)) for mark in flat.marks),
    )
