"""The plan as JSON: every sheet and every book, so that anything can be checked or drawn again from it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from ..ground.geometry import Rect
from ..ground.problems import Problem, show_field
from ..ground.units import rounded
from ..ground.visible import STEERING
from ..paper.glue import films_of
from ..paper.stock import Stock
from ..sheets.cutting import CutPart, Stick
from ..sheets.layout import Sheet
from ..sheets.tally import Tally
from ..shelf.arrangement import row_of
from ..shelf.checked import Checked
from ..shelf.entries import THINGS
from ..shelf.feedback import CaliperEstimate, Comparison, caliper_estimates, comparisons
from ..shelf.film_estimates import FilmEstimate, film_estimates
from ..shelf.fit import SpaceFit
from ..shelf.placing.places import Placed
from ..shelf.plan import ShelfPlan
from ..shelf.printed.records import KEY, Printed
from ..things.terms import Terms
from ..things.thing import Plan
from .room_json import surface_report
from .sheet_json import sheet_report

__all__ = ["VERSION", "check_report", "dump", "in_pieces", "plan_report"]


VERSION = 1
"""Of the form of plan.json: goes up when a key comes to mean something else or goes away."""

COVERAGE_FACTOR = 2
"""Every tolerance is so many standard deviations (JCGM 100:2008, GUM, 6.2: k = 2)."""


def dump(report: Mapping[str, Any]) -> str:
    """A report as JSON text that is the same for the same report; signs that steer terminals are numbers in it."""
    return "".join(in_pieces(report))


def in_pieces(report: Mapping[str, Any]) -> Iterator[str]:
    """The same a piece at a time; what is an iterator in it is a list in the text, and never held as a whole.

    >>> "".join(in_pieces({"sheets": iter([1, 2]), "paper": iter([])})).split()
    ['{', '"sheets":', '[', '1,', '2', '],', '"paper":', '[]', '}']
    """
    yield from _pieces_of(report, "\n")
    yield "\n"


def _pieces_of(value: object, line: str) -> Iterator[str]:
    """A value and what is in it, `line` beginning each line."""
    if isinstance(value, Mapping) and value:
        for number, (key, held) in enumerate(value.items()):
            yield f"{',' if number else '{'}{line} {_plain(key)}: "
            yield from _pieces_of(held, f"{line} ")
        yield line + "}"
    elif isinstance(value, Iterator):
        mark = "["
        for held in value:
            yield f"{mark}{line} {_plain(held, line + ' ')}"
            mark = ","
        yield "[]" if mark == "[" else line + "]"
    else:
        yield _plain(value, line)


def _plain(value: object, line: str = "\n") -> str:
    """A value that holds no iterators. A text has no ends of lines in it: they are written as a sign and a letter."""
    text = json.dumps(value, ensure_ascii=False, indent=1, allow_nan=False).replace("\n", line)
    return STEERING.sub(lambda sign: f"\\u{ord(sign[0]):04x}", text)


def check_report(checked: Checked) -> dict[str, Any]:
    """What `check` finds: things by their sections, spaces and problems; many of them as iterators."""
    plan = checked.plan
    sections = [family.section.key for family in plan.register.families if family.section]
    return {
        "shelf": plan.spec.shelf,
        **{key: _things(key, checked) for key in (*sections, THINGS)},
        "coverage_factor": COVERAGE_FACTOR,
        "spaces": [_space(space, plan) for space in plan.spaces],
        "surfaces": [surface_report(surface) for surface in plan.room],
        "measured": [_comparison(one) for one in comparisons(plan)],
        "caliper_estimates": [_estimate(estimate) for estimate in caliper_estimates(plan)],
        "film_estimates": [_film(estimate) for estimate in film_estimates(plan)],
        "problems": map(_problem, checked.problems),
    }


def plan_report(
    sheets: Sequence[tuple[str, int, Sheet]],
    tallies: Iterable[Tally],
    files: Mapping[str, str],
    checked: Checked,
    printed: Printed,
) -> dict[str, Any]:
    """The whole plan: `sheets` gives each sheet's file and its page there; `files` is all that was written.

    Each file comes with the digest of what it holds. `printed` is what was printed in this run and before. What there
    may be thousands of are iterators.
    """
    return {
        "made_by": "bookmaker",
        "version": VERSION,
        "files": list(files),
        "digests": dict(files),
        "scale": checked.plan.spec.scale,
        "stocks": [_stock(stock, checked.plan.terms) for stock in checked.plan.stocks.values()],
        "sheets": (sheet_report(file, page, sheet, checked) for file, page, sheet in sheets),
        "paper": [_tally(tally) for tally in tallies],
        **check_report(checked),
        KEY: printed.report(),
    }


def _things(section: str, checked: Checked) -> Iterator[dict[str, Any]]:
    """Everything written in a section."""
    plan = checked.plan
    mine = (one for id, one in plan.plans.items() if plan.register.fields[id][0] == section)
    for one in mine:
        yield {"id": one.id} | one.family.report(one, checked.drafts[one.id], plan) | _thing(one, plan)


def _thing(one: Plan, plan: ShelfPlan) -> dict[str, Any]:
    """What is to be said of anything that is made."""
    holder, standing = plan.holder_of(one.id), one.standing
    said: dict[str, Any] = {"space": one.space}
    for family in plan.register.families:
        if family.section and not family.section.counted:  # what is counted stands by itself
            said[family.noun] = holder.name if holder and holder.family is family else None
    if standing:
        all_one_way, likely = standing.uncertainty.spread(plan.terms.tolerances)
        sides = {"thickness": standing.thickness, "height": standing.height, "depth": standing.depth}
        said |= {"overall_mm": {side: rounded(length) for side, length in sides.items()}}
        said |= {"tolerance_mm": rounded(likely), "all_one_way_mm": rounded(all_one_way)}
    said |= {"cut_list": [_cut_part(part) for part in one.cut_list]}
    return said | ({"sticks": [_stick(stick) for stick in one.sticks]} if one.sticks else {})


def _cut_part(part: CutPart) -> dict[str, Any]:
    return {
        "what": part.what,
        "material": part.material,
        "count": part.count,
        "height_mm": rounded(part.height),
        "width_mm": rounded(part.width),
        "thickness_mm": rounded(part.thickness),
    }


def _stick(stick: Stick) -> dict[str, Any]:
    return {
        "what": stick.what,
        "material": stick.material,
        "count": stick.count,
        "length_mm": rounded(stick.length),
        "width_mm": rounded(stick.width),
        "thickness_mm": rounded(stick.thickness),
        "bevels_deg": [rounded(bevel) for bevel in stick.bevels],
    }


def _space(space: SpaceFit, plan: ShelfPlan) -> dict[str, Any]:
    return {
        "name": space.name,
        "width_mm": rounded(space.width),
        "used_mm": rounded(space.used),
        "clearance_mm": rounded(space.clearance),
        "room_left_mm": rounded(space.room_left),
        "verdict": str(space.verdict),
        "all_one_way_mm": rounded(space.all_one_way),
        "tolerance_mm": rounded(space.likely),
        "probability": round(space.probability, 4),
        "wanted_probability": round(plan.spec.spaces[space.name].chance, 4),
        "places": [_place(one) for one in row_of(space, plan)],
    }


def _place(one: Placed) -> dict[str, Any]:
    """What stands in one place, a stack from the top; the box around it, its left edge from that of the space."""
    box = Rect.around(one.outline)
    return {
        "things": [thing.thing for thing in one.place.things],
        "stack": one.place.stack,
        "left_mm": rounded(box.x),
        "width_mm": rounded(box.width),
        "height_mm": rounded(box.height),
        "lean_deg": rounded(one.place.lean),
        "pulled_out_mm": rounded(one.place.things[0].stance.pulled_out),
    }


def _comparison(one: Comparison) -> dict[str, Any]:
    return {
        "what": one.what,
        "computed_mm": rounded(one.computed),
        "measured_mm": rounded(one.measured),
        "difference_mm": rounded(one.difference),
    }


def _estimate(estimate: CaliperEstimate) -> dict[str, Any]:
    return {
        "stock": estimate.stock,
        "blocks": estimate.blocks,
        "caliper_um": round(estimate.caliper * 1000, 2),
        "tolerance_um": round(estimate.tolerance * 1000, 2),
    }


def _film(estimate: FilmEstimate) -> dict[str, Any]:
    return {
        "glue_um": round(estimate.before * 1000, 2),
        "measures": estimate.measures,
        "film_um": round(estimate.film * 1000, 2),
        "tolerance_um": round(estimate.tolerance * 1000, 2),
    }


def _problem(problem: Problem) -> dict[str, Any]:
    place = problem.place
    return {
        "severity": str(problem.severity),
        "thing": problem.thing or None,
        "file": place.file if place else None,
        "line": place.line if place else None,
        "column": place.column if place else None,
        "field": show_field(problem.field) or None,
        "message": problem.message,
        "remedy": problem.remedy or None,
    }


def _stock(stock: Stock, terms: Terms) -> dict[str, Any]:
    return {
        "name": stock.name,
        "caliper_mm": rounded(stock.caliper),
        "tolerance_mm": rounded(stock.tolerance),
        "film_mm": rounded(stock.film),
        "glue_mm": rounded(stock.glue),
        "glue_tolerance_mm": rounded(terms.tolerances[films_of(stock.glue)]),
        "grammage": stock.grammage,
        "grain": str(stock.grain),
        "size_mm": [rounded(side) for side in stock.sheet.size],
    }


def _tally(tally: Tally) -> dict[str, Any]:
    return {
        "stock": tally.stock,
        "sheets": tally.sheets,
        "off_cuts": tally.off_cuts,
        "least_sheets": tally.least,
        "sheets_saved": tally.saved,
        "used": round(tally.used, 4),
        "left_over_mm": [rounded(side) for side in tally.rest] if tally.rest else None,
    }
