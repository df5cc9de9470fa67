"""Publisher's devices, drawn for houses that do not exist."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from .....ground.geometry import Path, Point, Rect, Transform, polygon
from .ornaments import petal
from .shapes import gathered

__all__ = ["DEVICES", "DeviceName"]

DeviceName = Literal["none", "lamp", "key", "hourglass", "kite", "buoy", "boat"]


def _lamp() -> Path:
    return gathered(
        (
            Path.rectangle(Rect(-0.22, -0.48, 0.44, 0.1)),
            Path.rectangle(Rect(-0.3, -0.34, 0.6, 0.07)),
            petal(0.44, 0.2).transformed(Transform.move(0, -0.24)),
            Path.rectangle(Rect(-0.27, -0.27, 0.05, 0.5)),
            Path.rectangle(Rect(0.22, -0.27, 0.05, 0.5)),
            polygon((Point(-0.32, 0.23), Point(0.32, 0.23), Point(0.08, 0.42), Point(-0.08, 0.42))),
            Path.circle(Point(0, 0.46), 0.05),
        )
    )


def _key() -> Path:
    bow = Path.circle(Point(0, 0.28), 0.22)
    hole = _hole(0, 0.28, 0.12)
    teeth = [Path.rectangle(Rect(0.0, y, 0.2, 0.07)) for y in (-0.46, -0.32)]
    return gathered((bow, hole, Path.rectangle(Rect(-0.045, -0.5, 0.09, 0.58)), *teeth))


def _hole(x: float, y: float, r: float) -> Path:
    """A circle drawn clockwise: a hole in what lies under it."""
    return Path.circle(Point(0, 0), r).transformed(Transform.stretch(-1, 1).moved(x, y))


def _hourglass() -> Path:
    return gathered(
        (
            Path.rectangle(Rect(-0.32, 0.38, 0.64, 0.1)),
            Path.rectangle(Rect(-0.32, -0.48, 0.64, 0.1)),
            polygon((Point(-0.24, 0.34), Point(0.24, 0.34), Point(0.03, 0.02), Point(-0.03, 0.02))),
            polygon((Point(-0.24, -0.34), Point(-0.03, -0.02), Point(0.03, -0.02), Point(0.24, -0.34))),
        )
    )


def _kite() -> Path:
    tail = [
        polygon([Point(x + 0.09 * dx, y + 0.04 * dy) for dx, dy in ((-1, 1), (1, -1), (1, 1), (-1, -1))])
        for x, y in ((0.02, -0.3), (-0.06, -0.44))
    ]
    quarters = [
        polygon((Point(0.015, 0.16), Point(0.28, 0.16), Point(0.015, 0.48))),
        polygon((Point(-0.015, 0.16), Point(-0.28, 0.16), Point(-0.015, 0.48))),
        polygon((Point(0.015, 0.13), Point(0.28, 0.13), Point(0.015, -0.24))),
        polygon((Point(-0.015, 0.13), Point(-0.28, 0.13), Point(-0.015, -0.24))),
    ]
    return gathered((*quarters, *tail))


def _buoy() -> Path:
    body = polygon((Point(-0.3, -0.26), Point(0.3, -0.26), Point(0.12, 0.16), Point(-0.12, 0.16)))
    sea = [petal(0.3, 0.1).transformed(Transform.quarter_turn(3).moved(x, -0.4)) for x in (-0.45, -0.15, 0.15)]
    return gathered((body, Path.rectangle(Rect(-0.025, 0.16, 0.05, 0.2)), Path.circle(Point(0, 0.4), 0.1), *sea))


def _boat() -> Path:
    hull = Path((("M", -0.46, -0.18), ("C", -0.36, -0.4, 0.36, -0.4, 0.46, -0.18), ("Z",)))
    sails = [
        polygon((Point(-0.04, -0.12), Point(-0.36, -0.12), Point(-0.04, 0.44))),
        polygon((Point(0.03, -0.12), Point(0.34, -0.12), Point(0.03, 0.3))),
    ]
    return gathered((hull, *sails))


DEVICES: Mapping[DeviceName, Path] = {
    "lamp": _lamp(),
    "key": _key(),
    "hourglass": _hourglass(),
    "kite": _kite(),
    "buoy": _buoy(),
    "boat": _boat(),
}
