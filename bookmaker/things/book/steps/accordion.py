"""The steps of an accordion."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ....ground.quantities import counted
from ....paper.glue import glue_called
from ....sheets.flat import Flat, FoldKind, Role
from ...common_steps import FOLDING, KNIFE, PRESS, SCORING, count_folds, spray_caution
from ...making import Making, drawn
from ...views.flat_view import flat_figure
from ...wording import as_list, long, measured_in_parts
from .block_views import accordion_view
from .folding_views import folded_strip
from .job import BookJob, block_measure, glue_areas, measure_block_steps

__all__ = ["accordion_making"]


def accordion_making(job: BookJob, flyleaves: int) -> Making:
    """Strips scored, cut, folded, joined, and glued back to back."""
    strips = job.block.flats
    stock = job.bench.stocks[strips[0].stock]
    folding = folded_strip(job.bench.room, right_to_left=job.right_to_left)
    return Making(
        heading="The pages: an accordion",
        steps=tuple(_steps(job, strips, flyleaves, drawn(folding.name))),
        takes=("strip",),
        figures=(
            accordion_view(job),
            flat_figure(strips[0], job.bench.room, "Strip 1" if len(strips) > 1 else "The strip"),
        ),
        manners=(folding,),
        tools=(*KNIFE, *SCORING, *FOLDING, *PRESS),
        supplies=tuple(glue_areas(job, stock)),
        measures=(block_measure(job),),
    )


def _steps(job: BookJob, strips: Sequence[Flat], flyleaves: int, shown: str) -> Iterator[str]:
    page = job.page
    folds = [fold for strip in strips for fold in strip.folds]
    yield f"Score {count_folds(folds)} on the printed side, from mark to mark, one every {long(page.width)}."
    yield (
        f"Cut out {counted(len(strips), 'strip')}, {measured_in_parts([strip.size.width for strip in strips])} long "
        f"and {long(page.height)} high, the long edges first."
    )
    yield from _folding(job, strips, flyleaves, shown)
    yield from spray_caution(glue_called(job.bench.stocks[strips[0].stock].glue))
    if len(strips) > 1:
        yield _joining(strips)
    yield from _gluing(job, strips, flyleaves)
    yield "Knock the block square on its spine and its tail."
    yield "Press it between waste paper and boards under the weight, for at least four hours, until it is dry."
    yield from measure_block_steps(job)


def _folding(job: BookJob, strips: Sequence[Flat], flyleaves: int, shown: str) -> Iterator[str]:
    """Back and forth, and what each strip begins with."""
    hand = "right" if job.right_to_left else "left"
    which = "strip 1" if len(strips) > 1 else "the strip"
    after = f", then come {counted(flyleaves, 'blank panel')} as flyleaves" if flyleaves else ""
    yield (
        f"Fold {which} back and forth, from its {hand}-hand end {shown}. The blank panel there is pasted into the cover"
        f"{after}, and the first fold is a valley."
    )
    others = strips[1:]
    if others:
        kinds = {strip.folds[0].kind for strip in others if strip.folds}
        first = "mountain" if FoldKind.MOUNTAIN in kinds else "valley"
        yield f"Fold the other strips in the same way. They begin with a {first}."
    yield (
        f"Rub the folds down. Valleys lie at the spine, on the {hand} when the front is up, mountains at the fore-edge."
    )


def _joining(strips: Sequence[Flat]) -> str:
    """Back to back, or with a tab at the spine."""
    tabs = [panel for strip in strips for panel in strip.panels if panel.role is Role.TAB]
    ends = as_list([f"{before} to {before + 1}" for before in range(1, len(strips))])
    if tabs:
        return (
            f"Glue strip {ends}: the tab, {long(tabs[0].rect.width)} wide, behind the first panel of the next strip. "
            "The fold of the tab lies in the spine."
        )
    pages = [_joint(before, after) for before, after in pairwise(strips)]
    return (
        f"Join strip {ends}: the backs of the two end panels are glued together ({as_list(pages)}), their free "
        "edges flush at the fore-edge."
    )


def _joint(before: Flat, after: Flat) -> str:
    """Which panels meet where two strips join."""
    last, first = before.panels[-1], after.panels[0]
    if last.page is None or first.page is None:
        return "blank on blank" if last.page is first.page else "blank on printed"
    return f"page {last.page} on page {first.page}"


def _gluing(job: BookJob, strips: Sequence[Flat], flyleaves: int) -> Iterator[str]:
    stock = job.bench.stocks[strips[0].stock]
    tabbed = any(panel.role is Role.TAB for strip in strips for panel in strip.panels)
    films = job.block.panels // 2 - 1 - (0 if tabbed else len(strips) - 1)  # strips are joined back to back before
    if films < 1:
        return
    where = "page 1 with page 2" if not flyleaves else "the first two flyleaves"
    yield (
        f"Glue the backs together, the two on either side of each mountain: {counted(films, 'film')} of "
        f"{glue_called(stock.glue)}, {where} first. The glue is thin and reaches the corners; printed faces and the "
        "two outermost panels stay free of it."
    )
