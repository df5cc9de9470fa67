"""What `check` shows on the terminal: tables of books and spaces, messages, the outcome."""

from __future__ import annotations

from collections.abc import Sequence

from ..ground.units import print_mm
from ..paper.thickness import Layer, Thickness
from ..sheets.layout import Tally
from ..shelf.feedback import Comparison
from ..shelf.fit import SpaceFit, Verdict
from ..shelf.plan import BookPlan, ShelfPlan
from ..workshop import Checked
from .grid import BOLD, RED, YELLOW, Grid

__all__ = [
    "GIVEN_UP",
    "books_table",
    "breakdown_table",
    "lettering_table",
    "measured_table",
    "paper_line",
    "reading_table",
    "slipcases_table",
    "spaces_table",
]

GIVEN_UP = (
    *("worst ±", "ease", "parts", "panels", "spine", "block", "arc min", "arc minutes", "dots", "each", "count"),
    *("likely ±", "runs", "style", "deep", "high", "widest space", "computed", "contrast", "stock", "books", "width"),
    *("pages", "±", "sure"),
)
"""The columns that go where a terminal is too narrow, the first first; all others stay."""

STYLES = {Verdict.FITS: "", Verdict.TIGHT: YELLOW, Verdict.OVER: RED}
"""How the row of a space is marked."""


def books_table(plan: ShelfPlan) -> Grid:
    """One row a book; lengths in mm."""
    table = Grid(
        f"{plan.spec.shelf}: {len(plan.books)} book{'s' if len(plan.books) > 1 else ''}, lengths in mm",
        (
            ("", True),
            ("book", False),
            ("pages", True),
            ("panels", True),
            ("parts", True),
            ("block", True),
            ("spine", True),
            ("thick", True),
            ("high", True),
            ("deep", True),
            ("±", True),
        ),
    )
    for book in plan.books:
        table.add_row(*_book_row(book, plan))
    return table


def _book_row(book: BookPlan, plan: ShelfPlan) -> tuple[str, ...]:
    block = book.block
    _, likely = book.standing.uncertainty.spread(plan.tolerances)
    measured = " measured" if block.thickness.measured is not None else ""
    return (
        str(book.number + 1),
        book.name,
        str(block.pages),
        str(block.panels),
        str(len(block.flats)),
        f"{block.thickness.value:.2f}{measured}",
        f"{book.cover.spine:.2f}",
        f"{book.thickness.value:.2f}",
        f"{book.height:.2f}",
        f"{book.depth:.2f}",
        f"{likely:.2f}",
    )


def lettering_table(checked: Checked) -> Grid:
    """How the title on each spine came out."""
    table = Grid(
        f"{checked.plan.spec.shelf}: titles on the spines",
        (
            ("", True),
            ("book", False),
            ("style", False),
            ("runs", False),
            ("x-height", True),
            ("arc min", True),
            ("dots", True),
            ("contrast", True),
            ("seen", False),
        ),
    )
    for book, lettering in zip(checked.plan.books, checked.lettering, strict=True):
        titles = [line for line in lettering if line.on == "spine" and line.what == "title"]
        worn = (book.entry.jacket and book.entry.jacket.design) or book.entry.design
        first = (str(book.number + 1), book.name, worn.style)
        for line in titles[:1]:
            letters = checked.plan.letters(line.x_height, book.lettered_on)
            table.add_row(
                *first,
                line.way,
                f"{line.x_height:.2f}",
                f"{letters.minutes:.1f}",
                f"{letters.dots:.0f}",
                f"{line.contrast:.1f}",
                str(letters.sight),
            )
        if not titles:
            table.add_row(*first, "–", *("",) * 5)
    return table


def breakdown_table(book: BookPlan) -> Grid:
    """Where the thickness of a book comes from, line by line; lengths in mm."""
    table = Grid(
        f"{book.number + 1} {book.name}: thickness, in mm",
        (
            ("layer", False),
            ("count", True),
            ("each", True),
            ("together", True),
            ("stock", False),
        ),
    )
    wrapped = [book.block.thickness, *([book.cover.thickness] if book.jacket else []), book.thickness]
    names = ("block", *(("book without its jacket",) if book.jacket else ()), "finished book")
    known = 0
    for name, thickness in zip(names, wrapped, strict=True):
        for layer in thickness.layers[known:]:
            table.add_row(*_layer_row(layer))
        _add_sum(table, name, thickness)
        known = len(thickness.layers) if thickness.measured is None else 1
    table.add_row("spine on the flat cover, fold to fold", "", "", f"{book.cover.spine:.3f}")
    if book.jacket:
        table.add_row("spine on the flat jacket, fold to fold", "", "", f"{book.jacket.spine:.3f}")
    return table


