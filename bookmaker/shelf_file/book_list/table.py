"""A table as a file: its text, whatever spreadsheet saved it, and the places in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from ...ground.files import Wanted, read_file
from ...ground.problems import Place, Problem, Severity, ShelfFileError
from ..encodings import Encoded, NotText, decoded
from .cells import LINE_END
from .spreadsheet import NoSpreadsheet, sheet_rows

__all__ = ["ARCHIVES", "TABLE", "Table", "read_table", "refused", "text_of_table"]

TABLE = Wanted(
    "table",
    2_000_000,  # a list of 5000 books stays well below
    "save only the columns that the shelf needs",
    instead="write the name of one CSV or TSV file",
)

ARCHIVES, OLD_SPREADSHEETS = b"PK\x03\x04", b"\xd0\xcf\x11\xe0"
"""How files begin in which spreadsheets keep their own: packed folders and compound documents."""

UTF_16 = "UTF-16"

AS_UTF_8 = "save the table again as CSV and choose UTF-8 as its encoding"


@dataclass(frozen=True)
class Table:
    """A list of books as a file: its name as the shelf file has it, its text with its own line ends, its encoding."""

    name: str
    text: str
    encoding: str = "UTF-8"

    @cached_property
    def lines(self) -> list[str]:
        """Its lines, without their ends."""
        return LINE_END.split(self.text)

    def remarks(self, said: Place) -> Iterator[Problem]:
        """What there is to say of a table that could be read; `said` is where the shelf file names it."""
        if self.encoding != "UTF-8":
            what = f"{self.name} was read as text in {self.encoding}"
            remedy = "save it again in UTF-8 if a letter in it looks wrong"
            yield Problem(what, remedy, severity=Severity.NOTE, place=said)

    def place(self, line: int, cell: int) -> Place:
        """A cell, both counted from 1."""
        return Place(self.name, line, cell, self.lines[line - 1] if line <= len(self.lines) else "")


def read_table(path: Path, name: str, said: Place) -> Table:
    """Read the file of a table; `said` is where the shelf file names it.

    Raises:
        ShelfFileError: there is no such file, or it holds no text that can be read.
    """
    read = _decoded(read_file(path, TABLE, name, place=said).data, name, said)
    return Table(name, read.text, read.name)


def text_of_table(data: bytes, name: str) -> str:
    """The text of a table that stands in no file here, such as one that was sent; spreadsheets become lines of cells.

    Raises:
        ShelfFileError: it holds no text that can be read.
    """
    return _decoded(data, name, Place(name)).text


def refused(message: str, remedy: str, place: Place) -> ShelfFileError:
    """A table that cannot be used as a whole."""
    return ShelfFileError((Problem(message, remedy, place=place),))


def _decoded(data: bytes, name: str, said: Place) -> Encoded:
    if data.startswith(OLD_SPREADSHEETS):
        raise refused(f"{name} is a spreadsheet in an old format", "save it again as XLSX, ODS or CSV", said)
    if data.startswith(ARCHIVES):
        try:
            return Encoded("".join(f"{','.join(map(_quoted, row))}\n" for row in sheet_rows(data)))
        except NoSpreadsheet as trouble:
            raise refused(f"{name} {trouble}", AS_UTF_8, said) from None
    try:
        return decoded(data, foreign=True)
    except NotText as trouble:
        if trouble.name == UTF_16:
            raise refused(f"{name} is UTF-16 text that breaks off or is damaged", AS_UTF_8, said) from None
        if b"\0" in data:
            raise refused(f"{name} is not a text that can be read", AS_UTF_8, said) from None
        line = data.count(b"\n", 0, trouble.at) + 1
        what = f"this line holds a letter that is not UTF-8 text (byte 0x{data[trouble.at]:02X})"
        raise refused(what, AS_UTF_8, Place(name, line, 1)) from None


def _quoted(cell: str) -> str:
    """A cell of a spreadsheet as it stands in a table; a row of it is one line."""
    return '"' + cell.replace('"', '""') + '"' if any(sign in cell for sign in ',"') else cell
