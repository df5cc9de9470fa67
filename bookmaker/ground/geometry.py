"""Flat geometry: immutable points, rectangles, outlines and transforms; y points up, lengths are in mm."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

__all__ = ["ORIGIN", "Axis", "Path", "Point", "Rect", "Size", "Transform", "polygon"]

CIRCLE_HANDLE = 4 / 3 * math.tan(math.pi / 8)
"""Length of a cubic curve's handles for a quarter of a unit circle (exact at both ends and the middle)."""


class Point(NamedTuple):
    """A position, or a step, in millimetres."""

    x: float
    y: float

    def plus(self, dx: float, dy: float) -> Point:
        """This point moved.

        >>> Point(1, 2).plus(3, 4)
        Point(x=4, y=6)
        """
        return Point(self.x + dx, self.y + dy)


ORIGIN = Point(0.0, 0.0)


class Axis(StrEnum):
    """A direction on a flat: the way its fibres must run, parallel to the folds."""

    X = "x"
    Y = "y"


class Size(NamedTuple):
    """Width and height."""

    width: float
    height: float

    @property
    def turned(self) -> Size:
        """The size after a quarter turn."""
        return Size(self.height, self.width)


class Rect(NamedTuple):
    """An upright rectangle given by its lower left corner, width and height."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The right edge."""
        return self.x + self.width

    @property
    def top(self) -> float:
        """The upper edge."""
        return self.y + self.height

    @property
    def centre(self) -> Point:
        """The middle."""
        return Point(self.x + self.width / 2, self.y + self.height / 2)

    @property
    def size(self) -> Size:
        """Width and height."""
        return Size(self.width, self.height)

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """The corners, counter-clockwise from the lower left."""
        return (
            Point(self.x, self.y),
            Point(self.right, self.y),
            Point(self.right, self.top),
            Point(self.x, self.top),
        )

    def grown(
        self, left: float, bottom: float | None = None, right: float | None = None, top: float | None = None
    ) -> Rect:
        """Larger by the given amounts on each side; one value serves all sides, negative values shrink.

        >>> Rect(0, 0, 10, 20).grown(1)
        Rect(x=-1, y=-1, width=12, height=22)
        """
        bottom = left if bottom is None else bottom
        right = left if right is None else right
        top = left if top is None else top
        return Rect(self.x - left, self.y - bottom, self.width + left + right, self.height + bottom + top)

    def moved(self, dx: float, dy: float) -> Rect:
        """The same rectangle elsewhere."""
        return Rect(self.x + dx, self.y + dy, self.width, self.height)

    def contains(self, other: Rect, slack: float = 1e-6) -> bool:
        """Whether `other` lies inside, give or take `slack` mm."""
        return (
            other.x >= self.x - slack
            and other.y >= self.y - slack
            and other.right <= self.right + slack
            and other.top <= self.top + slack
        )

    def overlaps(self, other: Rect, slack: float = 1e-6) -> bool:
        """Whether the two share more than a line of `slack` mm."""
        return (
            self.x < other.right - slack
            and other.x < self.right - slack
            and self.y < other.top - slack
            and other.y < self.top - slack
        )

    @classmethod
    def around(cls, points: Iterable[Point]) -> Rect:
        """The smallest rectangle that holds all points.

        >>> Rect.around([Point(1, 5), Point(4, 2)])
        Rect(x=1, y=2, width=3, height=3)
        """
        xs, ys = zip(*points, strict=True)
        return cls(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))


def polygon(points: Sequence[Point]) -> Path:
    """A closed path through the points."""
    first, *rest = points
    return Path((("M", *first), *(("L", *point) for point in rest), ("Z",)))


