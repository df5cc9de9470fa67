"""The steps of single leaves, perfect bound."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ....ground.quantities import counted
from ....ground.told import print_mm
from ....sheets.flat import Face, Flat
from ...common_steps import KNIFE, PRESS, SCORING, count_folds, spray_caution
from ...making import Making
from ...views.flat_view import flat_figure
from ...wording import as_list, long, sides, thick
from .job import BookJob, block_measure, glue_areas, measure_block_steps, spine_glue

__all__ = ["leaves_making"]

MOST_PILES = 8
"""Piles that are listed one by one."""

LEAF_THROUGH = "Leaf through once. Every page follows the one before."

THICKEST_CUT = 1.0
"""A thicker pile is better cut in parts, in mm (common practice)."""


def leaves_making(job: BookJob, trim: float, *, folded: bool) -> Making:
    """Flats piled and cut, leaves gathered, the spine glued, the block trimmed."""
    flats = job.block.flats
    stock = job.bench.stock_of(flats[0])
    return Making(
        heading="The pages: single leaves",
        steps=tuple(_steps(job, flats, trim, folded=folded)),
        takes=("leaves",),
        figures=(flat_figure(flats[0], job.bench.room, "The first flat" if len(flats) > 1 else "The flat"),),
        tools=(*KNIFE, *(SCORING if folded else ()), *PRESS, "two bulldog clips", "fine sandpaper", "flat brush"),
        supplies=(
            *glue_areas(job, stock),
            spine_glue(job, coats=2),
        ),
        measures=(block_measure(job),),
    )


def _steps(job: BookJob, flats: Sequence[Flat], trim: float, *, folded: bool) -> Iterator[str]:
    first = flats[0]
    if folded:
        folds = count_folds([fold for flat in flats for fold in flat.folds])
        yield f"Score {folds} on the printed side, from mark to mark."
    yield (
        f"Cut out {counted(len(flats), 'flat')}, {sides(first.size)} wide and high, with the marks around "
        f"{'it' if len(flats) == 1 else 'each'}."
    )
    yield from _cutting(job, flats, folded=folded)
    if folded:
        glue = job.bench.glue_of(first)
        yield f"Fold each of the {job.block.pages // 2} strips in the middle with the print outwards."
        yield from spray_caution(glue)
        yield f"Glue the backs of each strip together with {glue}, thinly and out to the corners."
        yield "Press the strips until they are dry."
    yield from _gathering(job, flats)
    yield "Knock the block even on its spine and its head."
    yield "Clamp it between pressing boards, its spine just showing."
    yield "Roughen the spine with a few strokes of sandpaper."
    yield "Brush on two thin coats of PVA. Each dries in the clamp, for about an hour."
    if trim:
        yield (
            "Trim fore-edge, head and tail, square to the spine, along the dotted lines in the corners that go. "
            f"{long(trim)} comes off each, and the block is {sides(job.page)} wide and high."
        )
    yield from measure_block_steps(job)


def _cutting(job: BookJob, flats: Sequence[Flat], *, folded: bool) -> Iterator[str]:
    columns = 1 + sum(cut.start.x == cut.end.x for cut in flats[0].cuts)
    rows = 1 + sum(cut.start.y == cut.end.y for cut in flats[0].cuts)
    if columns * rows == 1:
        return
    what = "strip" if folded else "leaf"
    many = "strips" if what == "strip" else "leaves"
    grid = f"into {counted(columns, 'column')} of {counted(rows, what, many)}"
    if len(flats) == 1:
        yield f"Cut the flat {grid}, along the lines of the grid, from mark to mark; the outer edges last."
        return
    pile = len(flats) * job.bench.stock_of(flats[0]).caliper
    parts = f" It is over {print_mm(THICKEST_CUT)}: in two or three parts it is easier." if pile > THICKEST_CUT else ""
    yield f"Lay the {len(flats)} flats on one another, flat 1 on top, all face up, mark over mark."
    yield "Clip them at the waste."
    yield (
        f"Cut the pile, {thick(pile)} thick, {grid}, from mark to mark, in many light strokes, the outer edges "
        f"last.{parts}"
    )


def _gathering(job: BookJob, flats: Sequence[Flat]) -> Iterator[str]:
    """Which pages each pile of the grid holds, the first on top."""
    places = [panel.page for panel in flats[0].panels if panel.face is Face.FRONT and panel.page and panel.page % 2]
    if len(places) < 2:
        yield LEAF_THROUGH
        return
    piles = [f"{first}–{min(first + 2 * len(flats) - 1, job.block.pages)}" for first in places]
    order = f"{', '.join(piles[:3])} and so on to {piles[-1]}" if len(piles) > MOST_PILES else as_list(piles)
    what = "leaves" if len(flats) == 1 else "piles"
    start = "right" if job.right_to_left else "left"
    yield (
        f"Lay the {what} on one another, page 1 on top, along the top row from the {start}, then the next row: pages "
        f"{order}."
    )
    yield LEAF_THROUGH
