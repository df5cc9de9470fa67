"""The command line: arguments in, tables and messages out, exit codes that scripts can trust.

0: done. 1: done, but the shelf has errors. 2: a command or a file could not be used; nothing was written.
"""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, NoReturn

import typer

from ..ground.collection import uncollected, uncollected_at_the_end
from ..sheets.parts import Parts

if TYPE_CHECKING:
    from rich.console import Console

    from ..ground.problems import Problem
    from ..paper.papers import SheetFormat
    from ..things.thing import Plan
    from ..workshop import Checked, Progress

__all__ = ["app", "main"]

SHELF_HAS_ERRORS, UNUSABLE = 1, 2

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def _version(asked: bool) -> None:
    if asked:
        from importlib.metadata import version

        typer.echo(f"bookmaker {version('bookmaker')}")
        raise typer.Exit


@app.callback()
def bookmaker(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version and exit.")
    ] = False,
) -> None:
    """From a list of invented books to print-ready parts for a miniature library that fits its shelf."""


ShelfPath = Annotated[Path, typer.Argument(metavar="SHELF", help="The shelf file (YAML).")]


@app.command()
def new(folder: Annotated[Path, typer.Argument(metavar="DIR", help="A new or empty folder.")]) -> None:
    """Write a small commented shelf to start from."""
    from ..shelf_file.starter import write_starter

    shelf = write_starter(folder)
    typer.echo(f"wrote {shelf}; next: bookmaker check {shelf}")


@app.command()
def check(
    shelf: ShelfPath,
    as_json: Annotated[bool, typer.Option("--json", help="Print the same as JSON.")] = False,
    explain: Annotated[
        str | None, typer.Option("--explain", metavar="BOOK", help="Show where a book's thickness comes from.")
    ] = None,
    spines: Annotated[bool, typer.Option("--spines", help="Show how well every spine can be read.")] = False,
) -> None:
    """Compute everything and say whether the books fit; draws nothing."""
    from .. import workshop
    from ..shelf.feedback import comparisons
    from .tables import (
        breakdown_table,
        lettering_table,
        measured_table,
        outcome,
        reading_table,
        shelf_tables,
    )

    with _progress() as told:
        checked = workshop.check(shelf, told)
    if as_json:
        from ..writers.plan_json import check_report, dump

        sys.stdout.write(dump(check_report(checked)))
    else:
        out = _console(stderr=False)
        if explain is not None:
            out.print(breakdown_table(*_explained(explain, checked)))
            _finish(checked)
            return
        if spines:
            out.print(lettering_table(checked))
            _tell(checked.problems)
            _finish(checked)
            return
        for table in shelf_tables(checked.plan):
            out.print(table)
        if measured := comparisons(checked.plan):
            out.print(measured_table(measured))
        if any(checked.legibility):
            out.print(reading_table(checked))
        _tell(checked.problems)
        out.print(outcome(checked), highlight=False, soft_wrap=True)
    _finish(checked)


@app.command()
def make(
    shelf: ShelfPath,
    into: Annotated[Path, typer.Option("--into", metavar="DIR", help="A new folder, or one made before.")],
    parts: Annotated[Parts, typer.Option("--parts", help="Art and lines, or one of them alone.")] = Parts.ALL,
    only: Annotated[
        list[str] | None, typer.Option("--only", metavar="BOOK", help="This book or other thing only; may be repeated.")
    ] = None,
    again: Annotated[
        str | None, typer.Option("--again", metavar="BOOK", help="One book once more, on as little paper as possible.")
    ] = None,
    stock: Annotated[
        list[str] | None, typer.Option("--stock", metavar="NAME", help="This paper only; may be repeated.")
    ] = None,
    contact_sheet: Annotated[
        bool, typer.Option("--contact-sheet", help="Also all spines side by side, as PDF and PNG.")
    ] = False,
    templates: Annotated[
        bool, typer.Option("--templates", help="Also a template of each cover to draw over, as PDF and PNG.")
    ] = False,
) -> None:
    """Write the sheets to print, one PDF for each paper, and the plan."""
    from .. import workshop
    from ..shelf.choice import Choice
    from .made_lines import gone_lines, off_cut_lines, others_line
    from .tables import outcome, paper_line

    wishes = workshop.Wishes(
        choice=Choice(tuple(only or ()), again, tuple(stock or ())),
        parts=parts,
        contact_sheet=contact_sheet,
        templates=templates,
    )
    with _progress() as told:
        made = workshop.make(shelf, into, told, wishes)
    _tell(made.about)
    if made.others:
        typer.echo(others_line(made.others, shelf), err=True)
    drawings = [name for name, _ in made.files if "/" in name]
    for name, sheets in made.files:
        if name in drawings:
            continue
        count = f": {sheets} sheet{'s' if sheets > 1 else ''}" if sheets else ""
        typer.echo(f"{into / name}{count}")
    if drawings:
        typer.echo(f"{into / Path(drawings[0]).parent}: {len(drawings)} drawings")
    for tally in made.tallies:
        typer.echo(paper_line(tally, made.checked.plan.stocks[tally.stock].printed_on))
    for line in (*off_cut_lines(made.off_cuts), *gone_lines(made.gone)):
        typer.echo(line)
    typer.echo(outcome(made.checked))
    _finish(made.checked)


