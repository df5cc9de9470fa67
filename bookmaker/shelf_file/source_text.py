"""The text of a file that a maker writes: the shelf file, or the profile of a printer."""

from __future__ import annotations

from pathlib import Path

from ..ground.files import Wanted, read_file
from ..ground.problems import Place, Problem, ShelfFileError

__all__ = ["PROFILE", "SHELF", "TABLES", "source_text"]

SHELF = Wanted(
    "shelf file",
    2_000_000,  # a shelf of 5000 books stays well below
    "keep long texts in files of their own and name them under inside",
    instead="write the name of the shelf file in it, such as my-shelf/shelf.yaml",
    elsewhere="write its path as seen from the folder you are in, or begin one with bookmaker new my-shelf",
)

PROFILE = Wanted(
    "profile",
    SHELF.largest,
    "write one with bookmaker ruler --measured",
    instead="write the name of one profile",
    elsewhere="write one with bookmaker ruler --measured, or write the keys of the printer here",
)

TABLES = (".csv", ".tsv")
"""How the names of tables end."""


def source_text(path: Path, wanted: Wanted = SHELF, written: str = "", said: Place | None = None) -> str:
    """The text of a file; `written` is its path as another file has it, which names it at the place `said`.

    Raises:
        ShelfFileError: it cannot be read, or is no text.
    """
    if path.suffix.casefold() in TABLES:
        raise _refused("this is a table of books", "give the shelf file that names it, with a line books: from …", path)
    data = read_file(path, wanted, written, place=said).data
    if b"\0" in data:
        raise _refused("this is not a text file", "write the shelf in a text editor and save it as UTF-8", path)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as trouble:
        line, start = data.count(b"\n", 0, trouble.start) + 1, data.rfind(b"\n", 0, trouble.start) + 1
        column = len(data[start : trouble.start].decode("utf-8", "replace")) + 1
        message = f"this letter (byte 0x{data[trouble.start]:02X}) is not UTF-8 text"
        raise _refused(message, "save the file with the encoding UTF-8", path, line, column) from None


def _refused(message: str, remedy: str, path: Path, line: int = 0, column: int = 0) -> ShelfFileError:
    return ShelfFileError((Problem(message, remedy, place=Place(path.name, line, column)),))
