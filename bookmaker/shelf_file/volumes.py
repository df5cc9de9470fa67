"""Volumes: an entry with ``volumes`` stands for a set of books that differ in their numbers.

It becomes a row (see ``rows``) of as many books, numbered in Roman figures; an entry that has a row already
gets its books numbered.
"""

from __future__ import annotations

from dataclasses import replace

from ..ground.problems import FieldPath
from .yaml_tree import Tree

__all__ = ["MOST_VOLUMES", "is_volume", "roman", "with_volumes"]

MOST_VOLUMES = 100

FIGURES = (
    (100, "C"), (90, "XC"), (50, "L"), (40, "XL"), (10, "X"), (9, "IX"), (5, "V"), (4, "IV"), (1, "I"),
)  # fmt: skip


def roman(number: int) -> str:
    """A number in Roman figures.

    >>> roman(14), roman(99)
    ('XIV', 'XCIX')
    """
    text = ""
    for value, figure in FIGURES:
        text += figure * (number // value)
        number %= value
    return text


def is_volume(tree: Tree, field: FieldPath) -> bool:
    """Whether a field is one of a volume that nothing is written about but that its set has so many."""
    book = tree.below(field[:2]) if field[:1] == ("books",) else None
    number = book.child("volume") if book else None
    return book is not None and number is not None and number.place == book.place


def with_volumes(tree: Tree) -> Tree:
    """The shelf with its sets written as rows.

    Anything that is not shaped as it should be is left for the check of the whole shelf to refuse.
    """
    books = tree.child("books")
    if not isinstance(tree.value, dict) or books is None or not isinstance(books.value, list):
        return tree
    entries = [_as_row(entry) for entry in books.value]
    return replace(tree, value={**tree.value, "books": Tree(entries, books.place)})


def _as_row(entry: Tree) -> Tree:
    """An entry with its volumes as a row."""
    volumes, row = entry.child("volumes"), entry.child("row")
    count = _count(volumes)
    if volumes is None or count is None or not isinstance(entry.value, dict):
        return entry
    given = row.value if row and isinstance(row.value, list) else []
    if given and len(given) != count:
        return entry
    items = [_numbered(item, number, volumes) for number, item in enumerate(given or [None] * count, start=1)]
    kept = {key: value for key, value in entry.value.items() if key not in ("volumes", "row")}
    return replace(entry, value={**kept, "row": Tree(items, volumes.place)})


def _count(volumes: Tree | None) -> int | None:
    written = volumes.value if volumes else None
    if not isinstance(written, str) or not written.isascii() or not written.isdigit():
        return None
    return int(written) if 2 <= int(written[:4]) <= MOST_VOLUMES else None


def _numbered(item: Tree | None, number: int, volumes: Tree) -> Tree:
    """An item of the row with its number, unless it has one."""
    figure = Tree(roman(number), volumes.place)
    if item is None:
        return Tree({"volume": figure}, volumes.place, {"volume": volumes.place})
    if isinstance(item.value, str):
        item = Tree({"title": item}, item.place, {"title": item.place})
    if not isinstance(item.value, dict) or "volume" in item.value:
        return item
    return Tree({**item.value, "volume": figure}, item.place, {**item.keys, "volume": volumes.place})
