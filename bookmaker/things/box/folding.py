"""Nets folded in three dimensions: where each panel is at each step of the work."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import cos, radians, sin
from typing import NamedTuple

from ...ground.geometry import Point
from .net import Hinge, Net, NetPanel

__all__ = ["Place", "Pose", "folded"]


class Place(NamedTuple):
    """A point in space in mm; a net lies in the plane of x and y, its print towards z."""

    x: float
    y: float
    z: float


@dataclass(frozen=True, slots=True)
class Pose:
    """How something was moved from where it lay on the net: its new axes, and where the origin came to be."""

    x: Place
    y: Place
    z: Place
    origin: Place

    def of(self, point: Point, above: float = 0.0) -> Place:
        """Where a point of the net is now, or one so many mm above its middle plane, towards the print."""
        return Place(
            *(
                origin + point.x * x + point.y * y + above * z
                for origin, x, y, z in zip(self.origin, self.x, self.y, self.z, strict=True)
            )
        )

    def bent(self, hinge: Hinge, panel: NetPanel, angle: float) -> Pose:
        """The pose of a panel that hangs on one of this pose, bent by degrees away from the print."""
        (x0, y0), (x1, y1) = hinge.start, hinge.end
        length = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
        dx, dy = (x1 - x0) / length, (y1 - y0) / length
        middle = panel.rect.centre
        # the panel is to go down: which way round the crease that is depends on the side it lies on
        side = 1.0 if dx * (middle.y - y0) - dy * (middle.x - x0) > 0 else -1.0
        c, s = cos(radians(angle)), -side * sin(radians(angle))
        turned = (
            Place(c + dx * dx * (1 - c), dx * dy * (1 - c), -dy * s),
            Place(dx * dy * (1 - c), c + dy * dy * (1 - c), dx * s),
            Place(dy * s, -dx * s, c),
        )
        back = Place(
            x0 - turned[0].x * x0 - turned[1].x * y0,
            y0 - turned[0].y * x0 - turned[1].y * y0,
            -turned[0].z * x0 - turned[1].z * y0,
        )
        x, y, z = (self._along(axis) for axis in turned)
        moved = self._along(back)
        return Pose(x, y, z, Place(*(a + b for a, b in zip(self.origin, moved, strict=True))))

    def _along(self, step: Place) -> Place:
        return Place(*(step.x * x + step.y * y + step.z * z for x, y, z in zip(self.x, self.y, self.z, strict=True)))


FLAT = Pose(Place(1.0, 0.0, 0.0), Place(0.0, 1.0, 0.0), Place(0.0, 0.0, 1.0), Place(0.0, 0.0, 0.0))
"""Where the first panel of a net stays."""


def folded(net: Net, step: int, share: float = 1.0) -> Mapping[str, Pose]:
    """Every panel after all steps before one, and a share of that."""
    poses: dict[str, Pose] = {}
    for panel in net.panels:
        if panel.hinge is None:
            poses[panel.name] = FLAT
        else:
            angle = _angle(panel.hinge, step, share)
            poses[panel.name] = poses[panel.hinge.to].bent(panel.hinge, panel, angle)
    return poses


def _angle(hinge: Hinge, step: int, share: float) -> float:
    """How far a hinge is bent, in degrees."""

    def done(own: int) -> float:
        return 1.0 if own < step else share if own == step else 0.0

    angle = hinge.angle * done(hinge.step)
    if hinge.eased is None:
        return angle
    later, other = hinge.eased
    return angle + (other - angle) * done(later)
