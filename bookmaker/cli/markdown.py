"""Markdown as lines of a terminal: paragraphs wrapped, examples as they are, tables in columns where these fit."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator, Sequence
from itertools import groupby

from ..writers.manual.chapters import bare

__all__ = ["printed", "wrapped"]

GAP = "   "
"""What stands between two columns."""


def printed(text: str, width: int) -> Iterator[str]:
    """Lines no wider than `width`, but for examples, which stay as they are."""
    kept = ""
    for is_table, lines in groupby(text.splitlines(), key=lambda line: line.startswith("|")):
        if is_table:
            yield from _table([*lines], width)
            continue
        for line in lines:
            if re.match(r" *```", line):
                kept = "" if kept else "  "
            elif kept:
                yield kept + line
            elif found := re.match(r" *(?:[-*]|\d+\.) ", line):
                yield from wrapped(bare(line), width, " " * len(found[0]))
            elif not line.startswith("!["):
                yield from wrapped(bare(line.lstrip("# ")), width)


def _table(lines: Sequence[str], width: int) -> Iterator[str]:
    """Rows below one another in columns; where these are too wide together, each row as a paragraph."""
    rows = [_cells(line) for line in lines if not _rules(line)]
    widths = [max(map(len, column)) for column in zip(*rows, strict=False)]
    if sum(widths) + len(GAP) * (len(widths) - 1) <= width:
        for row in rows:
            yield GAP.join(cell.ljust(wide) for cell, wide in zip(row, widths, strict=False)).rstrip()
        return
    heads, *others = rows if any(_rules(line) for line in lines) else [[""] * len(widths), *rows]
    for row in others:
        yield from wrapped(_as_paragraph(row, heads), width, "    ")


def _rules(line: str) -> bool:
    """Whether this is the line under the heads of the columns; a passage of a table has none."""
    return bool(re.fullmatch(r"[-|: ]+", line))


def _cells(line: str) -> list[str]:
    return [bare(cell.strip()) for cell in line.strip("|").split(" | ")]


def _as_paragraph(row: Sequence[str], heads: Sequence[str]) -> str:
    """The first cell, what stands beside it, and what follows under the heads of its columns."""
    first, *rest = row
    named = ["", *(f"{head}: " if head else "" for head in heads[2:])]
    told = [head + cell for head, cell in zip(named, rest, strict=False) if cell.strip(" –")]
    return f"{first}: {'; '.join(told)}"


def wrapped(text: str, width: int, indent: str = "") -> list[str]:
    """A paragraph; all its lines but the first are indented."""
    return textwrap.wrap(text, width, subsequent_indent=indent, break_on_hyphens=False) or [""]
