"""Fleurons: the small motifs that stand alone on spines and fronts.

Each is bold enough for an ornament of 0.8 mm: no stroke is thinner than a sixteenth of it, 0.05 mm there, which is a
dot at 600 to the inch; nor is any hole that shall stay open.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, pi, sin
from random import Random
from typing import Literal

from .....ground.geometry import Path, Point, Rect, Transform, polygon
from .ornaments import diamond, dot, petal, ring
from .shapes import gathered

__all__ = ["FLEURONS", "FleuronName", "OrnamentName", "choose_fleuron"]

FleuronName = Literal[
    "rosette", "trefoil", "lozenge", "sprig", "sun", "tulip", "knot", "drop", "lily", "acorn", "star", "shell", "wheat",
    "thistle", "crown", "wreath", "urn", "ivy", "quatrefoil", "pine",
]  # fmt: skip
OrnamentName = Literal[
    "auto", "none", "rosette", "trefoil", "lozenge", "sprig", "sun", "tulip", "knot", "drop", "lily", "acorn", "star",
    "shell", "wheat", "thistle", "crown", "wreath", "urn", "ivy", "quatrefoil", "pine",
]  # fmt: skip

FIRST = 8
"""So many were there first."""

STILL = 0.4
"""This share of the books that leave it to chance has one of the first, as before there were others."""


def _rosette() -> Path:
    return gathered(
        (
            ring(6, lambda deg: petal(0.32, 0.2, deg, 0.14)),
            ring(6, lambda deg: dot(0, 0.37, 0.055).transformed(Transform.turn(deg)), 30),
            dot(0, 0, 0.08),
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
            diamond(0, 0, 0.2, 0.3),
            *(dot(0.42 * cos(deg), 0.42 * sin(deg), 0.055) for deg in (0, pi / 2, pi, 3 * pi / 2)),
            *(dot(0.25 * x, 0.27 * y, 0.045) for x in (-1, 1) for y in (-1, 1)),
        )
    )


def _sprig() -> Path:
    pairs = [
        petal(0.34 - 0.05 * row, 0.14, side * (58 - 6 * row)).transformed(Transform.move(0, -0.42 + 0.25 * row))
        for row in range(3)
        for side in (-1, 1)
    ]
    stem = polygon((Point(-0.038, -0.5), Point(0.038, -0.5), Point(0.032, 0.25), Point(-0.032, 0.25)))
    return gathered((*pairs, stem, petal(0.28, 0.13).transformed(Transform.move(0, 0.22))))


def _sun() -> Path:
    rays = ring(8, lambda deg: polygon((Point(-0.065, 0.26), Point(0.065, 0.26), Point(0, 0.5))).transformed(
        Transform.turn(deg)))  # fmt: skip
    return gathered((rays, dot(0, 0, 0.18)))


def _tulip() -> Path:
    cup = [petal(0.5, 0.2, deg, 0).transformed(Transform.move(0, -0.06)) for deg in (-26, 0, 26)]
    leaves = [petal(0.34, 0.13, deg, 0).transformed(Transform.move(0, -0.44)) for deg in (-62, 62)]
    stem = Path.rectangle(Rect(-0.036, -0.5, 0.072, 0.48))
    return gathered((*cup, *leaves, stem))


def _knot() -> Path:
    loops = ring(4, lambda deg: petal(0.42, 0.3, deg, 0.05), 45)
    return gathered((loops, ring(4, lambda deg: dot(0, 0.43, 0.06).transformed(Transform.turn(deg)))))


def _drop() -> Path:
    return gathered(
        (
            petal(0.5, 0.3, 180).transformed(Transform.move(0, 0.14)),
            petal(0.34, 0.15, -56).transformed(Transform.move(0, 0.16)),
            petal(0.34, 0.15, 56).transformed(Transform.move(0, 0.16)),
            dot(0, 0.36, 0.075),
        )
    )


def _lily() -> Path:
    """A fleur-de-lis: an upright leaf, two that bend outwards, a band, a foot."""
    side = Path((("M", 0.06, -0.1), ("C", 0.1, 0.22, 0.3, 0.34, 0.42, 0.18),
                 ("C", 0.5, 0.04, 0.4, -0.08, 0.3, -0.02),
                 ("C", 0.36, 0.06, 0.3, 0.14, 0.24, 0.1),
                 ("C", 0.17, 0.05, 0.15, -0.03, 0.14, -0.1), ("Z",)))  # fmt: skip
    foot = [petal(0.32, 0.13, deg).transformed(Transform.move(0, -0.18)) for deg in (-145, 180, 145)]
    return gathered((petal(0.6, 0.3).transformed(Transform.move(0, -0.1)), side, _mirrored(side),
                     Path.rectangle(Rect(-0.2, -0.2, 0.4, 0.08)), *foot))  # fmt: skip


def _mirrored(path: Path) -> Path:
    return path.transformed(Transform.stretch(-1, 1))


def _acorn() -> Path:
    nut = Path((("M", -0.22, -0.02), ("C", -0.22, -0.28, -0.08, -0.36, 0.0, -0.48),
                ("C", 0.08, -0.36, 0.22, -0.28, 0.22, -0.02), ("Z",)))  # fmt: skip
    cup = Path((("M", -0.28, 0.05), ("C", -0.28, 0.31, 0.28, 0.31, 0.28, 0.05), ("Z",)))
    leaves = [petal(0.4, 0.17, deg).transformed(Transform.move(0, 0.36)) for deg in (-84, 84)]
    return gathered((nut, cup, Path.rectangle(Rect(-0.036, 0.22, 0.072, 0.28)), *leaves))


def _star() -> Path:
    points = [(0.48 if number % 2 == 0 else 0.17, pi / 2 + pi / 8 * number) for number in range(16)]
    return polygon([Point(far * cos(turn), far * sin(turn)) for far, turn in points])


def _shell() -> Path:
    ribs = [petal(0.74, 0.25, deg).transformed(Transform.move(0, -0.34)) for deg in (-60, -30, 0, 30, 60)]
    return gathered((*ribs, petal(0.26, 0.14, 90, -0.13).transformed(Transform.move(0, -0.4))))


def _wheat() -> Path:
    ears = [petal(0.34, 0.15, side * 44).transformed(Transform.move(side * 0.03, -0.34 + 0.24 * row))
            for row in range(3) for side in (-1, 1)]  # fmt: skip
    return gathered((*ears, petal(0.28, 0.13).transformed(Transform.move(0, 0.22)),
                     Path.rectangle(Rect(-0.035, -0.5, 0.07, 0.55))))  # fmt: skip


def _thistle() -> Path:
    head = [petal(0.34, 0.12, deg).transformed(Transform.move(0, 0.12)) for deg in (-40, -20, 0, 20, 40)]
    leaves = [petal(0.42, 0.14, deg).transformed(Transform.move(0, -0.4)) for deg in (-66, 66)]
    return gathered((*head, dot(0, 0.04, 0.16), Path.rectangle(Rect(-0.035, -0.5, 0.07, 0.46)), *leaves))


def _crown() -> Path:
    points = ((-0.42, 0.12), (-0.2, -0.06), (0, 0.26), (0.2, -0.06), (0.42, 0.12), (0.34, -0.22), (-0.34, -0.22))
    pearls = [dot(x, y, 0.07) for x, y in ((-0.42, 0.2), (0, 0.36), (0.42, 0.2))]
    return gathered((polygon([Point(x, y) for x, y in points]), *pearls, Path.rectangle(Rect(-0.34, -0.4, 0.68, 0.1))))


def _wreath() -> Path:
    leaves = [petal(0.26, 0.12, turn + 118).transformed(
        Transform.move(0.32 * cos((turn + 90) * pi / 180), 0.32 * sin((turn + 90) * pi / 180)))
        for turn in range(0, 360, 40)]  # fmt: skip
    return gathered((*leaves, dot(0, 0, 0.09)))


def _urn() -> Path:
    bowl = Path((("M", -0.3, 0.1), ("C", -0.3, -0.2, -0.1, -0.24, -0.07, -0.3), ("L", 0.07, -0.3),
                 ("C", 0.1, -0.24, 0.3, -0.2, 0.3, 0.1), ("Z",)))  # fmt: skip
    lip, foot = Path.rectangle(Rect(-0.36, 0.1, 0.72, 0.08)), Path.rectangle(Rect(-0.22, -0.42, 0.44, 0.1))
    flames = [petal(0.24, 0.15, deg).transformed(Transform.move(0, 0.26)) for deg in (-44, 0, 44)]
    return gathered((bowl, lip, foot, Path.rectangle(Rect(-0.06, -0.36, 0.12, 0.1)), *flames))


def _ivy() -> Path:
    """A heart-shaped leaf on a bent stem, as printers have it."""
    half = Path((("M", 0.0, -0.2), ("C", -0.5, 0.02, -0.42, 0.46, -0.14, 0.42),
                 ("C", -0.06, 0.41, 0.0, 0.34, 0.0, 0.28), ("Z",)))  # fmt: skip
    stem = Path((("M", -0.03, -0.16), ("C", -0.04, -0.34, 0.08, -0.48, 0.28, -0.44), ("L", 0.27, -0.36),
                 ("C", 0.14, -0.38, 0.05, -0.3, 0.05, -0.16), ("Z",)))  # fmt: skip
    return gathered((half, _mirrored(half), stem))


def _quatrefoil() -> Path:
    lobes = [dot(0.23 * x, 0.23 * y, 0.17) for x, y in ((1, 0), (-1, 0), (0, 1), (0, -1))]
    return gathered((*lobes, *(diamond(0.38 * x, 0.38 * y, 0.1, 0.1) for x in (-1, 1) for y in (-1, 1))))


def _pine() -> Path:
    scales = [dot(x, y, 0.1) for y, row in ((-0.2, (-0.26, 0.0, 0.26)), (0.03, (-0.13, 0.13)), (0.26, (0.0,)))
              for x in row]  # fmt: skip
    leaves = [petal(0.34, 0.14, deg).transformed(Transform.move(0, -0.42)) for deg in (-96, 96)]
    return gathered((*scales, petal(0.2, 0.13).transformed(Transform.move(0, 0.3)), *leaves,
                     Path.rectangle(Rect(-0.035, -0.5, 0.07, 0.24))))  # fmt: skip


FLEURONS: Mapping[FleuronName, Path] = {
    "rosette": _rosette(),
    "trefoil": _trefoil(),
    "lozenge": _lozenge(),
    "sprig": _sprig(),
    "sun": _sun(),
    "tulip": _tulip(),
    "knot": _knot(),
    "drop": _drop(),
    "lily": _lily(),
    "acorn": _acorn(),
    "star": _star(),
    "shell": _shell(),
    "wheat": _wheat(),
    "thistle": _thistle(),
    "crown": _crown(),
    "wreath": _wreath(),
    "urn": _urn(),
    "ivy": _ivy(),
    "quatrefoil": _quatrefoil(),
    "pine": _pine(),
}
"""Each in a square of 1, its head up."""


def choose_fleuron(asked: OrnamentName, chance: Random) -> Path | None:
    """The fleuron asked for, or one that chance picks; None if none is wanted."""
    if asked == "none":
        return None
    if asked != "auto":
        return FLEURONS[asked]
    every, drawn = tuple(FLEURONS.values()), chance.random() * FIRST
    place, rest = int(drawn), drawn % 1.0
    if rest < STILL:
        return every[place]
    later = (rest - STILL) / (1 - STILL) * (len(every) - FIRST)
    return every[FIRST + int(later)]
