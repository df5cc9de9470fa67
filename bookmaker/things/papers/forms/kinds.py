"""The table of the forms of papers: one class a form, one row a form."""

from __future__ import annotations

from ..entry import PaperEntry
from .plain import FoldedMap, Letter, Poster, Print

__all__ = ["KINDS"]

KINDS: tuple[type[PaperEntry], ...] = (Letter, FoldedMap, Poster, Print)
"""In the order in which the manual tells of them."""
