"""Folding flats in code, in three dimensions: every panel is a rigid plate, every fold a round one.

Lengths in mm. A flat lies printed face up, x to the right and y up, its middle plane at z = 0. Its folds are
mountains: the other panel turns down, about an axis at a given distance below the middle plane. A fold takes
the arc of the middle plane, half of it from each of its two panels.
"""

from __future__ import annotations

from collections.abc import Callable
from math import cos, pi, radians, sin
from typing import NamedTuple

from bookmaker.ground.geometry import Point
from bookmaker.sheets.flat import Flat, Panel, Role

__all__ = ["Space", "Turn", "inner", "outer", "panel_of", "turned_down"]


class Space(NamedTuple):
    """A point in space."""

    x: float
    y: float
    z: float


Turn = Callable[[Space], Space]
"""Takes a point of the flat to its place in the folded thing."""


def arc(angle_deg: float, inside_radius: float, thickness: float) -> float:
    """Length of the middle plane in a fold."""
    return radians(angle_deg) * (inside_radius + thickness / 2)


def turned_down(
    axis: str, at: float, beyond: int, thickness: float, angle_deg: float = 90, inside_radius: float = 0
) -> Turn:
    """What a fold does to all that lies beyond it.

    The fold runs along `axis`, x or y, and crosses the other axis `at`; `beyond` is +1 or −1, the side that turns.
    """
    length = arc(angle_deg, inside_radius, thickness)
    radius = inside_radius + thickness / 2

    def turn(point: Space) -> Space:
        across = point.x if axis == "y" else point.y
        # Distance from where the fold begins; the arc itself is wound up.
        along = (across - at) * beyond - length / 2
        angle = radians(angle_deg)
        height = point.z + radius
        out = sin(angle) * height + cos(angle) * along
        down = cos(angle) * height - sin(angle) * along - radius
        moved = at + beyond * (out - length / 2)
        return Space(moved, point.y, down) if axis == "y" else Space(point.x, moved, down)

    return turn


def outer(point: Point, thickness: float) -> Space:
    """A point on the printed face."""
    return Space(point.x, point.y, thickness / 2)


def inner(point: Point, thickness: float) -> Space:
    """A point on the other face."""
    return Space(point.x, point.y, -thickness / 2)


def panel_of(flat: Flat, role: Role) -> Panel:
    """The one panel with this role."""
    (found,) = (panel for panel in flat.panels if panel.role is role)
    return found


assert abs(arc(180, 1, 2) - 2 * pi) < 1e-12
