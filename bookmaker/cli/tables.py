"""What `check` shows on the terminal: tables of books and spaces, messages, the outcome."""

from __future__ import annotations

from collections.abc import Sequence

from rich import box
from rich.markup import escape
from rich.table import Table

from ..ground.problems import Problem, Severity
from ..ground.units import print_mm
from ..paper.thickness import Layer, Thickness
from ..sheets.layout import Tally
from ..shelf.feedback import Comparison
from ..shelf.fit import SpaceFit, Verdict
from ..shelf.plan import BookPlan, ShelfPlan
from ..workshop import Checked

__all__ = [
    "books_table",
    "breakdown_table",
    "lettering_table",
    "measured_table",
    "message",
    "outcome",
    "paper_line",
    "reading_table",
    "slipcases_table",
    "spaces_table",
]

LONGEST_SOURCE = 100
"""Characters of a line of the shelf file that are shown under a message."""

SHOWN_AFTER = 40
"""So many characters from the place of the problem on are shown at least, if the line has as many."""

STYLES = {Verdict.FITS: "green", Verdict.TIGHT: "yellow", Verdict.OVER: "bold red"}


def _table(title: str, *columns: tuple[str, bool]) -> Table:
    """A plain table; the flag says whether a column holds numbers."""
    table = Table(title=escape(title), box=box.SIMPLE_HEAD, title_justify="left", title_style="bold", pad_edge=False)
    for name, numeric in columns:
        table.add_column(name, justify="right" if numeric else "left", no_wrap=numeric)
    return table


