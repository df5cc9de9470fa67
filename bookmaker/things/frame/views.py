"""A frame as it is seen from the front, with its joints, its window and its picture."""

from __future__ import annotations

from collections.abc import Sequence

from ...ground.art import Filled, Group, Stroked
from ...ground.drawing import WHITE, Art, Colour
from ...ground.geometry import Point, Rect, Size, Transform, polygon
from ..making import Figure
from ..views.flat_view import scale_for, scale_in_words
from ..views.ink import EDGE, HAIRLINE, PAPER, box, line, word
from ..views.signs import pointed
from .entry import FrameEntry, RailsEntry
from .sizes import FrameSizes, joints

__all__ = ["front_view", "section_view"]

HIGHEST = 70.0
"""How high it is drawn at most, in mm."""

RAIL, LAYER, BEYOND = 16.0, 2.4, 18.0
"""How wide a rail is drawn when it is cut through, how thick a layer behind it, and how much of that, in mm."""


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


def section_view(entry: FrameEntry, room: float) -> Figure:
    """A rail and the edge of what it frames cut through, the face of the frame up: layer by layer, thicker than it is.

    What is thin is drawn so that it can be seen.
    """
    rails = entry.rails
    scale = RAIL / rails.face
    layers = [name for name, there in _layers(entry) if there]
    high = LAYER * len(layers)
    sunk = min(max(rails.rebate * scale, LAYER), HIGHEST / 4) if rails.rebate else 0.0
    face, depth = rails.face * scale, max(min(rails.depth * scale, HIGHEST / 2), sunk + 5.0)
    step = max(rails.covers * scale, 2.5)
    foot = max(3.0, high - sunk + 3.0)
    left, inner = 4.0, 4.0 + face
    profile = [(left, foot), (left, foot + depth), (inner, foot + depth), (inner, foot + sunk)]
    profile += [(inner - step, foot + sunk), (inner - step, foot)] if sunk else [(inner, foot)]
    art: list[Art] = [_filled(profile, PAPER)]
    start = inner - step + 0.4
    for number, name in enumerate(layers):
        y = foot + sunk - LAYER * (number + 1)
        art.append(box(Rect(start, y, BEYOND, LAYER - 0.3), WHITE))
        art.append(
            pointed(name, Point(start + BEYOND + 16.0, y + LAYER / 2), Point(start + BEYOND - 2.0, y + LAYER / 2))
        )
    art.append(word("rail", Point(left + face / 2, foot + depth / 2 + sunk / 2), 2.1, room=face * 0.9))
    size = Size(min(room, start + BEYOND + 28.0), foot + depth + 3.0)
    return Figure(
        Group(tuple(art)), size, "Cut through a rail, its face up: what lies behind it, in this order. Not to scale."
    )


def _layers(entry: FrameEntry) -> tuple[tuple[str, bool], ...]:
    """What may lie behind the rails, the foremost first."""
    return (
        ("glazing", bool(entry.glazing)),
        ("mount", entry.mount is not None),
        ("picture", True),
        ("backing", bool(entry.backing)),
    )


def _filled(points: Sequence[tuple[float, float]], ground: Colour) -> Art:
    outline = polygon([Point(*point) for point in points])
    return Group((Filled(outline, ground), Stroked(outline, EDGE)))
