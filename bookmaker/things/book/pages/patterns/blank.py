"""Blank pages."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from pydantic import Field

from .....ground.art import NOTHING
from .....ground.typefaces import bundled
from .....shelf_file.fields.words import Flag
from .....typesetting.page import Inside, PageFrame, page_number
from ..part import Part

__all__ = ["Blank", "compose", "load"]


class Blank(Part):
    """Nothing but paper, or page numbers alone."""

    kind: Literal["blank"] = "blank"
    numbers: Flag = Field(False, description="page numbers, yes or no")


def load(entry: Blank, folder: Path) -> None:
    """Nothing to read."""


def compose(entry: Blank, source: None, frame: PageFrame) -> Inside:  # noqa: ARG001 (every kind is called alike)
    """Blank pages, numbered if asked."""
    if not entry.numbers:
        return Inside((NOTHING,) * frame.pages)
    return Inside(tuple(page_number(frame, number, bundled("text")) for number in range(1, frame.pages + 1)))
