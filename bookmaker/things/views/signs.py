"""The signs of the drawings that show how something is done: arrows, numbers in rings, glue, thread, hidden edges."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import atan2, cos, degrees, hypot, sin

from ...ground.art import Filled, Group, Stroked
from ...ground.drawing import BLACK, WHITE, Pen
from ...ground.geometry import Path, Point, Rect, Size, Transform, polygon
from .ink import HAIRLINE, line, word

__all__ = [
    "HIDDEN",
    "INNER_THREAD",
    "THREAD",
    "arrow",
    "bent_arrow",
    "glued",
    "hole",
    "pointed",
    "ring",
    "thread_through",
]

HIDDEN = Pen(0.13, BLACK, (0.7, 0.5))
"""An edge that lies behind something."""

THREAD, INNER_THREAD = Pen(0.4), Pen(0.4, BLACK, (1.1, 0.7))
"""Thread that is seen, and thread inside a section."""

ARROW = Pen(0.2)
HEAD = Size(1.9, 1.3)
"""How long and how wide the head of an arrow is, in mm."""

HATCH = 1.0
"""Between two lines of a glued area, in mm."""

RING = 1.5
"""The radius of the ring around a number, in mm."""


def arrow(*points: Point) -> Group:
    """A way along straight lines, with a head at its end."""
    *_, before, end = points
    away = hypot(end.x - before.x, end.y - before.y)
    back = Point(
        end.x - (end.x - before.x) / away * HEAD.width * 0.8, end.y - (end.y - before.y) / away * HEAD.width * 0.8
    )
    shaft = Path((("M", *points[0]), *(("L", *point) for point in (*points[1:-1], back))))
    return Group((Stroked(shaft, ARROW), _head(before, end)))


def bent_arrow(start: Point, end: Point, bulge: float) -> Group:
    """A way in a bow, with a head at its end; it bulges to the left of the way by so many mm, below 0 to the right."""
    length = hypot(end.x - start.x, end.y - start.y)
    aside = Point(-(end.y - start.y) / length * bulge * 4 / 3, (end.x - start.x) / length * bulge * 4 / 3)
    one = start.plus((end.x - start.x) * 0.2 + aside.x, (end.y - start.y) * 0.2 + aside.y)
    two = start.plus((end.x - start.x) * 0.8 + aside.x, (end.y - start.y) * 0.8 + aside.y)
    away = hypot(end.x - two.x, end.y - two.y)
    short = HEAD.width * 0.8 / away
    back = end.plus((two.x - end.x) * short, (two.y - end.y) * short)
    return Group((Stroked(Path((("M", *start), ("C", *one, *two, *back))), ARROW), _head(two, end)))


def _head(before: Point, end: Point) -> Filled:
    """The head of an arrow that comes from a point."""
    turned = Transform.turn(degrees(atan2(end.y - before.y, end.x - before.x))).moved(*end)
    corners = (Point(0, 0), Point(-HEAD.width, HEAD.height / 2), Point(-HEAD.width, -HEAD.height / 2))
    return Filled(polygon([turned.apply(corner) for corner in corners]))


def ring(text: str, at: Point, radius: float = RING) -> Group:
    """A number in a ring."""
    circle = Path.circle(at, radius)
    return Group((Filled(circle, WHITE), Stroked(circle, ARROW), word(text, at, radius * 1.3, room=radius * 1.6)))


def pointed(text: str, at: Point, to: Point, size: float = 2.0) -> Group:
    """A word centred on a point, with a thin line from it to what it names."""
    said = word(text, at, size)
    box = Rect(said.at.x - 0.6, at.y - size * 0.55, said.line.width + 1.2, size * 1.1)
    return Group((line(_leaving(box, to), to, HAIRLINE), said))


def _leaving(box: Rect, to: Point) -> Point:
    """Where a line from the middle of a box to a point beyond it leaves the box."""
    across, up = to.x - box.centre.x, to.y - box.centre.y
    sides = ((box.width / 2, abs(across)), (box.height / 2, abs(up)))
    share = min([1.0, *(half / far for half, far in sides if far > half)])
    return box.centre.plus(across * share, up * share)


def glued(outline: Sequence[Point]) -> Group:
    """An area with glue on it: thin lines aslant."""
    box = Rect.around(outline)
    return Group(tuple(_aslant(box)), clip=polygon(outline))


def _aslant(box: Rect) -> Iterator[Stroked]:
    """Lines at 45° across a box, inside it."""
    for number in range(1, int((box.width + box.height) / HATCH) + 1):
        far = number * HATCH
        start = Point(box.x + min(far, box.width), box.y + max(0.0, far - box.width))
        end = Point(box.x + max(0.0, far - box.height), box.y + min(far, box.height))
        yield line(start, end, HAIRLINE)


def hole(at: Point) -> Group:
    """A hole that is pricked."""
    circle = Path.circle(at, 0.45)
    return Group((Filled(circle, WHITE), Stroked(circle, ARROW)))


def thread_through(points: Sequence[Point], pen: Pen = THREAD) -> Stroked:
    """Thread along a way, bent softly at its corners."""
    commands: list[tuple[str | float, ...]] = [("M", *points[0])]
    for before, at, after in zip(points, points[1:-1], points[2:], strict=False):
        near, far = _towards(at, before, 0.8), _towards(at, after, 0.8)
        commands += [("L", *near), ("C", *at, *at, *far)]
    return Stroked(Path((*commands, ("L", *points[-1]))), pen)


def _towards(start: Point, end: Point, reach: float) -> Point:
    """A point so far on the way to another, half the way at most."""
    length = hypot(end.x - start.x, end.y - start.y)
    turn = atan2(end.y - start.y, end.x - start.x)
    far = min(reach, length / 2)
    return start.plus(far * cos(turn), far * sin(turn))
