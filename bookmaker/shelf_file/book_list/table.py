"""A table as a file: its text, whatever spreadsheet saved it, and the places in it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from ...ground.files import Wanted, read_file
from ...ground.problems import Place, Problem, ShelfFileError
from .cells import LINE_END

__all__ = ["TABLE", "Table", "read_table", "refused"]

TABLE = Wanted(
    "table",
    2_000_000,  # a list of 5000 books stays well below
    "save only the columns that the shelf needs",
    instead="write the name of one CSV or TSV file",
)

SPREADSHEETS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")
"""How files begin in which spreadsheets keep their own: packed folders and compound documents."""

UTF_16 = (b"\xff\xfe", b"\xfe\xff")
"""The byte order marks of UTF-16, in which some spreadsheets save text parted by tabs."""

AS_UTF_8 = "save the table again as CSV and choose UTF-8 as its encoding"


@dataclass(frozen=True)
class Table:
    """A list of books as a file: its name as the shelf file has it, and its text with its own line ends."""

    name: str
    text: str

    @cached_property
    def lines(self) -> list[str]:
        """Its lines, without their ends."""
        return LINE_END.split(self.text)

    def place(self, line: int, cell: int) -> Place:
        """A cell, both counted from 1."""
        return Place(self.name, line, cell, self.lines[line - 1] if line <= len(self.lines) else "")


def read_table(path: Path, name: str, said: Place) -> Table:
    """Read the file of a table; `said` is where the shelf file names it.

    Raises:
        ShelfFileError: there is no such file, or it holds no text that can be read.
    """
    return Table(name, _decoded(read_file(path, TABLE, name, place=said).data, name, said))


def refused(message: str, remedy: str, place: Place) -> ShelfFileError:
    """A table that cannot be used as a whole."""
    return ShelfFileError((Problem(message, remedy, place=place),))


def _decoded(data: bytes, name: str, said: Place) -> str:
    if data.startswith(SPREADSHEETS):
        raise refused(f"{name} is a spreadsheet itself, not a table saved from one", AS_UTF_8, said)
    if data.startswith(UTF_16):
        try:
            return data.decode("utf-16")
        except UnicodeDecodeError:
            raise refused(f"{name} is UTF-16 text that breaks off or is damaged", AS_UTF_8, said) from None
    if b"\0" in data:
        raise refused(f"{name} is no text that can be read, or text in UTF-16 without its mark", AS_UTF_8, said)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as trouble:
        raise _not_utf_8(data, trouble.start, name) from None


def _not_utf_8(data: bytes, at: int, name: str) -> ShelfFileError:
    """What is not UTF-8 is mostly in the encoding of Windows: the letter it would be there helps to find it."""
    line = data.count(b"\n", 0, at) + 1
    letter = data[at : at + 1].decode("cp1252", "replace")
    seen = f"{letter!r} in the Windows encoding, cp1252," if letter.isprintable() and letter != "\ufffd" else "a letter"
    message = f"this line holds {seen} that is not UTF-8 text (byte 0x{data[at]:02X})"
    return refused(message, AS_UTF_8, Place(name, line, 1))
