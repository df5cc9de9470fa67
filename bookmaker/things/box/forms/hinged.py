"""The hinged box, as cigars come in: a tray whose back wall goes on into a lid with skirts at front and sides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from pydantic import Field

from ....ground.geometry import Axis, Point, Rect
from ....ground.problems import Problem
from ....ground.told import print_range, rounded_down
from ....ground.units import print_mm
from ....sheets.flat import Role
from ....shelf_file.fields.measures import PageSide
from ..net import Card, Hinge, Net, NetPanel, Room, rect_panel, tab_beside
from .form import BoxEntry, Folded, usual_tab
from .tray import tray_net

__all__ = ["HingedBox"]

SKIRT_OF_HEIGHT = 0.35
"""The skirts of the lid reach down over this share of the box, if nothing else is said."""


class HingedBox(BoxEntry):
    """A box and its lid from one piece."""

    kind: Literal["hinged box"] = "hinged box"
    tabbed = True
    fibres = "along its hinge, which is bent often"
    lid: PageSide | None = Field(None, description="how far the lid reaches down; a third of the box, if not given")

    def nets(self, room: Room, card: Card) -> Folded:
        """One net; the tabs of the side skirts lie inside the front one and take a caliper and a film of glue there."""
        c, k = card.caliper, self.play
        tray = tray_net("box", room, card, self.tab).under(self._skirt(room))
        x, y = tray.by_name["floor"].rect.right, (room.width + c) / 2
        across, deep = x + c + k, room.width + 3 * c + k + card.glue
        skirt = self._skirt(room) + c / 2
        hinge = -y - (room.height + c)
        panels = [_higher_back(panel, c) for panel in tray.panels]
        wall, tab = tray.by_name["back wall"].rect, self.tab or usual_tab(min(room.width, room.length))
        panels += _lid(Rect(wall.x, hinge, wall.width, 0), across, deep, skirt, card, tab)
        glued = (*tray.glued, ("right skirt tab", "front skirt"), ("left skirt tab", "front skirt"))
        outside = Room(2 * across + c, deep + c, room.height + 2 * c)
        # the hinge is bent often: fibres along it hold longest
        return Folded((Net("box", tuple(panels), glued, Axis.X),), outside)

    def faults(self, room: Room, card: Card) -> Iterator[Problem]:
        """Skirts that are longer than the box is high do not close."""
        yield from super().faults(room, card)
        if self.lid is not None and self.lid > room.height + 1e-9:
            yield Problem(
                f"a lid {print_mm(self.lid, 2)} deep does not close over a box {print_mm(room.height, 2)} high inside",
                f"write at most {print_mm(rounded_down(room.height), 1)}",
                field=("lid",),
            )
        if self.play < 0.05:
            yield Problem(
                f"with a play of {print_mm(self.play, 2)} on each side the lid cannot close",
                f"write play: {print_range(0.15, 0.25)}",
                field=("play",),
            )

    def _skirt(self, room: Room) -> float:
        return self.lid if self.lid is not None else room.height * SKIRT_OF_HEIGHT


def _higher_back(panel: NetPanel, c: float) -> NetPanel:
    """The back wall reaches up to the middle of the lid's card, half a caliper more than the others."""
    if panel.name != "back wall":
        return panel
    rect = panel.rect
    return rect_panel(
        "back wall",
        panel.role,
        Rect(rect.x, rect.y - c / 2, rect.width, rect.height + c / 2),
        panel.hinge,
        panel.quarters,
    )


def _lid(hinge: Rect, x: float, deep: float, skirt: float, card: Card, tab: float) -> list[NetPanel]:
    """The lid below its hinge, its skirts and their tabs; `x` is half its width, `deep` from hinge to front."""
    front, corner = hinge.y - deep, hinge.y - deep + card.layer
    back = hinge.y - card.caliper
    crease = Hinge("back wall", Point(hinge.x, hinge.y), Point(hinge.right, hinge.y), 7)
    lid = rect_panel("lid", Role.TOP, Rect(-x, front, 2 * x, deep), crease)
    panels: list[NetPanel] = []
    for side, way, role, quarters in (("right", 1, Role.RIGHT, 1), ("left", -1, Role.LEFT, 3)):
        left = min(way * x, way * (x + skirt))
        crease = Hinge("lid", Point(way * x, corner), Point(way * x, back), 5)
        name = f"{side} skirt"
        panels.append(rect_panel(name, role, Rect(left, corner, skirt, back - corner), crease, quarters))
        inner, outer = way * (x + card.caliper), way * (x + skirt)
        start, stop = sorted((inner, outer))
        panels.append(tab_beside(f"{name} tab", name, Point(start, corner), Point(stop, corner), tab, 4))
    crease = Hinge("lid", Point(-x, front), Point(x, front), 6)
    panels.append(rect_panel("front skirt", Role.FRONT, Rect(-x, front - skirt, 2 * x, skirt), crease, 0))
    # what stands on the walls is not to be read twice
    return [lid, *(replace(panel, plain=True) for panel in panels)]
