"""The table of text blocks: one module a kind, one row a kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ....shelf_file.fields.entry import either
from .accordion import Accordion
from .block import BlockEntry
from .leaves import Leaves
from .sections import Sections
from .solid import Solid

__all__ = ["KINDS", "AnyBlock"]

KINDS: tuple[type[BlockEntry], ...] = (Accordion, Leaves, Sections, Solid)

if TYPE_CHECKING:
    AnyBlock = BlockEntry
else:
    AnyBlock = either(KINDS, usual=Accordion)
