"""A book to make, as the steps of its parts know it, and what those have in common."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ....ground.geometry import Size
from ....paper.glue import glue_called
from ....paper.stock import Stock
from ....sheets.flat import Role
from ...common_steps import glue_over, panels_of
from ...making import Bench, Measure, Supply, Unit
from ...views.side_view import SideView
from ...wording import long, thick
from ..blocks.block_plan import BlockPlan
from ..covers.cover_plan import CoverPlan

__all__ = [
    "BookJob",
    "block_measure",
    "cover_measure",
    "glue_areas",
    "measure_block_steps",
    "measure_cover_step",
    "spine_glue",
]


@dataclass(frozen=True, slots=True)
class BookJob:
    """A book to make: its page in mm, its block and its cover worked out, and what lies before its maker.

    `called` is how a list of books calls it.
    """

    bench: Bench
    called: str
    page: Size
    right_to_left: bool
    block: BlockPlan
    cover: CoverPlan

    @property
    def side_view(self) -> SideView:
        """A drawing of it from the side, still empty."""
        return SideView.within(self.bench.room, right_to_left=self.right_to_left)


def measure_cover_step(job: BookJob) -> str:
    """How large the covered book is, and that it is measured."""
    cover = job.cover
    return (
        f"Measure the covered book between pressing boards. It should be {thick(cover.thickness.value)} thick, "
        f"{long(cover.height)} high and {long(cover.depth)} deep.{_at_its_edges(cover)}"
    )


def _at_its_edges(cover: CoverPlan) -> str:
    """Where it is thickest, if that is not everywhere."""
    if not cover.turned_in:
        return ""
    return (
        f" That is where the turn-ins lie, and the room it needs on the shelf; between them it may be "
        f"{thick(cover.turned_in)} thinner."
    )


def cover_measure(job: BookJob) -> Measure:
    """The thickness of the covered book, and where to write it."""
    thickness = job.cover.thickness
    where = job.bench.whereabouts.length_of("measured_thickness")
    return Measure("the covered book", thickness.computed, where, thickness.measured)


def measure_block_steps(job: BookJob, where: str = "") -> Iterator[str]:
    """When to measure the block, what was computed, and what to do about a difference."""
    block = job.block.bare
    if block.measured is not None:
        yield (
            f"Measure the block by itself{where}, between pressing boards. The cover is made for the "
            f"{thick(block.measured)} that you measured (computed {thick(block.computed)}){_pasted(job)}."
        )
        return
    yield f"Measure the block by itself{where}, lightly pressed. {thick(block.computed)} was computed{_pasted(job)}."
    yield (
        "Write it into the shelf file if it is off, before you print the cover. Then make --changed fits the "
        "cover to it."
    )


def _pasted(job: BookJob) -> str:
    """What is added when it is pasted in, if anything is."""
    films = sum(layer.total for layer in job.block.pasted)
    return f", without {thick(films)} of glue under its ends" if films else ""


def block_measure(job: BookJob) -> Measure:
    """The thickness of the block, and where to write it."""
    thickness = job.block.bare
    where = job.bench.whereabouts.length_of("block", "measured_thickness")
    return Measure("the block by itself", thickness.computed, where, thickness.measured)


def glue_areas(job: BookJob, stock: Stock) -> Iterator[Supply]:
    """The films of glue that count in a block of a stock: each as large as a page, or as a hinge tab."""
    glue, film = glue_called(stock.glue), stock.glue
    for layer in (*job.block.bare.layers, *job.block.pasted):
        if "glue films" not in layer.what:
            continue
        if "tabs" in layer.what:
            yield glue_over(glue, panels_of(job.block.flats, Role.TAB), film)
        else:
            yield Supply(glue, layer.count * job.page.width * job.page.height, Unit.AREA, film)


def spine_glue(job: BookJob, coats: int = 1) -> Supply:
    """PVA brushed over the spine of a block."""
    return Supply("PVA", coats * job.block.thickness.value * job.page.height, Unit.AREA)
