"""The command line: arguments, and which of them leads where. What a command does is imported when it is called.

Exit codes, which scripts can trust: 0: done. 1: done, but the shelf has errors. 2: a command or a file could not be
used; nothing was written, or what there is to say could not. More than 128: a signal stopped it; nothing was written.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated, NoReturn

import typer

from ..ground.collection import uncollected, uncollected_at_the_end
from ..ground.told import Units
from ..ground.visible import one_line
from ..sheets.layers import Layers
from . import options as taken
from .outlets import outlets
from .schemas import plan_schema_text, schema_text
from .set_texts import kept_on_disk, standing_type
from .stopping import stoppable

__all__ = ["app", "main"]

SHELF_HAS_ERRORS, UNUSABLE = 1, 2

app = typer.Typer(
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def _show_version(asked: bool) -> None:
    if asked:
        from importlib.metadata import version

        typer.echo(f"bookmaker {version('bookmaker')}")
        raise typer.Exit


@app.callback(epilog=taken.examples("new my-shelf", "check my-shelf/shelf.yaml", "make my-shelf/shelf.yaml --open"))
def bookmaker(
    version: Annotated[
        bool, typer.Option("--version", callback=_show_version, is_eager=True, help="Show the version and exit.")
    ] = False,
) -> None:
    """From a list of invented books to print-ready parts for a miniature library that fits its shelf."""


@app.command(epilog=taken.examples("new my-shelf"))
def new(
    folder: Annotated[Path, typer.Argument(metavar="DIR", help="A new or empty folder.")],
    units: Annotated[Units | None, typer.Option("--units", help="If left out, you are asked.")] = None,
) -> None:
    """Write a small shelf to start from. Notes in it say what you may change."""
    from ..shelf_file.starter import write_starter

    if units is None:
        asked = sys.stdin.isatty() and typer.confirm("Do you measure in inches?", default=False)
        units = Units.INCHES if asked else Units.MILLIMETRES
    shelf = write_starter(folder, schema_text(), units)
    typer.echo(f"wrote {one_line(shelf)}; next: bookmaker check {one_line(shelf)}")


@app.command(epilog=taken.examples("check", "check shelf.yaml --explain 3", "check shelf.yaml --spines --wide"))
def check(
    shelf: taken.Shelf = taken.USUAL_SHELF,
    as_json: taken.AsJson = False,
    explain: Annotated[
        str | None, typer.Option("--explain", metavar="BOOK", help="Show where a book's thickness comes from.")
    ] = None,
    spines: Annotated[bool, typer.Option("--spines", help="Show how well every spine can be read.")] = False,
    wide: taken.Wide = False,
    quiet: taken.Quiet = False,
    no_cache: taken.NoCache = False,
) -> None:
    """Say whether the books fit. This works everything out and draws nothing."""
    from .checking import check_shelf

    with standing_type(no_cache).used():
        sound = check_shelf(shelf, as_json=as_json, explain=explain, spines=spines, wide=wide, quiet=quiet)
    _end(sound)


@app.command(
    epilog=taken.examples("make", "make shelf.yaml --into to-print --open", 'make shelf.yaml --again "Tide Tables"'),
    context_settings={"allow_extra_args": True},
)
def make(
    context: typer.Context,
    shelf: taken.Shelf = taken.USUAL_SHELF,
    into: Annotated[
        Path | None,
        typer.Option(
            "--into", metavar="DIR", help="A new folder, or one made before; if left out, SHELF-to-print beside it."
        ),
    ] = None,
    layers: Annotated[Layers, typer.Option("--layers", help="Art and lines, or one of them alone.")] = Layers.ALL,
    only: Annotated[
        list[str] | None, typer.Option("--only", metavar="BOOK", help="This book or other thing only; may be repeated.")
    ] = None,
    again: Annotated[
        str | None, typer.Option("--again", metavar="BOOK", help="One book once more, on as little paper as possible.")
    ] = None,
    changed: taken.Changed = False,
    stock: taken.Stocks = None,
    contact_sheet: taken.ContactSheet = False,
    templates: taken.Templates = False,
    proof: taken.Proof = False,
    mock_up: taken.MockUp = False,
    as_json: taken.AsJson = False,
    show: Annotated[bool, typer.Option("--open", help="Open the folder when it is made.")] = False,
    wide: taken.Wide = False,
    quiet: taken.Quiet = False,
    no_cache: taken.NoCache = False,
) -> None:
    """Write the sheets to print. There is one PDF for each paper; the guide and the plan come with them."""
    from ..shelf.choice import Choice
    from ..shelf.wishes import Wishes
    from .making import make_shelf

    taken.refuse_more(context.args, "--into")
    choice = Choice(tuple(only or ()), again, tuple(stock or ()), changed)
    wishes = Wishes(choice, layers, contact_sheet=contact_sheet, templates=templates, proof=proof, mock_up=mock_up)
    folder = into or shelf.with_name(f"{shelf.stem}-to-print")
    with standing_type(no_cache).used():
        sound = make_shelf(shelf, folder, wishes, as_json=as_json, show=show, wide=wide, quiet=quiet)
    _end(sound)


@app.command(epilog=taken.examples("show", "show my-shelf/shelf.yaml", "show --into shelf.html"))
def show(
    shelf: taken.Shelf = taken.USUAL_SHELF,
    into: Annotated[
        Path | None,
        typer.Option("--into", metavar="FILE", help="Write the page, to look at only, as one HTML file instead."),
    ] = None,
    no_browser: Annotated[
        bool, typer.Option("--no-browser", help="Print the address only; open it where you like.")
    ] = False,
    no_cache: taken.NoCache = False,
) -> None:
    """Show the shelf in the browser. The page follows the file until you press Ctrl-C."""
    if into:
        from ..page.single_file import write_page

        size = write_page(shelf, into, kept_on_disk(no_cache))
        typer.echo(f"wrote {into}, {size / 1e6:.1f} MB; open it in any browser")
        return
    from ..page.running import show_shelf

    show_shelf(shelf, kept_on_disk(no_cache), typer.echo, browser=not no_browser)


@app.command(epilog=taken.examples("ruler --into ruler.pdf", "ruler --measured printer.yaml"))
def ruler(
    into: Annotated[Path | None, typer.Option("--into", metavar="FILE", help="The PDF to write.")] = None,
    sheet: Annotated[str, typer.Option("--sheet", help="A4, letter, or two sides.")] = "A4",
    printer: Annotated[
        Path | None, typer.Option("--printer", metavar="PROFILE", help="Correct the page by a profile, to try it out.")
    ] = None,
    measured: Annotated[
        Path | None, typer.Option("--measured", metavar="PROFILE", help="Ask what you measured; write a profile.")
    ] = None,
) -> None:
    """Measure your printer. This writes a page to print and measure, or makes a profile of what you measured."""
    from .measuring import measure_printer

    measure_printer(into, sheet, printer, measured)


@app.command(epilog=taken.examples('looks "Tide Tables"', "looks 3 shelf.yaml --from 13"))
def looks(
    book: Annotated[str, typer.Argument(metavar="BOOK", help="Title, number or id of a book.")],
    shelf: taken.Shelf = taken.USUAL_SHELF,
    into: Annotated[
        Path | None, typer.Option("--into", metavar="FILE", help="The PDF; if left out, looks-BOOK beside SHELF.")
    ] = None,
    first: Annotated[int | None, typer.Option("--from", metavar="NUMBER", help="The first look that is shown.")] = None,
    count: Annotated[int, typer.Option("--count", metavar="NUMBER", help="How many looks are shown.")] = 11,
) -> None:
    """Draw some looks of a book. You choose one by its number."""
    from .looking import show_looks

    show_looks(book, shelf, into, first, count)


@app.command(epilog=taken.examples("keep shelf.yaml", "keep shelf.yaml --apart"))
def keep(
    shelf: taken.Shelf = taken.USUAL_SHELF,
    apart: Annotated[
        bool,
        typer.Option("--apart", help="First give other looks to neighbours of nearly the same colour or scene."),
    ] = False,
    quiet: taken.Quiet = False,
) -> None:
    """Write the present looks into the shelf file. After that only you change them."""
    from .looking import keep_looks

    keep_looks(shelf, unlike=apart, quiet=quiet)


Weight = float | None
"""As the shelf file has it, if it is not given."""


@app.command(
    epilog=taken.examples("arrange shelf.yaml", "arrange shelf.yaml --into order.html", "arrange --by height --write")
)
def arrange(
    shelf: taken.Shelf = taken.USUAL_SHELF,
    by: Annotated[
        str | None,
        typer.Option("--by", metavar="RULE", help="A plain order: height, thickness, colour, title or author."),
    ] = None,
    keep_there: Annotated[
        list[str] | None,
        typer.Option("--keep", metavar="BOOK", help="A book that stays in its place in the row; may be repeated."),
    ] = None,
    colour: Annotated[Weight, typer.Option("--colour", help="How much neighbours of like colour count.")] = None,
    thickness: Annotated[
        float | None, typer.Option("--thickness", help="How much neighbours of like thickness count.")
    ] = None,
    style: Annotated[Weight, typer.Option("--style", help="How much neighbours of one style count.")] = None,
    rhythm: Annotated[
        float | None, typer.Option("--rhythm", help="How much heights like stairs or saw-teeth count.")
    ] = None,
    into: Annotated[
        Path | None, typer.Option("--into", metavar="FILE", help="Write a page (HTML) with the shelf before and after.")
    ] = None,
    write: Annotated[bool, typer.Option("--write", help="Put the order into the shelf file and its tables.")] = False,
) -> None:
    """Propose a space and an order for the books. Nothing is changed without --write."""
    from .arranging import arrange_shelf, rule_named, weights_of

    weights = weights_of(colour, thickness, style, rhythm)
    arrange_shelf(shelf, weights, rule_named(by), keep_there or [], into, write=write)


@app.command(epilog=taken.examples("manual", "manual clearance", "manual tuck box", "manual --into manual.html"))
def manual(
    words: Annotated[
        list[str] | None, typer.Argument(metavar="WORD", help="A key, a word of the trade, a chapter or a section.")
    ] = None,
    into: Annotated[
        Path | None, typer.Option("--into", metavar="FILE", help="Write all of it as one page (HTML).")
    ] = None,
) -> None:
    """Show what the manual says about a word, or several."""
    from .manual import show_manual

    show_manual(" ".join(words or ()), into)


@app.command(epilog=taken.examples("freeze shelf.yaml"))
def freeze(shelf: taken.Shelf = taken.USUAL_SHELF) -> None:
    """Write the invented books into the shelf file. Each is then a book that you can change."""
    from .looking import freeze_books

    freeze_books(shelf)


@app.command()
def schema(
    plan: Annotated[bool, typer.Option("--plan", help="Print that of plan.json instead.")] = False,
) -> None:
    """Print the JSON Schema of the shelf file."""
    typer.echo(plan_schema_text() if plan else schema_text())


def _end(sound: bool) -> None:
    if not sound:
        raise typer.Exit(SHELF_HAS_ERRORS)


def main() -> NoReturn:
    """Run the command line; refusals end in a message and exit code 2, never in a traceback."""
    uncollected_at_the_end()
    code = UNUSABLE
    with stoppable() as stop, outlets() as troubles:
        code = _ended()
    sys.exit(stop.code or (UNUSABLE if troubles else code))


def _ended() -> int:
    """The exit code of the command that was asked for."""
    from ..ground.problems import BookmakerError

    try:
        with uncollected():  # what is imported stays, and a command ends soon
            app(standalone_mode=True)
    except (BookmakerError, FileNotFoundError) as trouble:
        from .messages import problems_of, refuse

        refuse(problems_of(trouble))
        return UNUSABLE
    except SystemExit as ended:
        return int(ended.code or 0)
    return 0
