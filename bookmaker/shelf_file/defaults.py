"""Defaults for all books, laid under what each book says for itself.

``defaults`` holds any key of a book. Groups are merged key by key, and the book's own word wins. A group
with a kind lends its keys only to books of that kind; a list of groups lends the one whose kind matches,
or the first to books that name none. Where a book has a list of groups, the parts of its inside, each of them
takes the defaults of its own kind.
"""

from __future__ import annotations

from collections.abc import Iterable

from .yaml_tree import Tree

__all__ = ["TELLING_KEYS", "merged", "with_defaults"]

TELLING_KEYS = ("kind", "style")
"""Keys that say which sort of thing a group describes."""

SIZES = ("size", "life_size")
"""Two ways to say one thing: a book that gives one does not inherit the other."""


def with_defaults(tree: Tree) -> Tree:
    """The shelf with its defaults laid under every book and taken out.

    Anything that is not shaped as it should be is left for the check of the whole shelf to refuse.
    """
    if not isinstance(tree.value, dict):
        return tree
    defaults, books = tree.value.get("defaults"), tree.value.get("books")
    if defaults is None or not isinstance(defaults.value, dict):
        return tree
    rest = {key: value for key, value in tree.value.items() if key != "defaults"}
    if books is not None and isinstance(books.value, list):
        rest["books"] = Tree([merged(defaults, book) for book in books.value], books.place)
    return Tree(rest, tree.place, tree.keys)


def merged(under: Tree, over: Tree) -> Tree:
    """`over` with the keys of `under` it does not give itself; in a list of groups, each group so."""
    if isinstance(over.value, list):
        return Tree([merged(under, group) for group in over.value], over.place, over.keys)
    if isinstance(under.value, list) and isinstance(over.value, dict):
        under = _of_its_kind(under.value, over) or Tree({}, under.place)
    if not isinstance(under.value, dict) or not isinstance(over.value, dict) or not _same_kind(under, over):
        return over
    inherited = {key: value for key, value in under.value.items() if not _said_otherwise(key, over.value)}
    values = {key: _first(value) for key, value in inherited.items() if key not in over.value}
    for key, value in over.value.items():
        values[key] = merged(under.value[key], value) if key in under.value else value
    return Tree(values, over.place, {**under.keys, **over.keys})


def _first(default: Tree) -> Tree:
    """Of a list of groups, the first is the default of books that say nothing."""
    if isinstance(default.value, list) and default.value and isinstance(default.value[0].value, dict):
        return default.value[0]
    return default


def _said_otherwise(key: str, given: Iterable[str]) -> bool:
    return key in SIZES and any(other in given for other in SIZES if other != key)


def _kind(tree: Tree) -> str | None:
    if isinstance(tree.value, dict):
        for key in TELLING_KEYS:
            if key in tree.value and isinstance(tree.value[key].value, str):
                return str(tree.value[key].value)
    return None


def _same_kind(under: Tree, over: Tree) -> bool:
    wanted = _kind(over)
    return wanted is None or _kind(under) in (None, wanted)


def _of_its_kind(groups: list[Tree], over: Tree) -> Tree | None:
    wanted = _kind(over)
    if wanted is None:
        return groups[0] if groups else None
    return next((group for group in groups if _kind(group) == wanted), None)
