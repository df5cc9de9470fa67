"""What is packed, where it may go and where it went; all lengths in mm."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

__all__ = ["ROUNDING", "Bin", "DoesNotFit", "Item", "Placed", "refuse_what_cannot_fit"]

ROUNDING = 1e-9
"""Lengths that differ by less than this many mm count as equal: sums of decimal fractions are never exact."""


@dataclass(frozen=True, slots=True)
class Item:
    """A rectangle to be placed once. Items of one `group` like to lie near each other."""

    key: str
    width: float
    height: float
    may_turn: bool
    group: str = ""

    def ways(self) -> tuple[tuple[float, float, bool], ...]:
        """The ways it may lie: width, height, and whether that is a quarter turn.

        >>> Item("a", 3, 2, may_turn=True).ways()
        ((3, 2, False), (2, 3, True))
        """
        upright = (self.width, self.height, False)
        if not self.may_turn or self.width == self.height:
            return (upright,)
        return upright, (self.height, self.width, True)


@dataclass(frozen=True, slots=True)
class Bin:
    """One printable area."""

    width: float
    height: float

    def takes(self, width: float, height: float) -> bool:
        """Whether a rectangle of this size lies inside."""
        return width <= self.width + ROUNDING and height <= self.height + ROUNDING


@dataclass(frozen=True, slots=True)
class Placed:
    """Where an item lies: number of the bin (from 0), lower left corner, and its size as it lies there."""

    key: str
    bin: int
    x: float
    y: float
    width: float
    height: float
    turned: bool

    def on(self, number: int) -> Placed:
        """The same place in another bin."""
        return replace(self, bin=number)


class DoesNotFit(Exception):  # noqa: N818 - it reads as a sentence where it is caught
    """Items that fit no bin in any way they may lie; `keys` names them, `bin` is the largest area offered."""

    def __init__(self, items: Sequence[Item], area: Bin) -> None:
        self.items = tuple(items)
        self.keys = tuple(item.key for item in items)
        self.bin = area
        sizes = ", ".join(f"{item.key} ({item.width:g} × {item.height:g} mm)" for item in items)
        super().__init__(f"larger than {area.width:g} × {area.height:g} mm: {sizes}")


def refuse_what_cannot_fit(items: Sequence[Item], area: Bin) -> None:
    """Raise for all items at once that are larger than a bin.

    Raises:
        DoesNotFit: with every such item.
    """
    too_large = [item for item in items if not any(area.takes(w, h) for w, h, _ in item.ways())]
    if too_large:
        raise DoesNotFit(too_large, area)
