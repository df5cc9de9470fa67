"""The steps of a slipcase."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.quantities import counted
from ...sheets.flat import Role
from ..common_steps import FOLDING, KNIFE, SCORING, count_folds, film_steps, glue_over, panels_of, print_step, row_key
from ..making import Bench, Chapter, Making, Measure
from ..thing import Around
from ..views.flat_view import flat_figure
from ..wording import as_list, long, sides, thick
from .plan import SlipcasePlan

__all__ = ["slipcase_chapter"]


def slipcase_chapter(box: SlipcasePlan, bench: Bench, around: Around) -> Chapter:
    """What it holds, and how its net is scored, cut, folded and glued around its books."""
    titles = [around.printed(book) for book in box.held]
    where = f", and stands in {box.space}" if box.space else ""
    about = f"It holds {counted(len(titles), 'book')}: {as_list(titles)}{where}."
    making = Making(
        heading="The box",
        steps=tuple(_steps(box, titles, bench)),
        figures=(flat_figure(box.flat, bench.room, "The net", high=100.0),),
        tools=(*KNIFE, *SCORING, *FOLDING, "a small block of wood"),
        supplies=(glue_over(bench.glue_of(box.flat), panels_of([box.flat], Role.TAB), bench.stock_of(box.flat).glue),),
        measures=(Measure("its books in a row", box.row, row_key(around.called(box.held))),),
    )
    return Chapter(f"Slipcase: {box.name}", about, (making,))


def _steps(box: SlipcasePlan, titles: Sequence[str], bench: Bench) -> Iterator[str]:
    inside, outside, flat = box.inside, box.outside, box.flat
    yield (
        f"Finish its {counted(len(titles), 'book')} first, jackets and all: {as_list(titles)}. Side by side between "
        f"two boards they should measure {thick(box.row)}. If they are more than {thick(box.entry.clearance)} off, "
        "write what you measured, or a larger clearance, and run make again."
    )
    yield print_step(bench, flat.kind)
    yield from film_steps(bench, flat)
    yield (
        f"Score {count_folds(flat.folds)} on the printed side with a steel rule, from mark to mark, while the sheet "
        "is whole. Where two marks lie close together at the left and the right, the outer, short one is the fold of "
        "top or bottom, which runs across the back only; the inner, long one is the fold of the tabs, which runs "
        "across the sides only."
    )
    yield (
        f"Cut the net out along its lines, {sides(flat.size)} high and wide, the long straight edges first. The "
        "little steps beside the tabs are no wider than the card is thick: cut the side up to the outer line, and "
        "the slant of the tab down to its fold."
    )
    if box.entry.thumb_cut:
        yield "Cut the two thumb cuts last, in several light strokes, turning the card and not the knife."
    yield (
        "Fold all folds away from the print, sharpen them with the bone folder, and try the box together dry: "
        "sides up, tabs in, top and bottom over the tabs. Tabs that lie behind one another are not alike left and "
        f"right. The room inside is {long(inside.width)} wide, {long(inside.height)} high and {long(inside.depth)} "
        "deep. The books must slide in and out."
    )
    tabs = panels_of([flat], Role.TAB)
    yield (
        f"Glue one end at a time with {bench.glue_of(flat)}: a thin film on the outside of "
        f"both tabs, {long(min(min(tab.size) for tab in tabs))} wide; fold the top down on them, see that its edges "
        "are flush with the sides, and hold it until it grips, with a small block of wood inside to press against. "
        "When it is dry, do the same with the bottom."
    )
    yield (
        "Let it dry for an hour around its books, wrapped in a strip of waste paper so that no glue touches them. "
        f"They stand with their spines at the opening. The box is {long(outside.width)} wide, "
        f"{long(outside.height)} high and {long(outside.depth)} deep."
    )
