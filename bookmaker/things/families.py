"""The kinds of things there are: one folder a kind, one row here."""

from __future__ import annotations

from functools import cache

from .book.family import BOOKS
from .slipcase.family import SLIPCASES
from .thing import AnyFamily

__all__ = ["SECTIONS", "all_families"]

SECTIONS: tuple[AnyFamily, ...] = (BOOKS, SLIPCASES)
"""Those with a key of their own in a shelf file, in the order in which it lists them."""


@cache
def all_families() -> tuple[AnyFamily, ...]:
    """Those of the list of things besides, which are loaded for shelves that have such a list."""
    from .box.family import BOXES
    from .frame.family import FRAMES
    from .papers.family import PAPERS

    return (*SECTIONS, *BOXES, FRAMES, *PAPERS)
