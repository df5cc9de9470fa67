"""Signs of markup that are no part of Markdown here, and are printed as they stand."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from markdown_it.token import Token

from ..errors import Problem, Severity

__all__ = ["unread"]

SIGNS = re.compile(r"~~(?=\S)[^~]+(?<=\S)~~|(?<![\^\[])\^(?=\S)[^\s^]+\^|==(?=\S)[^=]+(?<=\S)==|~(?=\S)[^\s~]+~")
"""What others strike out, raise, mark and lower."""


def unread(tokens: Sequence[Token], name: str) -> Iterator[Problem]:
    """A note on the first of such signs."""
    for token in tokens:
        if token.type == "inline":
            for child in token.children or ():
                found = SIGNS.search(child.content) if child.type == "text" else None
                if found:
                    yield _note(name, found[0], (token.map or [0])[0] + 1)
                    return


def _note(name: str, signs: str, line: int) -> Problem:
    shown = signs if len(signs) <= 30 else signs[:15] + "\u2026"
    return Problem(
        f"{name} has signs that mean nothing here and are printed, such as {shown} in line {line}",
        "write *\u2026* for italic, **\u2026** for bold, or leave them out",
        Severity.NOTE,
        field=("file",),
    )
