"""Rows: books that share one description, written out before the defaults are laid under them.

A book with ``row`` stands for as many books as the row has items. Each item is a group of keys of a book laid
over the rest of the entry; ``thickness`` in it goes to the block, and a bare text is a title.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from ..ground.problems import FieldPath, Place
from .defaults import merged
from .yaml_tree import Tree

__all__ = ["LONGEST_ROW", "with_rows"]

LONGEST_ROW = 5000
"""More books than any shelf has."""


def with_rows(tree: Tree) -> tuple[Tree, Mapping[Place, FieldPath]]:
    """The shelf with its rows written out, and the places of what the books of a row share.

    Each place comes with the field of the first book of its row: what is wrong there is told of that one.
    Anything that is not shaped as it should be is left for the check of the whole shelf to refuse.
    """
    books = tree.child("books")
    if not isinstance(tree.value, dict) or books is None or not isinstance(books.value, list):
        return tree, {}
    written: list[Tree] = []
    shared: dict[Place, FieldPath] = {}
    for entry in books.value:
        row = entry.child("row")
        if row is None or not isinstance(row.value, list) or not 1 <= len(row.value) <= LONGEST_ROW:
            written.append(entry)
            continue
        rest = replace(entry, value=_others(entry, "row"))
        shared |= dict.fromkeys(_places_within(rest), ("books", len(written)))
        written += [_book(rest, item) for item in row.value]
    return replace(tree, value={**tree.value, "books": Tree(written, books.place)}), shared


def _book(rest: Tree, item: Tree) -> Tree:
    """One book of a row, standing where its item stands."""
    if isinstance(item.value, str):
        item = Tree({"title": item}, item.place)
    return merged(rest, _with_block(item, rest)) if isinstance(item.value, dict) else item


def _with_block(item: Tree, rest: Tree) -> Tree:
    """The item with its thickness in its block; a block that says it itself, or is no group, stays as it is."""
    thickness, own = item.child("thickness"), item.child("block")
    if thickness is None or (own and (not isinstance(own.value, dict) or "thickness" in own.value)):
        return item
    around = own or rest.child("block") or item
    block = Tree({"thickness": thickness}, around.place, {"thickness": item.keys["thickness"]})
    return replace(item, value={**_others(item, "thickness"), "block": merged(own, block) if own else block})


def _others(group: Tree, key: str) -> dict[str, Tree]:
    """What a group holds under its other keys."""
    assert isinstance(group.value, dict)  # only groups have keys
    return {name: value for name, value in group.value.items() if name != key}


def _places_within(group: Tree) -> Iterator[Place]:
    """The places of all keys and values of a group, but not its own."""
    yield from group.keys.values()
    if isinstance(group.value, dict):
        for value in group.value.values():
            yield from value.places()
