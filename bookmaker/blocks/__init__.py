"""Text blocks: one module a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from ..geometry import Size
from ..spec.entry import either
from ..stock import Stock
from . import concertina, leaves, sections, solid
from .block import BlockEntry, BlockPlan
from .solid import EDGE_STRIP, Solid

__all__ = ["EDGE_STRIP", "AnyBlock", "BlockEntry", "BlockPlan", "Solid", "plan_block"]

KINDS: Mapping[type[BlockEntry], Callable[..., BlockPlan]] = {
    concertina.Concertina: concertina.plan,
    leaves.Leaves: leaves.plan,
    sections.Sections: sections.plan,
    solid.Solid: solid.plan,
}

if TYPE_CHECKING:
    AnyBlock = BlockEntry
else:
    AnyBlock: Any = either(tuple(KINDS), usual=concertina.Concertina)


def plan_block(entry: BlockEntry, page: Size, stocks: Mapping[str, Stock], *, right_to_left: bool) -> BlockPlan:
    """Work out a block of any kind; errors carry fields relative to the book."""
    return KINDS[type(entry)](entry, page, stocks, right_to_left=right_to_left)
