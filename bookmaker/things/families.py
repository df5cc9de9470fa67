"""The kinds of things there are: one folder a kind, one row here."""

from __future__ import annotations

from .book.family import BOOKS
from .box.family import BOXES
from .frame.family import FRAMES
from .papers.family import PAPERS
from .slipcase.family import SLIPCASES
from .thing import AnyFamily

__all__ = ["FAMILIES"]

FAMILIES: tuple[AnyFamily, ...] = (BOOKS, SLIPCASES, *BOXES, FRAMES, *PAPERS)
"""In the order in which a shelf file lists them."""
