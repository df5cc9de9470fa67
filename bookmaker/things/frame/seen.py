"""A framed picture as it hangs: its rails, its mount, and what is seen of the picture between them."""

from __future__ import annotations

from collections.abc import Iterator

from ...ground.art import Filled, Group, Stroked
from ...ground.drawing import Art, Colour, Pen
from ...ground.geometry import Path, Rect, Transform
from ...sheets.facsimiles import Facsimile
from ..book.designs.tones import darker
from .plan import FramePlan
from .sizes import joints

__all__ = ["framed"]

WOOD = Colour.from_hex("#7d5f41")
"""The colour of rails that are not wrapped: stained wood."""

GILT_EDGE = 0.4
"""How wide the gilt edge beside the picture is drawn, in mm."""

JOINT = 0.12
"""Width of the line at a joint, in mm."""


def framed(plan: FramePlan, picture: Art) -> Facsimile:
    """The whole frame at true size, its lower left corner at the origin; `picture` is drawn as it is printed."""
    sizes, rails = plan.sizes, plan.thing.entry.rails
    outer = Rect(0, 0, *sizes.outside)
    sight = outer.grown(*(-(whole - seen) / 2 for whole, seen in zip(sizes.outside, sizes.sight, strict=True)))
    colour = rails.wrap.colour if rails.wrap else WOOD
    pen = Pen(JOINT, darker(colour, 0.2))
    layers: list[Art] = [Filled.box(outer, colour)]
    layers += [
        Stroked.line(*ends, pen) for ends in joints(outer, sight, mitred=rails.corners == "mitre" or bool(rails.wrap))
    ]
    if rails.wrap and rails.wrap.gilt:
        layers.append(Filled.box(sight.grown(GILT_EDGE), rails.wrap.gilt))
    layers.append(Group(tuple(_between(plan, picture, outer)), clip=Path.rectangle(sight)))
    return Facsimile(Group(tuple(layers)), outer)


def _between(plan: FramePlan, picture: Art, outer: Rect) -> Iterator[Art]:
    """The mount and the picture in its window, or the picture alone, in the middle of the frame."""
    sizes, mount = plan.sizes, plan.thing.entry.mount
    left, low = ((whole - inside) / 2 for whole, inside in zip(outer.size, sizes.framed, strict=True))
    if mount is None or sizes.window is None:
        yield Group((picture,), Transform.move(left, low))
        return
    window = sizes.window.moved(left, low)
    yield Filled.box(Rect(left, low, *sizes.framed), mount.colour)
    corner = Transform.move(window.x - mount.covers, window.y - mount.covers)
    yield Group((Group((picture,), corner),), clip=Path.rectangle(window))
