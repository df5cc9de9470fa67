"""`bookmaker make`: the sheets of a shelf written, and what there is to know of them."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from .. import make
from ..ground.output import PLAN_NAME
from ..ground.quantities import counted
from ..ground.told import told_in
from ..ground.visible import one_line
from ..things.wording import numbers
from ..workshop import Made, Wishes
from .after_making import abridged_lines, gone_lines, off_cut_lines, others_line
from .messages import outcome, tell
from .tables import paper_line
from .terminal import progress, say_wrapped

if TYPE_CHECKING:
    from ..writers.publishing import WrittenFile

__all__ = ["make_shelf"]


def make_shelf(shelf: Path, into: Path, wishes: Wishes, *, as_json: bool, show: bool, wide: bool, quiet: bool) -> bool:
    """Make a shelf and say what was made; whether it is sound. `show` opens the folder where the system can.

    Raises:
        BookmakerError: a file or the folder cannot be used, or the wishes name what is not there.
    """
    with progress(quiet=quiet) as told:
        made = make(shelf, into, wishes=wishes, progress=told)
    if as_json:
        sys.stdout.write((into / PLAN_NAME).read_text(encoding="utf-8"))
    else:
        tell(made.checked, made.about, wide=wide, quiet=quiet)
        if not quiet:
            with told_in(made.checked.plan.spec.told):
                if wishes.choice.changed and made.changes.first:
                    say_wrapped(f"nothing was made in {one_line(into)} before to compare with: all is printed")
                _say_what_was_made(made, shelf, into, wide=wide)
    if show and typer.launch(str(into)):
        say_wrapped(f"{one_line(into)} cannot be opened from here: open it as you open any folder", err=True)
    return made.checked.sound


def _say_what_was_made(made: Made, shelf: Path, into: Path, *, wide: bool) -> None:
    if made.others:
        say_wrapped(others_line(made.others, shelf), err=True)
    changes = list(made.changes.lines())
    for line in changes if wide else abridged_lines(changes):
        say_wrapped(line)
    if made.files and not changes and not made.changes.first:
        say_wrapped(f"nothing of what is printed has changed since {one_line(into)} was made before")
    if not made.files:
        since = "all is ticked off as printed" if changes else f"nothing has changed since {one_line(into)} was made"
        say_wrapped(f"{since}: nothing to print")
        return
    for line in (
        *_file_lines(made, into),
        *off_cut_lines(made.off_cuts),
        *gone_lines(made.gone),
        outcome(made.checked),
    ):
        say_wrapped(line)


def _file_lines(made: Made, into: Path) -> Iterator[str]:
    """The files, those in a folder of their own only counted, and how well each paper is used."""
    drawings = [file.name for file in made.files if "/" in file.name]
    for file in made.files:
        if file.name not in drawings:
            yield f"{one_line(into / file.name)}{_how_printed(file)}"
    if drawings:
        yield f"{one_line(into / Path(drawings[0]).parent)}: {len(drawings)} drawings"
    for tally in made.tallies:
        yield paper_line(tally, made.checked.plan.stocks[tally.stock].printed_on)


def _how_printed(file: WrittenFile) -> str:
    """How many sheets a file has, and which of its pages are front and back of one."""
    if not file.both_sides:
        return f": {counted(file.sheets, 'sheet')}" if file.sheets else ""
    pages = file.sheets + len(file.both_sides) // 2
    which = "" if len(file.both_sides) == pages else f" pages {numbers(file.both_sides)}"
    return f": {counted(file.sheets, 'sheet')} ({pages} pages; print{which} on both sides, flip on the {file.turn})"
