"""`bookmaker ruler`: the page that shows what a printer does, and the profile of what is read on it."""

from __future__ import annotations

import io
from pathlib import Path

from ..ground.output import check_replaceable, put_file
from ..ground.problems import CommandError, Problem
from ..ground.told import in_units, told_in
from ..ground.units import NotAMeasure
from ..ground.visible import one_line
from ..paper.papers import SheetFormat, find_format, told_of
from ..paper.profiles import read_printer
from ..ruler import PROFILE_MARK, measure, profile_text, write_ruler
from .messages import message
from .terminal import room, say, say_wrapped

__all__ = ["measure_printer"]


def measure_printer(into: Path | None, sheet: str, printer: Path | None, measured: Path | None) -> None:
    """Write the page into one file, or what is typed of it into another.

    Raises:
        BookmakerError: neither file is named, one of them cannot be used, or there is no such sheet.
    """
    if (into is None) == (measured is None):
        remedy = "write --into ruler.pdf to get the page, or --measured printer.yaml to write down what it measures"
        raise CommandError((Problem("ruler needs either --into or --measured", remedy),))
    try:
        size = find_format(sheet)
    except NotAMeasure as problem:
        raise CommandError((Problem(f"--sheet: {problem.message}", problem.remedy),)) from None
    with told_in(told_of(size)):
        if into is not None:
            _write_page(into, size, printer)
        if measured is not None:
            _write_profile(measured, size)


def _write_page(into: Path, size: SheetFormat, printer: Path | None) -> None:
    profile = read_printer(printer) if printer else None
    page = io.BytesIO()
    write_ruler(page, size, profile)
    put_file(into, page.getvalue())
    proof = in_units(
        "its rules must now measure 150 mm, and both diagonals 141.4 mm",
        "its rules must now measure 6 in, and both diagonals 5.657 in",
    )
    again = in_units("", f" --sheet {size.name}")
    plain = f"print it at 100 %, then: bookmaker ruler --measured printer.yaml{again}"
    say_wrapped(f"wrote {one_line(into)}; {proof if profile else plain}")


def _write_profile(path: Path, size: SheetFormat) -> None:
    """Ask for the readings and write the profile, unless another file stands there."""
    check_replaceable(path, PROFILE_MARK.encode())

    def ask(words: str, usual: str) -> str:
        try:
            return input(f"{words} [{usual}]: " if usual else f"{words}: ")
        except EOFError:
            raise CommandError((Problem("the readings end here", "run it again and answer every question"),)) from None

    printer = measure(size, ask, lambda problem: say(message(problem, room()), err=True))
    put_file(path, profile_text(printer).encode())
    say_wrapped(f"wrote {one_line(path)}; prove it: bookmaker ruler --into proof.pdf --printer {one_line(path)}")
