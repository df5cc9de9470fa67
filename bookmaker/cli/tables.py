"""What `check` shows on the terminal: tables of things and spaces, messages, the outcome."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from ..ground.quantities import counted
from ..ground.thin import caliper_unit, figure_caliper
from ..ground.told import figure, print_mm, print_sides, unit
from ..paper.thickness import Layer, Thickness
from ..shelf.feedback import Comparison
from ..shelf.fit import SpaceFit, Verdict
from ..shelf.plan import ShelfPlan
from ..things.answers import Table as Found
from ..things.thing import Plan
from ..workshop import Checked
from .grid import BOLD, RED, YELLOW, Grid

if TYPE_CHECKING:
    from ..sheets.tally import Tally

__all__ = [
    "GIVEN_UP",
    "breakdown_table",
    "lettering_table",
    "measured_table",
    "paper_line",
    "reading_table",
    "shelf_tables",
    "spaces_table",
]

GIVEN_UP = (
    *("one way ±", "clearance", "pieces", "panels", "spine", "block", "arc min", "arc minutes", "dots"),
    *("stems", "counters", "hairlines", "clogged"),
    *("each", "count"),
    *("likely ±", "runs", "style", "deep", "high", "widest space", "computed", "contrast", "stock", "books", "width"),
    *("pages", "±", "chance to fit"),
)
"""The columns that go where a terminal is too narrow, the first first; all others stay."""

STYLES = {Verdict.FITS: "", Verdict.TIGHT: YELLOW, Verdict.OVER: RED}
"""How the row of a space is marked."""


def shelf_tables(plan: ShelfPlan) -> Iterator[Grid]:
    """What each kind of thing shows of all of its things; the spaces stand behind the first, which are counted.

    Things of kinds that show nothing of their own stand together in the last.
    """
    everything = list(plan.plans.values())
    shown = {family: family.table(everything, plan) for family in plan.register.families}
    tables = [_things_table(found) for found in shown.values() if found]
    yield from tables[:1]
    if plan.spaces:
        yield spaces_table(plan)
    yield from tables[1:]
    if others := [one for one in everything if shown[one.family] is None]:
        surfaces = {there.thing: surface.name for surface in plan.room for there in surface.things if there.thing}
        alone = f"{plan.spec.shelf}: {counted(len(others), 'thing')}"
        yield _others_table("things" if tables else alone, others, surfaces)


def _others_table(title: str, things: Sequence[Plan], surfaces: Mapping[str, str]) -> Grid:
    """Things of kinds without a table; `surfaces` are those on which some of them are, by id."""
    table = Grid(title, (("thing", False), ("made as", False), ("parts", True), ("where", False)))
    for one in things:
        by_hand = sum(part.count for part in one.cut_list) + sum(stick.count for stick in one.sticks)
        parts = len(one.flats) + by_hand
        table.add_row(one.name, one.made_as, str(parts), one.space or surfaces.get(one.id, "–"))
    return table


def _things_table(found: Found) -> Grid:
    table = Grid(found.title, found.columns)
    for row in found.rows:
        table.add_row(*row)
    return table


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
    for id in checked.plan.register.counted:
        one, line = checked.plan.plans[id], checked.drafts[id].spine_title
        first = (str(checked.plan.number_of(id)), one.name, one.style)
        if line:
            letters = checked.plan.terms.letters(line.x_height, one.lettered_on)
            table.add_row(
                *first,
                line.way,
                figure(line.x_height),
                f"{letters.minutes:.1f}",
                f"{letters.dots:.0f}",
                f"{line.contrast:.1f}",
                str(letters.sight),
            )
        else:
            table.add_row(*first, "–", *("",) * 5)
    return table


def breakdown_table(one: Plan, called: str) -> Grid:
    """Where the thickness of a thing comes from, line by line; lengths in mm."""
    table = Grid(
        f"{called}: thickness, in {caliper_unit()}",
        (
            ("layer", False),
            ("count", True),
            ("each", True),
            ("together", True),
            ("stock", False),
        ),
    )
    known = 0
    for name, thickness in one.layers:
        for layer in thickness.layers[known:]:
            table.add_row(*_layer_row(layer))
        _add_sum(table, name, thickness)
        known = len(thickness.layers) if thickness.measured is None else 1
    for what, length in one.flat_lengths.items():
        table.add_row(what, "", "", figure_caliper(length))
    return table


def _add_sum(table: Grid, what: str, thickness: Thickness) -> None:
    """The sum of the layers above, and what was measured instead."""
    as_computed = " as computed" if what == "block" or thickness.measured is not None else ""
    table.add_row(f"{what}{as_computed}", "", "", figure_caliper(thickness.computed), style=BOLD)
    if thickness.measured is not None:
        table.add_row(f"{what} as measured", "", "", figure_caliper(thickness.measured), style=BOLD)
        table.add_row(
            "measured less computed", "", "", figure_caliper(thickness.measured - thickness.computed, signed=True)
        )


def _layer_row(layer: Layer) -> tuple[str, ...]:
    return (layer.what, f"{layer.count:g}", figure_caliper(layer.caliper), figure_caliper(layer.total), layer.stock)


def spaces_table(plan: ShelfPlan) -> Grid:
    """One row a space; lengths in mm."""
    table = Grid(
        "spaces, ± two standard deviations",
        (
            ("space", False),
            ("books", True),
            ("width", True),
            ("used", True),
            ("clearance", True),
            ("room left", True),
            ("likely ±", True),
            ("one way ±", True),
            ("chance to fit", True),
            ("verdict", False),
        ),
    )
    for space in plan.spaces:
        table.add_row(*_space_row(space, plan), style=STYLES[space.verdict])
    return table


def _space_row(space: SpaceFit, plan: ShelfPlan) -> tuple[str, ...]:
    here = [plan.plans[id] for id in space.things]
    books = sum(len(one.held) or 1 for one in here)
    return (
        space.name,
        str(books),
        figure(space.width),
        figure(space.used),
        figure(space.clearance),
        figure(space.room_left),
        figure(space.likely),
        figure(space.all_one_way),
        f"{space.probability:.0%}",
        str(space.verdict),
    )


def measured_table(measured: Sequence[Comparison]) -> Grid:
    """One row for everything that was measured; lengths in mm."""
    table = Grid(
        f"measured, in {caliper_unit()}",
        (("what", False), ("computed", True), ("measured", True), ("difference", True)),
    )
    for one in measured:
        table.add_row(
            one.what,
            figure_caliper(one.computed),
            figure_caliper(one.measured),
            figure_caliper(one.difference, signed=True),
        )
    return table


def reading_table(checked: Checked) -> Grid:
    """One row for each book with text: how large its letters are to eye and printer, and how loose its worst line."""
    printed = sorted({letters.resolution_dpi for letters in checked.legibility.values()})
    dots = " or ".join(f"{resolution:.0f}" for resolution in printed)
    table = Grid(
        f"reading, at {print_mm(checked.plan.spec.viewing_distance, 0)} and {dots} dpi",
        (
            ("", True),
            ("book", False),
            (f"x-height {unit()}", True),
            ("arc minutes", True),
            ("dots", True),
            ("stems", True),
            ("hairlines", True),
            ("counters", True),
            ("clogged", False),
            ("verdict", False),
            ("widest space", True),
        ),
    )
    for id, letters in checked.legibility.items():
        widest = checked.drafts[id].widest_space
        space = "" if widest is None else f"{widest:.1f} ×"
        strokes = ("" if dots is None else f"{dots:.1f}" for dots in (letters.stem, letters.hairline, letters.counter))
        high = (figure(letters.x_height), f"{letters.minutes:.1f}", f"{letters.dots:.1f}")
        number, name = checked.plan.number_of(id) or "", checked.plan.plans[id].name
        table.add_row(str(number), name, *high, *strokes, letters.clogged or "–", str(letters.sight), space)
    return table


def paper_line(tally: Tally, printed_on: str = "") -> str:
    """Whether the pieces of a stock could take less paper, and how well they fill it; on its own printer, if it has."""
    if tally.sheets == tally.least:
        least = "no layout takes fewer sheets"
    else:
        needed = f", where {tally.least} or more are needed" if tally.least else ""
        least = f"{counted(tally.sheets, 'sheet')}{needed}"
    saved = f", {tally.saved} saved by nesting" if tally.saved else ""
    rest = f"; {print_sides(*tally.rest)} of the last sheet is left" if tally.rest else ""
    path = f" (on {printed_on})" if printed_on else ""
    return f"{tally.stock}{path}: {least}{saved}; {tally.used:.0%} of the room used{rest}"
