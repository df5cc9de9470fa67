"""The folder for loose papers: a back, a spine as wide as what lies in it, and a lower front, so that a name shows."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from ....ground.geometry import Axis, Point, Rect
from ....ground.problems import Problem
from ....ground.told import rounded_down
from ....ground.units import print_mm
from ....sheets.flat import Role
from ....shelf_file.fields.measures import Margin
from ..net import Card, Hinge, Net, Room, rect_panel
from .envelope import strip_beside
from .form import BoxEntry, Folded

__all__ = ["Folder"]

LOWER_FRONT = 1 / 9.625
"""A front is so much lower than its back: 1 in of 9 5/8 in, as on files for letter paper."""


class Folder(BoxEntry):
    """A folder; its inside is as long and as wide as its back, its height what lies in it is thick."""

    kind: Literal["folder"] = "folder"
    fibres = "along its fold, which is bent often"
    stands = False
    lower: Margin | None = Field(None, description="how much lower its front is; a tenth of its back, if not given")

    def nets(self, room: Room, card: Card) -> Folded:
        """One net, folded at its lower edge."""
        c = card.caliper
        x, y = (room.length + c) / 2, (room.width + c) / 2
        spine, high = room.height + c, 2 * y - self._lower(room)
        panels = (
            rect_panel("back", Role.BACK, Rect(-x, -y, 2 * x, 2 * y)),
            strip_beside("spine", "back", Rect(-x, -y - spine, 2 * x, spine), (Point(-x, -y), Point(x, -y)), 1),
            rect_panel(
                "front",
                Role.FRONT,
                Rect(-x, -y - spine - high, 2 * x, high),
                Hinge("spine", Point(-x, -y - spine), Point(x, -y - spine), 2),
                2,
            ),
        )
        # it is opened and shut: fibres along the fold hold longest
        return Folded((Net("folder", panels, (), Axis.X),), Room(2 * x, 2 * y + c / 2, room.height + 2 * c))

    def faults(self, room: Room, card: Card) -> Iterator[Problem]:
        """A front that is gone."""
        yield from super().faults(room, card)
        if self._lower(room) > room.width / 2:
            yield Problem(
                f"a front {print_mm(self._lower(room), 2)} lower than the back of "
                f"{print_mm(room.width, 2)} leaves no front",
                f"write at most {print_mm(rounded_down(room.width / 2), 1)}",
                field=("lower",),
            )

    def _lower(self, room: Room) -> float:
        return self.lower if self.lower is not None else room.width * LOWER_FRONT
