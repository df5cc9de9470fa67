"""The steps of a slipcase."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.quantities import counted
from ...sheets.flat import Role
from ..box.views import order_of_folds
from ..common_steps import (
    FOLDING,
    KNIFE,
    SCORING,
    count_folds,
    glue_over,
    panels_of,
    row_key,
    spray_caution,
)
from ..making import Bench, Chapter, Making, Measure
from ..thing import Around
from ..views.flat_view import flat_figure
from ..wording import as_list, long, sides, thick
from .plan import SlipcasePlan
from .views import coming_together, net_to_fold, tab_outlines

__all__ = ["slipcase_chapter"]


def slipcase_chapter(box: SlipcasePlan, bench: Bench, around: Around) -> Chapter:
    """What it holds, and how its net is scored, cut, folded and glued around its books."""
    titles = [around.printed(book) for book in box.held]
    where = f", and stands in {box.space}" if box.space else ""
    about = f"It holds {counted(len(titles), 'book')}: {as_list(titles)}{where}."
    tabs, order = panels_of([box.flat], Role.TAB), list(order_of_folds(net_to_fold(box.flat)))
    making = Making(
        heading="The box",
        steps=tuple(_steps(box, titles, bench)),
        takes=(box.flat.kind,),
        figures=(
            flat_figure(box.flat, bench.room, "The net", high=100.0, order=order, glue=tab_outlines(box.flat)),
            coming_together(box.flat, bench.room),
        ),
        tools=(*KNIFE, *SCORING, *FOLDING, "a small block of wood"),
        supplies=(glue_over(bench.glue_of(box.flat), tabs, bench.stock_of(box.flat).glue),),
        measures=(Measure("its books in a row", box.row, row_key(around.called(box.held))),),
    )
    return Chapter(f"Slipcase: {box.name}", about, (making,))


def _steps(box: SlipcasePlan, titles: Sequence[str], bench: Bench) -> Iterator[str]:
    inside, outside, flat = box.inside, box.outside, box.flat
    yield f"Finish its {counted(len(titles), 'book')} first, jackets and all: {as_list(titles)}."
    yield f"Measure them side by side between two boards. They should have {thick(box.row)} together."
    yield (
        f"If they are more than {thick(box.entry.clearance)} off, write what you measured into the shelf file, under "
        "measured_rows as said above, or a larger clearance. Then make --changed prints a box that fits."
    )
    yield (
        f"Score {count_folds(flat.folds)} on the printed side with a steel rule, from mark to mark. Where two marks "
        "lie close together at the left and the right, the outer, short one is the fold of top or bottom, which runs "
        "across the back only; the inner, long one is the fold of the tabs, which runs across the sides only."
    )
    yield (
        f"Cut the net out along its lines, {sides(flat.size)} wide and high, the long straight edges first. The "
        "little steps beside the tabs are no wider than the card is thick: there the knife goes up the side to the "
        "outer line, and down the slant of the tab to its fold."
    )
    if box.entry.thumb_cut:
        yield "Cut the two thumb cuts last, in several light strokes. The card is turned, and not the knife."
    yield "Sharpen all folds with the bone folder, folded away from the print."
    yield (
        "Try the box together dry, in the order of the drawing: sides up, tabs in, top and bottom over the tabs. Tabs "
        "that lie behind one another are not alike left and right."
    )
    yield (
        f"Slide the books in and out. The room inside is {long(inside.width)} wide, {long(inside.height)} high and "
        f"{long(inside.depth)} deep."
    )
    yield from _gluing(box, bench)
    yield (
        "Leave it for an hour around its books, wrapped in a strip of waste paper against glue, their spines at the "
        f"opening. The box is {long(outside.width)} wide, {long(outside.height)} high and {long(outside.depth)} deep."
    )


def _gluing(box: SlipcasePlan, bench: Bench) -> Iterator[str]:
    """One end after the other."""
    tabs, glue = panels_of([box.flat], Role.TAB), bench.glue_of(box.flat)
    yield from spray_caution(glue)
    yield (
        f"Spread {glue} in a thin film on the outside of both upper tabs, {long(min(min(tab.size) for tab in tabs))} "
        "wide."
    )
    yield "Fold the top down on them, its edges flush with the sides."
    yield "Hold it until it grips, against a small block of wood inside."
    yield "Glue the bottom in the same way, when the top is dry."
