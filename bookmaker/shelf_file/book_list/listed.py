"""A table read as a list of books: which column is which key, which row which book, which cells are wrong."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from ...ground.problems import Place, Problem, ShelfFileError
from ...ground.quantities import show
from ..yaml_tree import HIDDEN, Tree
from .cells import SEPARATORS, QuoteSlip, Row, find_separator, split_rows
from .columns import Column, find_columns, known_names
from .table import Table, refused

__all__ = ["MOST_BOOKS", "ListedBooks", "listed_books"]

MOST_BOOKS = 5000
"""More books than any shelf has."""

FORMULA = "="
"""How a spreadsheet's formula begins."""

FAILED = ("#REF!", "#N/A", "#NAME?", "#VALUE!", "#DIV/0!", "#NUM!", "#NULL!")
"""What stands in a cell whose formula could not be worked out."""


@dataclass(frozen=True, slots=True)
class ListedBooks:
    """A table that can be used: its separator, all its rows, the one with the names of its columns, and its books."""

    table: Table
    separator: str
    rows: tuple[Row, ...]
    header: Row
    books: tuple[Row, ...]
    columns: tuple[Column, ...]

    def trees(self) -> list[Tree]:
        """The books as the YAML of the same keys would have them; an empty cell is a key left out."""
        return [self._tree(row) for row in self.books]

    def _tree(self, row: Row) -> Tree:
        book = Tree({}, self.table.place(row.line, 1), {})
        for column in self.columns:
            cell = row.cell(column.number)
            if cell:
                _put(book, column.key.split("."), Tree(cell, self.table.place(row.line, column.number)))
        return book


def listed_books(table: Table, keys: Mapping[str, bool], said: Place) -> ListedBooks:
    """The books of a table; `keys` are those of a book, with dots, and whether they are groups of keys.

    Raises:
        ShelfFileError: with everything that is wrong with its rows, columns and cells.
    """
    separator = find_separator(table.text, known_names(keys))
    rows = _rows(table, separator)
    header, *books = _told(table, rows, said)
    found = find_columns(table, header, books, keys)
    columns = tuple(column for column in found if isinstance(column, Column))
    problems = [problem for problem in found if isinstance(problem, Problem)]
    # a table whose columns are in doubt says nothing certain about its books
    problems = problems or [one for row in books for one in _wrong_cells(table, row, header, columns, separator)]
    if problems:
        raise ShelfFileError(problems)
    return ListedBooks(table, separator, rows, header, tuple(books), columns)


def _rows(table: Table, separator: str) -> tuple[Row, ...]:
    try:
        return tuple(split_rows(table.text, separator))
    except QuoteSlip as slip:
        raise ShelfFileError((_quote_slip(table, slip),)) from None


def _told(table: Table, rows: Sequence[Row], said: Place) -> list[Row]:
    """The rows that say anything, the names of the columns first."""
    told = [row for row in rows if row.is_told]
    if not told:
        raise refused(f"{table.name} is empty", "write a line of column names, and a line for each book", said)
    if len(told) == 1:
        raise refused(f"{table.name} lists no book", "write a line for each book below the names of the columns", said)
    if len(told) - 1 > MOST_BOOKS:
        what = f"{table.name} lists {len(told) - 1} books, more than {MOST_BOOKS}"
        raise refused(what, "part them into several shelves", said)
    return told


def _quote_slip(table: Table, slip: QuoteSlip) -> Problem:
    remedy = 'put one at the end of the text, and write "" for a mark that belongs to it'
    if slip.closes is None:
        told = "a quotation mark opens here and is not closed"
    elif slip.closes == slip.line:
        told = "the text goes on behind the quotation mark that closes it"
        remedy = 'put marks around the whole text, and write "" for a mark that belongs to it'
    else:
        told = f"the quotation mark that opens here is closed only on line {slip.closes}, with more text behind it"
    return Problem(told, remedy, place=table.place(slip.line, slip.cell))


def _wrong_cells(table: Table, row: Row, header: Row, columns: Sequence[Column], separator: str) -> Iterator[Problem]:
    """What is wrong with a row, whatever its columns mean."""
    if any(row.cells[len(header.cells) :]):
        quotes = f"put text that holds a {SEPARATORS[separator]} in quotes"
        yield Problem(
            f"this line has {len(row.cells)} cells, but there are {len(header.cells)} columns",
            quotes + (', "18,5 mm" too' if separator == "," else ""),
            place=table.place(row.line, len(header.cells)),
        )
        return
    for column in columns:
        told = _wrong_cell(column, row.cell(column.number))
        if told:
            yield Problem(*told, place=table.place(row.line, column.number))


def _wrong_cell(column: Column, cell: str) -> tuple[str, str] | None:
    """What is wrong with the text of a cell, and what to do."""
    hidden = next((sign for sign in cell if unicodedata.category(sign) in HIDDEN and sign not in "\n\t"), "")
    if hidden:
        return f"{column.name} holds the control character U+{ord(hidden):04X}", "write visible letters only"
    if cell.startswith(FORMULA):
        remedy = "copy the cell and paste it as a value in its place, then save the table again"
        return f"{column.name} is a formula: {show(cell)}", remedy
    if cell in FAILED:
        return f"{column.name} is {cell}, a formula that came to nothing", "write the value itself, or leave it empty"
    if not cell and column.key == "title":
        return "this book has no title", "write one, or delete the whole line"
    return None


def _put(group: Tree, path: Sequence[str], value: Tree) -> None:
    """Set a value under a path of keys in a tree that is being built; columns are never groups themselves."""
    assert isinstance(group.value, dict)  # only groups are built
    key, *rest = path
    if not rest:
        group.value[key] = value
    else:
        _put(group.value.setdefault(key, Tree({}, value.place, {})), rest, value)
    group.keys.setdefault(key, value.place)
