"""What every text block is to the rest of the book, whatever its kind."""

from __future__ import annotations

from dataclasses import dataclass

from pydantic import Field

from ....ground.problems import Problem, ShelfFileError
from ....paper.thickness import Thickness
from ....sheets.cutting import CutPart
from ....sheets.flat import Flat
from ....shelf_file.fields.counts import PageCount
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.measures import Thickness as MeasuredThickness

__all__ = ["BlockEntry", "BlockPlan", "PagedEntry"]


class BlockEntry(Entry):
    """The keys all kinds of block share."""

    measured_thickness: MeasuredThickness | None = Field(
        None, description="thickness of the real block; overrides the computed one"
    )


class PagedEntry(BlockEntry):
    """The keys all kinds of block share that have pages."""

    pages: PageCount | None = Field(None, description="printed pages, an even number; as many as the inside needs")

    @property
    def trimmed(self) -> float:
        """What is trimmed off at head, tail and fore-edge when the block is bound, in mm."""
        return 0.0

    @property
    def step(self) -> int:
        """The block takes a multiple of so many pages and leaves none blank."""
        return 2

    @property
    def printed_pages(self) -> int:
        """How many pages there are.

        Raises:
            ShelfFileError: neither the maker nor the inside has said.
        """
        if self.pages is None:
            raise ShelfFileError((Problem("the block has no pages", "write pages: 48, say", field=("block",)),))
        return self.pages


@dataclass(frozen=True, slots=True)
class BlockPlan:
    """A text block worked out.

    `pages` counts printed pages, `panels` all page-sized parts with the blank ones; `thickness` is that of
    everything between the insides of the covers; `flats` are the parts to print, in the order of the book.
    `thickness_of_a_page` is what one page more or less makes, in mm. `pastedowns` says whether its outermost
    panels are blank and made to be glued into the cover. `cut_list` is what is cut by hand.
    """

    kind: str
    pages: int
    panels: int
    thickness: Thickness
    flats: tuple[Flat, ...]
    thickness_of_a_page: float = 0.0
    pastedowns: bool = False
    cut_list: tuple[CutPart, ...] = ()
    notes: tuple[Problem, ...] = ()
