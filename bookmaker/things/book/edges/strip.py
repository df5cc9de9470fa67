"""What the art of every edge strip shares: where it lies, its chance, its finest line."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from random import Random
from typing import Self

from ....ground.art import Filled, Stroked
from ....ground.drawing import Canvas, Colour
from ....ground.geometry import Path, Rect, Transform
from ....ground.units import MM_PER_INCH
from ....sheets.flat import Flat

__all__ = ["EdgeArt", "Layout", "mix"]


@dataclass(frozen=True, slots=True)
class Layout:
    """The area to cover, bleed included, in mm; what the chance starts from; the printer's dots to the inch, the finest
    there is to draw; and the colour of stained edges.
    """

    area: Rect
    seed: str
    resolution_dpi: float
    stain: Colour

    @classmethod
    def on(cls, flat: Flat, seed: str, resolution_dpi: float, stain: Colour) -> Self:
        """A strip out to its bleed."""
        return cls(Rect(0, 0, *flat.size).grown(flat.bleed), seed, resolution_dpi, stain)

    @property
    def dot(self) -> float:
        """One dot of the printer in mm: 0.0423 at 600 to the inch."""
        return MM_PER_INCH / self.resolution_dpi

    def chance(self) -> Random:
        """The same run of numbers for the same seed, on every machine."""
        return Random(self.seed)


@dataclass(frozen=True, slots=True)
class EdgeArt:
    """A ground and what is drawn on it, cut off at the edge of the bleed; it is made up when it is drawn."""

    area: Rect
    ground: Colour
    shapes: Callable[[], Iterable[Filled | Stroked]]

    def draw(self, canvas: Canvas) -> None:
        """Fill the ground and draw the shapes in order."""
        whole = Path.rectangle(self.area)
        with canvas.placed(Transform(), whole):
            canvas.fill(whole, self.ground)
            for shape in self.shapes():
                shape.draw(canvas)


def mix(one: Colour, other: Colour, share: float) -> Colour:
    """A colour between two: `share` of the other, from 0 to 1, rounded to what a screen of 8 bits shows.

    >>> mix(Colour(0, 0, 0), Colour(1, 1, 1), 0.2)
    Colour(red=0.2, green=0.2, blue=0.2)
    """
    parts = (a + (b - a) * min(1.0, max(0.0, share)) for a, b in zip(one, other, strict=True))
    red, green, blue = (round(part * 255) / 255 for part in parts)
    return Colour(red, green, blue)
