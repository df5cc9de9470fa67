"""Outlines of what is cut out, as corners: curves are followed by chords, so that every tool makes the same cut.

The chords keep within `CURVE_ERROR` of their curve, an eighth of a dot at 600 to the inch and less than any knife
or cutting machine holds. An outline runs from its first corner through the others back to the first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import acos, atan2, ceil, cos, degrees, dist, hypot, pi, radians, sin, sqrt, tan

from .geometry import Path, Point, Rect, polygon

__all__ = ["CURVE_ERROR", "Outline", "arc", "area_within", "circle", "flattened", "region", "rounded", "spread"]

Outline = tuple[Point, ...]

CURVE_ERROR = 0.005
"""How far chords may lie from their curve, in mm."""

MITRED = 4.0
"""What is spread around a corner reaches at most so many times as far out as beside an edge."""

NEAR = 1e-9


def arc(centre: Point, radius: float, start_deg: float, end_deg: float) -> Outline:
    """The corners of chords along an arc, both ends included; from start to end, whichever way round that is."""
    sweep = radians(end_deg - start_deg)
    chords = max(1, ceil(abs(sweep) / _widest_chord(radius) - NEAR))
    turns = (radians(start_deg) + sweep * step / chords for step in range(chords + 1))
    return tuple(centre.plus(radius * cos(turn), radius * sin(turn)) for turn in turns)


def circle(centre: Point, radius: float) -> Outline:
    """A circle, counter-clockwise from its right; its width and height are twice the radius.

    >>> len(circle(Point(0, 0), 5.0)), Rect.around(circle(Point(0, 0), 5.0)).size
    (72, Size(width=10.0, height=10.0))
    """
    quarter = arc(Point(0, 0), radius, 0, 90)[1:-1]
    corners = [Point(radius, 0.0), *quarter]
    for _ in range(3):
        corners += [Point(-y, x) for x, y in corners[-len(quarter) - 1 :]]
    return tuple(centre.plus(*corner) for corner in corners)


def rounded(corners: Sequence[Point], radius: float) -> Outline:
    """An outline with an arc of a radius in place of each corner; the straight parts keep their places.

    >>> [len(rounded(Rect(0, 0, 20, 10).corners, radius)) for radius in (0, 2)]
    [4, 52]
    """
    if not radius:
        return tuple(corners)
    return tuple(point for part in _arounds(corners) for point in _rounded_corner(*part, radius))


def flattened(path: Path) -> Outline:
    """The corners of a closed path of lines and cubic curves, the curves followed by chords.

    The chords of a curve lie no further from it than an eighth of the largest second derivative over their number
    squared.
    """
    corners: list[Point] = []
    for kind, *numbers in path.commands:
        values = [float(number) for number in numbers]
        points = [Point(x, y) for x, y in zip(values[::2], values[1::2], strict=True)]
        corners += _cubic(corners[-1], *points) if kind == "C" else points
    closed = len(corners) > 1 and dist(corners[0], corners[-1]) < NEAR
    return tuple(corners[:-1] if closed else corners)


def area_within(corners: Sequence[Point]) -> float:
    """The area within an outline in mm², positive when its corners run counter-clockwise.

    >>> area_within(Rect(0, 0, 3, 2).corners)
    6.0
    """
    return sum(a.x * b.y - b.x * a.y for a, b in _edges(corners)) / 2


def region(outline: Outline, holes: Sequence[Outline] = ()) -> Path:
    """What is left of an outline without its holes, as one path (non-zero winding)."""
    parts = [_running(outline, 1) if holes else outline, *(_running(hole, -1) for hole in holes)]
    return Path(tuple(command for part in parts for command in polygon(part).commands))


def spread(outline: Outline, holes: Sequence[Outline], by: float) -> Path:
    """A region and what lies within `by` mm of its edges, at corners as far as their edges reach: print with its bleed.

    Around a rectangle that is a larger rectangle. The path is to be filled by the rule of non-zero winding: bands along
    all edges lie over the region and, as far as they reach, over its holes.
    """
    box = Rect.around(outline)
    if not holes and set(outline) == set(box.corners):
        return Path.rectangle(box.grown(by))
    whole = [_running(outline, 1), *(_running(hole, -1) for hole in holes)]
    parts = [*whole, *(band for part in whole for band in _bands(part, by))] if by else whole
    return Path(tuple(command for part in parts for command in polygon(part).commands))


def _widest_chord(radius: float) -> float:
    """The angle of an arc whose chord keeps near enough to it."""
    return 2 * acos(1 - min(CURVE_ERROR / radius, 1.0)) if radius else pi


def _edges(corners: Sequence[Point]) -> Iterator[tuple[Point, Point]]:
    return pairwise([*corners, corners[0]])


def _arounds(corners: Sequence[Point]) -> Iterator[tuple[Point, Point, Point]]:
    """Each corner between those before and after it."""
    return zip((corners[-1], *corners[:-1]), corners, (*corners[1:], corners[0]), strict=True)


def _running(corners: Outline, way: int) -> Outline:
    """The outline run through counter-clockwise if `way` is 1, clockwise if it is -1."""
    return corners if area_within(corners) * way >= 0 else corners[::-1]


def _step(start: Point, end: Point) -> Point:
    """From one point towards another, 1 mm long."""
    length = hypot(end.x - start.x, end.y - start.y)
    return Point((end.x - start.x) / length, (end.y - start.y) / length)


def _rounded_corner(before: Point, corner: Point, after: Point, radius: float) -> Iterator[Point]:
    back, on = _step(corner, before), _step(corner, after)
    half = acos(max(-1.0, min(1.0, back.x * on.x + back.y * on.y))) / 2
    cut = radius / tan(half) if half > NEAR else 0.0
    first, last = (corner.plus(step.x * cut, step.y * cut) for step in (back, on))
    away = radius / sin(half)
    middle = _step(Point(0, 0), Point(back.x + on.x, back.y + on.y)) if half < pi / 2 - NEAR else back
    centre = corner.plus(middle.x * away, middle.y * away)
    begin, end = (degrees(atan2(at.y - centre.y, at.x - centre.x)) for at in (first, last))
    # the short way round
    end += 360 * ((begin - end) > 180) - 360 * ((end - begin) > 180)
    yield first
    yield from arc(centre, radius, begin, end)[1:-1]
    yield last


def _cubic(start: Point, one: Point, two: Point, end: Point) -> Iterator[Point]:
    bends = ((start, one, two), (one, two, end))
    most = max(hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y) for a, b, c in bends)
    chords = max(1, ceil(sqrt(6 * most / (8 * CURVE_ERROR))))
    for step in range(1, chords + 1):
        t = step / chords
        weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
        points = (start, one, two, end)
        x, y = (sum(weight * point[axis] for weight, point in zip(weights, points, strict=True)) for axis in (0, 1))
        yield Point(x, y)


def _bands(corners: Outline, by: float) -> Iterator[Outline]:
    """A band on both sides of each edge, and what fills the wedge between two of them outside a bend."""
    for start, end in _edges(corners):
        along = _step(start, end)
        x, y = along.y * by, -along.x * by
        yield start.plus(x, y), end.plus(x, y), end.plus(-x, -y), start.plus(-x, -y)
    for before, corner, after in _arounds(corners):
        yield from _wedge(_step(before, corner), corner, _step(corner, after), by)


def _wedge(into: Point, corner: Point, out: Point, by: float) -> Iterator[Outline]:
    bend = into.x * out.y - into.y * out.x
    if abs(bend) < NEAR:
        return
    side = by if bend > 0 else -by
    first, last = (corner.plus(step.y * side, -step.x * side) for step in (into, out))
    reach = 1 / max((1 + into.x * out.x + into.y * out.y) / 2, NEAR)  # 1 / cos² of half the bend
    middle = Point((first.x + last.x) / 2 - corner.x, (first.y + last.y) / 2 - corner.y)
    tip = (corner.plus(middle.x * reach, middle.y * reach),) if sqrt(reach) <= MITRED else ()
    yield _running((corner, first, *tip, last), 1)