def _add_sum(table: Grid, what: str, thickness: Thickness) -> None:
    """The sum of the layers above, and what was measured instead."""
    as_computed = " as computed" if what == "block" or thickness.measured is not None else ""
    table.add_row(f"{what}{as_computed}", "", "", f"{thickness.computed:.3f}", style=BOLD)
    if thickness.measured is not None:
        table.add_row(f"{what} as measured", "", "", f"{thickness.measured:.3f}", style=BOLD)
        table.add_row("measured less computed", "", "", f"{thickness.measured - thickness.computed:+.3f}")


def _layer_row(layer: Layer) -> tuple[str, ...]:
    return (layer.what, f"{layer.count:g}", f"{layer.caliper:.3f}", f"{layer.total:.3f}", layer.stock)


def spaces_table(plan: ShelfPlan) -> Grid:
    """One row a space; lengths in mm."""
    table = Grid(
        "spaces",
        (
            ("space", False),
            ("books", True),
            ("width", True),
            ("used", True),
            ("ease", True),
            ("slack", True),
            ("likely ±", True),
            ("worst ±", True),
            ("sure", True),
            ("verdict", False),
        ),
    )
    for space in plan.spaces:
        table.add_row(*_space_row(space, plan), style=STYLES[space.verdict])
    return table


def _space_row(space: SpaceFit, plan: ShelfPlan) -> tuple[str, ...]:
    boxed = sum(len(case.books) for case in plan.slipcases if case.space == space.name)
    return (
        space.name,
        str(len(space.books) + boxed),
        f"{space.width:.2f}",
        f"{space.used:.2f}",
        f"{space.ease:.2f}",
        f"{space.slack:.2f}",
        f"{space.likely:.2f}",
        f"{space.worst_case:.2f}",
        f"{space.probability:.0%}",
        str(space.verdict),
    )


def measured_table(measured: Sequence[Comparison]) -> Grid:
    """One row for everything that was measured; lengths in mm."""
    table = Grid("measured", (("what", False), ("computed", True), ("measured", True), ("difference", True)))
    for one in measured:
        table.add_row(one.what, f"{one.computed:.3f}", f"{one.measured:.3f}", f"{one.difference:+.3f}")
    return table


def slipcases_table(plan: ShelfPlan) -> Grid:
    """One row a slipcase; lengths in mm."""
    table = Grid(
        "slipcases",
        (
            ("slipcase", False),
            ("books", True),
            ("room wide", True),
            ("high", True),
            ("deep", True),
            ("outside wide", True),
            ("high", True),
            ("deep", True),
            ("likely ±", True),
            ("space", False),
        ),
    )
    for case in plan.slipcases:
        _, likely = case.uncertainty.spread(plan.tolerances)
        sides = (f"{side:.2f}" for side in (*case.inside, *case.outside, likely))
        table.add_row(case.name, str(len(case.books)), *sides, case.space or "–")
    return table


def reading_table(checked: Checked) -> Grid:
    """One row for each book with text: how large its letters are to eye and printer, and how loose its worst line."""
    printed = sorted({letters.resolution_dpi for letters in checked.legibility if letters})
    dots = " or ".join(f"{resolution:.0f}" for resolution in printed)
    table = Grid(
        f"reading, at {checked.plan.spec.viewing_distance:.0f} mm and {dots} dpi",
        (
            ("", True),
            ("book", False),
            ("x-height mm", True),
            ("arc minutes", True),
            ("dots", True),
            ("verdict", False),
            ("widest space", True),
        ),
    )
    for book, letters, draft in zip(checked.plan.books, checked.legibility, checked.drafts, strict=True):
        if letters:
            space = "" if draft.widest_space is None else f"{draft.widest_space:.1f} ×"
            seen = (f"{letters.x_height:.2f}", f"{letters.minutes:.1f}", f"{letters.dots:.1f}", str(letters.sight))
            table.add_row(str(book.number + 1), book.name, *seen, space)
    return table


def paper_line(tally: Tally, printed_on: str = "") -> str:
    """Whether the pieces of a stock could take less paper, and how well they fill it; on its own printer, if it has."""
    if tally.sheets == tally.least:
        least = "no layout takes fewer sheets"
    else:
        needed = f", where {tally.least} or more are needed" if tally.least else ""
        least = f"{tally.sheets} sheet{'' if tally.sheets == 1 else 's'}{needed}"
    saved = f", {tally.saved} saved by nesting" if tally.saved else ""
    rest = f"; {tally.rest.width:g} × {print_mm(tally.rest.height)} of the last sheet is left" if tally.rest else ""
    path = f" (on {printed_on})" if printed_on else ""
    return f"{tally.stock}{path}: {least}{saved}; {tally.used:.0%} of the room used{rest}"
