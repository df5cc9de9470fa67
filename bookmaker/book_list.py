"""Books listed in a table beside the shelf file: a CSV or TSV as a spreadsheet saves it.

Each line is a book, each column a key of it: ``title``, or with a dot a key within a group, ``design.style``.
A few keys go by a short name. What comes out is the tree that the same books would have in YAML, each value
with its line, and its column counted in cells, so that every later message leads back to the cell.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from .errors import Place, Problem, ShelfFileError
from .yaml_tree import Tree

__all__ = ["MOST_BOOKS", "SHORT_NAMES", "with_listed_books"]

MOST_BOOKS = 5000
"""More books than any shelf has."""

LARGEST_FILE = 2_000_000
"""Bytes; a list of 5000 books stays well below."""

FROM = "from "

SHORT_NAMES = {
    "pages": "block.pages",
    "thickness": "block.measured_thickness",
    "height": "size.height",
    "width": "size.width",
    "style": "design.style",
    "palette": "design.palette",
    "colour": "design.colour",
    "ink": "design.ink",
}
"""Columns that may leave out the group their key belongs to."""

FORMULA = "="
"""How a spreadsheet's formula begins."""


@dataclass(frozen=True, slots=True)
class Table:
    """A list of books as a file: its name and its lines."""

    name: str
    lines: tuple[str, ...]

    def place(self, line: int, cell: int) -> Place:
        """A cell, both counted from 1."""
        return Place(self.name, line, cell, self.lines[line - 1] if line <= len(self.lines) else "")


def with_listed_books(tree: Tree, folder: Path) -> Tree:
    """The shelf with every ``from FILE`` under its books replaced by the books of that file.

    Raises:
        ShelfFileError: a list cannot be used; with everything that is wrong in it.
    """
    books = tree.child("books")
    if not isinstance(tree.value, dict) or books is None:
        return tree
    items = books.value if isinstance(books.value, list) else [books]
    listed: list[Tree] = []
    for item in items:
        if isinstance(item.value, str) and item.value.startswith(FROM):
            listed += _books(folder / item.value.removeprefix(FROM).strip(), item)
        else:
            listed.append(item)
    if listed == items:
        return tree
    return replace(tree, value={**tree.value, "books": Tree(listed, books.place)})


def _books(path: Path, said: Tree) -> Iterator[Tree]:
    text = _text(path, said)
    rows, table = list(_cells(text)), Table(path.name, tuple(text.splitlines()))
    if not rows:
        raise _refused(f"{path.name} is empty", "write a line of column names, and a line for each book", said.place)
    (header_line, header), *lines = rows
    if len(lines) > MOST_BOOKS:
        told = f"{path.name} lists {len(lines)} books, more than {MOST_BOOKS}"
        raise _refused(told, "part them into several shelves", said.place)
    columns = [SHORT_NAMES.get(name, name) for name in header]
    problems = list(_wrong_columns(table, header, columns, header_line))
    for line, cells in lines:
        problems += _wrong_cells(table, line, cells, header)
    if problems:
        raise ShelfFileError(problems)
    for line, cells in lines:
        yield _book(table, line, columns, cells)


def _text(path: Path, said: Tree) -> str:
    """The text of a list, refused with a reason if it is none."""
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE:
            raise _refused(
                f"{path.name} has {size / 1e6:.1f} MB, more than {LARGEST_FILE / 1e6:.0f}",
                "save only the columns that the shelf needs",
                said.place,
            )
        data = path.read_bytes()
    except (OSError, ValueError) as trouble:
        reason = (getattr(trouble, "strerror", None) or str(trouble)).lower()
        raise _refused(
            f"{path.name} cannot be read ({reason})", "write its path as seen from the shelf file's folder", said.place
        ) from None
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as trouble:
        line = data.count(b"\n", 0, trouble.start) + 1
        message = f"this line holds a letter (byte 0x{data[trouble.start]:02X}) that is not UTF-8 text"
        raise _refused(message, "save the list as CSV with the encoding UTF-8", Place(path.name, line, 1)) from None


def _cells(text: str) -> Iterator[tuple[int, list[str]]]:
    """The lines of a table that are not blank, each with the number of its first line in the file."""
    first = text.lstrip("\r\n").partition("\n")[0]
    separator = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator)
    start = 1
    for cells in reader:
        tidy = [cell.strip() for cell in cells]
        if any(tidy):
            yield start, tidy
        start = reader.line_num + 1


def _wrong_columns(table: Table, header: Sequence[str], columns: Sequence[str], line: int) -> Iterator[Problem]:
    for number, column in enumerate(columns, start=1):
        place = table.place(line, number)
        if not column:
            yield Problem(f"column {number} has no name", "name it, or delete it", place=place)
        elif column in columns[: number - 1]:
            yield Problem(f"column {header[number - 1]!r} stands there twice", "delete one of them", place=place)
    if "title" not in columns:
        yield Problem(
            f"there is no column 'title' among {', '.join(header)}",
            "name the columns in the first line, one of them title",
            place=table.place(line, 1),
        )


def _wrong_cells(table: Table, line: int, cells: Sequence[str], header: Sequence[str]) -> Iterator[Problem]:
    if len(cells) != len(header):
        yield Problem(
            f"this line has {_counted(len(cells))}, but there are {len(header)} columns",
            "put text that holds the separator in quotes, and leave cells without a value empty",
            place=table.place(line, min(len(cells), len(header))),
        )
    for number, cell in enumerate(cells[: len(header)], start=1):
        if cell.startswith(FORMULA):
            yield Problem(
                f"{header[number - 1]} is a formula: {cell[:40]}",
                "save the list with values instead of formulas",
                place=table.place(line, number),
            )


def _counted(cells: int) -> str:
    return f"{cells} cells" if cells > 1 else "1 cell"


def _book(table: Table, line: int, columns: Sequence[str], cells: Sequence[str]) -> Tree:
    """One book as the YAML of the same keys would have it; an empty cell is a key left out."""
    place = table.place(line, 1)
    book = Tree({}, place, {})
    for number, (column, cell) in enumerate(zip(columns, cells, strict=True), start=1):
        if cell:
            _put(book, column.split("."), Tree(cell, table.place(line, number)))
    return book


def _put(group: Tree, path: Sequence[str], value: Tree) -> None:
    """Set a value under a path of keys in a tree that is being built."""
    assert isinstance(group.value, dict)  # only groups are built
    key, *rest = path
    if not rest:
        group.value[key] = value
    else:
        below = group.value.setdefault(key, Tree({}, value.place, {}))
        if isinstance(below.value, dict):
            _put(below, rest, value)
    group.keys.setdefault(key, value.place)


def _refused(message: str, remedy: str, place: Place) -> ShelfFileError:
    return ShelfFileError((Problem(message, remedy, place=place),))
