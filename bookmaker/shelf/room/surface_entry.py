"""What the maker writes of the surfaces of a room: walls, desks, floors, and what hangs or lies there together."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Sequence
from typing import TYPE_CHECKING, Annotated, Literal, NamedTuple, Self

from pydantic import Field, model_validator

from ...ground.geometry import Point, Rect, Size
from ...ground.told import in_units
from ...shelf_file.fields.counts import GridColumns
from ...shelf_file.fields.entry import Entry
from ...shelf_file.fields.measures import RoomLength, ShelfSide, SmallLength
from ...shelf_file.fields.words import Title, refuse
from .hanging import EYE_LEVEL, USUAL_GAP, grid, row, salon

__all__ = ["GroupEntry", "RoomSurfaceEntry"]


class HangingRoom(NamedTuple):
    """The stretch of a surface that a group has, where its middle is to be, and the gap that is given or usual."""

    stretch: Rect
    middle: Point
    gap: float


class GroupEntry(Entry, ABC):
    """Some things that hang or lie together; each pattern names itself."""

    if TYPE_CHECKING:
        pattern: str

    things: tuple[Title, ...] = Field(min_length=1, description="names or ids, in their order")
    gap: RoomLength | None = Field(None, description="between neighbours; about 8 mm at 1:12, if not given")
    centre: RoomLength | None = Field(
        None, description="of the group, from the floor or the front edge; at eye level on a wall, if not given"
    )
    start: RoomLength | None = Field(None, description="where its stretch of the surface begins, from the left")
    end: RoomLength | None = Field(None, description="where that stretch ends, from the left")

    @abstractmethod
    def places(self, sizes: Sequence[Size], room: HangingRoom) -> Sequence[Rect | None]:
        """A rectangle on the surface for each; None for what finds no room."""

    def stretch(self, surface: Size) -> Rect:
        """The part of the surface that it has."""
        start = self.start or 0.0
        return Rect(start, 0.0, (surface.width if self.end is None else self.end) - start, surface.height)


class RowEntry(GroupEntry):
    """Side by side on one centre line."""

    pattern: Literal["row"] = Field("row", description="how they hang or lie together")
    gap: RoomLength | None = Field(None, description="between neighbours; all even, at the ends too, if not given")

    def places(self, sizes: Sequence[Size], room: HangingRoom) -> Sequence[Rect | None]:
        """One after the other from the left."""
        return row(sizes, room.stretch.x, room.stretch.right, room.middle.y, self.gap)


class GridEntry(GroupEntry):
    """Line by line, each in a cell of its own."""

    pattern: Literal["grid"] = Field("grid", description="how they hang or lie together")
    columns: GridColumns = Field(description="how many stand beside one another")

    def places(self, sizes: Sequence[Size], room: HangingRoom) -> Sequence[Rect | None]:
        """From the top left."""
        return grid(sizes, self.columns, room.middle, room.gap)


class SalonEntry(GroupEntry):
    """Close together around the largest."""

    pattern: Literal["salon"] = Field("salon", description="how they hang or lie together")

    def places(self, sizes: Sequence[Size], room: HangingRoom) -> Sequence[Rect | None]:
        """Around the middle."""
        return salon(sizes, room.stretch, room.middle, room.gap)


AnyGroup = Annotated[RowEntry | GridEntry | SalonEntry, Field(discriminator="pattern")]
"""A group, told apart by its pattern."""


class RoomSurfaceEntry(Entry):
    """A wall as it is seen from the front, or a desk or a floor as it is seen from above."""

    width: ShelfSide = Field(description="from its left end to its right end")
    height: ShelfSide | None = Field(None, description="of a wall: from the floor to its top")
    depth: ShelfSide | None = Field(None, description="of a desk or a floor: from its front edge to its back")
    hook: SmallLength = Field(3.0, description="on a wall: how far below its upper edge each thing hangs on its hook")
    groups: tuple[AnyGroup, ...] = Field((), description="what hangs or lies there together")

    @model_validator(mode="after")
    def _upright_or_level(self) -> Self:
        if (self.height is None) == (self.depth is None):
            raise refuse(
                "has both height and depth" if self.height else "has neither height nor depth",
                "write height for a wall, or depth for a desk or a floor",
                instead={"height": in_units("200 mm", "8 in"), "depth": None},
            )
        return self

    @property
    def upright(self) -> bool:
        """Whether things hang on it."""
        return self.height is not None

    @property
    def size(self) -> Size:
        """Its sides in mm, as it is looked at."""
        return Size(self.width, self.height or self.depth or 0.0)

    def places(self, group: GroupEntry, sizes: Sequence[Size], scale: float) -> Sequence[Rect | None]:
        """Where the things of a group are: those on a wall at eye level, if the wall is as high as that."""
        high, stretch = EYE_LEVEL / scale, group.stretch(self.size)
        usual = high if self.upright and high < self.size.height else self.size.height / 2
        middle = Point(stretch.centre.x, usual if group.centre is None else group.centre)
        gap = USUAL_GAP / scale if group.gap is None else group.gap
        return group.places(sizes, HangingRoom(stretch, middle, gap))
