"""Blank pages."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from .....ground.typefaces import bundled
from .....shelf_file.fields.words import Flag
from .....typesetting.page import Inside, PageFrame, page_number
from ..part import UnreadPart

__all__ = ["Blank"]


class Blank(UnreadPart):
    """Nothing but paper, or page numbers alone."""

    kind: Literal["blank"] = "blank"
    numbers: Flag = Field(False, description="page numbers, yes or no")

    def compose(self, frame: PageFrame) -> Inside:
        """Blank pages, numbered if asked."""
        if not self.numbers:
            return Inside(frame.with_blanks())
        return Inside(tuple(page_number(frame, number, bundled("text")) for number in range(1, frame.pages + 1)))
