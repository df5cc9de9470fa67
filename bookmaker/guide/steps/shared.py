"""Steps that bindings have in common: printing, measuring, the gluing of blocks without blank ends."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ...ground.geometry import Rect, Size
from ...ground.quantities import counted
from ...paper.printer_entry import Turn
from ...paper.stock import Stock
from ...paper.stock_entry import GLUES
from ...paper.thickness import Layer
from ...sheets.flat import Flat, Fold, FoldKind, Role
from ...things.book.plan import BookPlan
from ..job import BookJob, Measure, Supply, Unit
from ..wording import listed, long, thick

__all__ = [
    "BEFORE",
    "FOLDING",
    "KNIFE",
    "PRESS",
    "SCORING",
    "block_measure",
    "film_said",
    "filming",
    "finished",
    "finished_measure",
    "folds_said",
    "glue_areas",
    "glue_over",
    "measuring",
    "panels_of",
    "print_sheets",
    "printing",
    "row_written",
    "spine_glue",
]

KNIFE = ("craft knife with a fresh blade", "steel rule", "cutting mat")
SCORING = FOLDING = ("bone folder or empty ball pen to score folds and rub them down",)
BEFORE = "the sheets that were printed before"
PRESS = ("two small pressing boards and a weight of about 1 kg", "waste paper", "caliper gauge")


def printing(job: BookJob, *kinds: str) -> str:
    """Print the sheets, front and reverse, and prove them."""
    return print_sheets(job.prints.where(*kinds), job.prints.turn(*kinds))


def print_sheets(where: str, turn: Turn | None = None) -> str:
    """The same for any sheets; those with a reverse are turned on an edge. Parts may have been printed before."""
    if not where:
        return f"Take these parts from {BEFORE}."
    how = f"on both sides, turned on the {turn}, at 100 %" if turn else "at 100 %"
    light = " Against the light the end marks of both sides cover each other." if turn else ""
    return f"Print {where}, {how}. Measure the check rule at the foot: more than 0.5 mm off, do not cut.{light}"


def filming(job: BookJob, *flats: Flat) -> Iterator[str]:
    """Lay the film over the print of some flats, each stock once."""
    for name in dict.fromkeys(flat.stock for flat in flats):
        yield from film_said(job.stocks[name])


def film_said(stock: Stock) -> Iterator[str]:
    """The same for a stock; nothing if it has no film."""
    if stock.film:
        yield f"Let the print dry, and lay the clear film, {thick(stock.film)} in all, over the whole sheet."


def finished(job: BookJob) -> str:
    """How large the covered book is, and that it is measured."""
    cover = job.book.cover
    return (
        f"The covered book is {thick(cover.thickness.value)} thick, {long(cover.height)} high and "
        f"{long(cover.depth)} deep. Measure its thickness between pressing boards and note it."
    )


def finished_measure(job: BookJob) -> Measure:
    """The thickness of the covered book, and where to write it."""
    thickness = job.book.cover.thickness
    where = job.whereabouts.length_of("measured_thickness")
    return Measure("the covered book", thickness.computed, where, thickness.measured)


def folds_said(folds: Iterable[Fold]) -> str:
    """How many folds of which kind: "25 valleys and 24 mountains"."""
    kinds = [fold.kind for fold in folds]
    counts = [(kinds.count(kind), kind.value) for kind in (FoldKind.VALLEY, FoldKind.MOUNTAIN)]
    return listed([counted(count, kind) for count, kind in counts if count])


def measuring(job: BookJob, where: str = "") -> str:
    """When to measure the block, what was computed, and what to do about a difference."""
    block = job.book.block.thickness
    if block.measured is not None:
        return (
            f"Press the block between pressing boards and measure it{where}: the cover is made for the "
            f"{thick(block.measured)} that you measured (computed {thick(block.computed)})."
        )
    return (
        f"Press the block lightly between pressing boards and measure it{where}: {thick(block.computed)} is what was "
        "computed. Note it under Measure. If it is more than 0.1 mm off, write it into the shelf file and run make "
        "again before you print the cover."
    )


def block_measure(job: BookJob) -> Measure:
    """The thickness of the block, and where to write it."""
    thickness = job.book.block.thickness
    where = job.whereabouts.length_of("block", "measured_thickness")
    return Measure("the block", thickness.computed, where, thickness.measured)


def row_written(called: str) -> str:
    """The key that takes the thickness of finished books side by side, called so in a list."""
    return f"measured_rows: - {{books: [{called}], thickness: … mm}}"


def glue_over(what: str, rects: Iterable[Rect], film: float = GLUES["pva"]) -> Supply:
    """Glue for some areas."""
    return Supply(what, sum(rect.width * rect.height for rect in rects), Unit.AREA, film)


def panels_of(flats: Iterable[Flat], *roles: Role) -> list[Rect]:
    """The panels of some roles."""
    return [panel.rect for flat in flats for panel in flat.panels if panel.role in roles]


def glue_areas(glue: str, layers: Iterable[Layer], page: Size, flats: Iterable[Flat], film: float) -> Iterator[Supply]:
    """The films of glue that count in a block: each as large as a page, or as a hinge tab."""
    tabs = panels_of(flats, Role.TAB)
    for layer in layers:
        if "glue films" not in layer.what:
            continue
        if "tabs" in layer.what:
            yield glue_over(glue, tabs, film)
        else:
            yield Supply(glue, layer.count * page.width * page.height, Unit.AREA, film)


def spine_glue(book: BookPlan, coats: int = 1) -> Supply:
    """PVA brushed over the spine of a block."""
    return Supply("PVA", coats * book.block.thickness.value * book.page.height, Unit.AREA)
