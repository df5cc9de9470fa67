"""What combs and pins do to the colours that float on a marbler's bath: each pass moves every point of it.

A tine drawn through the bath takes along what it meets, and less and less what lies beside it: a point at a distance
d is taken exp(−d / s) times as far as the tine itself, where s says how stiff the bath is (the tine line of A. Lu and
others, "Mathematical Marbling", IEEE Computer Graphics and Applications 32, 2012). All lengths are in mm.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import cos, exp, hypot, pi, sin

from .....ground.geometry import Point

__all__ = ["Pass", "after", "combed", "curled", "raked", "waved"]

Pass = Callable[[Point], Point]
"""Where a point of the bath goes."""


def after(passes: Sequence[Pass], point: Point) -> Point:
    """Where a point is after all passes, one after the other."""
    for move in passes:
        point = move(point)
    return point


def combed(tooth: float, far: float, stiff: float = 0.2) -> Pass:
    """A comb drawn down the bath, its teeth `tooth` apart; `stiff` is a share of that.

    >>> combed(0.3, 0.4)(Point(0.3, 1.0))
    Point(x=0.3, y=0.6)
    """

    def move(point: Point) -> Point:
        place = point.x / tooth
        return Point(point.x, point.y - far * exp(-abs(place - round(place)) / stiff))

    return move


def raked(tooth: float, far: float, stiff: float = 0.3) -> Pass:
    """A rake drawn to and fro, so that every other tooth goes up; between two teeth the bath stands still."""

    def move(point: Point) -> Point:
        place = point.x / tooth
        nearest = round(place)
        aside = abs(place - nearest)
        taken = exp(-aside / stiff) - exp((aside - 1) / stiff)
        return Point(point.x, point.y + (far * taken if nearest % 2 else -far * taken))

    return move


def waved(step: float, length: float, far: float) -> Pass:
    """A rake of two rows of pins drawn down in waves: a pin of one row meets now the one, now the other of the next.

    Pins are half a `step` apart by turns, their waves `length` long; where they meet, the colours gather to bouquets.
    """

    def move(point: Point) -> Point:
        swing = step / 4 * sin(2 * pi * point.y / length)
        taken = 0.0
        for pin in range(round(2 * point.x / step) - 1, round(2 * point.x / step) + 2):
            at = pin * step / 2 + (-swing if pin % 2 else swing)
            taken += exp(-abs(point.x - at) / (step * 0.11))
        return Point(point.x, point.y - far * taken)

    return move


def curled(step: Point, radius: float, turns: float) -> Pass:
    """Pins that each turn a curl, in rows half a step apart; `turns` in the middle, none beyond `radius`."""

    def move(point: Point) -> Point:
        row = round(point.y / step.y)
        aside = step.x / 2 * (row % 2)
        column = round((point.x - aside) / step.x)
        dx, dy = point.x - column * step.x - aside, point.y - row * step.y
        share = max(0.0, 1 - hypot(dx, dy) / radius)
        turn = 2 * pi * turns * share * share
        return Point(point.x - dx + dx * cos(turn) - dy * sin(turn), point.y - dy + dx * sin(turn) + dy * cos(turn))

    return move
