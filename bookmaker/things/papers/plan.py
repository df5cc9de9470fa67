"""A paper as it was written, and worked out: its leaves as flats, what it is when it is folded."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from ...ground.geometry import Axis, Point, Rect, Size
from ...ground.problems import FieldPath, Problem, Severity, ShelfFileError, gathered
from ...ground.thin import print_caliper
from ...paper.stock import Stock
from ...sheets.flat import Face, Flat, FoldKind, Panel, Role, Stroke
from ...sheets.sheet_room import flat_too_large
from ..answers import Bulk
from ..listed import FlatPlan, ListedThing
from ..terms import Terms
from ..thing import Plan
from .entry import BLEED, Leaf, PaperEntry
from .face import PaperFace, read_face
from .net import packet_size

__all__ = ["Paper", "PaperPlan"]

HEAVY = 0.2
"""Paper of more than that, in mm, cracks where it is folded across its fibres (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper(ListedThing[PaperEntry]):
    """A paper as it was written, with what the files of its faces hold."""

    faces: Mapping[FieldPath, PaperFace] = field(default_factory=dict)

    def read(self, folder: Path) -> tuple[Paper, tuple[Problem, ...]]:
        """The paper with its texts and pictures."""
        problems: list[Problem] = []
        found: dict[FieldPath, PaperFace] = {}
        for key, written in self.entry.faces.items():
            with gathered(problems, *key):
                found[key] = read_face(written, folder)
        return replace(self, faces=found), tuple(problems)

    def plan(self, terms: Terms, held: Sequence[Plan]) -> PaperPlan:
        """Work out its leaves."""
        entry, stock = self.entry, terms.stocks[self.entry.stock]
        size = entry.size(terms.scale)
        problems = list(entry.faults(size, stock))
        if self.space:
            problems.append(Problem("a paper stands in no space", "leave space out", field=("space",)))
        if problems:
            raise ShelfFileError(problems)
        leaves = entry.leaves(size, stock)
        flats = tuple(_flat(entry, leaf, stock) for leaf in leaves)
        for flat in flats:
            problems += flat_too_large(f"the {flat.name}", flat, stock, ("stock",))
        if problems:
            raise ShelfFileError(problems)
        return PaperPlan(
            thing=self,
            made_as=entry.kind,
            flats=flats * entry.copies,
            notes=tuple(_notes(entry, leaves, flats, stock)),
            bulk=_bulk(entry, leaves, stock),
            size=size,
            leaves=leaves,
            dpi=terms.resolution([entry.stock]),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperPlan(FlatPlan[Paper]):
    """A paper worked out: its size flat, or that of a page, and the leaves of one copy; its flats are those of all.

    `dpi` are its printer's dots to the inch.
    """

    size: Size
    leaves: tuple[Leaf, ...]
    dpi: float

    @property
    def from_above(self) -> Size:
        """One copy as it lies, folded if it is folded."""
        leaf = self.leaves[0]
        return packet_size(leaf.folded) if leaf.folded else self.on_wall

    @property
    def on_wall(self) -> Size:
        """One copy, open."""
        leaf = self.leaves[0]
        return Size(leaf.size.width / leaf.across, leaf.size.height / leaf.down)

    @property
    def templates(self) -> Mapping[str, tuple[Flat, ...]]:
        """Its leaves."""
        return {"": self.flats[: len(self.leaves)]}


def _flat(entry: PaperEntry, leaf: Leaf, stock: Stock) -> Flat:
    """A leaf as it is printed, folded and cut; its fibres run along its folds where the sheet has room for that."""
    whole = Rect(0, 0, *leaf.size)
    folds = leaf.folded.folds if leaf.folded else ()
    flat = Flat(
        kind=entry.kind,
        name=leaf.name,
        stock=entry.stock,
        outline=leaf.outline or whole.corners,
        folds=folds,
        # what is seen of a paper is its first leaf; the others lie in it or under it
        panels=(Panel(Role.FRONT, whole), Panel(Role.BACK, whole, face=Face.REVERSE))
        if leaf.number == 0
        else (Panel(Role.FLAP, whole),),
        bleed=BLEED,
        cuts=() if leaf.torn else tuple(_parting(leaf)),
        perforations=tuple(_parting(leaf)) if leaf.torn else (),
    )
    if leaf.folded is None:
        return flat
    upright = sum(fold.start.x == fold.end.x for fold in folds)
    along = replace(flat, grain=Axis.Y if 2 * upright > len(folds) else Axis.X)
    return flat if any(flat_too_large("", along, stock, ())) else along


def _parting(leaf: Leaf) -> Iterator[Stroke]:
    """The lines between what is printed in one piece."""
    width, height = leaf.size
    for n in range(1, leaf.across):
        yield Stroke(Point(n * width / leaf.across, 0), Point(n * width / leaf.across, height))
    for n in range(1, leaf.down):
        yield Stroke(Point(0, n * height / leaf.down), Point(width, n * height / leaf.down))


def _bulk(entry: PaperEntry, leaves: Sequence[Leaf], stock: Stock) -> Bulk:
    """How large all copies are, one on the other, folded."""
    parts = [Size(leaf.size.width / leaf.across, leaf.size.height / leaf.down) for leaf in leaves]
    sizes = [packet_size(leaf.folded) if leaf.folded else part for leaf, part in zip(leaves, parts, strict=True)]
    deep = max((leaf.folded.deep for leaf in leaves if leaf.folded), default=0)
    layers = [
        0 if deep and leaf.number else leaf.folded.layers if leaf.folded else leaf.across * leaf.down for leaf in leaves
    ]
    long = max(max(size) for size in sizes)
    return Bulk(long, max(min(size) for size in sizes), entry.copies * sum(layers) * stock.covered)


def _notes(entry: PaperEntry, leaves: Sequence[Leaf], flats: Sequence[Flat], stock: Stock) -> Iterator[Problem]:
    """Paper that cracks where it is folded, or springs open."""
    if not any(leaf.folded for leaf in leaves):
        return
    field = ("fold",) if entry.fold else ()
    outside = any(fold.kind is FoldKind.MOUNTAIN for flat in flats for fold in flat.folds)
    if stock.caliper > HEAVY:
        yield Problem(
            f"{stock.name} is {print_caliper(stock.caliper, 2)} thick: it cracks and springs open where it is folded",
            f"name a paper of {print_caliper(HEAVY)} or less, or leave fold out",
            Severity.NOTE,
            field=field,
        )
    if stock.grain_axis and any(flat.folds and flat.grain is None for flat in flats):
        yield Problem(
            f"the sheet of {stock.name} has no room for it with its fibres along its folds: these may crack",
            "name a paper with the other grain, or a smaller size",
            Severity.NOTE,
            field=field,
        )
    if stock.film and outside:
        yield Problem(
            f"{stock.name} has a film, which whitens where the print comes outside a fold",
            "name a stock without film, or score it twice",
            Severity.NOTE,
            field=field,
        )
