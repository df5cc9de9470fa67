"""What every form of box is to the rest: its keys, its nets around a room, what can be wrong with them."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar, Self

from pydantic import Field, model_validator

from ....ground.drawing import Art
from ....ground.geometry import Size
from ....ground.problems import Problem
from ....ground.told import rounded_down
from ....ground.units import print_mm
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.measures import SmallLength, TabWidth, ThingSide
from ....shelf_file.fields.words import Ink, PictureFile, StockName, Title, refuse
from ...listed import SizedEntry
from ...surface import SurfaceEntry
from ..net import Card, Net, Room

__all__ = ["BoxEntry", "BoxSides", "Folded", "ThreeSides", "in_colour_of", "usual_tab"]

USUAL_TAB, SMALLEST_TAB = 5.0, 1.5
"""Depth of glue tabs in mm where there is room, and below which they do not hold (common practice)."""


class ThreeSides(Entry):
    """The three sides of a box or of the room in it."""

    length: ThingSide = Field(description="along its front")
    width: ThingSide = Field(description="from front to back")
    height: ThingSide = Field(description="from its floor to its lid, or how thick what lies in it is")


class BoxSides(Entry):
    """What the sides of a box show, named as who sees its front names them."""

    colour: Ink | None = Field(None, description="ground of all sides")
    picture: PictureFile | None = Field(
        None, description="one picture over the whole net, which runs on over its edges"
    )
    front: SurfaceEntry = Field(SurfaceEntry(), description="the front")
    back: SurfaceEntry = Field(SurfaceEntry(), description="the back")
    left: SurfaceEntry = Field(SurfaceEntry(), description="the left side")
    right: SurfaceEntry = Field(SurfaceEntry(), description="the right side")
    top: SurfaceEntry = Field(SurfaceEntry(), description="the top")
    bottom: SurfaceEntry = Field(SurfaceEntry(), description="the bottom")


@dataclass(frozen=True, slots=True)
class Folded:
    """The nets of a box, and how large it is outside, in mm."""

    nets: tuple[Net, ...]
    outside: Room


class BoxEntry(SizedEntry, ABC):
    """The keys that all forms of boxes share."""

    stock: StockName = Field(description="name of the card, as under stocks")
    inside: ThreeSides | None = Field(None, description="the room inside")
    outside: ThreeSides | None = Field(None, description="the box outside")
    contents: tuple[Title, ...] = Field((), description="names or ids of what lies in it, one on the other")
    clearance: SmallLength = Field(0.3, description="play around the contents")
    play: SmallLength = Field(0.2, description="play of a lid, a sleeve or a tuck, on each side")
    tab: TabWidth | None = Field(None, description="depth of the glue tabs; 5 mm, or less in a small box")
    faces: BoxSides | None = Field(None, description="what is printed on it; nothing, if not given")

    tabbed: ClassVar[bool] = False
    """Whether tabs of its long walls lie, two and two, inside its end walls."""

    stands: ClassVar[bool] = True
    """Whether it stands on a shelf; what does not lies about."""

    fibres: ClassVar[str] = "across its long folds, so that its long walls stay flat"
    """Which way its grain runs, and why, as the guide says it."""

    @model_validator(mode="after")
    def _one_size(self) -> Self:
        if bool(self.inside) == bool(self.outside) and (self.inside or not self.contents):
            long, wide, high = print_mm(30, 1), print_mm(20, 1), print_mm(12, 1)
            sides = {"length": long, "width": wide, "height": high}
            said = "has both inside and outside" if self.inside else "has no size"
            raise refuse(
                said,
                f"write one of inside: {{{', '.join(f'{side}: {long}' for side, long in sides.items())}}}, outside: or "
                "contents:",
                instead={"inside": sides, "outside": None},
            )
        return self

    @abstractmethod
    def nets(self, room: Room, card: Card) -> Folded:
        """The nets around a room."""

    def turned_to(self, lying: Room) -> Room:
        """The room for what takes another one as it lies, turned as it goes into this form: as it lies, if not said."""
        return lying

    def faults(self, room: Room, card: Card) -> Iterator[Problem]:
        """What keeps a box from being made around a room."""
        most = usual_tab(room.width)
        if self.tabbed and self.tab is not None and self.tab > room.width / 2 + 1e-9:
            yield Problem(
                f"tabs of {print_mm(self.tab)} are longer than half the side they lie on, {print_mm(room.width, 2)}",
                f"write at most {print_mm(rounded_down(room.width / 2))}, or leave tab out",
                field=("tab",),
            )
        if self.tabbed and most < SMALLEST_TAB:
            yield Problem(
                f"a room {print_mm(room.width, 2)} wide leaves glue tabs of {print_mm(most, 2)}, which do not hold",
                "make it wider",
                field=self.sized_by,
            )
        if self.stands and card.caliper > min(room) / 4:
            yield Problem(
                f"card of {print_mm(card.caliper, 2)} is too thick for a room of {print_mm(min(room), 2)}: it is a "
                "fourth of that or more",
                "name a thinner card, or make the box larger",
                field=("stock",),
            )

    @property
    def sized_by(self) -> tuple[str, ...]:
        """The key that says how large it is."""
        return ("inside",) if self.inside else ("outside",) if self.outside else ("contents",)

    def faces_of(self, net: str) -> BoxSides | None:  # noqa: ARG002 (most forms have one net)
        """What is printed on one of its nets."""
        return self.faces

    def written_on(self, panel: str, size: Size) -> Iterator[Art]:  # noqa: ARG002 (most forms have nothing written)
        """What is written over all else on a panel of a net, upright, its lower left corner at the origin."""
        return iter(())

    def around(self, outside: Room, card: Card) -> Room:
        """The room in a box of a size outside: all forms add the same to any room."""
        known = Room(100.0, 100.0, 100.0)
        walls = self.nets(known, card).outside
        return Room(*(side + room - wall for side, room, wall in zip(outside, known, walls, strict=True)))


def in_colour_of(faces: BoxSides | None) -> BoxSides | None:
    """ThreeSides of the same colour with nothing on them."""
    return BoxSides(colour=faces.colour) if faces and faces.colour else None


def usual_tab(side: float) -> float:
    """How deep tabs are that lie, two behind one another, on a side of so many mm."""
    return min(USUAL_TAB, side / 2 - 0.25)
