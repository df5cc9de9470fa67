"""What has been measured on finished things, against what was computed, and what it says about the paper."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import hypot, sqrt

from ..ground.problems import FieldPath, Problem, Severity
from ..ground.thin import caliper_unit, figure_um, print_caliper, print_um, small_unit
from ..ground.told import print_grammage
from ..paper.stock import Stock
from ..paper.stock_entry import StockEntry
from ..paper.thickness import Thickness
from .plan import ShelfPlan

__all__ = [
    "CaliperEstimate",
    "Comparison",
    "caliper_estimates",
    "comparisons",
    "doubtful_measures",
    "doubtful_piles",
    "estimate_caliper",
    "estimate_notes",
]


DOUBTFUL, DOUBTFUL_SHARE = 0.5, 0.25
"""A measure off by more than both, in mm and as a share, is more likely a slip than a thick paper (common practice)."""

DOUBTFUL_SHEET = 0.4
"""A pile that differs by a greater share from what is written of its paper is no pile of that (common practice)."""

THINNEST, DENSEST, LOOSEST = 0.025, 0.6, 5.0
"""Tissue is about as thick as the first, in mm (common practice). The bulk of paper, in cm³/g, is more than the
second, for its fibres have a density of about 1.5 g/cm³ (from memory), and less than the third."""


@dataclass(frozen=True, slots=True)
class Comparison:
    """Something computed and measured, in mm; `field` is where the measure stands, in the entry of the `thing` if it
    is of one, else in the shelf file. It is doubtful where it is off by more than `slip` mm and `share`.
    """

    what: str
    computed: float
    measured: float
    field: FieldPath
    thing: str = ""
    slip: float = DOUBTFUL
    share: float = DOUBTFUL_SHARE

    @property
    def difference(self) -> float:
        """Measured less computed."""
        return self.measured - self.computed


@dataclass(frozen=True, slots=True)
class CaliperEstimate:
    """What `blocks` measured blocks say about the caliper of a stock: mm, ± `tolerance` (two standard deviations)."""

    stock: str
    blocks: int
    caliper: float
    tolerance: float


def comparisons(plan: ShelfPlan) -> tuple[Comparison, ...]:
    """Everything that was measured: sheets, blocks, finished books, rows of books."""
    return (*_sheets(plan), *_things(plan), *_rows(plan))


def _sheets(plan: ShelfPlan) -> Iterator[Comparison]:
    """Stocks that say both what they should be and what a pile of them measures."""
    for stock in plan.stocks.values():
        if stock.stated is not None:
            field = ("stocks", stock.name, "pile")
            said = f"{stock.name}, one sheet"
            yield Comparison(said, stock.stated, stock.caliper, field, slip=0.0, share=DOUBTFUL_SHEET)


def _things(plan: ShelfPlan) -> Iterator[Comparison]:
    for one in plan.plans.values():
        number = plan.number_of(one.id)
        name = one.name if number is None else f"{number} {one.name}"
        for part in one.measurable:
            if part.thickness.measured is not None:
                computed, measured = part.thickness.computed, part.thickness.measured
                yield Comparison(f"{name}, {part.what}", computed, measured, part.field, one.id)


def _rows(plan: ShelfPlan) -> Iterator[Comparison]:
    for number, row in enumerate(plan.measured_rows):
        members = [plan.plans[id] for id in row.things]
        name = " + ".join(one.name for one in members)
        computed = sum(one.computed for one in members)
        yield Comparison(f"{name}, side by side", computed, row.thickness, ("measured_rows", number, "thickness"))


def doubtful_measures(measured: Sequence[Comparison]) -> Iterator[Problem]:
    """Warnings about measures so far from what was computed that the gauge was misread, or is of something else."""
    for one in measured:
        if abs(one.difference) > max(one.slip, one.share * one.computed):
            yield Problem(
                f"{one.what} measures {print_caliper(one.measured, 2)}; "
                f"the shelf file makes it {print_caliper(one.computed, 2)}",
                f"measure again, in {caliper_unit()}, pressed lightly, without the boards; "
                "or see whether pages and paper are as the shelf file has them",
                Severity.WARNING,
                field=one.field,
                thing=one.thing,
            )


def doubtful_piles(stocks: Mapping[str, StockEntry]) -> Iterator[Problem]:
    """Warnings about piles of which no paper is: thinner than tissue, or too thin or thick for its weight."""
    for name, entry in stocks.items():
        if entry.pile is None:
            continue
        thick, weight = entry.pile.caliper, entry.grammage
        bulk = 1000 * thick / weight if weight else 1.0
        if thick < THINNEST or not DENSEST <= bulk <= LOOSEST:
            than = (
                f"too {'thin' if bulk < 1 else 'thick'} for {print_grammage(weight)}" if weight else "less than tissue"
            )
            yield Problem(
                f"the pile of {name} makes a sheet {print_um(thick)} thick, {than}",
                "count the sheets and measure the pile again",
                Severity.WARNING,
                field=("stocks", name, "pile"),
            )


def caliper_estimates(plan: ShelfPlan) -> tuple[CaliperEstimate, ...]:
    """An estimate for every stock of which at least two blocks, of this stock alone, were measured."""
    by_stock: dict[str, list[tuple[Thickness, float]]] = {}
    for part in (part for one in plan.plans.values() for part in one.measurable):
        if part.thickness.measured is not None and part.scatter is not None:
            (stock,) = {layer.stock for layer in part.thickness.layers if layer.stock}
            by_stock.setdefault(stock, []).append((part.thickness, part.scatter))
    return tuple(
        estimate_caliper(stock, [thickness for thickness, _ in parts], [scatter for _, scatter in parts])
        for stock, parts in by_stock.items()
        if len(parts) > 1
    )


def estimate_caliper(stock: str, blocks: Sequence[Thickness], assembly_tolerances: Sequence[float]) -> CaliperEstimate:
    """The caliper that fits measured blocks best, by least squares.

    A block of n sheets that measures m, with r mm of other layers, says m − r = n·t; the best t for all is
    Σ n·(m − r) / Σ n², and its variance s² / Σ n². For s² the scatter of the blocks about that line is taken,
    or the usual error of assembly if that is larger: two blocks that happen to agree prove little.

    Blocks of 50 and 100 sheets that measure 3.90 and 7.80 mm, of nothing but paper, say 0.078 mm:
    (50 · 3.9 + 100 · 7.8) / (50² + 100²).
    """
    sheets = [sum(layer.count for layer in block.layers if layer.stock) for block in blocks]
    paper = [block.value - sum(layer.total for layer in block.layers if not layer.stock) for block in blocks]
    weight = sum(count * count for count in sheets)
    caliper = sum(count * length for count, length in zip(sheets, paper, strict=True)) / weight
    scatter = hypot(*(length - count * caliper for count, length in zip(sheets, paper, strict=True)))
    seen = scatter / sqrt(max(1, len(blocks) - 1))
    usual = hypot(*assembly_tolerances) / sqrt(len(blocks)) / 2
    return CaliperEstimate(stock, len(blocks), caliper, 2 * max(seen, usual) / sqrt(weight))


def estimate_notes(estimates: Sequence[CaliperEstimate], stocks: Mapping[str, Stock]) -> Iterator[Problem]:
    """Proposes an estimate that is better than what the shelf file says, or differs from it."""
    for estimate in estimates:
        stock = stocks[estimate.stock]
        differs = abs(estimate.caliper - stock.caliper) > estimate.tolerance
        if not differs and estimate.tolerance >= stock.tolerance:
            continue
        found, error = figure_um(estimate.caliper), figure_um(estimate.tolerance)
        typed = small_unit(typed=True)
        yield Problem(
            f"{estimate.blocks} measured blocks make a sheet of {stock.name} {found} ± {error} {small_unit()} thick, "
            f"the shelf file {figure_um(stock.caliper)} ± {figure_um(stock.tolerance)} {small_unit()}",
            f"write caliper: {found} {typed}, tolerance: {error} {typed} in place of what it says of its thickness",
            Severity.NOTE,
            field=("stocks", stock.name),
        )
