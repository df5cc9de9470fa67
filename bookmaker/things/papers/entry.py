"""The keys that all papers share, and what every form of them answers."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import ClassVar, Self

from pydantic import Field, model_validator

from ...ground.geometry import Rect, Size
from ...ground.outlines import Outline
from ...ground.problems import FieldPath, Problem
from ...paper.stock import Stock
from ...shelf_file.fields.counts import Copies
from ...shelf_file.fields.measures import Degree, ThingSide
from ...shelf_file.fields.words import Ink, StockName, refuse
from ..book.designs.design import Words
from ..listed import SizedEntry
from .face import FaceEntry, PaperFace, SetFace
from .fold_entry import FoldEntry
from .folding import FoldedSheet
from .formats import FORMATS, FormatName

__all__ = ["BLEED", "Leaf", "PaperEntry", "Press"]

BLEED = 1.0
"""How far print runs past the edges, in mm."""


@dataclass(frozen=True, slots=True)
class Leaf:
    """A sheet of a paper: what it is called, its size in mm, how it is folded.

    `number` counts the leaves of one copy from 0. It is parted into `across` × `down` alike along straight cuts, or
    perforated there if they are `torn` off. An `outline` other than its rectangle is cut out.
    """

    name: str
    size: Size
    folded: FoldedSheet | None = None
    number: int = 0
    across: int = 1
    down: int = 1
    torn: bool = False
    outline: Outline | None = None

    @property
    def parts(self) -> Sequence[Rect]:
        """What it is parted into, row by row from the head, as its front is seen."""
        wide, high = self.size.width / self.across, self.size.height / self.down
        rows = range(self.down)
        return [Rect(n * wide, (self.down - 1 - row) * high, wide, high) for row in rows for n in range(self.across)]


@dataclass(frozen=True, slots=True)
class Press:
    """What a form needs to draw: the size of the finished paper, its faces as they were read, by field, its words.

    `dpi` are the printer's dots to the inch, `bleed` is how far print runs past the edges, in mm.
    """

    size: Size
    faces: Mapping[FieldPath, PaperFace]
    words: Words
    dpi: float
    bleed: float

    def face(self, *field: str | int) -> PaperFace:
        """A face that was read; a bare one if nothing is said of it."""
        return self.faces.get(field, PaperFace())


class PaperEntry(SizedEntry, ABC):
    """The keys that all papers share."""

    stock: StockName = Field(description="name of the paper, as under stocks")
    format: FormatName | None = Field(None, description="its size in life by name, such as A4")
    width: ThingSide | None = Field(None, description="its width, in place of a format")
    height: ThingSide | None = Field(None, description="its height, in place of a format")
    count: Copies = Field(1, description="how many of it are made")
    paper: Ink | None = Field(None, description="colour of the paper, printed on all of it; bare, if not given")
    age: Degree = Field(0.0, description="how old it looks, from 0 % to 100 %: toned, spotted, worn at its folds")
    fold: FoldEntry | None = Field(None, description="how it is folded")

    ages_behind: ClassVar[bool] = False
    """Whether its reverse is seen, and is as old as its front, even if nothing is printed there."""

    usual_format: ClassVar[FormatName] = "A4"
    """Its size, if none is given."""

    @model_validator(mode="after")
    def _one_size(self) -> Self:
        if (self.width is None) is not (self.height is None):
            has, lacks = ("width", "height") if self.height is None else ("height", "width")
            raise refuse(f"has a {has} and no {lacks}", f"write {lacks}: too", instead={has: None})
        if self.format and self.width:
            raise refuse("has both format and width", "write one of them", instead={"format": None})
        return self

    def size(self, scale: float) -> Size:
        """The finished sheet, flat, in mm: A4 at 1:12 is 17.5 × 24.75 mm."""
        if self.width is not None and self.height is not None:
            return Size(self.finished(self.width, scale), self.finished(self.height, scale))
        life = FORMATS[self.format or self.usual_format]
        return Size(life.width / scale, life.height / scale)

    @property
    def what(self) -> str:
        """What it is, as a sentence begins."""
        return f"A {self.kind}"

    @property
    def copies(self) -> int:
        """How often its leaves are made."""
        return self.count

    @property
    def folds(self) -> FoldEntry | None:
        """How it is folded: as written, or as is usual."""
        return self.fold

    def leaves(self, size: Size, stock: Stock) -> tuple[Leaf, ...]:
        """The sheets of one copy."""
        folded = self.folds.folded(size, stock.covered) if self.folds else None
        return (Leaf(self.kind, size, folded),)

    def faults(self, size: Size, stock: Stock) -> Iterator[Problem]:
        """What keeps it from being made."""
        if self.folds:
            for problem in self.folds.faults(size, stock.covered):
                yield problem.within(("fold",)) if self.fold else replace(problem, field=())

    @property
    def faces(self) -> Mapping[FieldPath, FaceEntry]:
        """Its faces by their fields."""
        return {(key,): value for key, value in self if isinstance(value, FaceEntry)}

    @abstractmethod
    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """What front and reverse of each leaf show, over the paper; fields are the entry's."""
