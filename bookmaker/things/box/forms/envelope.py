"""The envelope: a face, two side flaps folded in, a back folded up over them, and a flap that closes it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from ....ground.drawing import Art
from ....ground.geometry import Axis, Point, Rect, Size
from ....sheets.flat import Role
from ..net import Card, Hinge, Net, NetPanel, Room, rect_panel, tab_beside
from .form import BoxEntry, BoxSides, Folded
from .post import PostEntry, addressed

__all__ = ["Envelope", "strip_beside"]

BACK_OF_HEIGHT, FLAP_OF_HEIGHT = 0.75, 0.45
"""The back and the flap cover so much of the face: they lap by a fifth of it (common practice)."""

LONGEST_SIDE_FLAP = 8.0


def strip_beside(name: str, to: str, rect: Rect, crease: tuple[Point, Point], step: int) -> NetPanel:
    """A strip between two creases as wide as what lies between the panels beside it."""
    return rect_panel(name, Role.EDGE, rect, Hinge(to, *crease, step))


class Envelope(BoxEntry):
    """An envelope; its inside is as long and as wide as its face, its height what lies in it is thick."""

    kind: Literal["envelope"] = "envelope"
    post: PostEntry | None = Field(None, description="what is written and stuck on its face: an address, a stamp")
    stands = False

    def faces_of(self, net: str) -> BoxSides | None:
        """What is printed on it; an address needs nothing else there."""
        return super().faces_of(net) or (BoxSides() if self.post else None)

    def written_on(self, panel: str, size: Size) -> Iterator[Art]:
        """The address, on the face."""
        if self.post and panel == "face":
            yield from addressed(self.post, size)

    def nets(self, room: Room, card: Card) -> Folded:
        """One net: each flap folds over those before it, one caliper and a film further out."""
        c, g = card.caliper, card.glue
        x, y = (room.length + c) / 2, (room.width + c) / 2
        sides, back, closing = room.height + c, room.height + 2 * c + g, room.height + 3 * c + g
        deep = self.tab if self.tab is not None else min(LONGEST_SIDE_FLAP, room.length / 5)
        panels: list[NetPanel] = [rect_panel("face", Role.FRONT, Rect(-x, -y, 2 * x, 2 * y))]
        inset, high = 2 * c, room.width * BACK_OF_HEIGHT
        for side, way in (("right", 1), ("left", -1)):
            foot, head = Point(way * x, -y + inset), Point(way * x, high - y - inset)
            strip = Rect(min(way * x, way * (x + sides)), foot.y, sides, head.y - foot.y)
            panels.append(strip_beside(f"{side} edge", "face", strip, (foot, head), 1))
            outer = foot.plus(way * sides, 0), head.plus(way * sides, 0)
            start, stop = outer if way > 0 else outer[::-1]
            panels.append(tab_beside(f"{side} flap", f"{side} edge", start, stop, deep, 2))
        edge = -y - back
        panels.append(strip_beside("lower edge", "face", Rect(-x, edge, 2 * x, back), (Point(-x, -y), Point(x, -y)), 3))
        panels.append(
            rect_panel(
                "back",
                Role.BACK,
                Rect(-x, edge - high, 2 * x, high),
                Hinge("lower edge", Point(-x, edge), Point(x, edge), 4),
                2,
            )
        )
        edge, slant = y + closing, room.length * 0.12
        panels.append(strip_beside("upper edge", "face", Rect(-x, y, 2 * x, closing), (Point(-x, y), Point(x, y)), 5))
        tip = edge + room.width * FLAP_OF_HEIGHT
        corners = (Point(-x, edge), Point(x, edge), Point(x - slant, tip), Point(-x + slant, tip))
        crease = Hinge("upper edge", Point(-x, edge), Point(x, edge), 6)
        panels.append(NetPanel("closing flap", Role.FLAP, corners, crease))
        glued = (("right flap", "back"), ("left flap", "back"))
        net = Net("envelope", tuple(panels), glued, Axis.Y)
        return Folded((net,), Room(2 * x + c, 2 * y + c, room.height + 4 * c + g))
