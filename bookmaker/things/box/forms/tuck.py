"""The tuck box, as cards come in: a tube, closed at both ends by a lid with a tuck over two dust flaps."""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt
from typing import Literal

from ....ground.geometry import Axis, Point, Rect
from ....ground.outlines import area_within
from ....ground.problems import Problem
from ....ground.units import print_mm
from ....sheets.flat import Role
from ..net import Card, Hinge, Net, NetPanel, Room, Shown, rect_panel, tab_beside
from .form import BoxEntry, Folded

__all__ = ["TuckBox"]

TUCK_OF_WIDTH, LONGEST_TUCK, SHORTEST_TUCK = 0.6, 6.0, 1.5
"""A tuck is as deep as this share of the box from front to back, within these lengths in mm (common practice)."""

USUAL_FLAP = 5.0
"""Depth of the glue flap in mm, where the side is wide enough."""


class TuckBox(BoxEntry):
    """A tube with tucked ends."""

    kind: Literal["tuck box"] = "tuck box"
    fibres = "around the tube, across its upright folds, so that its walls stay flat"

    def nets(self, room: Room, card: Card) -> Folded:
        """One net. The flap costs the length a caliper and a film, the tucks the width a caliper and the play."""
        net = _Tube(room, card, self.play, self._tuck(room), self._flap(room))
        c = card.caliper
        outside = Room(net.across + c, net.deep + c, room.height + 4 * c)
        return Folded((Net("box", tuple(net.panels()), (("glue flap", "right"),), Axis.X, Shown.UPRIGHT),), outside)

    def turned_to(self, lying: Room) -> Room:
        """What lies in it stands, its longest side upright: so the tucks close over its ends."""
        thin, wide, long = sorted(lying)
        return Room(wide, thin, long)

    def faults(self, room: Room, card: Card) -> Iterator[Problem]:
        """Tucks that do not hold."""
        yield from super().faults(room, card)
        if self._tuck(room) < SHORTEST_TUCK:
            yield Problem(
                f"in a room {print_mm(room.width, 2)} from front to back and {print_mm(room.height, 2)} high, tucks of "
                f"{print_mm(self._tuck(room), 2)} do not hold",
                "make it wider from front to back, or of another form",
                field=self.sized_by,
            )

    def _tuck(self, room: Room) -> float:
        return min(room.width * TUCK_OF_WIDTH, room.height * 0.4, LONGEST_TUCK)

    def _flap(self, room: Room) -> float:
        return self.tab if self.tab is not None else min(USUAL_FLAP, room.width / 2)


class _Tube:
    """Lines of the net: x from the left side's crease at the front, y from the crease of the lower dust flaps."""

    def __init__(self, room: Room, card: Card, play: float, tuck: float, flap: float) -> None:
        self.c, self.layer, self.play, self.tuck, self.flap = card.caliper, card.layer, play, tuck, flap
        self.across = room.length + self.c + card.layer
        self.back = room.length + self.c
        self.deep = room.width + 2 * self.c + play
        self.high = room.height + self.c
        # from the middle of the back to that of a tuck: the depth of a lid
        self.lid = self.deep - self.c - play

    def panels(self) -> Iterator[NetPanel]:
        """All panels, from the front on."""
        c, low, high = self.c, -self.c, self.high + self.c
        tall = high - low
        yield rect_panel("front", Role.FRONT, Rect(0, low, self.across, tall))
        upright = Point(0, 0), Point(0, self.high)
        yield rect_panel("left", Role.LEFT, Rect(-self.deep, 0, self.deep, self.high), Hinge("front", *upright, 3))
        x = -self.deep
        back = Rect(x - self.back, low, self.back, tall)
        yield rect_panel("back", Role.BACK, back, Hinge("left", Point(x, 0), Point(x, self.high), 2))
        yield tab_beside("glue flap", "back", Point(back.x, self.high - c), Point(back.x, c), self.flap, 1)
        right = Rect(self.across, 0, self.deep + c / 2, self.high)
        crease = Hinge("front", Point(self.across, 0), Point(self.across, self.high), 4)
        yield rect_panel("right", Role.RIGHT, right, crease)
        for end, way, edge, step in (("lower", -1, 0.0, 5), ("upper", 1, self.high, 8)):
            yield from self._dust_flaps(end, way, edge, step)
            yield from self._lid(end, way, low if way < 0 else high, step)

    def _dust_flaps(self, end: str, way: int, edge: float, step: int) -> Iterator[NetPanel]:
        """They leave room for the tuck, on its way in too."""
        led_in = sqrt(self.lid**2 - self.tuck**2)
        front = self.deep - led_in + self.c + self.play / 2
        back = self.deep - self.c / 2 - self.play
        long = min(self.across / 2 - self.c - self.play, (back - front) * 0.8)
        for side, start, turn in (("left", 0.0, -1), ("right", self.across, 1)):
            near, far = start + turn * front, start + turn * back
            slant = (back - front) * 0.15
            tip = edge + way * long
            corners = (
                Point(near, edge),
                Point(far, edge),
                Point(far - turn * slant, tip),
                Point(near + turn * slant, tip),
            )
            hinge = Hinge(side, corners[0], corners[1], step)
            yield NetPanel(f"{end} {side} dust flap", Role.FLAP, _counter_clockwise(corners), hinge)

    def _lid(self, end: str, way: int, edge: float, step: int) -> Iterator[NetPanel]:
        """The lid on the back, and its tuck, which is folded right over and eased as it is led in."""
        right = -self.deep - self.c / 2 - self.play
        left = -self.deep - self.back + self.play + self.c / 2
        far = edge + way * self.lid
        role = Role.TOP if way > 0 else Role.BOTTOM
        lid = Rect(left, min(edge, far), right - left, self.lid)
        yield rect_panel(f"{end} lid", role, lid, Hinge("back", Point(left, edge), Point(right, edge), step + 2), 2)
        slant, tip = self.tuck * 0.25, far + way * self.tuck
        corners = (Point(left, far), Point(right, far), Point(right - slant, tip), Point(left + slant, tip))
        hinge = Hinge(f"{end} lid", Point(left, far), Point(right, far), step + 1, 180.0, (step + 2, 90.0))
        yield NetPanel(f"{end} tuck", Role.FLAP, _counter_clockwise(corners), hinge)


def _counter_clockwise(corners: tuple[Point, ...]) -> tuple[Point, ...]:
    return corners if area_within(corners) > 0 else corners[::-1]
