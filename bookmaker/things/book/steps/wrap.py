"""The steps of a paper wrap."""

from __future__ import annotations

from collections.abc import Iterator

from ....sheets.flat import Flat, Role
from ...common_steps import FOLDING, KNIFE, PRESS, SCORING, film_steps, glue_over, panels_of, print_step
from ...making import Making, Supply, Unit
from ...views.flat_view import flat_figure
from ...wording import as_list, long, sides
from ..covers.wrap_keys import WrapKeys
from .cover_views import wrap_view
from .job import BookJob, cover_measure, measure_cover_step

__all__ = ["wrap_making"]

ALONG_SPINE = 2.0
"""How far the first and the last page are glued to the cover along the spine, in mm (common practice)."""


def wrap_making(job: BookJob, entry: WrapKeys) -> Making:
    """The cover scored, cut, turned in, and glued around the block."""
    (flat,) = job.cover.flats
    return Making(
        heading="The cover: a paper wrap",
        steps=tuple(_steps(job, entry, flat)),
        figures=(
            wrap_view(job, entry),
            flat_figure(flat, job.bench.room, "The cover"),
        ),
        tools=(*KNIFE, *SCORING, *FOLDING, *PRESS),
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


def _steps(job: BookJob, entry: WrapKeys, flat: Flat) -> Iterator[str]:
    spine = next(panel.rect for panel in flat.panels if panel.role is Role.SPINE)
    turned = entry.turn_in or entry.head_turn_in
    yield print_step(job.bench, flat.kind)
    yield from film_steps(job.bench, flat)
    yield (
        "Prick the marks of the two spine folds through to the back of the sheet with a needle, and score them there "
        f"from hole to hole: they are {long(spine.width)} apart, the first {long(spine.x)} from the left edge of the "
        "cover as it is printed." + _turn_in_scores(entry)
    )
    if turned:
        notched = " At head and tail the turn-ins are notched at the spine." if entry.head_turn_in else ""
        corners = " The corners are cut off at 45°." if entry.turn_in and entry.head_turn_in else ""
        yield f"Cut the cover out on its lines, {sides(flat.size)} high and wide.{notched}{corners}"
    else:
        yield (
            f"Cut the cover out {long(flat.bleed)} outside its edges, with its print, "
            f"{long(flat.size.height + 2 * flat.bleed)} high and {long(flat.size.width + 2 * flat.bleed)} wide: it "
            "is trimmed after gluing."
        )
    yield "Fold both spine folds away from the print, so that the spine stands like a channel: they are mountains."
    if turned:
        glue = job.bench.glue_of(flat)
        parts = ["at head and tail"] if entry.head_turn_in else []
        parts += ["at the fore-edges"] if entry.turn_in else []
        yield f"Fold the turn-ins back and glue them down with {glue}, {', then '.join(parts)}."
    yield from _hanging(job, entry)
    yield from _drying(job, entry)


def _turn_in_scores(entry: WrapKeys) -> str:
    places = []
    if entry.turn_in:
        places.append(f"{long(entry.turn_in)} from both fore-edges")
    if entry.head_turn_in:
        places.append(f"{long(entry.head_turn_in)} from head and tail")
    return f" Score the turn-ins {as_list(places)}." if places else ""


def _hanging(job: BookJob, entry: WrapKeys) -> Iterator[str]:
    """The block into the cover."""
    beyond = f" The cover stands out {long(entry.square)} beyond the pages at head, tail and fore-edge."
    stands_out = beyond if entry.square else ""
    block = job.block
    if not block.pages:
        yield (
            "Try the block in the cover dry, front to front and head to head. Then brush PVA on its spine and set "
            "it into the spine of the cover; brush its front face and close the cover on it; turn it over and do "
            "the same with the back."
        )
    elif block.pastedowns:
        glue = job.bench.glue_of(block.flats[0])
        yield (
            f"Try the block in the cover dry, front to front and head to head.{stands_out} Then glue the back of "
            f"the first blank panel with {glue}, set the block into the spine, and close the cover "
            "on it; turn the book over and do the same with the last panel. The spine itself stays free of glue, "
            "so that the book opens."
        )
    else:
        yield (
            f"Try the block in the cover dry, front to front and head to head.{stands_out} Then run a line of PVA "
            f"along the spine of the block, set it into the spine of the cover, and glue {long(ALONG_SPINE)} of its "
            "first and of its last page to the cover along the spine."
        )


def _drying(job: BookJob, entry: WrapKeys) -> Iterator[str]:
    yield "Press the book between pressing boards under the weight, overnight."
    if not entry.turn_in and not entry.head_turn_in:
        level = "level with the pages" if not entry.square else f"{long(entry.square)} outside the pages"
        folded = " Cut the cover only: the pages end in folds, and a cut fold lets the leaf fall open."
        keep = folded if job.block.pastedowns else ""
        yield f"Trim the cover at head, tail and fore-edges, {level}, in light strokes along the steel rule.{keep}"
    yield measure_cover_step(job)
