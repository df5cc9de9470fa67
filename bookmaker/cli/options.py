"""What several commands take, and how their help shows examples."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

__all__ = ["USUAL_SHELF", "AsJson", "NoCache", "Quiet", "Shelf", "Wide", "examples"]

USUAL_SHELF = Path("shelf.yaml")

Shelf = Annotated[Path, typer.Argument(metavar="SHELF", help="The shelf file (YAML).")]
AsJson = Annotated[bool, typer.Option("--json", help="Print JSON, for programs.")]
Wide = Annotated[bool, typer.Option("--wide", help="Show all columns and every note, however wide the terminal is.")]
NoCache = Annotated[bool, typer.Option("--no-cache", help="Set long texts anew; keep none of them for the next run.")]
Quiet = Annotated[bool, typer.Option("--quiet", "-q", help="Say only what is wrong: no tables, no notes.")]


def examples(*lines: str) -> str:
    """What stands under the help of a command, line by line."""
    return "\n".join(("\b", "Examples:", *(f"  bookmaker {line}" for line in lines)))
