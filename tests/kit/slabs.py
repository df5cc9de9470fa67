"""Folded card as slabs in space: where their corners are, how far they are apart, whether they pass through each other.

Two convex bodies are apart if and only if some plane parts them that runs along a face of one of them, or along an edge
of each (the separating axis theorem; Gottschalk, Lin & Manocha, 1996).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

import numpy as np

from bookmaker.ground.geometry import Point
from bookmaker.things.box.folding import Pose
from bookmaker.things.box.net import NetPanel

__all__ = ["Slab", "brick", "deepest", "on_panel", "overlap", "slab_of"]

Vectors = np.ndarray[tuple[int, int], np.dtype[np.float64]]


class Slab:
    """A convex body: its corners, the directions of its edges, and those across its faces."""

    def __init__(self, corners: Vectors, edges: Vectors, normals: Vectors) -> None:
        self.corners, self.edges, self.normals = corners, edges, normals
        self.low, self.high = corners.min(0), corners.max(0)

    def moved(self, x: float, y: float, z: float) -> Slab:
        """The same elsewhere."""
        return Slab(self.corners + np.array([x, y, z]), self.edges, self.normals)

    def turned_over(self) -> Slab:
        """The same turned over about the x axis."""
        over = np.array([1.0, -1.0, -1.0])
        return Slab(self.corners * over, self.edges * over, self.normals * over)


def slab_of(panel: NetPanel, pose: Pose, caliper: float) -> Slab:
    """A panel of card, half its caliper to either side of its middle."""
    rings = [[pose.of(point, above) for point in panel.outline] for above in (caliper / 2, -caliper / 2)]
    corners = np.array([list(place) for ring in rings for place in ring])
    ring = corners[: len(panel.outline)]
    around = np.roll(ring, -1, axis=0) - ring
    up = ring[0] - corners[len(panel.outline)]
    return Slab(corners, np.vstack([around, up]), np.vstack([np.cross(around, up), up]))


def brick(low: Sequence[float], high: Sequence[float]) -> Slab:
    """An upright block between two corners."""
    corners = np.array([[(low, high)[(n >> axis) & 1][axis] for axis in range(3)] for n in range(8)])
    return Slab(corners, np.eye(3), np.eye(3))


def overlap(one: Slab, other: Slab) -> float:
    """How deep two bodies lie in one another, in mm; below 0 they are so far apart or more."""
    crossed = np.cross(one.edges[:, None], other.edges[None]).reshape(-1, 3)
    axes = np.vstack([one.normals, other.normals, crossed])
    lengths = np.linalg.norm(axes, axis=1)
    axes = axes[lengths > 1e-9] / lengths[lengths > 1e-9, None]
    ones, others = one.corners @ axes.T, other.corners @ axes.T
    depth = np.minimum(ones.max(0) - others.min(0), others.max(0) - ones.min(0))
    return float(depth.min())


def near(one: Slab, other: Slab) -> bool:
    """Whether the upright boxes around two bodies meet: else the bodies do not."""
    low, high = np.maximum(one.low, other.low), np.minimum(one.high, other.high)
    return bool((low <= high).all())


def deepest(slabs: dict[str, Slab], apart: set[frozenset[str]]) -> tuple[float, str]:
    """The deepest overlap of any two slabs but those that hang on one another."""
    pairs = ((a, b) for a, b in combinations(slabs, 2) if frozenset((a, b)) not in apart and near(slabs[a], slabs[b]))
    return max(((overlap(slabs[a], slabs[b]), f"{a} in {b}") for a, b in pairs), default=(-1.0, ""))


def on_panel(pose: Pose, corners: Vectors) -> list[Point]:
    """Points in space as they lie over a panel, in the coordinates of its net."""
    from_origin = corners - np.array(pose.origin)
    return [Point(float(step @ np.array(pose.x)), float(step @ np.array(pose.y))) for step in from_origin]
