"""The keys of sections in the shelf file."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from ....shelf_file.fields.counts import SectionPages, Stations
from ....shelf_file.fields.measures import SmallLength, ThreadThickness
from ....shelf_file.fields.words import Flag, StockName
from .block import PagedEntry
from .imposition import FOLDINGS, fold_sheet

__all__ = ["OPENING_TRIM", "SectionKeys"]

OPENING_TRIM = 1.0
"""What is trimmed off to open the folds of a quarto or an octavo unless the maker says otherwise, in mm."""


class SectionKeys(PagedEntry):
    """The keys of sections."""

    kind: Literal["sections"] = "sections"
    stock: StockName = Field(description="name of the paper, as under stocks")
    pages_in_section: SectionPages = Field(None, description="pages of each section, or automatic")
    fill_sections: Flag = Field(False, description="yes: so many pages more that the last section is full")
    fold: Literal["folio", "quarto", "octavo"] = Field("folio", description="a sheet folded once, twice, three times")
    printing: Literal["both sides", "one side"] = Field("both sides", description="which sides are printed")
    fastening: Literal["sewn", "stapled", "glued"] = Field("sewn", description="what holds the sheets together")
    sewing: Literal["all along", "two on"] = Field("all along", description="thread in each section, or by turns")
    thread: ThreadThickness = Field(0.1, description="thickness of the thread or of the wire")
    stations: Stations | None = Field(None, description="holes through the fold; by the height if left out")
    trim: SmallLength | None = Field(
        None, description="paper that is trimmed off at head, tail and fore-edge after gluing"
    )
    scored: Flag = Field(False, description="whether folds are scored: stiff paper must be")

    @property
    def one_side(self) -> bool:
        """Whether leaves are made of two layers, glued back to back."""
        return self.printing == "one side"

    @property
    def step(self) -> int:
        """A whole number of sheets, or of sections if their pages are given."""
        return self.pages_in_section or fold_sheet(FOLDINGS[self.fold]).pages

    @property
    def trimmed(self) -> float:
        """What is trimmed off at each edge, in mm."""
        if self.trim is not None:
            return self.trim
        return 0.0 if self.fold == "folio" else OPENING_TRIM
