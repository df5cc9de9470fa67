"""Tables of text that fit the terminal: columns go, the least needed first, before a name is cut short."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from textwrap import wrap

from ..ground.visible import one_line

__all__ = ["BOLD", "PLAIN", "RED", "SHORTEST_NAME", "YELLOW", "Grid", "width_of"]

SHORTEST_NAME = 20
"""So many letters of a name are shown at least."""

GAP = "   "

BOLD, YELLOW, RED, PLAIN = "\x1b[1m", "\x1b[33m", "\x1b[1;31m", "\x1b[0m"
"""Switches of a terminal (ECMA-48, select graphic rendition)."""


@dataclass(frozen=True, slots=True)
class Grid:
    """A table with its title; the flag of a column says whether it holds numbers, which stand at the right.

    The first column that holds none has the names: it is the one that is cut.
    """

    title: str
    columns: tuple[tuple[str, bool], ...]
    rows: list[tuple[tuple[str, ...], str]] = field(default_factory=list)

    def add_row(self, *cells: str, style: str = "") -> None:
        """One more row, with a switch of the terminal; cells that are missing at its end are empty."""
        missing = [""] * (len(self.columns) - len(cells))
        self.rows.append(((*map(one_line, cells), *missing), style))

    def lines(self, room: int = 0, given_up: Sequence[str] = ()) -> Iterator[str]:
        """The table in lines of at most so many letters; 0 is any number.

        Where the room is too small, columns go in the order of `given_up`, and a last line says which went.
        """
        heads = tuple(name for name, _ in self.columns)
        widths = [max(map(width_of, column)) for column in zip(heads, *(cells for cells, _ in self.rows), strict=True)]
        names = next(at for at, (_, numeric) in enumerate(self.columns) if not numeric)
        cut = SHORTEST_NAME + 1  # with its ellipsis
        least = [min(width, cut) if at == names else width for at, width in enumerate(widths)]
        shown = self._shown(least, room, given_up)
        if room:
            others = _across(0 if at == names else widths[at] for at in shown)
            widths[names] = min(widths[names], max(cut, room - others))
        yield from (f"{BOLD}{line}{PLAIN}" for line in wrap(self.title, room or len(self.title)))
        yield ""
        yield f"{BOLD}{self._line(heads, shown, widths)}{PLAIN}"
        yield " " + "─" * (_across(widths[at] for at in shown) - 1)
        for cells, style in self.rows:
            yield f"{style}{self._line(cells, shown, widths)}{PLAIN if style else ''}"
        if gone := dict.fromkeys(head for at, head in enumerate(heads) if at not in shown):
            yield from wrap(
                f"no room for {', '.join(gone)}: --wide shows all", room, initial_indent=" ", subsequent_indent=" "
            )
        yield ""

    def _shown(self, least: Sequence[int], room: int, given_up: Sequence[str]) -> list[int]:
        """The columns there is room for."""
        shown = list(range(len(least)))
        for name in given_up:
            if not room or _across(least[at] for at in shown) <= room:
                break
            shown = [at for at in shown if self.columns[at][0] != name]
        return shown

    def _line(self, cells: Sequence[str], shown: Sequence[int], widths: Sequence[int]) -> str:
        parts = []
        for at in shown:
            text = _cut(cells[at], widths[at])
            blank = " " * (widths[at] - width_of(text))
            parts.append(blank + text if self.columns[at][1] else text + blank)
        return (" " + GAP.join(parts)).rstrip()


def _across(widths: Iterable[int]) -> int:
    """How wide a line of columns is."""
    found = list(widths)
    return 1 + sum(found) + len(GAP) * (len(found) - 1)


def _cut(text: str, room: int) -> str:
    """A text in so many letters, with an ellipsis where it had more."""
    if width_of(text) <= room:
        return text
    while width_of(text) >= room:
        text = text[:-1]
    return f"{text.rstrip()}…"


def width_of(text: str) -> int:
    """How many columns of a terminal a text takes: wide letters two, marks that join others none (UAX #11).

    >>> width_of("Маяк"), width_of("灯台"), width_of("e\\u0301")
    (4, 4, 1)
    """
    wide = sum(unicodedata.east_asian_width(letter) in "WF" for letter in text)
    joined = sum(unicodedata.category(letter) in ("Mn", "Me", "Cf") for letter in text)
    return len(text) + wide - joined