@dataclass(frozen=True, slots=True)
class Path:
    """Lines and cubic curves: commands ``M x y``, ``L x y``, ``C x1 y1 x2 y2 x y`` and ``Z``."""

    commands: tuple[tuple[str | float, ...], ...] = ()

    @classmethod
    def rectangle(cls, rect: Rect) -> Path:
        """The outline of a rectangle."""
        return polygon(rect.corners)

    @classmethod
    def line(cls, start: Point, end: Point) -> Path:
        """One straight line."""
        return cls((("M", *start), ("L", *end)))

    @classmethod
    def lines(cls, pairs: Iterable[tuple[Point, Point]]) -> Path:
        """Straight lines, each from a point to another."""
        return cls(tuple(command for start, end in pairs for command in (("M", *start), ("L", *end))))

    @classmethod
    def circle(cls, centre: Point, radius: float) -> Path:
        """A circle of four cubic curves, true to 0.03 % of the radius."""
        x, y = centre
        r, h = radius, radius * CIRCLE_HANDLE
        return cls(
            (
                ("M", x + r, y),
                ("C", x + r, y + h, x + h, y + r, x, y + r),
                ("C", x - h, y + r, x - r, y + h, x - r, y),
                ("C", x - r, y - h, x - h, y - r, x, y - r),
                ("C", x + h, y - r, x + r, y - h, x + r, y),
                ("Z",),
            )
        )

    def transformed(self, transform: Transform) -> Path:
        """Every point of the path moved by the transform."""
        return Path(tuple(_transform_command(command, transform) for command in self.commands))

    @property
    def bounds(self) -> Rect:
        """The smallest rectangle that holds all points, the handles of curves included."""
        numbers: list[float] = [value for command in self.commands for value in command[1:]]  # type: ignore[misc]
        xs, ys = numbers[0::2], numbers[1::2]
        return Rect(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys))

    def points(self) -> tuple[Point, ...]:
        """All points, the handles of curves included."""
        return tuple(point for command in self.commands for point in _points_of(command))


def _points_of(command: tuple[str | float, ...]) -> list[Point]:
    numbers = [float(value) for value in command[1:]]
    return [Point(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]


def _transform_command(command: tuple[str | float, ...], transform: Transform) -> tuple[str | float, ...]:
    a, b, c, d, e, f = transform
    numbers = [float(value) for value in command[1:]]
    moved: list[str | float] = [command[0]]
    for x, y in zip(numbers[::2], numbers[1::2], strict=True):
        moved += (a * x + c * y + e, b * x + d * y + f)
    return tuple(moved)


class Transform(NamedTuple):
    """An affine map as in ISO 32000 §8.3.4: x' = a·x + c·y + e, y' = b·x + d·y + f.

    >>> Transform.quarter_turn().moved(20, 0).apply(Point(5, 1))
    Point(x=19.0, y=5.0)
    """

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    @classmethod
    def move(cls, dx: float, dy: float) -> Transform:
        """A shift."""
        return cls(e=dx, f=dy)

    @classmethod
    def stretch(cls, x: float, y: float, about: Point = ORIGIN) -> Transform:
        """A stretch along the axes that leaves `about` in place."""
        return cls(a=x, d=y, e=about.x * (1 - x), f=about.y * (1 - y))

    @classmethod
    def quarter_turn(cls, turns: int = 1) -> Transform:
        """Turns of 90° counter-clockwise about the origin; the entries are exact."""
        cosine, sine = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[turns % 4]
        return cls(cosine, sine, -sine, cosine)

    @classmethod
    def turn(cls, degrees: float, about: Point = ORIGIN) -> Transform:
        """A turn counter-clockwise about a point."""
        cosine, sine = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        return cls.move(-about.x, -about.y).then(cls(cosine, sine, -sine, cosine)).moved(*about)

    def then(self, after: Transform) -> Transform:
        """This map followed by another."""
        return Transform(
            after.a * self.a + after.c * self.b,
            after.b * self.a + after.d * self.b,
            after.a * self.c + after.c * self.d,
            after.b * self.c + after.d * self.d,
            after.a * self.e + after.c * self.f + after.e,
            after.b * self.e + after.d * self.f + after.f,
        )

    def moved(self, dx: float, dy: float) -> Transform:
        """This map followed by a shift."""
        return self._replace(e=self.e + dx, f=self.f + dy)

    @property
    def inverse(self) -> Transform:
        """The map that takes everything back.

        Raises:
            ZeroDivisionError: there is none, for the map flattens everything.

        >>> Transform.stretch(2, 4).moved(6, 8).inverse.apply(Point(6, 8))
        Point(x=0.0, y=0.0)
        """
        a, b, c, d, e, f = self
        area = a * d - b * c
        back = Transform(d / area, -b / area, -c / area, a / area)
        return back.moved(-(back.a * e + back.c * f), -(back.b * e + back.d * f))

    def apply(self, point: Point) -> Point:
        """Where the map takes a point."""
        x, y = point
        return Point(self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f)

    def apply_to(self, rect: Rect) -> Rect:
        """The upright rectangle around the moved rectangle."""
        return Rect.around([self.apply(corner) for corner in rect.corners])
