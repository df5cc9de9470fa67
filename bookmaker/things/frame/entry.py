"""What a maker writes of a framed picture."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from ...ground.drawing import Colour
from ...shelf_file.fields.entry import Entry
from ...shelf_file.fields.measures import PageSide, ShelfSide, SmallLength, Thickness
from ...shelf_file.fields.words import Ink, StockName, Text
from ..listed import SizedEntry
from ..surface import SurfaceEntry
from .wrap import WrapEntry

__all__ = ["CARD", "FrameEntry", "MountEntry", "RailsEntry"]

CARD = Colour.from_hex("#efe8d8")
"""The colour of a mount, if none is given: old ivory card."""


class MountEntry(Entry):
    """A card around the picture, with a window in it."""

    stock: StockName = Field(description="name of the card, as under stocks")
    border: Thickness = Field(5.0, description="its width at top and sides, as finished, such as 5 mm")
    foot: Thickness | None = Field(None, description="its width at the foot; 4/3 of the border, if not given")
    covers: SmallLength = Field(0.4, description="how far it lies over the edge of the picture, such as 0.4 mm")
    colour: Ink = Field(CARD, description="its colour")


class RailsEntry(Entry):
    """The strip that the frame is sawn from, and how its rails meet."""

    material: Text = Field("basswood", description="what the strip is made of")
    corners: Literal["butt", "mitre"] = Field("butt", description="how rails meet: butt is sawn square, mitre at 45°")
    face: Thickness = Field(3.0, description="how wide the strip is as it is seen, such as 3 mm")
    depth: Thickness = Field(2.0, description="how thick the strip is, from wall to room, such as 2 mm")
    covers: SmallLength = Field(0.6, description="how far it lies over what it frames, such as 0.6 mm")
    rebate: SmallLength = Field(0.0, description="depth of the step behind it; 0 mm for strip without one")
    wrap: WrapEntry | None = Field(None, description="printed paper round them, as a moulding")
    sold: ShelfSide = Field(600.0, description="the length in which it is sold, such as 600 mm")


class FrameEntry(SizedEntry):
    """A picture in a frame."""

    kind: Literal["frame"] = "frame"
    stock: StockName = Field(description="name of the paper the picture is printed on, as under stocks")
    height: PageSide = Field(description="height of the picture")
    width: PageSide = Field(description="width of the picture")
    shows: SurfaceEntry = Field(default_factory=SurfaceEntry, description="what the picture shows")
    mount: MountEntry | None = Field(None, description="a card around the picture, with a window")
    rails: RailsEntry = Field(default_factory=RailsEntry, description="the strip of the frame")
    allowance: SmallLength = Field(0.25, description="play of what is framed between the rails, such as 0.25 mm")
    glazing: SmallLength = Field(0.0, description="thickness of a clear sheet before the picture; 0 mm for none")
    backing: SmallLength = Field(0.5, description="thickness of the card behind the picture; 0 mm for none")
    jig: StockName | None = Field(None, description="stock of a jig to glue the frame square on; none, if not given")
