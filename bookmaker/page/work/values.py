"""Values set and taken out of what is written of a book, key by key, so that nothing around them changes."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from ...ground.problems import FieldPath
from ...shelf.entries import ShelfSpec
from ...shelf_file.edits.edit import Edit, Remove, SetValue
from ...shelf_file.reading import ShelfFile
from ...shelf_file.source_text import TABLES
from ...shelf_file.yaml_tree import Plain

__all__ = ["value_set", "without_unknown"]


def value_set(shelf: ShelfFile[ShelfSpec], path: FieldPath, value: Plain, *, lent: bool = True) -> Iterator[Edit]:
    """A value set, or, if it is None, taken out where the book itself has one; unless `lent`, defaults do not count."""
    tree = shelf.tree.below(path)
    if value is not None:
        if tree is None or tree.value != value or (not lent and tree.place in shelf.lent):
            yield SetValue(path, value)
    elif tree is not None and tree.place not in shelf.lent:
        in_table = tree.place.file.casefold().endswith(TABLES)
        yield SetValue(path, None) if in_table else Remove(path, whole_groups=True)


def without_unknown(shelf: ShelfFile[ShelfSpec], group: FieldPath, known: Collection[str]) -> Iterator[Edit]:
    """The keys of a group taken out that the book itself has, and that are not among those known."""
    tree = shelf.tree.below(group)
    for key, value in tree.value.items() if tree and isinstance(tree.value, dict) else ():
        if key not in known and value.place not in shelf.lent:
            yield from value_set(shelf, (*group, key), None)
