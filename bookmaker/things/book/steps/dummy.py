"""The steps of a dummy block."""

from __future__ import annotations

from collections.abc import Iterator

from ....ground.told import print_mm
from ....paper.glue import glue_called
from ....sheets.cutting import CutPart
from ....sheets.flat import Flat, Role
from ...common_steps import KNIFE, SCORING, glue_over, panels_of, spray_caution
from ...making import Figure, Making, Supply, caution
from ...views.flat_view import flat_figure
from ...wording import long, thick
from .cover_views import edge_strip_view
from .job import BookJob, block_measure, measure_block_steps

__all__ = ["dummy_making"]


def dummy_making(job: BookJob, material: str, *, fills: bool, layered: bool) -> Making:
    """A block cut to size, and the strip around its edges."""
    strip = next(iter(job.block.flats), None)
    figures: tuple[Figure, ...] = ()
    supplies: tuple[Supply, ...] = ()
    if strip:
        stock = job.bench.stocks[strip.stock]
        figures = (
            edge_strip_view(job),
            flat_figure(strip, job.bench.room, "The edge strip"),
        )
        supplies = (glue_over(glue_called(stock.glue), panels_of([strip], Role.EDGE), stock.glue),)
    return Making(
        heading="The block: a dummy",
        steps=tuple(_steps(job, material, strip, fills=fills, layered=layered)),
        takes=(strip.kind,) if strip else (),
        figures=figures,
        tools=(
            *KNIFE,
            "fine razor saw with mitre box and clamp",
            "fine sandpaper",
            "small square",
            "caliper gauge",
            "dust mask",
            *(SCORING if strip else ()),
        ),
        supplies=supplies,
        measures=(block_measure(job),),
    )


def _steps(job: BookJob, material: str, strip: Flat | None, *, fills: bool, layered: bool) -> Iterator[str]:
    part, *_ = job.block.cut_list
    if fills:
        yield (
            "Leave this block for last, when the other blocks of its space are measured, the measures are in the shelf "
            "file and make has run again: it fills what they leave, and its thickness changes with theirs."
        )
    smaller = " That is smaller than the page by the edge strip and its glue." if strip else ""
    if layered:
        counts = " and ".join(f"{one.count} of {one.material}" for one in job.block.cut_list)
        yield (
            f"Cut the layers, {counts}, each {thick(part.width)} wide and {thick(part.height)} high, the grain along "
            f"its height, board in many light strokes along a steel rule.{smaller}"
        )
        yield "Glue them on one another with a thin even film, the thin ones inside, the edges level."
        yield "Press them under a weight until they are dry."
        yield DUST
        yield "Sand the edges on sandpaper that lies flat."
    else:
        yield from _cut(part, material, smaller)
    yield "See with the square that the three corners away from the spine are square and sharp."
    yield from measure_block_steps(job)
    if strip:
        yield from _edge_strip(job, strip)


DUST = caution("dust is not for lungs. Wear a mask when you sand, and wipe up damp.")


def _cut(part: CutPart, material: str, smaller: str) -> Iterator[str]:
    if part.as_sold:
        layers, each = part.as_sold
        if layers == 1:
            yield f"Take {material} of {print_mm(each, 1)}, which shops have; what is too much is sanded off."
        else:
            yield (
                f"Glue {layers} layers of {material} of {print_mm(each, 1)}, which shops have, on one another with "
                "PVA. Press them until they are dry; what is too much is sanded off."
            )
    yield caution("clamp wood in a mitre box, and keep the free hand behind the saw.")
    yield (
        f"Cut the block of {material}: {thick(part.width)} wide, {thick(part.height)} high, "
        f"{thick(part.thickness)} thick, the grain along its height.{smaller} Of card it is layers, glued and pressed "
        "until dry; of waste paper a pile, glued with PVA along one edge, pressed, and trimmed."
    )
    yield DUST
    yield "Sand it to size, and to its thickness, on sandpaper that lies flat."


def _edge_strip(job: BookJob, strip: Flat) -> Iterator[str]:
    leg, back, _ = (panel.rect.width for panel in strip.panels)
    yield f"Score the two folds of the edge strip on the print, {long(leg)} from each end and {long(back)} apart."
    yield (
        f"Cut the ends on their marks ({long(strip.size.width)} from end to end), the long edges about "
        f"{print_mm(0.5, 1)} outside theirs. The print runs on for {long(strip.bleed)}."
    )
    yield "Fold both ends back, away from the print. Both folds are mountains; the strip stands like a channel."
    yield (
        "Try it dry. The folds sit on the corners between fore-edge and head, and fore-edge and tail; the ends are "
        "level with the spine."
    )
    glue = job.bench.glue_of(strip)
    yield from spray_caution(glue)
    yield (
        f"Glue the fore-edge first, then one end after the other, with {glue}, each pressed against something flat. "
        "The spine and the two faces stay bare."
    )
    yield "Lay the block on a face when it is dry."
    yield "Trim the strip level with it, the blade flat on the block and away from your hand."
    yield "Turn it over, and do the same for the other face."
