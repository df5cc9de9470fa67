"""What every text block has and answers, whatever its kind.

A block is what was written; worked out it is a `BlockPlan`. Each kind is a class of its own: its keys, and what it
answers otherwise than here.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Mapping
from typing import TYPE_CHECKING, Self

from pydantic import Field, model_validator

from ....ground.drawing import Art, Colour
from ....ground.geometry import Size
from ....ground.problems import Problem, ShelfFileError
from ....paper.stock import Stock
from ....sheets.flat import Flat
from ....shelf_file.fields.counts import PageCount
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.measures import Thickness as MeasuredThickness
from .block_plan import BlockPlan

if TYPE_CHECKING:
    from ...making import Making
    from ..steps.job import BookJob

__all__ = ["BlockEntry", "PagedEntry"]

AS_THICK_AS = "as thick as "


class BlockEntry(Entry, ABC):
    """The keys all kinds of block share, and what the rest of a book asks of them."""

    if TYPE_CHECKING:
        kind: str  # each kind names itself

    measured_thickness: MeasuredThickness | None = Field(
        None, description="thickness of the real block; overrides the computed one"
    )

    @property
    def asked_pages(self) -> int | None:
        """How many pages the maker wrote; None if none, or if the block has none."""
        return None

    @property
    def wanted_thickness(self) -> float | None:
        """The thickness that its pages follow, in mm, if they do."""
        return None

    @property
    def is_open(self) -> bool:
        """Whether it has as many pages as its inside needs."""
        return False

    @property
    def step(self) -> int:
        """It takes a multiple of so many pages and leaves none blank."""
        return 2

    @property
    def trimmed(self) -> float:
        """What is trimmed off at head, tail and fore-edge when the block is bound, in mm."""
        return 0.0

    def with_pages(self, pages: int) -> Self:  # noqa: ARG002 (for those that have pages)
        """The same with a number of pages."""
        return self

    def of_thickness(self, thickness: float) -> Self:  # noqa: ARG002 (for those that stretch)
        """The same as thick as it is to be, in mm."""
        return self

    def in_strips(self, stock: str, longest: int) -> Self | None:  # noqa: ARG002 (for those made of strips)
        """The same in strips of no more than so many panels; None if it is not made of strips of that stock."""
        return None

    @property
    def edge_tone(self) -> Colour | None:
        """The colour its edges have from afar; None if they are as the leaves are."""
        return None

    def dressing(self, flat: Flat, seed: str, resolution_dpi: float) -> Art | None:  # noqa: ARG002 (for bare edges)
        """What is printed on one of its flats in place of pages; the same seed always gives the same."""
        return None

    @abstractmethod
    def plan(self, page: Size, stocks: Mapping[str, Stock], *, right_to_left: bool) -> BlockPlan:
        """Work it out; fields of problems count from the book.

        Raises:
            ShelfFileError: it cannot be made; with everything that is wrong.
        """

    @abstractmethod
    def making(self, job: BookJob) -> Making:
        """How it is made: steps, drawings, tools, supplies, what to measure; every number comes from the plan."""


class PagedEntry(BlockEntry):
    """The keys all kinds of block share that have pages."""

    pages: PageCount | None = Field(
        None, description="printed pages, an even number, or as thick as 4 mm; as many as the inside needs"
    )
    as_thick_as: MeasuredThickness | None = Field(
        None, description="thickness that the pages are to make, as nearly as they can"
    )

    @model_validator(mode="before")
    @classmethod
    def _as_thick_as(cls, written: object) -> object:
        """`pages: as thick as 4 mm` is a thickness, not a count."""
        if not isinstance(written, dict) or not isinstance(pages := written.get("pages"), str):
            return written
        words = " ".join(pages.split())
        if not words.casefold().startswith(AS_THICK_AS):
            return written
        rest = {key: value for key, value in written.items() if key != "pages"}
        return {**rest, "as_thick_as": words[len(AS_THICK_AS) :]}

    @property
    def asked_pages(self) -> int | None:
        """How many pages the maker wrote."""
        return self.pages

    @property
    def wanted_thickness(self) -> float | None:
        """What is written, unless there is a number of pages."""
        return self.as_thick_as if self.pages is None else None

    @property
    def is_open(self) -> bool:
        """Whether the maker wrote none."""
        return self.pages is None

    @property
    def printed_pages(self) -> int:
        """How many pages there are.

        Raises:
            ShelfFileError: neither the maker nor the inside has said.
        """
        if self.pages is None:
            raise ShelfFileError((Problem("the block has no pages", "write pages: 48, say", field=("block",)),))
        return self.pages

    def with_pages(self, pages: int) -> Self:
        """The same with a number of pages."""
        return self.model_copy(update={"pages": pages})
