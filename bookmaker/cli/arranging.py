"""`bookmaker arrange`: where each book might stand, shown, and written into the file if that is asked."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from html import escape
from pathlib import Path
from typing import get_args

from .. import check
from ..ground.output import check_replaceable, put_file
from ..ground.problems import CommandError, Problem, ShelfFileError
from ..ground.quantities import counted, show
from ..ground.told import figure, told_in
from ..shelf.arranging.edits import arranging_edits, entries_of
from ..shelf.arranging.keys import HEAVIEST, Rule
from ..shelf.arranging.proposal import Proposal, proposed
from ..shelf.fit import SpaceFit
from ..shelf.keeping import edited
from ..shelf.placing.places import places_of
from ..shelf.placing.widths import fallen
from ..shelf.plan import ShelfPlan
from ..shelf_file.book_names import LISTED, UnknownBook
from ..workshop import Checked
from .grid import Grid
from .terminal import progress, room, say

__all__ = ["arrange_shelf", "rule_named", "weights_of"]

COLUMNS = (("", True), ("book", False), ("high", True), ("thick", True), ("comes from", False))

STYLE = "<style>body{font:1rem sans-serif;margin:1rem}h2{font-size:1rem}svg{max-width:100%;zoom:2}</style>"


def rule_named(written: str | None) -> Rule | None:
    """The plain order with a name.

    Raises:
        CommandError: there is none.
    """
    if written is None:
        return None
    for rule in get_args(Rule):
        if written == rule:
            named: Rule = rule
            return named
    raise CommandError(
        (Problem(f"--by: there is no order {show(written)!r}", f"write one of {', '.join(get_args(Rule))}"),)
    )


def weights_of(
    colour: float | None, thickness: float | None, style: float | None, rhythm: float | None
) -> Mapping[str, float]:
    """The weights that are given.

    Raises:
        CommandError: one is no number from 0 to 100.
    """
    written = {"colour": colour, "thickness": thickness, "style": style, "rhythm": rhythm}
    given = {name: weight for name, weight in written.items() if weight is not None}
    remedy = f"write a number from 0 to {HEAVIEST:g}"
    wrong = [
        Problem(f"--{name}: {weight:g} is not a weight", remedy)
        for name, weight in given.items()
        if not 0 <= weight <= HEAVIEST
    ]
    if wrong:
        raise CommandError(wrong)
    return given


def arrange_shelf(
    shelf: Path, weights: Mapping[str, float], rule: Rule | None, keep: Sequence[str], into: Path | None, *, write: bool
) -> None:
    """Propose an order, and write it into the file if asked; with `into`, a page with both pictures.

    Weights and rule go before those in the shelf file.

    Raises:
        BookmakerError: the shelf cannot be used, a book to keep is not there, or a file cannot be changed.
    """
    if into:
        check_replaceable(into, b"<")  # before the long search, not after it
    with progress() as told:
        checked = check(shelf, told)
        entries = entries_of(checked.shelf, checked.plan)
        kept = frozenset(id for name in keep for id in _found(checked.plan, name))
        asked = {**weights, "by": rule} if rule else weights
        wishes = checked.plan.spec.arrange.model_copy(update=asked)
        proposal = proposed(checked.plan, entries, wishes, kept, lambda done, of: told("arranging spaces", done, of))
    with told_in(checked.plan.spec.told):
        for grid in _tables(checked.plan, proposal):
            for line in grid.lines(room()):
                say(line)
    _say_what_is_left(checked.plan, proposal)
    edits = list(arranging_edits(checked.plan, entries, proposal))
    if into:
        put_file(into, _page(checked, proposal).encode())
        say(f"wrote {into}, which shows it as it is and as it would be")
    if not edits:
        say("the order is as good as any that was found: nothing to change")
        return
    if not write:
        say("nothing was changed; --write puts this order into the file")
        return
    done = edited(checked.shelf, edits)
    if isinstance(done, Problem):
        raise ShelfFileError((done,))
    say(f"written into {', '.join(str(file.path) for file in done)}")


def _found(plan: ShelfPlan, name: str) -> Sequence[str]:
    try:
        return plan.register.find(name, LISTED)
    except UnknownBook as unknown:
        raise CommandError((Problem(f"--keep: {unknown.message}", unknown.remedy),)) from None


def _tables(plan: ShelfPlan, proposal: Proposal) -> Sequence[Grid]:
    """Each space from the left."""
    found: list[Grid] = []
    for one in proposal.spaces:
        before = "" if one.before is None else f", {one.before:.2f} before"
        grid = Grid(f"{one.space}: order costs {one.after:.2f}{before}", COLUMNS)
        for number, id in enumerate(one.things, start=1):
            standing = plan.plans[id].standing
            if standing:
                home = (plan.plans[id].space or "nowhere") if id in proposal.moved else ""
                grid.add_row(
                    str(number), plan.plans[id].name, figure(standing.height), figure(standing.thickness), home
                )
        found.append(grid)
    return found


def _say_what_is_left(plan: ShelfPlan, proposal: Proposal) -> None:
    if proposal.left_over:
        names = ", ".join(plan.plans[id].name for id in proposal.left_over)
        say(f"no space has room for {counted(len(proposal.left_over), 'book')}: {names}", err=True)


def _page(checked: Checked, proposal: Proposal) -> str:
    """Every space from the front, as it is and as it would be, as one page (HTML)."""
    from ..writers.shelf_art import facsimile_of_front
    from ..writers.shelf_front import fronts
    from ..writers.svg import svg_picture

    plan, things = checked.plan, {one.space: one.things for one in proposal.spaces}
    would = replace(plan, spaces=tuple(_with(fit, things[fit.name], proposal, plan) for fit in plan.spaces))
    parts: list[str] = []
    for was, new in zip(fronts(plan, checked.drafts), fronts(would, checked.drafts), strict=True):
        for when, front in (("as it is", was), ("as it would be", new)):
            seen = facsimile_of_front(front)
            picture = svg_picture(seen.art, seen.box, title=f"{front.name}, {when}")
            parts.append(f"<h2>{escape(front.name)}, {when}</h2>\n{picture}")
    title = escape(plan.spec.shelf)
    return f"<!doctype html>\n<meta charset=utf-8>\n<title>{title}</title>\n{STYLE}\n<h1>{title}</h1>\n" + "\n".join(
        parts
    )


def _with(fit: SpaceFit, things: Sequence[str], proposal: Proposal, plan: ShelfPlan) -> SpaceFit:
    """A space with its books in another order; what is not written among the books stands behind them as before."""
    arranged = {id for one in proposal.spaces for id in one.things} | set(proposal.left_over)
    row = (*things, *(id for id in fit.things if id not in arranged))
    places = places_of([standing for id in row if (standing := plan.plans[id].standing)])
    clearance = plan.spec.spaces[fit.name].clearance * len(places)
    return replace(fit, places=fallen(places, fit.width - clearance))
