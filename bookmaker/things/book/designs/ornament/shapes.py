"""Small pieces of art that all designs are made of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from math import cos, pi, sin
from random import Random

from .....ground.geometry import Path, Point, Rect
from .....ground.units import to_pt

__all__ = ["Commands", "blot", "gathered", "rounded", "snapped"]

Commands = list[tuple[str | float, ...]]
"""What a path is made of, while it grows."""

GRID_PT = 0.02
"""Points of texture lie on this grid, 7 µm: finer would make the file larger and nothing better."""

STEP = GRID_PT / to_pt(1.0)


def gathered(paths: Iterable[Path]) -> Path:
    """Several outlines as one, to be drawn in one go."""
    return Path(tuple(command for path in paths for command in path.commands))


def rounded(rect: Rect, radius: float) -> Path:
    """A rectangle with round corners."""
    r = min(radius, rect.width / 2, rect.height / 2)
    h = r * 0.4477
    x, y, right, top = rect.x, rect.y, rect.right, rect.top
    return Path(
        (
            ("M", x + r, y),
            ("L", right - r, y),
            ("C", right - h, y, right, y + h, right, y + r),
            ("L", right, top - r),
            ("C", right, top - h, right - h, top, right - r, top),
            ("L", x + r, top),
            ("C", x + h, top, x, top - h, x, top - r),
            ("L", x, y + r),
            ("C", x, y + h, x + h, y, x + r, y),
            ("Z",),
        )
    )


def snapped(commands: Sequence[tuple[str | float, ...]]) -> Path:
    """A path with its points on a grid that is fine enough to print."""
    # command[0] is a letter, all after it are numbers; covers have millions of them
    return Path(
        tuple([(command[0], *[_on_grid(round(value / STEP)) for value in command[1:]]) for command in commands])  # type: ignore[operator]
    )


@lru_cache(maxsize=50_000)
def _on_grid(steps: int) -> float:
    """A place on the grid in mm. Textures have millions of points on few places: each is one number in memory."""
    return steps * STEP


def blot(at: Point, radius: float, chance: Random, points: int = 5) -> Iterator[tuple[str | float, ...]]:
    """A round, uneven spot: a closed curve through the middles of a ring of points."""
    turn = chance.random()
    radii = [radius * (0.72 + 0.56 * chance.random()) for _ in range(points)]
    step = 2 * pi / points
    ring = [(at.x + r * cos(turn + step * i), at.y + r * sin(turn + step * i)) for i, r in enumerate(radii)]
    middles = [((a[0] + b[0]) / 2, (a[1] + b[1]) / 2) for a, b in zip(ring, ring[1:] + ring[:1], strict=True)]
    yield ("M", *middles[-1])
    for (px, py), (mx, my), (lx, ly) in zip(ring, middles, middles[-1:] + middles[:-1], strict=True):
        yield ("C", lx + (px - lx) * 0.7, ly + (py - ly) * 0.7, mx + (px - mx) * 0.7, my + (py - my) * 0.7, mx, my)
    yield ("Z",)
