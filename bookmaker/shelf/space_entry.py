"""What the maker writes about the places where books stand."""

from __future__ import annotations

from pydantic import Field

from ..shelf_file.fields.entry import Entry
from ..shelf_file.fields.measures import ShelfSide, SmallLength

__all__ = ["SpaceEntry"]


class SpaceEntry(Entry):
    """A clear opening for books: between two uprights, below the next board, in front of the back."""

    width: ShelfSide = Field(description="clear width between the uprights")
    height: ShelfSide = Field(description="clear height")
    depth: ShelfSide = Field(description="clear depth from the front edge")
    clearance: SmallLength = Field(0.2, description="play for each book or stack, so that it can be drawn out")
    to_spare: SmallLength | None = Field(
        None, description="what blocks that fill leave of the width; as much as the row may be off, if not given"
    )
