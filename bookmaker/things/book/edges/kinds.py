"""The table of edges: one function a kind, one row a kind."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from ....ground.drawing import Colour
from .leaves import gilt, lines, stained
from .marbled import marbled
from .strip import EdgeArt, Layout

__all__ = ["KINDS", "edge_art", "edge_tone"]

KINDS: Mapping[str, Callable[[Layout], EdgeArt]] = {
    "lines": lines,
    "gilt": gilt,
    "stained": stained,
    "marbled": marbled,
}

TONES: Mapping[str, Colour] = {
    "lines": Colour.from_hex("#dccfb2"),
    "gilt": Colour.from_hex("#c0963c"),
    "marbled": Colour.from_hex("#8c7a6c"),
}
"""What they are from afar, but for stained ones."""


def edge_art(kind: str, layout: Layout) -> EdgeArt:
    """The art of an edge strip, out to its bleed; the same seed always gives the same."""
    return KINDS[kind](layout)


def edge_tone(kind: str, stain: Colour) -> Colour | None:
    """The colour that edges have from afar; None for bare ones."""
    return stain if kind == "stained" else TONES.get(kind)
