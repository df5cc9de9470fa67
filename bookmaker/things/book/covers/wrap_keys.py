"""The keys of a wrap in the shelf file."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from ....shelf_file.fields.measures import Margin, SmallLength
from .cover import CoverEntry

__all__ = ["WrapKeys"]


class WrapKeys(CoverEntry):
    """The keys of a wrap."""

    kind: Literal["wrap"] = "wrap"
    turn_in: Margin = Field(0.0, description="turn-in at the fore-edges; 0 for a flush cover")
    head_turn_in: Margin = Field(0.0, description="turn-in at head and tail; 0 for none")
    square: SmallLength = Field(0.0, description="how far the cover stands out beyond the pages")
