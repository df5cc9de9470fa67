"""The table of text blocks: one module a kind, one row a kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ....shelf_file.fields.entry import either
from .accordion import Accordion
from .block import BlockEntry
from .dummy import Dummy
from .leaves import Leaves
from .sections import Sections

__all__ = ["KINDS", "AnyBlock"]

KINDS: tuple[type[BlockEntry], ...] = (Accordion, Leaves, Sections, Dummy)

if TYPE_CHECKING:
    AnyBlock = BlockEntry
else:
    AnyBlock = either(KINDS, usual=Accordion)
