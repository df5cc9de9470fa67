"""Text blocks: one module a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from ....ground.geometry import Size
from ....paper.stock import Stock
from ....shelf_file.fields.entry import either
from . import concertina, leaves, sections, solid
from .block import BlockEntry, BlockPlan, PagedEntry
from .solid import EDGE_STRIP, Solid
from .stiffness import THICKEST_COVER, THICKEST_STRIP, too_thick_to_fold

__all__ = [
    "EDGE_STRIP",
    "THICKEST_COVER",
    "THICKEST_STRIP",
    "AnyBlock",
    "BlockEntry",
    "BlockPlan",
    "Solid",
    "page_step",
    "pages_open",
    "plan_block",
    "too_thick_to_fold",
    "trimmed",
    "with_pages",
]

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


def pages_open(entry: BlockEntry) -> bool:
    """Whether a block has as many pages as its inside needs."""
    return isinstance(entry, PagedEntry) and entry.pages is None


def page_step(entry: BlockEntry) -> int:
    """A block takes a multiple of so many pages."""
    return entry.step if isinstance(entry, PagedEntry) else 2


def trimmed(entry: BlockEntry) -> float:
    """How much of the paper beyond each page is trimmed off at head, tail and fore-edge, in mm."""
    return entry.trimmed if isinstance(entry, PagedEntry) else 0.0


def with_pages(entry: BlockEntry, pages: int) -> BlockEntry:
    """The block with a number of pages."""
    return entry.model_copy(update={"pages": pages})
