"""`bookmaker check`: a shelf worked out, as tables or as JSON."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from .. import check
from ..ground.problems import CommandError, Problem
from ..ground.told import told_in
from ..shelf.feedback import comparisons
from ..shelf_file.book_names import LISTED, UnknownBook
from ..workshop import Checked
from .grid import Grid
from .messages import outcome, tell
from .tables import (
    GIVEN_UP,
    breakdown_table,
    lettering_table,
    measured_table,
    reading_table,
    shelf_tables,
)
from .terminal import progress, room, say

__all__ = ["check_shelf"]


def check_shelf(shelf: Path, *, as_json: bool, explain: str | None, spines: bool, wide: bool, quiet: bool) -> bool:
    """Check a shelf and say what there is to say; whether it is sound.

    Raises:
        BookmakerError: a file cannot be used, or there is no such book to explain.
    """
    with progress(quiet=quiet) as told:
        checked = check(shelf, told)
    with told_in(checked.plan.spec.told):
        return _said(checked, as_json=as_json, explain=explain, spines=spines, wide=wide, quiet=quiet)


def _said(checked: Checked, *, as_json: bool, explain: str | None, spines: bool, wide: bool, quiet: bool) -> bool:
    if as_json:
        from ..writers.plan_json import check_report, dump

        sys.stdout.write(dump(check_report(checked)))
        return checked.sound
    if explain is not None:
        _print(_explained(explain, checked), wide=wide)
        return checked.sound
    if not quiet:
        for table in [lettering_table(checked)] if spines else _tables(checked):
            _print(table, wide=wide)
    tell(checked, checked.problems, wide=wide, quiet=quiet)
    if not (quiet or spines):
        say(outcome(checked))
    return checked.sound


def _print(table: Grid, *, wide: bool) -> None:
    for line in table.lines(0 if wide else room(), GIVEN_UP):
        say(line)


def _tables(checked: Checked) -> Iterator[Grid]:
    """All that there is something to say of."""
    yield from shelf_tables(checked.plan)
    if measured := comparisons(checked.plan):
        yield measured_table(measured)
    if checked.legibility:
        yield reading_table(checked)


def _explained(wanted: str, checked: Checked) -> Grid:
    """The thing with this name or number, layer by layer."""
    plan = checked.plan
    try:
        (id,) = plan.register.find(wanted, LISTED, one=True)
    except UnknownBook as unknown:
        raise CommandError((Problem(f"--explain: {unknown.message}", unknown.remedy),)) from None
    number = plan.number_of(id)
    return breakdown_table(plan.plans[id], f"{number or ''} {plan.plans[id].name}".lstrip())
