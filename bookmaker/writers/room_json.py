"""The surfaces of a room in the plan: what is where on them, in mm from their lower left, or front left, corners."""

from __future__ import annotations

from typing import Any

from ..ground.units import rounded
from ..shelf.room.room_plan import OnSurface, SurfacePlan
from .schema_parts import group, listed, numbers, or_null, text, yes

__all__ = ["SURFACE", "surface_report"]

SURFACE = group(
    "a wall, a desk or a floor",
    {
        "name": text("its name in the shelf file"),
        "upright": yes("whether it is a wall; else it is level"),
        "size_mm": numbers("its width, and its height or its depth, in mm", 2),
        "things": listed(
            "what is there, from the left",
            group(
                "something in its place",
                {
                    "thing": or_null(text("its id; null for a space of the shelf")),
                    "name": text("what it is called"),
                    "rect_mm": numbers("left, low or front, width, height or depth, in mm", 4),
                    "hook_mm": or_null(numbers("where it hangs, from the left and from the floor, in mm", 2)),
                },
            ),
        ),
    },
)


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
