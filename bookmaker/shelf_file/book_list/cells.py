"""The text of a table parted into rows and cells, by RFC 4180 with any of three separators.

A cell that begins with a quotation mark ends with the next single one; two in a row stand for one within it,
and it may hold separators and line ends. Lines end as they like.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterator
from dataclasses import dataclass

__all__ = ["LINE_END", "SEPARATORS", "QuoteSlip", "Row", "find_separator", "split_rows"]

SEPARATORS = {",": "comma", ";": "semicolon", "\t": "tab"}
"""What parts cells, each by its name; where the comma is a decimal point, spreadsheets take the semicolon."""

NOTE = "# "
"""How a line begins that is a note of the maker."""

LINE_END = re.compile(r"\r\n|\r|\n")

LINE = re.compile(r"[^\r\n]*")

SEPARATOR_LINE = re.compile(r'"?sep=([,;\t])"?(?:\r\n|\r|\n)')
"""What some spreadsheets write before the first line."""

OPENED = re.compile(' *"')
QUOTED = re.compile(r' *"([^"]*(?:""[^"]*)*)" *')


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a table: its number in the file, counted from 1, and its cells without blanks around them.

    `spans` are the places of the cells in the text, with their quotation marks and the blanks around them; `behind`
    is where the next line begins.
    """

    line: int
    cells: tuple[str, ...]
    spans: tuple[tuple[int, int], ...] = ()
    behind: int = 0

    @property
    def is_note(self) -> bool:
        """Whether it is a note of the maker."""
        return f"{self.cells[0]} ".startswith(NOTE)

    @property
    def is_told(self) -> bool:
        """Whether it says anything: it is neither empty nor a note."""
        return any(self.cells) and not self.is_note

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
    lines = (found[0] for found in LINE.finditer(text))
    first = next((line for line in lines if line.strip(" \t,;") and not line.startswith(NOTE)), "")

    def found(separator: str) -> tuple[int, int]:
        names = [name.strip(' "').casefold() for name in first.split(separator)]
        return sum(name in known for name in names), len(names)

    return max(SEPARATORS, key=found)


def split_rows(text: str, separator: str) -> Iterator[Row]:
    """Every row of a text, the empty ones too.

    >>> [row.cells for row in split_rows('title,pages\\n"Salt, Rope",48\\n', ",")]
    [('title', 'pages'), ('Salt, Rope', '48')]

    Raises:
        QuoteSlip: a quotation mark does not end its cell; what follows cannot be told apart.
    """
    boundary = re.compile(rf"{separator}|\r\n|\r|\n|\Z")
    at, line, first = 0, 1, 1
    cells: list[str] = []
    spans: list[tuple[int, int]] = []
    if told := SEPARATOR_LINE.match(text):
        at, line, first = told.end(), 2, 2
    while at < len(text) or cells:
        cell, end = _cell(text, at, boundary, (line, len(cells) + 1))
        cells.append(LINE_END.sub("\n", cell.strip()))
        spans.append((at, end.start()))
        line += len(LINE_END.findall(text, at, end.end()))
        if end[0] != separator:
            yield Row(first, tuple(cells), tuple(spans), end.end())
            first, cells, spans = line, [], []
        at = end.end()


def _cell(text: str, at: int, boundary: re.Pattern[str], place: tuple[int, int]) -> tuple[str, re.Match[str]]:
    """The cell that begins at a position, and what ends it: a separator, the end of the line or of the text."""
    quoted = QUOTED.match(text, at)
    end = boundary.match(text, quoted.end()) if quoted else None
    if quoted and end:
        return quoted[1].replace('""', '"'), end
    if OPENED.match(text, at):
        raise QuoteSlip(*place, place[0] + len(LINE_END.findall(quoted[0])) if quoted else None)
    end = boundary.search(text, at)
    assert end is not None  # the text ends, too
    return text[at : end.start()], end
