"""What every part of a book's inside has, whatever its kind shows: how long it is, and where it begins."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from ....shelf_file.fields.counts import PartPages
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.words import Title

__all__ = ["Part"]


class Part(Entry):
    """The keys all kinds of pages share."""

    pages: PartPages | None = Field(None, description="how many pages this part has")
    begins: Literal["new page", "recto"] = Field("new page", description="on which page it begins")
    listed_as: Title | None = Field(None, description="what the table of contents calls it")

    @property
    def begins_recto(self) -> bool:
        """Whether it begins on a page that lies on the right in a book read from the left."""
        return self.begins == "recto"
