"""What the steps of most things have in common: tools, cautions, counts of folds, glue."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..ground.geometry import Rect
from ..ground.quantities import counted
from ..ground.told import unit
from ..paper.glue import GLUES, glue_called
from ..sheets.flat import Flat, Fold, FoldKind, Role
from .making import Supply, Unit, caution
from .wording import as_list

__all__ = [
    "BEFORE",
    "FOLDING",
    "KNIFE",
    "PRESS",
    "SCORING",
    "count_folds",
    "glue_over",
    "panels_of",
    "row_key",
    "spray_caution",
]

KNIFE = ("craft knife with a fresh blade", "steel rule", "cutting mat")
SCORING = FOLDING = ("bone folder or empty ball pen to score folds and rub them down",)
BEFORE = "the sheets that were printed before"
PRESS = ("two small pressing boards and a weight of about 1 kg (2 lb)", "waste paper", "caliper gauge")


def spray_caution(glue: str) -> Iterator[str]:
    """What to know before glue comes out of a can."""
    if glue == glue_called(GLUES["spray"]):
        yield caution("spray outdoors or with strong ventilation, away from flames and sparks.")


def count_folds(folds: Iterable[Fold]) -> str:
    """How many folds of which kind: "25 valleys and 24 mountains"."""
    kinds = [fold.kind for fold in folds]
    counts = [(kinds.count(kind), kind.value) for kind in (FoldKind.VALLEY, FoldKind.MOUNTAIN)]
    return as_list([counted(count, kind) for count, kind in counts if count])


def row_key(called: str) -> str:
    """Where the thickness of finished books side by side is written that are called so in a list."""
    return f"below measured_rows: at the left margin: - {{books: [{called}], thickness: … {unit()}}}"


def glue_over(what: str, rects: Iterable[Rect], film: float = GLUES["pva"]) -> Supply:
    """Glue for some areas."""
    return Supply(what, sum(rect.width * rect.height for rect in rects), Unit.AREA, film)


def panels_of(flats: Iterable[Flat], *roles: Role) -> list[Rect]:
    """The panels of some roles."""
    return [panel.rect for flat in flats for panel in flat.panels if panel.role in roles]
