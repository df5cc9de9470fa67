"""How wide a row is, how far that may be off, and how far what falls in it leans."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ...things.standing import Uncertainty, summed
from .leaning import most_lean
from .places import Place, placed

__all__ = ["MOST_FALLEN", "extent", "fallen", "width_error"]

MOST_FALLEN = 25.0
"""Degrees: what falls until it meets its neighbour is put no further away than this (common practice)."""

SLIGHTLY = 1e-3
"""A change of a side from which is told how the width of a row follows it, in mm."""


def extent(places: Sequence[Place]) -> float:
    """How wide a row is without any play; what falls is upright still."""
    if not any(place.lean for place in places):
        return sum(place.width for place in places)
    return max(one.right for one in placed(places, 0.0))


def fallen(places: Sequence[Place], room: float) -> tuple[Place, ...]:
    """The places once all that falls leans, all by the same angle, as far as it can in a row so wide.

    None leans so far that it would slide, or further than looks well.
    """
    most = min((most_lean(place.width, place.height) for place in places if place.falls), default=0.0)
    low, high = 0.0, min(most, MOST_FALLEN)
    if low < high and extent(places) < room:
        if extent(_leant(places, high)) <= room:
            return _leant(places, high)
        while high - low > 1e-6:
            middle = (low + high) / 2
            low, high = (middle, high) if extent(_leant(places, middle)) <= room else (low, middle)
    return _leant(places, low)


def _leant(places: Sequence[Place], degrees: float) -> tuple[Place, ...]:
    return tuple(place.fallen(degrees) for place in places)


def width_error(places: Sequence[Place]) -> Uncertainty:
    """How far the width of a row may be off.

    A book that stands counts in full, one that leans as far as it then takes more of the row: of 20 × 3 mm at 15°,
    with h sin α + t cos α, by 0.97 mm for each mm that it is thicker, and by 0.26 for each that it is higher.
    """
    return summed([part for run in _runs(places) for part in _errors_of(run)])


def _runs(places: Sequence[Place]) -> Iterator[tuple[Place, ...]]:
    """The row parted wherever nothing hangs over: what happens in one part does not change the others."""
    if not any(place.lean for place in places):
        yield from ((place,) for place in places)
        return
    row = placed(places, 0.0)
    lefts = [min(corner.x for corner in one.outline) for one in row]
    for number in range(len(row) - 2, -1, -1):
        lefts[number] = min(lefts[number], lefts[number + 1])
    run: list[Place] = []
    reached = 0.0
    for one, left in zip(row, lefts, strict=True):
        if run and left >= reached - 1e-6:
            yield tuple(run)
            run = []
        run.append(one.place)
        reached = max(reached, one.right)
    if run:
        yield tuple(run)


def _errors_of(run: Sequence[Place]) -> Iterator[Uncertainty]:
    if not any(place.lean for place in run):
        yield from (place.across.error for place in run)
        return
    before = extent(run)
    for number, place in enumerate(run):
        wider = replace(place, across=place.across._replace(length=place.width + SLIGHTLY))
        higher = replace(place, up=place.up._replace(length=place.height + SLIGHTLY))
        for other, error in ((wider, place.across.error), (higher, place.up.error)):
            grown = extent([*run[:number], other, *run[number + 1 :]])
            yield error.times((grown - before) / SLIGHTLY)
