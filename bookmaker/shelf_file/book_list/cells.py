"""The text of a table parted into rows and cells, by RFC 4180 with any of three separators.

A cell that begins with a quotation mark ends with the next single one; two in a row stand for one within it,
and it may hold separators and line ends.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterator
from dataclasses import dataclass

__all__ = ["SEPARATORS", "QuoteSlip", "Row", "find_separator", "split_rows"]

SEPARATORS = {",": "comma", ";": "semicolon", "\t": "tab"}
"""What parts cells, each by its name; where the comma is a decimal point, spreadsheets take the semicolon."""

NOTE = "# "
"""How a line begins that is a note of the maker."""

SEPARATOR_LINE = re.compile(r'"?sep=([,;\t])"?')
"""What some spreadsheets write before the first line."""

OPENED = re.compile(' *"')
QUOTED = re.compile(r' *"([^"]*(?:""[^"]*)*)" *')


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a table: its number in the file, counted from 1, and its cells without blanks around them."""

    line: int
    cells: tuple[str, ...]

    @property
    def is_told(self) -> bool:
        """Whether it says anything: it is neither empty nor a note."""
        return any(self.cells) and not f"{self.cells[0]} ".startswith(NOTE)

    def cell(self, number: int) -> str:
        """A cell by its number from 1; those left off at the end of a line are empty."""
        return self.cells[number - 1] if number <= len(self.cells) else ""


class QuoteSlip(Exception):  # noqa: N818 - it is the maker's slip
    """A quotation mark that is not closed, or has text after it: the cell where it opens, the line where it ends."""

    def __init__(self, line: int, cell: int, closes: int | None) -> None:
        super().__init__(line, cell, closes)
        self.line, self.cell, self.closes = line, cell, closes


def find_separator(text: str, known: Container[str]) -> str:
    """What parts the cells: the sign that finds most `known` names in the first line that says anything."""
    # the line sep=; is one that says so itself
    lines = (line for line in text.split("\n") if line.strip(" \t,;") and not line.startswith(NOTE))
    first = next(lines, "")

    def found(separator: str) -> tuple[int, int]:
        names = [name.strip(' "').casefold() for name in first.split(separator)]
        return sum(name in known for name in names), len(names)

    return max(SEPARATORS, key=found)


def split_rows(text: str, separator: str) -> Iterator[Row]:
    """Every row of a text whose lines end with a line feed, the empty ones too.

    >>> [row.cells for row in split_rows('title,pages\\n"Salt, Rope",48\\n', ",")]
    [('title', 'pages'), ('Salt, Rope', '48')]

    Raises:
        QuoteSlip: a quotation mark does not end its cell; what follows cannot be told apart.
    """
    boundary = re.compile(f"[{separator}\n]")
    at, line, first = 0, 1, 1
    cells: list[str] = []
    if SEPARATOR_LINE.fullmatch(text.partition("\n")[0]):
        at, line, first = text.index("\n") + 1, 2, 2
    while at < len(text):
        cell, end = _cell(text, at, boundary, (line, len(cells) + 1))
        cells.append(cell.strip())
        line += text.count("\n", at, end + 1)
        if text[end] == "\n":
            yield Row(first, tuple(cells))
            first, cells = line, []
        at = end + 1


def _cell(text: str, at: int, boundary: re.Pattern[str], place: tuple[int, int]) -> tuple[str, int]:
    """The cell that begins at a position, and where it ends: at a separator, or at a line feed."""
    quoted = QUOTED.match(text, at)
    if quoted and boundary.match(text, quoted.end()):
        return quoted[1].replace('""', '"'), quoted.end()
    if OPENED.match(text, at):
        raise QuoteSlip(*place, place[0] + quoted[0].count("\n") if quoted else None)
    end = boundary.search(text, at)
    assert end is not None  # the last line ends, too
    return text[at : end.start()], end.start()
