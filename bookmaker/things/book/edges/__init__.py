"""What the edges of a solid book show: one function a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from ....ground.drawing import Art, Colour
from ....ground.geometry import Rect
from ....sheets.flat import Flat
from . import leaves, marbled
from .strip import EdgeArt, Layout

__all__ = ["edge_art"]

KINDS: Mapping[str, Callable[[Layout, Colour], EdgeArt]] = {
    "lines": leaves.lines,
    "gilt": leaves.gilt,
    "stained": leaves.stained,
    "marbled": marbled.marbled,
}


def edge_art(kind: str, colour: Colour, flat: Flat, seed: str, resolution_dpi: float) -> Art:
    """The art of an edge strip, out to its bleed; the same seed always gives the same.

    `colour` is that of stained edges; nothing is drawn finer than the printer's resolution.
    """
    area = Rect(0, 0, *flat.size).grown(flat.bleed)
    return KINDS[kind](Layout(area, seed, resolution_dpi), colour)
