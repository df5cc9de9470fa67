"""The table of edges: one function a kind, one row a kind."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from .leaves import gilt, lines, stained
from .marbled import marbled
from .strip import EdgeArt, Layout

__all__ = ["KINDS", "edge_art"]

KINDS: Mapping[str, Callable[[Layout], EdgeArt]] = {
    "lines": lines,
    "gilt": gilt,
    "stained": stained,
    "marbled": marbled,
}


def edge_art(kind: str, layout: Layout) -> EdgeArt:
    """The art of an edge strip, out to its bleed; the same seed always gives the same."""
    return KINDS[kind](layout)
