"""The table of text blocks: one module a kind, one row a kind."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ....shelf_file.fields.entry import either
from .block import BlockEntry
from .concertina import Concertina
from .leaves import Leaves
from .sections import Sections
from .solid import Solid

__all__ = ["KINDS", "AnyBlock"]

KINDS: tuple[type[BlockEntry], ...] = (Concertina, Leaves, Sections, Solid)

if TYPE_CHECKING:
    AnyBlock = BlockEntry
else:
    AnyBlock = either(KINDS, usual=Concertina)
