"""Corner pieces: what is tooled or stamped into the corners of a frame, head and fore-edge alike."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, radians, sin

from .....ground.art import Filled
from .....ground.drawing import Colour
from .....ground.geometry import Path, Point, Rect, Transform, polygon
from .fleurons import FLEURONS, FleuronName
from .ornaments import diamond, dot, petal
from .shapes import gathered

__all__ = ["CORNERS", "corner_pieces"]


INWARDS = Transform.move(0.13, 0.13)


def _quarter_rosette() -> Path:
    """A quarter of a flower about the corner: an eye, petals that stand apart, pearls between their tips."""
    petals = [petal(0.62, 0.2, -deg, 0.24) for deg in (4, 45, 86)]
    return gathered(
        (dot(0.06, 0.06, 0.13), *petals, *(dot(0.84 * x, 0.84 * y, 0.07) for x, y in ((0.42, 0.9), (0.9, 0.42))))
    )


def _fan() -> Path:
    """A quarter of a shell about the corner, a hoop beyond it, and pearls from end to end."""
    shell = polygon([Point(0, 0), *(_around(0.36, deg) for deg in range(0, 91, 5))])
    hoop = polygon(
        [*(_around(0.56, deg) for deg in range(0, 91, 5)), *(_around(0.47, deg) for deg in range(90, -1, -5))]
    )
    pearls = [dot(*_around(0.71, deg), 0.06) for deg in (5, 25, 45, 65, 85)]
    return gathered((shell, hoop, *pearls))


def _around(radius: float, deg: float) -> Point:
    return Point(radius * cos(radians(deg)), radius * sin(radians(deg)))


def _steps() -> Path:
    """Angles within angles, and a square."""
    bars = [bar for at, long in ((0.0, 0.78), (0.22, 0.42))
            for bar in (Rect(at, at, long, 0.1), Rect(at, at, 0.1, long))]  # fmt: skip
    return gathered(Path.rectangle(rect) for rect in (*bars, Rect(0.44, 0.44, 0.16, 0.16)))


def _lobes() -> Path:
    """Three lobes, and lozenges that lead on from them."""
    lobes = [dot(x, y, 0.16) for x, y in ((0.17, 0.17), (0.45, 0.17), (0.17, 0.45))]
    return gathered((*lobes, *(diamond(x, y, 0.1, 0.1) for x, y in ((0.5, 0.5), (0.76, 0.12), (0.12, 0.76)))))


def _leaning(name: FleuronName) -> Path:
    """A fleuron that looks into the frame from its corner."""
    return FLEURONS[name].transformed(
        Transform.turn(-45.0).then(Transform.stretch(0.95, 0.95)).then(Transform.move(0.47, 0.47))
    )


CORNERS: Sequence[Path] = (
    _quarter_rosette().transformed(INWARDS),
    _fan().transformed(INWARDS),
    _steps(),
    _lobes(),
    _leaning("trefoil"),
    _leaning("sprig"),
    _leaning("rosette"),
)
"""Each in a square of 1 whose lower left corner is that of the frame."""


def corner_pieces(rect: Rect, size: float, colour: Colour, kin: int) -> Filled:
    """One of the pieces in each corner of a rectangle, by the number of the book or its set."""
    piece = CORNERS[kin // 3 % len(CORNERS)]
    turned = [
        piece.transformed(Transform.quarter_turn(turns).then(Transform.stretch(size, size)).moved(*corner))
        for turns, corner in enumerate(rect.corners)
    ]
    return Filled(gathered(turned), colour)
