"""Steps that most things have in common: printing, filming, scoring, gluing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..ground.geometry import Rect
from ..ground.quantities import counted
from ..ground.told import print_mm, unit
from ..paper.glue import GLUES
from ..sheets.flat import Flat, Fold, FoldKind, Role
from .making import Bench, Supply, Unit
from .wording import as_list, thick

__all__ = [
    "BEFORE",
    "FOLDING",
    "KNIFE",
    "PRESS",
    "SCORING",
    "count_folds",
    "film_steps",
    "glue_over",
    "panels_of",
    "print_step",
    "row_key",
]

KNIFE = ("craft knife with a fresh blade", "steel rule", "cutting mat")
SCORING = FOLDING = ("bone folder or empty ball pen to score folds and rub them down",)
BEFORE = "the sheets that were printed before"
PRESS = ("two small pressing boards and a weight of about 1 kg (2 lb)", "waste paper", "caliper gauge")


def print_step(bench: Bench, *kinds: str) -> str:
    """Print the sheets with some kinds of flat, front and reverse, and prove them; they may be there already."""
    where, turn = bench.prints.where(*kinds), bench.prints.turn(*kinds)
    if not where:
        return f"Take these parts from {BEFORE}."
    how = f"on both sides, turned on the {turn}, at 100 %" if turn else "at 100 %"
    light = " Against the light the end marks of both sides cover each other." if turn else ""
    return (
        f"Print {where}, {how}. Measure the test line at the foot: more than {print_mm(0.5, 1)} off, do not cut.{light}"
    )


def film_steps(bench: Bench, *flats: Flat) -> Iterator[str]:
    """Lay the film over the print of those flats that get one, each stock once that has one."""
    for name in dict.fromkeys(flat.stock for flat in flats if flat.finished):
        if film := bench.stocks[name].film:
            yield f"Let the print dry, and lay the clear film, {thick(film)} in all, over the whole sheet."


def count_folds(folds: Iterable[Fold]) -> str:
    """How many folds of which kind: "25 valleys and 24 mountains"."""
    kinds = [fold.kind for fold in folds]
    counts = [(kinds.count(kind), kind.value) for kind in (FoldKind.VALLEY, FoldKind.MOUNTAIN)]
    return as_list([counted(count, kind) for count, kind in counts if count])


def row_key(called: str) -> str:
    """The key that takes the thickness of finished books side by side, called so in a list."""
    return f"measured_rows: - {{books: [{called}], thickness: … {unit()}}}"


def glue_over(what: str, rects: Iterable[Rect], film: float = GLUES["pva"]) -> Supply:
    """Glue for some areas."""
    return Supply(what, sum(rect.width * rect.height for rect in rects), Unit.AREA, film)


def panels_of(flats: Iterable[Flat], *roles: Role) -> list[Rect]:
    """The panels of some roles."""
    return [panel.rect for flat in flats for panel in flat.panels if panel.role in roles]
