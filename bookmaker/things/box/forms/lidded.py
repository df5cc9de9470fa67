"""The lidded box: a tray, and a second one that goes over it as a lid."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from ....ground.problems import Problem
from ....ground.told import print_range, rounded_down
from ....ground.units import print_mm
from ....shelf_file.fields.measures import PageSide
from ..net import Card, Room
from .form import BoxEntry, BoxSides, Folded, in_colour_of
from .tray import outside_of_tray, tray_net

__all__ = ["LiddedBox"]

LID_OF_HEIGHT = 0.4
"""A lid reaches down over this share of its box, if nothing else is said."""


class LiddedBox(BoxEntry):
    """A base and a lid over it."""

    kind: Literal["lidded box"] = "lidded box"
    tabbed = True
    lid: PageSide | None = Field(None, description="how far the lid reaches down; two fifths of the box, if not given")
    base_faces: BoxSides | None = Field(
        None, description="what is printed on the base; the colour of the lid, if not given"
    )

    def nets(self, room: Room, card: Card) -> Folded:
        """Base and lid; the room in the lid is the base outside and the play on each side."""
        base = outside_of_tray(room, card)
        over = self._over(room, card)
        nets = (
            tray_net("base", room, card, self.tab).under(over.height),
            tray_net("lid", over, card, self.tab, lid=True),
        )
        lid = outside_of_tray(over, card)
        return Folded(nets, Room(lid.length, lid.width, base.height + card.caliper))

    def faces_of(self, net: str) -> BoxSides | None:
        """The base has its own."""
        return (self.base_faces or in_colour_of(self.faces)) if net == "base" else self.faces

    def faults(self, room: Room, card: Card) -> Iterator[Problem]:
        """A lid that is deeper than its box does not go on."""
        yield from super().faults(room, card)
        most = outside_of_tray(room, card).height
        if self.lid is not None and self.lid > most + 1e-9:
            yield Problem(
                f"a lid {print_mm(self.lid, 2)} deep does not go on a base {print_mm(most, 2)} high",
                f"write at most {print_mm(rounded_down(most), 1)}",
                field=("lid",),
            )
        if self.play < 0.05:
            yield Problem(
                f"with a play of {print_mm(self.play, 2)} on each side the lid cannot go on",
                f"write play: {print_range(0.15, 0.25)}",
                field=("play",),
            )

    def _over(self, room: Room, card: Card) -> Room:
        base = outside_of_tray(room, card)
        deep = self.lid if self.lid is not None else base.height * LID_OF_HEIGHT
        return Room(base.length + 2 * self.play, base.width + 2 * self.play, deep)