def books_table(plan: ShelfPlan) -> Table:
    """One row a book; lengths in mm."""
    table = _table(
        f"{plan.spec.shelf}: {len(plan.books)} book{'s' if len(plan.books) > 1 else ''}, lengths in mm",
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
        escape(book.name),
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


def lettering_table(checked: Checked) -> Table:
    """How the title on each spine came out."""
    table = _table(
        f"{checked.plan.spec.shelf}: titles on the spines",
        ("", True),
        ("book", False),
        ("style", False),
        ("runs", False),
        ("x-height", True),
        ("arc min", True),
        ("dots", True),
        ("contrast", True),
        ("seen", False),
    )
    for book, lettering in zip(checked.plan.books, checked.lettering, strict=True):
        titles = [line for line in lettering if line.on == "spine" and line.what == "title"]
        worn = (book.entry.jacket and book.entry.jacket.design) or book.entry.design
        first = (str(book.number + 1), escape(book.name), worn.style)
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


def breakdown_table(book: BookPlan) -> Table:
    """Where the thickness of a book comes from, line by line; lengths in mm."""
    table = _table(
        f"{book.number + 1} {book.name}: thickness, in mm",
        ("layer", False),
        ("count", True),
        ("each", True),
        ("together", True),
        ("stock", False),
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


def _add_sum(table: Table, what: str, thickness: Thickness) -> None:
    """The sum of the layers above, and what was measured instead."""
    as_computed = " as computed" if what == "block" or thickness.measured is not None else ""
    table.add_row(f"{what}{as_computed}", "", "", f"{thickness.computed:.3f}", style="bold")
    if thickness.measured is not None:
        table.add_row(f"{what} as measured", "", "", f"{thickness.measured:.3f}", style="bold")
        table.add_row("measured less computed", "", "", f"{thickness.measured - thickness.computed:+.3f}")


def _layer_row(layer: Layer) -> tuple[str, ...]:
    return (layer.what, f"{layer.count:g}", f"{layer.caliper:.3f}", f"{layer.total:.3f}", escape(layer.stock))


def spaces_table(plan: ShelfPlan) -> Table:
    """One row a space; lengths in mm."""
    table = _table(
        "spaces",
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
    )
    for space in plan.spaces:
        table.add_row(*_space_row(space, plan))
    return table


def _space_row(space: SpaceFit, plan: ShelfPlan) -> tuple[str, ...]:
    boxed = sum(len(case.books) for case in plan.slipcases if case.space == space.name)
    return (
        escape(space.name),
        str(len(space.books) + boxed),
        f"{space.width:.2f}",
        f"{space.used:.2f}",
        f"{space.ease:.2f}",
        f"{space.slack:.2f}",
        f"{space.likely:.2f}",
        f"{space.worst_case:.2f}",
        f"{space.probability:.0%}",
        f"[{STYLES[space.verdict]}]{space.verdict}[/]",
    )


def measured_table(measured: Sequence[Comparison]) -> Table:
    """One row for everything that was measured; lengths in mm."""
    table = _table("measured", ("what", False), ("computed", True), ("measured", True), ("difference", True))
    for one in measured:
        table.add_row(escape(one.what), f"{one.computed:.3f}", f"{one.measured:.3f}", f"{one.difference:+.3f}")
    return table


def slipcases_table(plan: ShelfPlan) -> Table:
    """One row a slipcase; lengths in mm."""
    table = _table(
        "slipcases",
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
    )
    for case in plan.slipcases:
        _, likely = case.uncertainty.spread(plan.tolerances)
        sides = (f"{side:.2f}" for side in (*case.inside, *case.outside, likely))
        table.add_row(escape(case.name), str(len(case.books)), *sides, escape(case.space or "–"))
    return table


def reading_table(checked: Checked) -> Table:
    """One row for each book with text: how large its letters are to eye and printer, and how loose its worst line."""
    printed = sorted({letters.resolution_dpi for letters in checked.legibility if letters})
    dots = " or ".join(f"{resolution:.0f}" for resolution in printed)
    table = _table(
        f"reading, at {checked.plan.spec.viewing_distance:.0f} mm and {dots} dpi",
        ("", True),
        ("book", False),
        ("x-height mm", True),
        ("arc minutes", True),
        ("dots", True),
        ("verdict", False),
        ("widest space", True),
    )
    for book, letters, draft in zip(checked.plan.books, checked.legibility, checked.drafts, strict=True):
        if letters:
            space = "" if draft.widest_space is None else f"{draft.widest_space:.1f} ×"
            seen = (f"{letters.x_height:.2f}", f"{letters.minutes:.1f}", f"{letters.dots:.1f}", str(letters.sight))
            table.add_row(str(book.number + 1), escape(book.name), *seen, space)
    return table


def message(problem: Problem) -> str:
    """A problem as it stands on the terminal: its place, severity, text and remedy, and the line it is about."""
    what = f"{problem.message}; {problem.remedy}" if problem.remedy else problem.message
    severity = "" if problem.severity is Severity.ERROR else f"{problem.severity}: "
    if problem.place is None:
        return f"{severity}{what}"
    text = f"{problem.place}: {severity}{what}"
    if problem.place.source.strip():
        text += f"\n    {_clipped(problem.place.source, problem.place.column)}"
    return text


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


def _clipped(source: str, column: int) -> str:
    """A line of the shelf file; one that is longer than a terminal shows well is cut, not where the problem is."""
    text = source.strip()
    place = column - 1 - (len(source) - len(source.lstrip()))
    start = max(0, min(place + SHOWN_AFTER, len(text)) - LONGEST_SOURCE)
    shown = text[start : start + LONGEST_SOURCE]
    if start:
        shown = f"…{shown[1:].lstrip()}"
    return shown if start + LONGEST_SOURCE >= len(text) else f"{shown[:-1].rstrip()}…"


def outcome(checked: Checked) -> str:
    """The last line: whether everything is well."""
    counts = {severity: sum(problem.severity is severity for problem in checked.problems) for severity in Severity}
    found = [f"{count} {severity}{'s' if count > 1 else ''}" for severity, count in counts.items() if count]
    if not checked.sound:
        return f"the shelf has problems: {', '.join(found)}"
    return f"the shelf is sound ({', '.join(found)})" if found else "the shelf is sound"
