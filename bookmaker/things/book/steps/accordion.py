"""The steps of an accordion."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ....ground.quantities import counted
from ....paper.glue import glue_called
from ....sheets.flat import Flat, FoldKind, Role
from ...common_steps import FOLDING, KNIFE, PRESS, SCORING, count_folds, print_step
from ...making import Making
from ...views.flat_view import flat_figure
from ...wording import as_list, long, measured_in_parts
from .block_views import accordion_view
from .job import BookJob, block_measure, glue_areas, measure_block_step

__all__ = ["accordion_making"]


def accordion_making(job: BookJob, flyleaves: int) -> Making:
    """Strips scored, cut, folded, joined, and glued back to back."""
    strips = job.block.flats
    stock = job.bench.stocks[strips[0].stock]
    return Making(
        heading="The pages: an accordion",
        steps=tuple(_steps(job, strips, flyleaves)),
        figures=(
            accordion_view(job),
            flat_figure(strips[0], job.bench.room, "Strip 1" if len(strips) > 1 else "The strip"),
        ),
        tools=(*KNIFE, *SCORING, *FOLDING, *PRESS),
        supplies=tuple(glue_areas(job, stock)),
        measures=(block_measure(job),),
    )


def _steps(job: BookJob, strips: Sequence[Flat], flyleaves: int) -> Iterator[str]:
    page = job.page
    folds = [fold for strip in strips for fold in strip.folds]
    yield print_step(job.bench, "strip")
    yield (
        f"Score {count_folds(folds)} on the printed side while the sheet is whole, from mark to mark, one every "
        f"{long(page.width)}. Dash and dot is a mountain, short dashes are a valley."
    )
    yield (
        f"Cut out {counted(len(strips), 'strip')}, {long(page.height)} high and "
        f"{measured_in_parts([strip.size.width for strip in strips])} long, the long edges first."
    )
    yield _folding(job, strips, flyleaves)
    if len(strips) > 1:
        yield from _joining(strips)
    yield _gluing(job, strips, flyleaves)
    yield (
        "Knock the block square on its spine and its tail, lay it between waste paper and pressing boards, and let it "
        "dry under the weight for at least four hours."
    )
    yield measure_block_step(job)


def _folding(job: BookJob, strips: Sequence[Flat], flyleaves: int) -> str:
    """Back and forth, and what each strip begins with."""
    hand = "right" if job.right_to_left else "left"
    from_end = " from its right-hand end" if job.right_to_left else " from its left-hand end"
    text = f"Fold back and forth, {from_end.strip()}: strip 1 begins with the blank panel that is pasted into the cover"
    if len(strips) == 1:
        text = text.replace("strip 1", "the strip")
    if flyleaves:
        text += f", then come {counted(flyleaves, 'blank panel')} as flyleaves"
    text += ", and its first fold is a valley. "
    others = strips[1:]
    if others:
        kinds = {strip.folds[0].kind for strip in others if strip.folds}
        first = "mountain" if FoldKind.MOUNTAIN in kinds else "valley"
        text += f"The other strips begin with a {first}. "
    return (
        f"{text}Valleys lie at the spine, on the {hand} when the front is up, mountains at the fore-edge. Rub the "
        "folds down."
    )


def _joining(strips: Sequence[Flat]) -> Iterator[str]:
    """Back to back, or with a tab at the spine."""
    tabs = [panel for strip in strips for panel in strip.panels if panel.role is Role.TAB]
    ends = as_list([f"{before} to {before + 1}" for before in range(1, len(strips))])
    if tabs:
        yield (
            f"Join strip {ends}: glue the tab, {long(tabs[0].rect.width)} wide, behind the first panel of the next "
            "strip, so that the fold of the tab lies in the spine."
        )
    else:
        pages = [_joint(before, after) for before, after in pairwise(strips)]
        yield (
            f"Join strip {ends}: the backs of the two end panels are glued together ({as_list(pages)}), their free "
            "edges flush at the fore-edge."
        )


def _joint(before: Flat, after: Flat) -> str:
    """Which panels meet where two strips join."""
    last, first = before.panels[-1], after.panels[0]
    if last.page is None or first.page is None:
        return "blank on blank" if last.page is first.page else "blank on printed"
    return f"page {last.page} on page {first.page}"


def _gluing(job: BookJob, strips: Sequence[Flat], flyleaves: int) -> str:
    stock = job.bench.stocks[strips[0].stock]
    films = job.block.panels // 2 - 1
    if not films:
        return "There are no backs to glue together: the two panels are pasted into the cover."
    first = "the two on either side of each mountain"
    where = "page 1 with page 2" if not flyleaves else "the first two flyleaves"
    return (
        f"Glue the backs together, {first}: {counted(films, 'film')} of {glue_called(stock.glue)}, {where} first. "
        "Thinly, out to the corners, and never on a printed face. The two outermost panels stay free."
    )
