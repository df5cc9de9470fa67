"""A frame as it is seen from the front, with its joints, its window and its picture."""

from __future__ import annotations

from ...ground.art import Group
from ...ground.drawing import Art
from ...ground.geometry import Point, Rect, Size, Transform
from ..making import Figure
from ..views.flat_view import scale_for, scale_in_words
from ..views.ink import HAIRLINE, box, line
from .entry import RailsEntry
from .sizes import FrameSizes, joints

__all__ = ["front_view"]

HIGHEST = 70.0
"""How high it is drawn at most, in mm."""


def front_view(sizes: FrameSizes, rails: RailsEntry, room: float) -> Figure:
    """The whole frame to a round scale."""
    scale = scale_for(sizes.outside, Size(room, HIGHEST))
    outer = Rect(0, 0, *(side * scale for side in sizes.outside))
    face = (rails.face + 2 * sizes.layer) * scale
    inner = outer.grown(-face, -face, -face, -face)
    lines = (line(*ends, HAIRLINE) for ends in joints(outer, inner, mitred=rails.corners == "mitre"))
    art: list[Art] = [box(outer), box(inner), *lines]
    if sizes.window:
        # the window as it lies behind the rails: the mount is in the middle of the opening
        left, low = ((whole - inside) / 2 for whole, inside in zip(sizes.outside, sizes.framed, strict=True))
        corner = Point((left + sizes.window.x) * scale, (low + sizes.window.y) * scale)
        art.append(box(Rect(*corner, sizes.window.width * scale, sizes.window.height * scale)))
    drawn = Group(tuple(art), Transform.move(0.2, 0.2))
    caption = f"The frame from the front, {scale_in_words(scale)}"
    return Figure(drawn, Size(outer.width + 0.4, outer.height + 0.4), caption)
