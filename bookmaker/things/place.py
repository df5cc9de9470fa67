"""Where in the room something stands, lies or hangs, as it was measured."""

from __future__ import annotations

from typing import Self

from pydantic import Field, model_validator

from ..ground.geometry import Point, Rect, Size
from ..ground.told import print_mm
from ..shelf_file.fields.entry import Entry
from ..shelf_file.fields.measures import RoomLength
from ..shelf_file.fields.words import SurfaceName, refuse

__all__ = ["LEVEL", "UPRIGHT", "PlaceEntry"]

ALONG = ("left", "middle", "right")
UPRIGHT, LEVEL = ("foot", "top"), ("front", "back")
"""What tells how high something is on a wall, and how far from the front edge of what is level."""


class PlaceEntry(Entry):
    """A place on a surface of the room: one measure along it, one up it or from its front edge."""

    on: SurfaceName = Field(description="name of the wall, the desk or the floor, as under surfaces")
    left: RoomLength | None = Field(None, description="from the left end of the surface to its left edge")
    middle: RoomLength | None = Field(None, description="from the left end of the surface to its middle")
    right: RoomLength | None = Field(None, description="from the right end of the surface to its right edge")
    foot: RoomLength | None = Field(None, description="on a wall: from the floor to its lower edge")
    top: RoomLength | None = Field(None, description="on a wall: from the top of the wall to its upper edge")
    centre: RoomLength | None = Field(None, description="from the floor, or from the front edge, to its centre")
    front: RoomLength | None = Field(None, description="on what is level: from the front edge to its front")
    back: RoomLength | None = Field(None, description="on what is level: from the back edge to its back")

    @model_validator(mode="after")
    def _two_measures(self) -> Self:
        for keys, said in ((ALONG, "along the surface"), (("centre", *UPRIGHT, *LEVEL), "the other way")):
            given = [key for key in keys if getattr(self, key) is not None]
            if len(given) != 1:
                *others, last = keys
                zero = print_mm(0)
                raise refuse(
                    f"has {' and '.join(given) or 'no measure'} {said}",
                    f"write one of {', '.join(others)} and {last}",
                    instead={**dict.fromkeys((*ALONG, "centre", *UPRIGHT, *LEVEL)), "left": zero, "centre": zero},
                )
        return self

    @property
    def across(self) -> str:
        """The key of the measure that is not along the surface."""
        return next(key for key in ("centre", *UPRIGHT, *LEVEL) if getattr(self, key) is not None)

    def rect(self, size: Size, surface: Size) -> Rect:
        """The place of something of a size on a surface, from its lower left corner, or its front left one.

        A frame of 26 × 31 mm whose middle is 100 mm from the left and whose centre is 120 mm above the floor has its
        lower left corner at (87, 104.5).
        """
        x = _start((self.left, self.middle, self.right), size.width, surface.width)
        low = self.foot if self.front is None else self.front
        high = self.top if self.back is None else self.back
        return Rect(x, _start((low, self.centre, high), size.height, surface.height), *size)

    @classmethod
    def at(cls, on: str, corner: Point, *, upright: bool) -> PlaceEntry:
        """The place whose lower left corner is there."""
        return cls(on=on, left=corner.x, **{(UPRIGHT if upright else LEVEL)[0]: corner.y})


def _start(measures: tuple[float | None, float | None, float | None], side: float, whole: float) -> float:
    """Where something begins of which one of these is known: its begin, its middle, or how far from the end it ends."""
    begin, middle, end = measures
    if begin is not None:
        return begin
    return middle - side / 2 if middle is not None else whole - (end or 0.0) - side
