"""The drawer box, as matches come in: a tray that slides in a sleeve.

The seam of the sleeve is a flap nearly as wide as its floor, so that the drawer lies flat on it; it takes a caliper and
a film of glue of the height.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from ....ground.geometry import Axis, Point, Rect
from ....ground.problems import Problem
from ....ground.told import print_range
from ....ground.units import print_mm
from ....sheets.flat import Role
from ..net import Card, Hinge, Net, NetPanel, Room, Shown, rect_panel, tab_beside
from .form import BoxEntry, BoxSides, Folded, in_colour_of
from .tray import outside_of_tray, tray_net

__all__ = ["DrawerBox", "sleeve_net"]

SHORT_OF_WALL = 0.5
"""The flap ends so many mm before the wall over against it."""


def sleeve_net(clear: Room, card: Card) -> Net:
    """A sleeve around a clear room, open at both ends of its length."""
    c = card.caliper
    x, y = clear.length / 2, (clear.width + c) / 2
    near, far = clear.height + 2 * c + card.glue, clear.height + c
    bottom = clear.width + 1.5 * c
    panels: tuple[NetPanel, ...] = (
        rect_panel("top", Role.TOP, Rect(-x, -y, 2 * x, 2 * y)),
        rect_panel("back", Role.BACK, Rect(-x, y, 2 * x, far), Hinge("top", Point(-x, y), Point(x, y), 2), 2),
        tab_beside("glue flap", "back", Point(x, y + far), Point(-x, y + far), clear.width + c / 2 - SHORT_OF_WALL, 1),
        rect_panel("front", Role.FRONT, Rect(-x, -y - near, 2 * x, near), Hinge("top", Point(-x, -y), Point(x, -y), 3)),
        rect_panel(
            "bottom",
            Role.BOTTOM,
            Rect(-x, -y - near - bottom, 2 * x, bottom),
            Hinge("front", Point(-x, -y - near), Point(x, -y - near), 4),
        ),
    )
    return Net("sleeve", panels, (("glue flap", "bottom"),), Axis.Y, Shown.PRINT_UP)


class DrawerBox(BoxEntry):
    """A drawer in a sleeve."""

    kind: Literal["drawer box"] = "drawer box"
    tabbed = True
    drawer_faces: BoxSides | None = Field(
        None, description="what is printed on the drawer; the colour of the sleeve, if not given"
    )

    def nets(self, room: Room, card: Card) -> Folded:
        """Drawer and sleeve; the sleeve is as long as the drawer."""
        drawer = outside_of_tray(room, card)
        clear = Room(drawer.length, drawer.width + 2 * self.play, drawer.height + 2 * self.play)
        c = card.caliper
        outside = Room(clear.length, clear.width + 2 * c, clear.height + 3 * c + card.glue)
        return Folded((tray_net("drawer", room, card, self.tab), sleeve_net(clear, card)), outside)

    def faces_of(self, net: str) -> BoxSides | None:
        """The drawer has its own."""
        return (self.drawer_faces or in_colour_of(self.faces)) if net == "drawer" else self.faces

    def faults(self, room: Room, card: Card) -> Iterator[Problem]:
        """A drawer without play does not slide."""
        yield from super().faults(room, card)
        if self.play < 0.05:
            yield Problem(
                f"with a play of {print_mm(self.play, 2)} on each side the drawer does not slide",
                f"write play: {print_range(0.15, 0.25)}",
                field=("play",),
            )
