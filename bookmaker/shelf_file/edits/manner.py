"""How new values are written: in which order keys stand, which values are words, and how far lines are set in."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from pydantic import BaseModel

from ...ground.problems import FieldPath
from ..defaults import TELLING_KEYS
from ..fields.keys import kinds_at
from ..yaml_nodes import GroupNode, ListNode
from .written import Written, nodes_within

__all__ = ["AS_IT_COMES", "Indents", "Manner", "indents_of", "manner_of"]


@dataclass(frozen=True, slots=True)
class Manner:
    """What the models know of a file: the keys of the group at a path, in their order, and which values are words."""

    keys: Callable[[FieldPath], Sequence[str]]
    is_words: Callable[[FieldPath], bool]


AS_IT_COMES = Manner(lambda _: (), lambda _: False)
"""Without models: a new key stands last, and a number is left without quotes."""


def manner_of(shelf: type[BaseModel], listed: type[BaseModel]) -> Manner:
    """That of a shelf file, by the models of the whole and of a listed entry.

    Defaults are written as a book is, and so is an item of a row.
    """

    def kinds(path: FieldPath) -> list[object]:
        match path:
            case ("defaults", *rest) | ("books", int(), "row", int(), *rest) | ("books", int(), *rest):
                return kinds_at(listed, tuple(rest))
        return kinds_at(shelf, path)

    def keys(path: FieldPath) -> Sequence[str]:
        models = (kind for kind in kinds(path) if isinstance(kind, type) and issubclass(kind, BaseModel))
        known = dict.fromkeys(key for model in models for key in model.model_fields)
        return [*(key for key in TELLING_KEYS if key in known), *(key for key in known if key not in TELLING_KEYS)]

    # an item of a row may be a title alone
    return Manner(keys, lambda path: str in kinds(path) or (path[2:3] == ("row",) and len(path) == 4))


@dataclass(frozen=True, slots=True)
class Indents:
    """By how many columns a group stands to the right of its key, a list of its key, and an item of its dash."""

    group: int = 2
    listing: int = 2
    item: int = 2


def indents_of(written: Written) -> Indents:
    """Those that a text has, each as it is found first."""
    found: dict[str, int] = {}
    for node in nodes_within(written.root):
        if isinstance(node, ListNode) and not node.flow and node.items:
            found.setdefault("item", written.column(node.items[0].start) - written.column(written.opening(node)))
        if isinstance(node, GroupNode) and not node.flow and node.entries:
            column = written.column(node.entries[0][0].start)
            for _, value in node.entries:
                if isinstance(value, GroupNode | ListNode) and not value.flow:
                    name = "group" if isinstance(value, GroupNode) else "listing"
                    found.setdefault(name, written.column(written.opening(value)) - column)
        if len(found) == 3:
            break
    item = found.get("item", 2)
    return Indents(max(found.get("group", 2), 1), max(found.get("listing", 2), 0), item if item > 1 else 2)
