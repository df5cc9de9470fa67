"""Books listed in a table beside the shelf file: a CSV or TSV as a spreadsheet saves it.

Each line is a book, each column a key of it: ``title``, or with a dot a key within a group, ``design.style``.
A few keys go by a short name. What comes out is the tree that the same books would have in YAML, each value
with its line, and its column counted in cells, so that every later message leads back to the cell.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from ...ground.problems import Place, Problem, ShelfFileError
from ...ground.quantities import show
from ..yaml_tree import HIDDEN, Tree
from .cells import SEPARATORS, QuoteSlip, Row, find_separator, split_rows
from .columns import SHORT_NAMES, Column, find_columns, known_names
from .table import Table, read_table, refused
from .wording import in_words_of_tables

__all__ = ["MOST_BOOKS", "SHORT_NAMES", "in_words_of_tables", "with_listed_books"]

MOST_BOOKS = 5000
"""More books than any shelf has."""

FROM = "from "

FORMULA = "="
"""How a spreadsheet's formula begins."""

FAILED = ("#REF!", "#N/A", "#NAME?", "#VALUE!", "#DIV/0!", "#NUM!", "#NULL!")
"""What stands in a cell whose formula could not be worked out."""


def with_listed_books(tree: Tree, folder: Path, keys: Mapping[str, bool]) -> tuple[Tree, Sequence[Problem]]:
    """The shelf with every ``from FILE`` under its books replaced by the books of that file; and all that is wrong.

    `keys` are those of a book, with dots, and whether they are groups of keys. The books of a file that cannot be
    used are left out; if there are no others, so is the key.
    """
    books = tree.child("books")
    if not isinstance(tree.value, dict) or books is None:
        return tree, ()
    items = books.value if isinstance(books.value, list) else [books]
    listed: list[Tree] = []
    problems: list[Problem] = []
    for item in items:
        if not isinstance(item.value, str) or not item.value.startswith(FROM):
            listed.append(item)
            continue
        try:
            listed += _books(item, folder, keys)
        except ShelfFileError as refusal:
            problems += refusal.problems
    if listed == items:
        return tree, ()
    others = {key: value for key, value in tree.value.items() if key != "books"}
    with_books = {**others, "books": Tree(listed, books.place)} if listed else others
    return replace(tree, value=with_books), tuple(dict.fromkeys(problems))


def _books(said: Tree, folder: Path, keys: Mapping[str, bool]) -> list[Tree]:
    """The books of the table that an item of the list names."""
    name = str(said.value).removeprefix(FROM).strip()
    table = read_table(folder / name, name, said.place)
    separator = find_separator(table.text, known_names(keys))
    header, *rows = _rows(table, separator, said.place)
    found = find_columns(table, header, rows, keys)
    columns = [column for column in found if isinstance(column, Column)]
    problems = [problem for problem in found if isinstance(problem, Problem)]
    # a table whose columns are in doubt says nothing certain about its books
    problems = problems or [problem for row in rows for problem in _wrong_cells(table, row, header, columns, separator)]
    if problems:
        raise ShelfFileError(problems)
    return [_book(table, row, columns) for row in rows]


def _rows(table: Table, separator: str, said: Place) -> list[Row]:
    """The rows that say anything, the names of the columns first."""
    try:
        rows = [row for row in split_rows(table.text, separator) if row.is_told]
    except QuoteSlip as slip:
        raise ShelfFileError((_quote_slip(table, slip),)) from None
    if not rows:
        raise refused(f"{table.name} is empty", "write a line of column names, and a line for each book", said)
    if len(rows) == 1:
        raise refused(f"{table.name} lists no book", "write a line for each book below the names of the columns", said)
    if len(rows) - 1 > MOST_BOOKS:
        told = f"{table.name} lists {len(rows) - 1} books, more than {MOST_BOOKS}"
        raise refused(told, "part them into several shelves", said)
    return rows


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


def _book(table: Table, row: Row, columns: Sequence[Column]) -> Tree:
    """One book as the YAML of the same keys would have it; an empty cell is a key left out."""
    book = Tree({}, table.place(row.line, 1), {})
    for column in columns:
        cell = row.cell(column.number)
        if cell:
            _put(book, column.key.split("."), Tree(cell, table.place(row.line, column.number)))
    return book


def _put(group: Tree, path: Sequence[str], value: Tree) -> None:
    """Set a value under a path of keys in a tree that is being built; columns are never groups themselves."""
    assert isinstance(group.value, dict)  # only groups are built
    key, *rest = path
    if not rest:
        group.value[key] = value
    else:
        _put(group.value.setdefault(key, Tree({}, value.place, {})), rest, value)
    group.keys.setdefault(key, value.place)
