"""The places of a row: each thing or stack as an outline, pushed to the left until it meets what stands there.

A row of upright things is no more than its widths one after the other. What leans meets its neighbour with a corner or
on an edge, and may hang over it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import cos, inf, radians, sin
from typing import NamedTuple

from ...ground.geometry import Point, Rect, Transform
from ...things.chance import greatest
from ...things.standing import Side, Standing, Uncertainty, summed

__all__ = ["Place", "Placed", "placed", "places_of"]


@dataclass(frozen=True, slots=True)
class Place:
    """What has one place in a row: one thing, or a stack with its topmost first; lengths in mm.

    `across` and `up` are its sides before it leans, so many degrees with its head to the left, or with less than 0 to
    the right. What `falls` leans as far as there is room, to the left with 1, to the right with -1. Since the longest
    of a stack is not known before it is made, a stack is `longer` on the average than its longest as computed.
    """

    things: tuple[Standing, ...]
    across: Side
    up: Side
    lean: float = 0.0
    falls: int = 0
    longer: float = 0.0

    @property
    def stack(self) -> str | None:
        """The name of the stack, if it is one."""
        return self.things[0].stack

    @property
    def title(self) -> str:
        """What messages call it."""
        return self.things[0].title if self.stack is None else f"the stack {self.stack}"

    @property
    def width(self) -> float:
        """Before it leans."""
        return self.across.length

    @property
    def height(self) -> float:
        """Before it leans."""
        return self.up.length

    @property
    def top(self) -> Side:
        """How high it reaches as it stands: h cos α + t sin α."""
        sine, cosine = sin(radians(abs(self.lean))), cos(radians(self.lean))
        error = summed([self.up.error.times(cosine), self.across.error.times(sine)]) if self.lean else self.up.error
        return Side(self.height * cosine + self.width * sine, error)

    @property
    def outline(self) -> tuple[Point, ...]:
        """Its corners, from the lower left; it leans about a lower corner, with the left one at the origin before."""
        upright = Rect(0.0, 0.0, self.width, self.height).corners
        if not self.lean:
            return upright
        turn = Transform.turn(self.lean, Point(0.0 if self.lean > 0 else self.width, 0.0))
        return tuple(map(turn.apply, upright))

    def fallen(self, degrees: float) -> Place:
        """The same once it leans so far as there is room, if it falls."""
        return replace(self, lean=self.falls * degrees, falls=0) if self.falls else self


class Placed(NamedTuple):
    """A place, where its left edge is before it leans, and how high over the board what it leans on touches it.

    `met` is None of what does not lean, and of what leans where nothing stands.
    """

    place: Place
    x: float
    met: float | None = None

    @property
    def outline(self) -> tuple[Point, ...]:
        """Its corners where it stands."""
        return tuple(corner.plus(self.x, 0.0) for corner in self.place.outline)

    @property
    def right(self) -> float:
        """How far it reaches to the right."""
        return max(corner.x for corner in self.outline)


def places_of(things: Sequence[Standing]) -> tuple[Place, ...]:
    """The places of things in the order of a row; a stack where the first of it is listed."""
    places: dict[tuple[str, str], list[Standing]] = {}
    for one in things:
        places.setdefault(("thing", one.thing) if one.stack is None else ("stack", one.stack), []).append(one)
    return tuple(_place(together) for together in places.values())


def _place(things: Sequence[Standing]) -> Place:
    one = things[0]
    if one.stack is None:
        return Place((one,), one.across, one.up, one.stance.lean, one.stance.falls)
    longest = max(thing.height for thing in things)
    mean, tolerance = greatest([thing.height for thing in things], [thing.cut for thing in things])
    high = Side(sum(thing.thickness for thing in things), summed([thing.uncertainty for thing in things]))
    return Place(tuple(things), Side(longest, Uncertainty({}, tolerance)), high, longer=mean - longest)


def placed(places: Sequence[Place], play: float, width: float = inf) -> tuple[Placed, ...]:
    """Where each place is, with play after it; what leans touches its neighbour, and has the play beyond.

    `width` is that of the space, between two uprights that may be leant on.
    """
    row: list[Placed] = []
    reached = [0.0]
    owed = 0.0
    for place in places:
        leant_on = bool(row) and row[-1].place.lean < 0
        touches = place.lean > 0 or leant_on
        x, met = _met(place, row, reached)
        if leant_on:
            row[-1] = row[-1]._replace(met=_held(row[-1], place, x))
        row.append(Placed(place, x if touches else x + owed, met if place.lean > 0 else None))
        reached.append(max(reached[-1], row[-1].right))
        owed = play + (owed if touches else 0.0)
    if row and row[-1].place.lean < 0 and row[-1].right + owed >= width - 1e-6:
        row[-1] = row[-1]._replace(met=inf)
    return tuple(row)


def _met(place: Place, row: Sequence[Placed], reached: Sequence[float]) -> tuple[float, float]:
    """The least x at which a place clears all before it and the upright at the left, and how high it touches them.

    `reached` is how far right the first of them reach, the first two, and so on: what ends before it begins is clear.
    """
    if row and not place.lean and not row[-1].place.lean and reached[-1] <= row[-1].x + row[-1].place.width:
        return row[-1].x + row[-1].place.width, inf  # upright beside upright, as most are
    overhang = -min(corner.x for corner in place.outline)
    x, met = overhang, inf
    for number in range(len(row) - 1, -1, -1):
        if reached[number + 1] <= x - overhang:
            break
        x, met = max((x, met), _beside(row[number].outline, place.outline))
    return x, met


def _held(leaning: Placed, place: Place, x: float) -> float | None:
    """How high what leans to the right is touched by the place that comes next, at x; None if it does not reach it."""
    least, met = _beside(leaning.outline, place.outline)
    return met if least >= x - 1e-6 else None


def _beside(left: Sequence[Point], right: Sequence[Point]) -> tuple[float, float]:
    """How far the outline at the right must be moved to clear the other, and how high they then touch.

    Both are convex, so that they touch as high as a corner of one of them.
    """
    top = min(max(corner.y for corner in outline) for outline in (left, right))
    heights = {min(corner.y, top) for corner in (*left, *right)}
    return max((round(_across(left, y)[1] - _across(right, y)[0], 9), y) for y in heights)


def _across(outline: Sequence[Point], y: float) -> tuple[float, float]:
    """Where a line as high as this enters and leaves an outline."""
    crossed = list(_crossings(outline, y))
    return min(crossed), max(crossed)


def _crossings(outline: Sequence[Point], y: float) -> Iterator[float]:
    for start, end in zip(outline, (*outline[1:], outline[0]), strict=True):
        low, high = sorted((start.y, end.y))
        if low - 1e-9 <= y <= high + 1e-9:
            if high - low < 1e-9:
                yield from (start.x, end.x)
            else:
                yield start.x + (end.x - start.x) * (y - start.y) / (end.y - start.y)
