"""The tray: a floor and four walls, held by tabs of the long walls that are glued inside the end walls.

The tabs take a caliper and a film of glue at each end; the end walls stand so much further out, and the room inside is
as long as it is to be. It is also the base under a lid, the lid itself, and a drawer.
"""

from __future__ import annotations

from typing import Literal

from ....ground.geometry import Axis, Point, Rect
from ....sheets.flat import Role
from ..net import Card, Hinge, Net, NetPanel, Room, Shown, rect_panel, tab_beside
from .form import BoxEntry, Folded, usual_tab

__all__ = ["Tray", "outside_of_tray", "tray_net"]

STANDING = {"far": (Role.FRONT, 0), "near": (Role.BACK, 2), "right": (Role.RIGHT, 3), "left": (Role.LEFT, 1)}
"""What the walls are of a tray that stands on its floor, whose net shows the floor from below, and how their heads
are turned."""

HANGING = {"far": (Role.BACK, 2), "near": (Role.FRONT, 0), "right": (Role.RIGHT, 1), "left": (Role.LEFT, 3)}
"""The same of a lid, whose net shows its top from above."""


def outside_of_tray(room: Room, card: Card) -> Room:
    """A tray outside: a room of 30 × 20 × 12 mm in card of 0.3 mm with films of 0.03 mm is 31.26 × 20.6 × 12.3 mm."""
    return Room(
        room.length + 2 * card.caliper + 2 * card.layer, room.width + 2 * card.caliper, room.height + card.caliper
    )


def tray_net(name: str, room: Room, card: Card, tab: float | None, *, lid: bool = False) -> Net:
    """The net of a tray around a room, its floor in the middle; of a lid the floor is its top."""
    c = card.caliper
    x, y = (room.length + c) / 2, (room.width + c) / 2
    end, wall = x + card.layer, room.height + c / 2
    depth = tab if tab is not None else usual_tab(room.width)
    known = HANGING if lid else STANDING
    floor = rect_panel("floor", Role.TOP if lid else Role.BOTTOM, Rect(-end, -y, 2 * end, 2 * y))
    panels: list[NetPanel] = [floor]
    for side, way in (("far", 1), ("near", -1)):
        edge = way * y
        role, quarters = known[side]
        wall_name = f"{role} wall"
        crease = Hinge("floor", Point(-x, edge), Point(x, edge), 2)
        panels.append(
            rect_panel(wall_name, role, Rect(-x, min(edge, edge + way * wall), 2 * x, wall), crease, quarters)
        )
        low, high = edge + way * c, edge + way * wall
        for hand, across in (("right", x), ("left", -x)):
            ends = (Point(across, low), Point(across, high))
            # the wall lies on the left of the edge it is given
            start, stop = ends if (across > 0) == (way > 0) else ends[::-1]
            panels.append(tab_beside(f"{role} {hand} tab", wall_name, start, stop, depth, 1))
    for side, way in (("right", 1), ("left", -1)):
        role, quarters = known[side]
        crease = Hinge("floor", Point(way * end, -y), Point(way * end, y), 3)
        left = min(way * end, way * (end + wall))
        panels.append(rect_panel(f"{role} wall", role, Rect(left, -y, wall, 2 * y), crease, quarters))
    glued = tuple((f"{long} {hand} tab", f"{hand} wall") for long in ("front", "back") for hand in ("right", "left"))
    return Net(name, tuple(panels), glued, Axis.Y, Shown.PRINT_UP if lid else Shown.ON_FLOOR)


class Tray(BoxEntry):
    """An open tray."""

    kind: Literal["tray"] = "tray"
    tabbed = True

    def nets(self, room: Room, card: Card) -> Folded:
        """One net."""
        return Folded((tray_net("tray", room, card, self.tab),), outside_of_tray(room, card))
