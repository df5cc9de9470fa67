"""What `make` says besides its files: whose problems it left out, which off-cuts are used up, which files are gone."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

from ..ground.visible import one_line
from ..paper.stock import Stock

__all__ = ["abridged_lines", "gone_lines", "off_cut_lines", "others_line"]

MOST_CHANGES = 8
"""So many lines on what changed are shown."""

MOST_NAMED = 3
"""So many files are named; more would only fill the screen."""


def others_line(count: int, shelf: Path) -> str:
    """How many problems were left out because they are about books that were not chosen."""
    shows = "them" if count > 1 else "it"
    return f"{count} more about other books: bookmaker check {one_line(shelf)} shows {shows}"


def off_cut_lines(off_cuts: Sequence[Stock]) -> Iterator[str]:
    """Off-cuts that pieces were laid on, by stock: they are there for one run."""
    for stock in dict.fromkeys(off_cut.name for off_cut in off_cuts):
        sizes = Counter(off_cut.sheet.name for off_cut in off_cuts if off_cut.name == stock)
        named = ", ".join(f"{count} of {size}" if count > 1 else size for size, count in sizes.items())
        one = sizes.total() == 1
        yield (
            f"{stock}: {'an off-cut is' if one else f'{sizes.total()} off-cuts are'} used up, {named}; once "
            f"{'it is' if one else 'they are'} printed, take {'it' if one else 'them'} out of off_cuts, or the next "
            f"run counts on {'it' if one else 'them'} again"
        )


def abridged_lines(lines: Sequence[str]) -> Iterator[str]:
    """Some lines on what changed; of many the first, and how many more there are."""
    yield from lines if len(lines) <= MOST_CHANGES + 1 else lines[:MOST_CHANGES]
    if len(lines) > MOST_CHANGES + 1:
        yield f"{len(lines) - MOST_CHANGES} more changes; --wide shows all"


def gone_lines(files: Sequence[str]) -> Iterator[str]:
    """Files of an earlier run in the same folder that were not made again; nothing if there are none."""
    if files:
        count = f"{len(files)} files made before are" if len(files) > 1 else "1 file made before is"
        named = ", ".join(map(one_line, files[:MOST_NAMED])) + (" and more" if len(files) > MOST_NAMED else "")
        yield f"{count} gone: {named}; another folder after --into keeps what is there"
