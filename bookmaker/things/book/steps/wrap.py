"""The steps of a paper wrap."""

from __future__ import annotations

from collections.abc import Iterator

from ....sheets.flat import Flat, Role
from ...common_steps import FOLDING, KNIFE, PRESS, SCORING, glue_over, panels_of, spray_caution
from ...making import Making, Manner, Supply, Unit, drawn
from ...views.flat_view import flat_figure
from ...wording import as_list, long, sides
from ..covers.wrap_keys import WrapKeys
from .corner_views import CORNER_OF_PAPER, corner_of_paper
from .cover_views import wrap_view
from .job import BookJob, cover_measure, measure_cover_step
from .pricking_view import PRICKED, pricked_marks

__all__ = ["wrap_making"]

ALONG_SPINE = 2.0
"""How far the first and the last page are glued to the cover along the spine, in mm (common practice)."""


def wrap_making(job: BookJob, entry: WrapKeys) -> Making:
    """The cover scored, cut, turned in, and glued around the block."""
    (flat,) = job.cover.flats
    return Making(
        heading="The cover: a paper wrap",
        steps=tuple(_steps(job, entry, flat)),
        takes=(flat.kind,),
        figures=(
            wrap_view(job, entry),
            flat_figure(flat, job.bench.room, "The cover"),
        ),
        manners=tuple(_manners(job, entry)),
        tools=(*KNIFE, *SCORING, *FOLDING, *PRESS, "fine needle"),
        supplies=tuple(_supplies(job, flat)),
        measures=(cover_measure(job),),
    )


def _supplies(job: BookJob, flat: Flat) -> Iterator[Supply]:
    """Glue under the turn-ins and, where no blank ends are pasted down, between block and cover."""
    page, block = job.page, job.block
    glue = job.bench.glue_of(flat)
    if turn_ins := panels_of([flat], Role.TURN_IN):
        yield glue_over(glue, turn_ins, job.bench.stock_of(flat).glue)
    if not block.pages:
        yield Supply("PVA", page.height * (2 * page.width + block.thickness.value), Unit.AREA)
    elif not block.pastedowns:
        yield Supply("PVA", page.height * (2 * ALONG_SPINE + block.thickness.value), Unit.AREA)


def _manners(job: BookJob, entry: WrapKeys) -> Iterator[Manner]:
    yield pricked_marks(job.bench.room)
    if entry.turn_in and entry.head_turn_in:
        yield corner_of_paper(job.bench.room)


def _steps(job: BookJob, entry: WrapKeys, flat: Flat) -> Iterator[str]:
    spine = next(panel.rect for panel in flat.panels if panel.role is Role.SPINE)
    yield (
        f"Prick the marks of the two spine folds through to the back of the sheet with a needle {drawn(PRICKED, 'a')}."
    )
    yield (
        f"Score the spine folds on the back, from hole to hole {drawn(PRICKED, 'b and c')}. They are "
        f"{long(spine.width)} apart, the first {long(spine.x)} from the left edge of the cover as it is printed."
    )
    if places := list(_turn_in_places(entry)):
        yield f"Score the turn-ins on the back too, {as_list(places)}."
    if places:
        notched = " At head and tail the turn-ins are notched at the spine." if entry.head_turn_in else ""
        cut_off = entry.turn_in and entry.head_turn_in
        corners = f" The corners go at 45° {drawn(CORNER_OF_PAPER, 'a')}." if cut_off else ""
        yield f"Cut the cover out on its lines, {sides(flat.size)} wide and high.{notched}{corners}"
    else:
        yield (
            f"Cut the cover out {long(flat.bleed)} outside its edges, with its print, "
            f"{long(flat.size.width + 2 * flat.bleed)} wide and {long(flat.size.height + 2 * flat.bleed)} high: it "
            "is trimmed after gluing."
        )
    yield "Fold both spine folds away from the print. They are mountains; the spine stands like a channel."
    yield from _turning_in(job, entry, flat)
    yield from _hanging(job, entry)
    yield from _drying(job, entry)


def _turn_in_places(entry: WrapKeys) -> Iterator[str]:
    if entry.turn_in:
        yield f"{long(entry.turn_in)} from both fore-edges"
    if entry.head_turn_in:
        yield f"{long(entry.head_turn_in)} from head and tail"


def _turning_in(job: BookJob, entry: WrapKeys, flat: Flat) -> Iterator[str]:
    """Head and tail first: the fore-edges go over them at the corners."""
    glue = job.bench.glue_of(flat)
    if entry.turn_in or entry.head_turn_in:
        yield from spray_caution(glue)
    if entry.head_turn_in:
        corner = f" {drawn(CORNER_OF_PAPER, 'b and c')}" if entry.turn_in else ""
        yield f"Glue down the turn-ins at head and tail, folded back, with {glue}{corner}."
    if entry.turn_in:
        yield f"Glue down the turn-ins at the fore-edges, folded back, with {glue}."


def _hanging(job: BookJob, entry: WrapKeys) -> Iterator[str]:
    """The block into the cover."""
    beyond = f" The cover stands out {long(entry.square)} beyond the pages at head, tail and fore-edge."
    yield f"Try the block in the cover dry, front to front and head to head.{beyond if entry.square else ''}"
    block = job.block
    if not block.pages:
        yield "Brush PVA on the spine of the block."
        yield "Set the block into the spine of the cover."
        yield "Brush PVA on its front face."
        yield "Close the cover on it."
        yield "Turn the book over, and do the same with its back."
    elif block.pastedowns:
        glue = job.bench.glue_of(block.flats[0])
        yield from spray_caution(glue)
        yield (
            f"Glue the back of the first blank panel with {glue}. The spine itself stays free of glue: the book opens."
        )
        yield "Set the block into the spine of the cover."
        yield "Close the cover on the panel."
        yield "Turn the book over, and do the same with the last panel."
    else:
        yield "Run a line of PVA along the spine of the block."
        yield "Set the block into the spine of the cover."
        yield f"Glue {long(ALONG_SPINE)} of its first and of its last page to the cover along the spine."


def _drying(job: BookJob, entry: WrapKeys) -> Iterator[str]:
    yield "Press the book between pressing boards under the weight, overnight."
    if not entry.turn_in and not entry.head_turn_in:
        level = "level with the pages" if not entry.square else f"{long(entry.square)} outside the pages"
        folded = " Only the cover is cut: the pages end in folds, and a cut fold lets the leaf fall open."
        keep = folded if job.block.pastedowns else ""
        yield f"Trim the cover {level} on its three open sides, in light strokes along the steel rule.{keep}"
    yield measure_cover_step(job)
