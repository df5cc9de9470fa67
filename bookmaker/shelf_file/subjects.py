"""What a message calls the field that it is about: a book by its title, and never by its place in a list."""

from __future__ import annotations

from ..ground.problems import FieldPath, Problem, show_field
from ..ground.quantities import show
from ..ground.visible import is_seen
from .book_list import column_name
from .volumes import is_volume
from .yaml_tree import Tree

__all__ = ["named_in"]

LISTS = {"books": "book", "things": "thing"}
"""Lists whose entries have names of their own, and what an entry without one is called, with its number."""


def named_in(problem: Problem, tree: Tree) -> Problem:
    """A problem that names what it is about as that is called in a shelf, or in the part of one that was read."""
    return problem if problem.subject is None else problem.named(*_names(problem.subject, tree))


def _names(field: FieldPath, tree: Tree) -> tuple[str, str]:
    """What a thing is called in a message, and what its field is; one of a book in a table as its column is.

    `The Long Night` and `block.pages`, `book 3` and `cover`; of no thing, `defaults.block` or `the shelf`.
    """
    if len(field) < 2 or field[0] not in LISTS:
        return "", show_field(field) or "the shelf"
    rest = show_field(field[2:])
    in_a_table = tree.below(field[:2])
    if in_a_table and in_a_table.place.file != tree.place.file:
        rest = column_name(rest)
    return _title(field, tree) or f"{LISTS[str(field[0])]} {int(field[1]) + 1}", rest


def _title(field: FieldPath, tree: Tree) -> str:
    """The title of an entry and its volume, or its id; empty where it has neither."""
    entry = tree.below(field[:2])
    written = {key: _text(entry, key) for key in ("title", "volume", "id")} if entry else {}
    volume = "" if is_volume(tree, field) else written.get("volume", "")
    return f"{written['title']} {volume}".rstrip() if written.get("title") else written.get("id", "")


def _text(entry: Tree, key: str) -> str:
    """What is written under a key, if it is a text that shows."""
    value = entry.child(key) if isinstance(entry.value, dict) else None
    return show(value.value) if value and isinstance(value.value, str) and is_seen(value.value) else ""