@app.command()
def ruler(
    into: Annotated[Path | None, typer.Option("--into", metavar="FILE", help="The PDF to write.")] = None,
    sheet: Annotated[str, typer.Option("--sheet", help="A4, letter, or two sides.")] = "A4",
    printer: Annotated[
        Path | None, typer.Option("--printer", metavar="PROFILE", help="Correct the page by a profile, to prove it.")
    ] = None,
    measured: Annotated[
        Path | None, typer.Option("--measured", metavar="PROFILE", help="Ask for what it measures; write a profile.")
    ] = None,
) -> None:
    """Write a page that shows what your printer does, or turn what it measures into a profile."""
    from ..ground.output import put_file
    from ..ground.problems import CommandError, Problem
    from ..ground.units import NotAMeasure
    from ..paper.papers import find_format

    if (into is None) == (measured is None):
        remedy = "write --into ruler.pdf to get the page, or --measured printer.yaml to write down what it measures"
        raise CommandError((Problem("ruler needs either --into or --measured", remedy),))
    try:
        size = find_format(sheet)
    except NotAMeasure as problem:
        raise CommandError((Problem(f"--sheet: {problem.message}", problem.remedy),)) from None
    if into is not None:
        from ..paper.profiles import read_printer
        from ..ruler.page import write_ruler

        profile = read_printer(printer) if printer else None
        page = io.BytesIO()
        write_ruler(page, size, profile)
        put_file(into, page.getvalue())
        proof = "its rules must now measure 150 mm, and both diagonals 141.4 mm"
        plain = "print it at 100 %, then: bookmaker ruler --measured printer.yaml"
        typer.echo(f"wrote {into}; {proof if profile else plain}")
    if measured is not None:
        _write_profile(measured, size)


def _write_profile(path: Path, size: SheetFormat) -> None:
    """Ask for the readings and write the profile, unless another file stands there."""
    from ..ground.output import check_replaceable, put_file
    from ..ground.problems import CommandError, Problem
    from ..ruler.readings import PROFILE_MARK, measure, profile_text
    from .tables import message

    check_replaceable(path, PROFILE_MARK.encode())

    def ask(words: str, usual: str) -> str:
        try:
            return input(f"{words} [{usual}]: " if usual else f"{words}: ")
        except EOFError:
            raise CommandError((Problem("the readings end here", "run it again and answer every question"),)) from None

    printer = measure(size, ask, lambda problem: typer.echo(message(problem), err=True))
    put_file(path, profile_text(printer).encode())
    typer.echo(f"wrote {path}; prove it: bookmaker ruler --into proof.pdf --printer {path}")


@app.command()
def schema() -> None:
    """Print JSON Schema of the shelf file, for editors."""
    import json

    from ..shelf.schema import shelf_schema

    typer.echo(json.dumps(shelf_schema(), ensure_ascii=False, indent=1))


def _explained(wanted: str, checked: Checked) -> tuple[Plan, str]:
    """The thing with this name or number, and how it is called."""
    from ..ground.problems import CommandError, Problem
    from ..shelf_file.book_names import LISTED, UnknownBook

    plan = checked.plan
    try:
        (id,) = plan.register.find(wanted, LISTED, one=True)
    except UnknownBook as unknown:
        raise CommandError((Problem(f"--explain: {unknown.message}", unknown.remedy),)) from None
    number = plan.number_of(id)
    return plan.plans[id], f"{number or ''} {plan.plans[id].name}".lstrip()


def _console(*, stderr: bool) -> Console:
    """A console that never breaks a table because no terminal tells its width."""
    from rich.console import Console

    console = Console(stderr=stderr, highlight=False)
    if not console.is_terminal:
        console.width = 140
    return console


@contextmanager
def _progress() -> Iterator[Progress]:
    """Progress on a terminal, silence anywhere else."""
    console = _console(stderr=True)
    if not console.is_terminal:
        yield lambda *_: None
        return
    from rich.progress import Progress as Bar

    with Bar(console=console, transient=True) as bar:
        task = bar.add_task("reading", total=None)
        yield lambda what, done, total: bar.update(task, description=what, completed=done, total=total)


def _tell(problems: tuple[Problem, ...]) -> None:
    from ..ground.abridged import abridged
    from .tables import message

    for problem in abridged(problems):
        typer.echo(message(problem), err=True)


def _finish(checked: Checked) -> None:
    if not checked.sound:
        raise typer.Exit(SHELF_HAS_ERRORS)


def main() -> NoReturn:
    """Run the command line; refusals end in a message and exit code 2, never in a traceback."""
    uncollected_at_the_end()
    for stream in (sys.stdout, sys.stderr):
        # A terminal of an old code page shows ? for a sign it lacks; it is no reason to stop.
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    from ..ground.problems import BookmakerError

    try:
        with uncollected():  # what is imported stays, and a command ends soon
            app(standalone_mode=True)
    except BookmakerError as refusal:
        _tell(tuple(refusal.problems))
        sys.exit(UNUSABLE)
    except BrokenPipeError:
        # The reader of our output has gone, as `head` does: not worth a word.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        sys.exit(UNUSABLE)
    sys.exit(0)
