"""The steps of a loose jacket."""

from __future__ import annotations

from collections.abc import Iterator

from ....ground.told import figure, print_mm, unit
from ....paper.thickness import Thickness
from ....sheets.flat import Role
from ...common_steps import FOLDING, KNIFE, SCORING, row_key
from ...making import Making, Measure
from ...views.flat_view import flat_figure
from ...wording import as_list, long, sides, thick
from ..covers.jacket import JacketPlan
from .cover_views import jacket_view
from .job import BookJob

__all__ = ["jacket_making"]


def jacket_making(job: BookJob, jacket: JacketPlan, thickness: Thickness) -> Making:
    """The jacket scored, cut and folded around the finished book, which is so thick with it."""
    row = row_key(job.called)
    measure = Measure("the book in its jacket, in a row", thickness.computed, row, thickness.measured)
    return Making(
        heading="The jacket",
        steps=tuple(_steps(job, jacket, thickness)),
        takes=("jacket",),
        figures=(
            jacket_view(job, jacket.flap),
            flat_figure(jacket.flat, job.bench.room, "The jacket"),
        ),
        tools=(*KNIFE, *SCORING, *FOLDING),
        measures=(measure,),
    )


def _steps(job: BookJob, jacket: JacketPlan, thickness: Thickness) -> Iterator[str]:
    flat = jacket.flat
    yield (f"Measure the covered book when it is dry. It should be {thick(job.cover.thickness.value)} thick.")
    yield (
        f"If it is more than {print_mm(0.1, 1)} off, correct the measured_thickness of its block by as much. "
        "Then make --changed fits the jacket to it."
    )
    folds = [figure(fold.start.x, 1) for fold in sorted(flat.folds, key=lambda fold: fold.start.x)]
    spine = next(panel.rect.width for panel in flat.panels if panel.role is Role.SPINE)
    yield (
        f"Score the four folds on the printed side. They lie {as_list(folds)} {unit()} from the left edge, the two in "
        f"the middle {long(spine)} apart for the spine."
    )
    yield f"Cut the jacket out from mark to mark, {sides(flat.size)} wide and high."
    yield (
        "Fold all four away from the print. They are mountains; the folds of the flaps stay round until they are on "
        "the book."
    )
    yield "Lay the spine of the book between the two inner folds."
    yield "Close both sides over the cover."
    yield f"Fold the flaps in around the fore-edges. They reach in {long(jacket.flap)}; a jacket is not glued."
    yield (
        "Press the book in its jacket overnight, and it keeps its shape. It is "
        f"{thick(thickness.value)} thick, {long(jacket.height)} high and {long(jacket.depth)} deep."
    )
