"""The parts of a sheet that can be printed without the rest."""

from __future__ import annotations

from enum import StrEnum

__all__ = ["Layers"]


class Layers(StrEnum):
    """What of a sheet is written: the print alone, the lines and notes alone, or both."""

    ALL = "all"
    ART = "art"
    LINES = "lines"
