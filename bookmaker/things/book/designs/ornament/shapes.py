"""Small pieces of art that all designs are made of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import cos, pi, sin
from random import Random

from .....ground.drawing import Art, Canvas, Colour, Pen
from .....ground.geometry import Path, Point, Rect, Transform
from .....ground.imported import ImportedPage
from .....ground.pictures import Picture
from .....ground.units import to_pt

__all__ = ["Clipped", "Commands", "FilledPage", "FilledPicture", "Line", "Repeated", "Shape", "Stacked", "Through",
           "block", "blot", "gathered", "rounded", "snapped"]  # fmt: skip

Commands = list[tuple[str | float, ...]]
"""What a path is made of, while it grows."""

GRID_PT = 0.02
"""Points of texture lie on this grid, 7 µm: finer would make the file larger and nothing better."""


@dataclass(frozen=True, slots=True)
class Shape:
    """A filled outline."""

    path: Path
    colour: Colour

    @property
    def bounds(self) -> Rect:
        """A rectangle that holds all ink."""
        return Rect.around(self.path.points())

    def draw(self, canvas: Canvas) -> None:
        """Fill it."""
        canvas.fill(self.path, self.colour)


@dataclass(frozen=True, slots=True)
class Line:
    """A drawn line."""

    path: Path
    pen: Pen

    @property
    def bounds(self) -> Rect:
        """A rectangle that holds all ink; a sharp bend may reach far out."""
        return Rect.around(self.path.points()).grown(4 * self.pen.width)

    def draw(self, canvas: Canvas) -> None:
        """Draw it."""
        canvas.stroke(self.path, self.pen)


@dataclass(frozen=True, slots=True)
class Clipped:
    """Art that shows only inside an outline."""

    art: Art
    to: Path

    def draw(self, canvas: Canvas) -> None:
        """Draw it, cut off at the outline."""
        with canvas.placed(Transform(), self.to):
            self.art.draw(canvas)


@dataclass(frozen=True, slots=True)
class Through:
    """Art seen through a transform."""

    art: Art
    transform: Transform

    def draw(self, canvas: Canvas) -> None:
        """Draw it, moved."""
        with canvas.placed(self.transform):
            self.art.draw(canvas)


@dataclass(frozen=True, slots=True)
class FilledPicture:
    """A picture placed in a rectangle, of which `shown` is seen."""

    picture: Picture
    into: Rect
    shown: Rect

    def draw(self, canvas: Canvas) -> None:
        """Place it, cut off at what is shown."""
        with canvas.placed(Transform(), Path.rectangle(self.shown)):
            canvas.picture(self.picture, self.into)


@dataclass(frozen=True, slots=True)
class FilledPage:
    """A page of a PDF file placed in a rectangle, of which `shown` is seen."""

    page: ImportedPage
    into: Rect
    shown: Rect

    def draw(self, canvas: Canvas) -> None:
        """Place it, cut off at what is shown."""
        with canvas.placed(Transform(), Path.rectangle(self.shown)):
            canvas.imported(self.page, self.into)


@dataclass(frozen=True, slots=True)
class Stacked:
    """Shapes and lines one over the other."""

    layers: tuple[Shape | Line, ...]

    @property
    def bounds(self) -> Rect:
        """A rectangle that holds all ink."""
        return Rect.around([corner for layer in self.layers for corner in layer.bounds.corners])

    def draw(self, canvas: Canvas) -> None:
        """Draw them in order."""
        for layer in self.layers:
            layer.draw(canvas)


@dataclass(frozen=True, slots=True)
class Repeated:
    """One shape, line or stack of them at several places."""

    art: Shape | Line | Stacked
    places: tuple[Point, ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw it at every place."""
        canvas.repeat(self.art, self.art.bounds, self.places)


def block(rect: Rect, colour: Colour) -> Shape:
    """A filled rectangle."""
    return Shape(Path.rectangle(rect), colour)


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
    step = GRID_PT / to_pt(1.0)
    return Path(
        tuple(
            tuple(value if isinstance(value, str) else round(value / step) * step for value in command)
            for command in commands
        )
    )


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
