"""What a maker writes of how a paper is folded."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from ...ground.geometry import Axis, Size
from ...ground.problems import Problem
from ...ground.units import print_mm
from ...shelf_file.fields.counts import FoldedPanels
from ...shelf_file.fields.entry import Entry
from ...shelf_file.fields.measures import SmallLength
from .chains import GATE, LETTER, ONE_PANEL, Chain, zigzag
from .folding import FoldedSheet

__all__ = ["FoldEntry"]

NARROWEST = 2.0
"""A panel is as wide as that at least, in mm: fingers find no fold in less (no source)."""

OF_THICKNESS = 4.0
"""And so many times as wide as the packet is thick, or it springs open (no source)."""


class FoldEntry(Entry):
    """How a sheet is folded, as the trade folds it.

    A map is folded into rows first, and the packet to and fro: so its layers creep one way and back, and stay even.
    """

    kind: Literal["half", "quarter", "letter", "zigzag", "gate", "map"] = Field(
        "letter", description="half, quarter, letter (thirds, one over the other), zigzag, gate, or map"
    )
    panels: FoldedPanels = Field(4, description="panels beside one another of a zigzag or a map")
    rows: FoldedPanels = Field(2, description="rows of a map, which are folded first")
    divides: Literal["height", "width", "longer side"] = Field(
        "longer side", description="which side is divided by half, letter, zigzag and gate"
    )
    prints: Literal["inside", "outside"] = Field("inside", description="whether the front comes inside or outside")
    allowance: SmallLength = Field(0.2, description="by how much less wide a panel is that is folded in")

    def folded(self, size: Size, caliper: float) -> FoldedSheet:
        """A sheet of a size, of paper of a caliper, folded so."""
        columns, rows = self._chains(size)
        return FoldedSheet(size, caliper, columns, rows, Axis.Y, self.prints == "outside", self.allowance)

    def _chains(self, size: Size) -> tuple[Chain, Chain]:
        """The columns and the rows."""
        match self.kind:
            case "quarter":
                return zigzag(2), zigzag(2)
            case "map":
                return zigzag(self.panels), zigzag(self.rows)
            case "half":
                chain = zigzag(2)
            case "letter":
                chain = LETTER
            case "gate":
                chain = GATE
            case "zigzag":
                chain = zigzag(self.panels)
        wide = self.divides == "width" or (self.divides == "longer side" and size.width > size.height)
        return (chain, ONE_PANEL) if wide else (ONE_PANEL, chain)

    def faults(self, size: Size, caliper: float) -> Iterator[Problem]:
        """What keeps a sheet from being folded so."""
        sheet = self.folded(size, caliper)
        narrowest = min(min(sheet.rect(cell).size) for cell in sheet.cells)
        least = max(NARROWEST, OF_THICKNESS * sheet.thickness)
        if narrowest < least:
            yield Problem(
                f"{print_mm(size.width, 1)} × {print_mm(size.height, 1)} cannot be folded so often: a panel has "
                f"{print_mm(max(0.0, narrowest), 1)}, but {sheet.layers} layers of {print_mm(caliper, 2)} need "
                f"{print_mm(least, 1)}",
                "write fewer panels or rows, a thinner paper, or a larger sheet",
                field=("kind",),
            )
