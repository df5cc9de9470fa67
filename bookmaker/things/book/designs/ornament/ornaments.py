"""Ornaments: rules, frames, bands and what motifs are made of, all drawn here from a few curves.

A motif is a path in a unit square about the origin, its head up; `stamp` sets it into a box.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Literal

from .....ground.art import Filled, Stroked
from .....ground.drawing import Colour, Pen
from .....ground.geometry import Path, Point, Rect, Transform, polygon
from .shapes import gathered

__all__ = [
    "BandName",
    "band",
    "diamond",
    "dot",
    "double_rule",
    "frame",
    "petal",
    "ring",
    "rule",
    "stamp",
]


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


def ring(count: int, make: Callable[[float], Path], first_deg: float = 0.0) -> Path:
    """So many of one thing in a ring, each made for its turn in degrees."""
    return gathered(make(first_deg + 360 / count * number) for number in range(count))


def dot(x: float, y: float, radius: float) -> Path:
    """A disc."""
    return Path.circle(Point(x, y), radius)


def diamond(x: float, y: float, wide: float, high: float) -> Path:
    """A lozenge that reaches so far aside and up from its middle."""
    return polygon((Point(x, y - high), Point(x + wide, y), Point(x, y + high), Point(x - wide, y)))


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


BandName = Literal["dots", "lozenges", "leaves", "waves", "chain", "key"]


def band(name: BandName, rect: Rect, colour: Colour) -> Filled | Stroked:
    """A row of small motifs that fills a level strip."""
    height = rect.height
    if name == "waves":
        return Stroked(_waves(rect), Pen(height * 0.22, colour))
    count = max(1, round(rect.width / (height * 1.05)))
    step = rect.width / count
    motif = {
        "dots": dot(0, 0, 0.26),
        "lozenges": diamond(0, 0, 0.42, 0.42),
        "leaves": petal(0.9, 0.5, -90, -0.45),
        "chain": gathered((dot(0, 0, 0.3), diamond(0.5, 0, 0.14, 0.14))),
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
