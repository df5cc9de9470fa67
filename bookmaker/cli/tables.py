"""What `check` shows on the terminal: tables of things and spaces, messages, the outcome."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rich import box
from rich.markup import escape
from rich.table import Table

from ..ground.problems import Problem, Severity
from ..ground.units import print_mm
from ..paper.thickness import Layer, Thickness
from ..sheets.layout import Tally
from ..shelf.feedback import Comparison
from ..shelf.fit import SpaceFit, Verdict
from ..shelf.plan import ShelfPlan
from ..things.thing import Plan
from ..things.thing import Table as Found
from ..workshop import Checked

__all__ = [
    "breakdown_table",
    "lettering_table",
    "measured_table",
    "message",
    "outcome",
    "paper_line",
    "reading_table",
    "shelf_tables",
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


def shelf_tables(plan: ShelfPlan) -> Iterator[Table]:
    """What each kind of thing shows of all of its things; the spaces stand behind the first, which are counted."""
    everything = list(plan.plans.values())
    first, *others = [
        _things_table(found) for family in plan.register.families if (found := family.table(everything, plan))
    ]
    yield first
    if plan.spaces:
        yield spaces_table(plan)
    yield from others


def _things_table(found: Found) -> Table:
    table = _table(found.title, *found.columns)
    for row in found.rows:
        table.add_row(*map(escape, row))
    return table


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
    for id in checked.plan.register.counted:
        one, line = checked.plan.plans[id], checked.drafts[id].spine_title
        first = (str(checked.plan.number_of(id)), escape(one.name), one.style)
        if line:
            letters = checked.plan.terms.letters(line.x_height, one.lettered_on)
            table.add_row(
                *first,
                line.way,
                f"{line.x_height:.2f}",
                f"{letters.minutes:.1f}",
                f"{letters.dots:.0f}",
                f"{line.contrast:.1f}",
                str(letters.sight),
            )
        else:
            table.add_row(*first, "–", *("",) * 5)
    return table


def breakdown_table(one: Plan, called: str) -> Table:
    """Where the thickness of a thing comes from, line by line; lengths in mm."""
    table = _table(
        f"{called}: thickness, in mm",
        ("layer", False),
        ("count", True),
        ("each", True),
        ("together", True),
        ("stock", False),
    )
    known = 0
    for name, thickness in one.layers:
        for layer in thickness.layers[known:]:
            table.add_row(*_layer_row(layer))
        _add_sum(table, name, thickness)
        known = len(thickness.layers) if thickness.measured is None else 1
    for what, length in one.flat_lengths.items():
        table.add_row(what, "", "", f"{length:.3f}")
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
    here = [plan.plans[id] for id in space.things]
    books = sum(len(one.held) or 1 for one in here)
    return (
        escape(space.name),
        str(books),
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


def reading_table(checked: Checked) -> Table:
    """One row for each book with text: how large its letters are to eye and printer, and how loose its worst line."""
    printed = sorted({letters.resolution_dpi for letters in checked.legibility.values()})
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
    for id, letters in checked.legibility.items():
        widest = checked.drafts[id].widest_space
        space = "" if widest is None else f"{widest:.1f} ×"
        seen = (f"{letters.x_height:.2f}", f"{letters.minutes:.1f}", f"{letters.dots:.1f}", str(letters.sight))
        number, name = checked.plan.number_of(id) or "", checked.plan.plans[id].name
        table.add_row(str(number), escape(name), *seen, space)
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
