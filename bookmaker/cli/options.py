"""What several commands take, and how their help shows examples."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated

import typer

from ..ground.visible import one_line

__all__ = [
    "USUAL_SHELF",
    "AsJson",
    "Changed",
    "ContactSheet",
    "MockUp",
    "NoCache",
    "Proof",
    "Quiet",
    "Shelf",
    "Stocks",
    "Templates",
    "Wide",
    "examples",
    "refuse_more",
]

USUAL_SHELF = Path("shelf.yaml")

Shelf = Annotated[Path, typer.Argument(metavar="SHELF", help="The shelf file (YAML).")]
AsJson = Annotated[bool, typer.Option("--json", help="Print JSON, for programs.")]
Wide = Annotated[bool, typer.Option("--wide", help="Show all columns and every note.")]
NoCache = Annotated[bool, typer.Option("--no-cache", help="Set long texts anew; do not keep them.")]
Quiet = Annotated[bool, typer.Option("--quiet", "-q", help="Say only what is wrong: no tables, no notes.")]
Changed = Annotated[bool, typer.Option("--changed", help="Only what has changed, on as little paper as possible.")]
Stocks = Annotated[list[str] | None, typer.Option("--stock", metavar="NAME", help="This paper only; may be repeated.")]
ContactSheet = Annotated[bool, typer.Option("--contact-sheet", help="Also the shelf with all spines, as PDF and PNG.")]
Templates = Annotated[
    bool, typer.Option("--templates", help="Also a template of each cover to draw over, as PDF and PNG.")
]
Proof = Annotated[bool, typer.Option("--proof", help="Also all pages two by two, to read as PDF.")]
MockUp = Annotated[bool, typer.Option("--mock-up", help="Also outlines on plain paper, to try the room out.")]


def examples(*lines: str) -> str:
    """What stands under the help of a command, line by line."""
    return "\n".join(("\b", "Examples:", *(f"  bookmaker {line}" for line in lines)))


def refuse_more(more: Sequence[str], option: str) -> None:
    """Refuse words after the shelf file, which are probably meant for an option.

    Raises:
        CommandError: there are such words.
    """
    from ..ground.problems import CommandError, Problem

    if more:
        what = f"there is one word too many: {one_line(more[0])}"
        raise CommandError((Problem(what, f"if it is where to write, write {option} {one_line(more[0])}"),))
