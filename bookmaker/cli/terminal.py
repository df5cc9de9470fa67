"""The terminal: how wide it is, whether it shows colours, and how far the work has come."""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from textwrap import wrap

import typer

__all__ = ["progress", "room", "say", "say_wrapped"]

CLEAR = "\r\x1b[K"
"""Begins a line of a terminal anew (ECMA-48, erase in line)."""


def room() -> int:
    """How many letters a line of the output has; 0 if nothing says so, as in a file or a pipe."""
    if not (sys.stdout.isatty() or "COLUMNS" in os.environ):
        return 0
    return shutil.get_terminal_size(fallback=(0, 0)).columns


def say(text: str, *, err: bool = False) -> None:
    """Write a line; the switches for colours are left out where none are shown (no-color.org)."""
    wanted = False if os.environ.get("NO_COLOR") else None
    typer.echo(text, err=err, color=wanted)


def say_wrapped(text: str, *, err: bool = False) -> None:
    """Write a sentence, broken between words where the terminal ends."""
    width = room()
    lines = (
        wrap(text, width, subsequent_indent="  ", break_long_words=False, break_on_hyphens=False) if width else [text]
    )
    say("\n".join(lines), err=err)


@contextmanager
def progress(*, quiet: bool = False) -> Iterator[Callable[[str, int, int], None]]:
    """On a terminal, a line that says what is being done; nothing anywhere else."""
    if quiet or not sys.stderr.isatty():
        yield lambda *_: None
        return
    try:
        yield lambda what, done, total: print(f"{CLEAR}{what}: {done} of {total}", end="", file=sys.stderr, flush=True)
    finally:
        print(CLEAR, end="", file=sys.stderr, flush=True)
