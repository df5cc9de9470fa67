"""Ornaments: rules, frames, bands, corner pieces and fleurons, all drawn here from a few curves.

A motif is a path in a unit square about the origin, its head up; `stamp` sets it into a box.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from math import cos, pi, sin
from random import Random
from typing import Literal

from .....ground.art import Filled, Stroked
from .....ground.drawing import Colour, Pen
from .....ground.geometry import Path, Point, Rect, Transform, polygon
from .shapes import gathered

__all__ = [
    "FLEURONS",
    "BandName",
    "OrnamentName",
    "band",
    "choose_fleuron",
    "corner_pieces",
    "double_rule",
    "frame",
    "petal",
    "rule",
    "stamp",
]

FleuronName = Literal["rosette", "trefoil", "lozenge", "sprig", "sun", "tulip", "knot", "drop"]
OrnamentName = Literal["auto", "none", "rosette", "trefoil", "lozenge", "sprig", "sun", "tulip", "knot", "drop"]


def petal(length: float, width: float, turned_deg: float = 0.0, start: float = 0.0) -> Path:
    """A leaf from `start` above the origin upwards, turned about the origin."""
    end, half = start + length, width / 2
    outline = Path(
        (
            ("M", 0.0, start),
            ("C", half * 1.3, start + length * 0.25, half, start + length * 0.7, 0.0, end),
            ("C", -half, start + length * 0.7, -half * 1.3, start + length * 0.25, 0.0, start),
            ("Z",),
        )
    )
    return outline.transformed(Transform.turn(turned_deg))


def _ring(count: int, make: Callable[[float], Path], first_deg: float = 0.0) -> Path:
    return gathered(make(first_deg + 360 / count * number) for number in range(count))


def _dot(x: float, y: float, radius: float) -> Path:
    return Path.circle(Point(x, y), radius)


def _diamond(x: float, y: float, wide: float, high: float) -> Path:
    return polygon((Point(x, y - high), Point(x + wide, y), Point(x, y + high), Point(x - wide, y)))


def _rosette() -> Path:
    return gathered(
        (
            _ring(6, lambda deg: petal(0.32, 0.2, deg, 0.14)),
            _ring(6, lambda deg: petal(0.2, 0.05, deg, 0.22), 30),
            _dot(0, 0, 0.08),
        )
    )


def _trefoil() -> Path:
    leaves = [petal(0.42, 0.26, deg, 0.04).transformed(Transform.move(0, 0.05)) for deg in (-70, 0, 70)]
    stem = Path(
        (("M", -0.02, 0.05), ("C", -0.01, -0.2, -0.08, -0.32, -0.16, -0.42), ("L", -0.1, -0.46),
         ("C", 0.0, -0.36, 0.05, -0.2, 0.03, 0.05), ("Z",))
    )  # fmt: skip
    return gathered((*leaves, stem))


def _lozenge() -> Path:
    return gathered(
        (
            _diamond(0, 0, 0.2, 0.3),
            *(_dot(0.42 * cos(deg), 0.42 * sin(deg), 0.055) for deg in (0, pi / 2, pi, 3 * pi / 2)),
            *(_dot(0.24 * x, 0.26 * y, 0.035) for x in (-1, 1) for y in (-1, 1)),
        )
    )


def _sprig() -> Path:
    pairs = [
        petal(0.3 - 0.05 * row, 0.13, side * (58 - 6 * row)).transformed(Transform.move(0, -0.3 + 0.22 * row))
        for row in range(3)
        for side in (-1, 1)
    ]
    stem = polygon((Point(-0.018, -0.5), Point(0.018, -0.5), Point(0.012, 0.25), Point(-0.012, 0.25)))
    return gathered((*pairs, stem, petal(0.28, 0.13).transformed(Transform.move(0, 0.22))))


def _sun() -> Path:
    rays = _ring(12, lambda deg: polygon((Point(-0.035, 0.22), Point(0.035, 0.22), Point(0, 0.46))).transformed(
        Transform.turn(deg)))  # fmt: skip
    return gathered((rays, _dot(0, 0, 0.16)))


def _tulip() -> Path:
    cup = [petal(0.5, 0.2, deg, 0).transformed(Transform.move(0, -0.06)) for deg in (-26, 0, 26)]
    leaves = [petal(0.3, 0.1, deg, 0).transformed(Transform.move(0, -0.42)) for deg in (-62, 62)]
    stem = polygon((Point(-0.02, -0.5), Point(0.02, -0.5), Point(0.02, -0.02), Point(-0.02, -0.02)))
    return gathered((*cup, *leaves, stem))


def _knot() -> Path:
    loops = _ring(4, lambda deg: petal(0.42, 0.3, deg, 0.05), 45)
    return gathered((loops, _ring(4, lambda deg: _dot(0, 0.42, 0.05).transformed(Transform.turn(deg)))))


def _drop() -> Path:
    return gathered(
        (
            petal(0.5, 0.3, 180).transformed(Transform.move(0, 0.14)),
            petal(0.3, 0.1, -52).transformed(Transform.move(0, 0.16)),
            petal(0.3, 0.1, 52).transformed(Transform.move(0, 0.16)),
            _dot(0, 0.3, 0.06),
        )
    )


FLEURONS: Mapping[FleuronName, Path] = {
    "rosette": _rosette(),
    "trefoil": _trefoil(),
    "lozenge": _lozenge(),
    "sprig": _sprig(),
    "sun": _sun(),
    "tulip": _tulip(),
    "knot": _knot(),
    "drop": _drop(),
}


def choose_fleuron(asked: OrnamentName, chance: Random) -> Path | None:
    """The fleuron asked for, or one that chance picks; None if none is wanted."""
    if asked == "none":
        return None
    if asked == "auto":
        return tuple(FLEURONS.values())[int(chance.random() * len(FLEURONS))]
    return FLEURONS[asked]


def stamp(motif: Path, box: Rect, colour: Colour) -> Filled:
    """A motif as large as a box allows, in its middle."""
    size = min(box.width, box.height)
    return Filled(motif.transformed(Transform.stretch(size, size).moved(*box.centre)), colour)


def rule(y: float, left: float, right: float, width: float, colour: Colour) -> Filled:
    """A level rule of a width in mm about `y`."""
    return Filled(Path.rectangle(Rect(left, y - width / 2, right - left, width)), colour)


def double_rule(y: float, left: float, right: float, inward: int, colour: Colour) -> tuple[Filled, Filled]:
    """A thin rule at `y` and a finer one beside it, towards the middle of the spine: 1 up, -1 down."""
    return rule(y, left, right, 0.11, colour), rule(y + inward * 0.2, left, right, 0.06, colour)


def frame(rect: Rect, colour: Colour, width: float, *, second: float = 0.0) -> tuple[Stroked, ...]:
    """A frame, and a finer one inside it at the distance `second`."""
    outer = Stroked(Path.rectangle(rect), Pen(width, colour))
    if not second:
        return (outer,)
    return (outer, Stroked(Path.rectangle(rect.grown(-second)), Pen(width * 0.55, colour)))


def corner_pieces(rect: Rect, size: float, colour: Colour) -> Filled:
    """A fan of leaves in each corner of a rectangle."""
    fan = gathered(
        (
            *(petal(0.75, 0.2, -deg, 0.1) for deg in (18, 45, 90 - 18)),
            *(petal(0.45, 0.1, -deg, 0.1) for deg in (5, 31.5, 58.5, 85)),
            _dot(0.1, 0.1, 0.08),
        )
    )
    turned = [
        fan.transformed(Transform.quarter_turn(turns).then(Transform.stretch(size, size)).moved(*corner))
        for turns, corner in enumerate(rect.corners)
    ]
    return Filled(gathered(turned), colour)


BandName = Literal["dots", "lozenges", "leaves", "waves", "chain", "key"]


def band(name: BandName, rect: Rect, colour: Colour) -> Filled | Stroked:
    """A row of small motifs that fills a level strip."""
    height = rect.height
    if name == "waves":
        return Stroked(_waves(rect), Pen(height * 0.22, colour))
    count = max(1, round(rect.width / (height * 1.05)))
    step = rect.width / count
    motif = {
        "dots": _dot(0, 0, 0.26),
        "lozenges": _diamond(0, 0, 0.42, 0.42),
        "leaves": petal(0.9, 0.5, -90, -0.45),
        "chain": gathered((_dot(0, 0, 0.3), _diamond(0.5, 0, 0.14, 0.14))),
        "key": gathered(_key()),
    }[name]
    placed = [
        motif.transformed(Transform.stretch(height, height).moved(rect.x + step * (number + 0.5), rect.centre.y))
        for number in range(count)
    ]
    return Filled(gathered(placed), colour)


def _key() -> Iterator[Path]:
    """One turn of a Greek key, of bars."""
    for x, y, wide, high in ((-0.5, -0.5, 1.0, 0.14), (-0.4, -0.5, 0.14, 0.9), (-0.4, 0.26, 0.7, 0.14),
                             (0.16, -0.18, 0.14, 0.5), (-0.12, -0.18, 0.42, 0.14)):  # fmt: skip
        yield Path.rectangle(Rect(x, y, wide, high))


def _waves(rect: Rect) -> Path:
    count = max(1, round(rect.width / (rect.height * 1.6)))
    step, y, rise = rect.width / count, rect.centre.y, rect.height * 0.42
    commands: list[tuple[str | float, ...]] = [("M", rect.x, y)]
    for number in range(count):
        x = rect.x + step * number
        commands.append(("C", x + step * 0.36, y + 2 * rise, x + step * 0.64, y - 2 * rise, x + step, y))
    return Path(tuple(commands))
