"""A flat as it is for the other hand: left and right change places, or head and tail."""

from __future__ import annotations

from dataclasses import replace

from ..ground.geometry import Point, Rect
from .flat import Flat, Stroke

__all__ = ["mirrored"]


def mirrored(flat: Flat, *, across: bool = False, up: bool = False) -> Flat:
    """The flat with left and right changed, or head and tail, or both; folds keep their kind, pages stay upright."""
    width, height = flat.size

    def point(at: Point) -> Point:
        return Point(width - at.x if across else at.x, height - at.y if up else at.y)

    def rect(old: Rect) -> Rect:
        x, y = width - old.right if across else old.x, height - old.top if up else old.y
        return Rect(x, y, old.width, old.height)

    def edge(old: tuple[Point, ...]) -> tuple[Point, ...]:
        """An outline in the same sense as before; one that is its own image stays as it is."""
        turned = tuple(map(point, old))
        return old if {*turned} == {*old} else turned[::-1] if across != up else turned

    def strokes(old: tuple[Stroke, ...]) -> tuple[Stroke, ...]:
        return tuple(Stroke(*sorted((point(one.start), point(one.end)))) for one in old)

    return replace(
        flat,
        outline=edge(flat.outline),
        folds=tuple(replace(fold, start=point(fold.start), end=point(fold.end)) for fold in flat.folds),
        panels=tuple(replace(panel, rect=rect(panel.rect)) for panel in flat.panels),
        cuts=strokes(flat.cuts),
        trims=strokes(flat.trims),
        marks=tuple(replace(mark, rect=rect(mark.rect)) for mark in flat.marks),
        holes=tuple(map(edge, flat.holes)),
        scores=strokes(flat.scores),
        perforations=strokes(flat.perforations),
    )
