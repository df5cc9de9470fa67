"""Books listed in a table beside the shelf file: a CSV or TSV as a spreadsheet saves it.

Each line is a book, each column a key of it: ``title``, or with a dot a key within a group, ``design.style``.
A few keys go by a short name. What comes out is the tree that the same books would have in YAML, each value
with its line, and its column counted in cells, so that every later message leads back to the cell.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from ...ground.problems import Problem, ShelfFileError
from ..yaml_tree import Tree
from .columns import SHORT_NAMES, column_name
from .listed import MOST_BOOKS, listed_books
from .table import read_table
from .wording import for_a_table, told_of_tables

__all__ = ["MOST_BOOKS", "SHORT_NAMES", "column_name", "for_a_table", "told_of_tables", "with_listed_books"]

FROM = "from "


def with_listed_books(tree: Tree, folder: Path, keys: Mapping[str, bool]) -> tuple[Tree, Sequence[Problem]]:
    """The shelf with every ``from FILE`` under its books replaced by the books of that file; and what there is to say.

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
            name = item.value.removeprefix(FROM).strip()
            table = read_table(folder / name, name, item.place)
            problems += table.remarks(item.place)
            listed += listed_books(table, keys, item.place).trees()
        except ShelfFileError as refusal:
            problems += refusal.problems
    if listed == items:
        return tree, ()
    others = {key: value for key, value in tree.value.items() if key != "books"}
    with_books = {**others, "books": Tree(listed, books.place)} if listed else others
    return replace(tree, value=with_books), tuple(dict.fromkeys(problems))
