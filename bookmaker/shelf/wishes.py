"""What a maker asks for when a shelf is made, and how they are told how far it is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from ..sheets.layers import Layers
from .choice import EVERYTHING, Choice

__all__ = ["ALL_OF_IT", "Progress", "Wishes"]

Progress = Callable[[str, int, int], None]
"""Told what is being done, how many parts are done, and of how many."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """What the maker wants written: which books and papers, which layers of the sheets, and what else besides."""

    choice: Choice = EVERYTHING
    layers: Layers = Layers.ALL
    contact_sheet: bool = False
    templates: bool = False
    proof: bool = False
    mock_up: bool = False


ALL_OF_IT = Wishes()
