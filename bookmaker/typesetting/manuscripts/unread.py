"""Signs of markup that are no part of Markdown here, and are printed as they stand."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from ...ground.problems import Problem, Severity

if TYPE_CHECKING:
    from markdown_it.token import Token

__all__ = ["unread"]

SIGNS = re.compile(r"~~(?=\S)[^~]+(?<=\S)~~|(?<![\^\[])\^(?=\S)[^\s^]+\^|==(?=\S)[^=]+(?<=\S)==|~(?=\S)[^\s~]+~")
"""What others strike out, raise, mark and lower."""


MOST_SHOWN = 30
"""So many letters of what is told of are shown."""

HEADING = re.compile(r"#{1,6}[^\s#0-9]")
"""A line that may be meant for a heading, but has no blank after its signs."""

ENTRY = re.compile(r"[A-Za-z][\w -]*:\s")
"""How an entry about a text begins that some write over it."""


def unread(tokens: Sequence[Token], name: str) -> Iterator[Problem]:
    """A note on the first of such signs, of headings without a blank, and on a head with entries."""
    yield from _signs(tokens, name)
    yield from _headings(tokens, name)
    yield from _entries(tokens, name)


def _headings(tokens: Sequence[Token], name: str) -> Iterator[Problem]:
    for before, token in pairwise(tokens):
        if before.type == "paragraph_open" and HEADING.match(token.content):
            shown = token.content.partition("\n")[0]
            yield Problem(
                f"{name} has a line that is not a heading, {_short(shown)} in line {_line(token)}",
                "write a blank after the # of a heading, or \\# for the sign itself",
                Severity.NOTE,
                field=("file",),
            )
            return


def _entries(tokens: Sequence[Token], name: str) -> Iterator[Problem]:
    for place, token in enumerate(tokens[:3]):
        first, setext = tokens[0], tokens[max(0, place - 1)]
        entries = token.type == "inline" and ENTRY.match(token.content)
        if entries and first.type == "hr" and _line(first) == 1 and setext.markup == "-":
            shown = _short(token.content)
            yield Problem(
                f"{name} begins with entries between lines of ---, which are printed: {shown} in line 2",
                "leave these lines out: title and author stand in the shelf file",
                Severity.NOTE,
                field=("file",),
            )


def _signs(tokens: Sequence[Token], name: str) -> Iterator[Problem]:
    for token in tokens:
        if token.type == "inline":
            for child in token.children or ():
                found = SIGNS.search(child.content) if child.type == "text" else None
                if found:
                    yield _note(name, found[0], _line(token))
                    return


def _line(token: Token) -> int:
    return (token.map or [0])[0] + 1


def _short(text: str) -> str:
    shown = text.partition("\n")[0]
    return shown if len(shown) <= MOST_SHOWN else shown[: MOST_SHOWN // 2] + "\u2026"


def _note(name: str, signs: str, line: int) -> Problem:
    return Problem(
        f"{name} has signs that mean nothing here and are printed, such as {_short(signs)} in line {line}",
        "write *\u2026* for italic, **\u2026** for bold, or leave them out",
        Severity.NOTE,
        field=("file",),
    )
