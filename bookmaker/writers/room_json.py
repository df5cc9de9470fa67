"""The surfaces of a room in the plan: what is where on them, in mm from their lower left, or front left, corners."""

from __future__ import annotations

from typing import Any

from ..ground.units import rounded
from ..shelf.room.room_plan import OnSurface, SurfacePlan

__all__ = ["surface_report"]


def surface_report(surface: SurfacePlan) -> dict[str, Any]:
    """A wall, a desk or a floor with all that is on it."""
    width, height = surface.entry.size
    return {
        "name": surface.name,
        "upright": surface.entry.upright,
        "size_mm": [rounded(width), rounded(height)],
        "things": [_on_surface(one) for one in surface.things],
    }


def _on_surface(one: OnSurface) -> dict[str, Any]:
    return {
        "thing": one.thing or None,
        "name": one.name,
        "rect_mm": [rounded(length) for length in one.rect],
        "hook_mm": [rounded(length) for length in one.hook] if one.hook else None,
    }
