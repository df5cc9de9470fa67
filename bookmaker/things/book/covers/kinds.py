"""The table of covers: one module a kind, one row a kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ....shelf_file.fields.entry import either
from .case.case import Case
from .cover import CoverEntry
from .wrap import Wrap

__all__ = ["KINDS", "AnyCover"]

KINDS: tuple[type[CoverEntry], ...] = (Wrap, Case)

if TYPE_CHECKING:
    AnyCover = CoverEntry
else:
    AnyCover = either(KINDS, usual=Wrap)
