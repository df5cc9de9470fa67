"""A closed box as it is seen: from the front as it stands on a shelf, from above as it stands or lies on a desk."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.art import Filled, Group
from ...ground.drawing import WHITE, Art
from ...ground.geometry import Path, Rect, Transform
from ...sheets.facsimiles import Facsimile
from ...sheets.flat import Flat, Panel, Role
from ...sheets.piece import Piece
from .dressing import upright
from .folding import Place, folded
from .net import Net, NetPanel, Shown
from .plan import BoxPlan

__all__ = ["front_view", "top_view"]


def front_view(box: BoxPlan, arts: Sequence[Art]) -> Piece | None:
    """Its front as a piece of its own that nobody prints; `arts` are those of its nets. None if it does not stand."""
    if not box.entry.stands:
        return None
    whole = Rect(0, 0, box.outside.length, box.outside.height)
    layers: list[Art] = []
    for net, art in zip(box.nets, arts, strict=True):
        layers += _fronts(net, art, whole)
    flat = Flat("front", "front", box.entry.stock, whole.corners, (), (Panel(Role.FRONT, whole),))
    return Piece(f"{box.id}-front", box.id, (box.name, "front"), flat, Group(tuple(layers)))


def top_view(box: BoxPlan, arts: Sequence[Art]) -> Facsimile | None:
    """Its top as who stands before it sees it, or the face of what lies flat; None where it is open."""
    role = Role.TOP if box.entry.stands else Role.FRONT
    for net, art in zip(reversed(box.nets), reversed(arts), strict=True):
        for panel in net.panels:
            if panel.role is role:
                size, to_net = upright(panel)
                to_view = to_net.moved(-net.corner.x, -net.corner.y).inverse
                whole = Rect(0, 0, *size)
                seen = Group((Filled.box(whole, WHITE), Group((art,), to_view)), clip=Path.rectangle(whole))
                return Facsimile(seen, whole)
    return None


def _fronts(net: Net, art: Art, whole: Rect) -> Iterator[Art]:
    """The front panels of a net, each where it stands: a lid hangs from the top, all else stands on the foot."""
    poses = folded(net, max(net.steps) + 1)
    heights = {
        panel.name: [_height(poses[panel.name].of(at), net.shown) for at in panel.outline] for panel in net.panels
    }
    everything = [height for some in heights.values() for height in some]
    shift = whole.top - max(everything) if net.shown is Shown.PRINT_UP else -min(everything)
    fronts = [panel for panel in net.panels if panel.role is Role.FRONT]
    for panel in fronts:
        yield _placed(panel, net, art, whole, min(heights[panel.name]) + shift)


def _placed(panel: NetPanel, net: Net, art: Art, whole: Rect, foot: float) -> Art:
    """A panel of a dressed net in the middle of the front, its foot so high."""
    rect = panel.rect.moved(-net.corner.x, -net.corner.y)
    to_view = Transform.move(whole.centre.x - rect.centre.x, foot - rect.y)
    return Group((Filled.box(rect, WHITE), Group((art,), clip=Path.rectangle(rect))), to_view)


def _height(place: Place, shown: Shown) -> float:
    """How high a point of a folded net stands."""
    return {Shown.PRINT_UP: place.z, Shown.ON_FLOOR: -place.z, Shown.UPRIGHT: place.y}[shown]
