"""How large a finished book is, layer by layer with its errors, and what of it can be measured."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Self

from ...paper.thickness import READING_TOLERANCE, Thickness
from ..answers import Measurable
from ..standing import Standing, Uncertainty
from ..thing import Plan
from .blocks.block_plan import BlockPlan
from .covers.cover_plan import CoverPlan
from .covers.jacket import JacketPlan
from .entry import BookEntry

__all__ = ["BookSizes"]


@dataclass(frozen=True, slots=True, kw_only=True)
class BookSizes(Plan):
    """A block in its cover, and in its jacket if it wears one.

    `thickness`, `height` and `depth` are those of the finished book, with its jacket.
    `measured` is its share of a row of finished books that was measured, if it stood in one; `measured_error`
    how far that share may be off, ± mm.
    """

    block: BlockPlan
    cover: CoverPlan
    jacket: JacketPlan | None = None
    measured: float | None = None
    measured_error: float = 0.0

    @property
    @abstractmethod
    def entry(self) -> BookEntry:
        """What the maker wrote, and what follows from it."""

    @property
    def thickness(self) -> Thickness:
        """The finished book's thickness, layer by layer."""
        thickness = (self.jacket or self.cover).thickness
        return thickness if self.measured is None else thickness.as_measured(self.measured)

    @property
    def height(self) -> float:
        """The finished book's height in mm."""
        return (self.jacket or self.cover).height

    @property
    def depth(self) -> float:
        """The finished book from spine to fore-edge, in mm."""
        return (self.jacket or self.cover).depth

    @property
    def standing(self) -> Standing:
        """The finished book as the shelf sees it."""
        return Standing(
            thing=self.id,
            title=self.name,
            thickness=self.thickness.value,
            height=self.height,
            depth=self.depth,
            uncertainty=Uncertainty(self.thickness.sensitivities, self._own_error, self._reading),
            stack=self.entry.stack,
            stance=self.entry.stands.stance(
                self.block.pages, self.block.thickness, self.thickness, right_to_left=self.entry.right_to_left
            ),
        )

    @property
    def layers(self) -> tuple[tuple[str, Thickness], ...]:
        """Block, covered book, and the book in its jacket."""
        covered = (("book without its jacket", self.cover.thickness),) if self.jacket else ()
        return (("block", self.block.bare), *covered, ("finished book", self.thickness))

    @property
    def flat_lengths(self) -> Mapping[str, float]:
        """The spines of cover and jacket."""
        jacket = {"spine on the flat jacket, fold to fold": self.jacket.spine} if self.jacket else {}
        return {"spine on the flat cover, fold to fold": self.cover.spine, **jacket}

    @property
    def measurable(self) -> tuple[Measurable, ...]:
        """The block, which tells of its paper if it is of one alone, and the covered book."""
        block = self.block.bare
        alone = len({layer.stock for layer in block.layers if layer.stock}) == 1
        scatter = self.entry.assembly_tolerance if alone else None
        return (
            Measurable("block by itself", block, ("block", "measured_thickness"), scatter),
            Measurable("finished book", self.cover.thickness, ("measured_thickness",)),
        )

    @property
    def _own_error(self) -> float:
        """What folding and gluing may add or take, or the reading of the gauge once the finished book was measured."""
        if self.measured is not None:
            return self.measured_error
        return self.entry.assembly_tolerance if self.cover.thickness.measured is None else READING_TOLERANCE

    @property
    def _reading(self) -> tuple[float, ...]:
        """The error of the gauge on the block, if only that was measured."""
        whole = self.measured is not None or self.cover.thickness.measured is not None
        return () if whole or self.block.bare.measured is None else (READING_TOLERANCE,)

    def as_measured(self, thickness: float, error: float) -> Self:
        """The book with its share of a row that was measured."""
        return replace(self, measured=thickness, measured_error=error)
