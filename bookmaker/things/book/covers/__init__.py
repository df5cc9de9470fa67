"""Covers: one module a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from ....ground.geometry import Size
from ....paper.stock import Stock
from ....shelf_file.fields.entry import either
from ..blocks import BlockPlan
from . import case, wrap
from .cover import CoverEntry, CoverPlan

__all__ = ["AnyCover", "CoverEntry", "CoverPlan", "plan_cover"]

KINDS: Mapping[type[CoverEntry], Callable[..., CoverPlan]] = {
    wrap.Wrap: wrap.plan,
    case.Case: case.plan,
}

if TYPE_CHECKING:
    AnyCover = CoverEntry
else:
    AnyCover: Any = either(tuple(KINDS), usual=wrap.Wrap)


def plan_cover(
    entry: CoverEntry, page: Size, block: BlockPlan, stocks: Mapping[str, Stock], *, right_to_left: bool
) -> CoverPlan:
    """Work out a cover of any kind around a block; errors carry fields relative to the book."""
    return KINDS[type(entry)](entry, page, block, stocks, right_to_left=right_to_left)
