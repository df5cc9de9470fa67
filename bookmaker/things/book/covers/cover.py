"""What every cover has and answers, whatever its kind.

A cover is what was written; worked out around a block it is a `CoverPlan`. Each kind is a class of its own.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Mapping
from typing import TYPE_CHECKING

from pydantic import Field

from ....ground.geometry import Size
from ....paper.stock import Stock
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.words import StockName
from ..blocks.block_plan import BlockPlan
from .cover_plan import CoverPlan

if TYPE_CHECKING:
    from ...making import Making
    from ..steps.job import BookJob

__all__ = ["CoverEntry", "how_smaller"]


def how_smaller(thick: float, deep: float) -> str:
    """What makes a cover smaller, as a remedy: of a block thicker than it is deep, in mm, fewer pages."""
    return "make the block thinner, with fewer pages" if thick > deep else "make it smaller"


class CoverEntry(Entry, ABC):
    """The keys all kinds of cover share, and what the rest of a book asks of them."""

    if TYPE_CHECKING:
        kind: str  # each kind names itself

    stock: StockName = Field(description="name of the cover paper, as under stocks")

    @abstractmethod
    def plan(self, page: Size, block: BlockPlan, stocks: Mapping[str, Stock], *, right_to_left: bool) -> CoverPlan:
        """Work it out around a block; fields of problems count from the book.

        Raises:
            ShelfFileError: it cannot be made; with everything that is wrong.
        """

    @abstractmethod
    def making(self, job: BookJob) -> Making:
        """How it is made: steps, drawings, tools, supplies, what to measure; every number comes from the plan."""
