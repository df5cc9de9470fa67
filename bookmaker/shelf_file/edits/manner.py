"""How new values are written: in which order keys stand, which values are words, and how far lines are set in."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from ...ground.problems import FieldPath
from ..yaml_nodes import GroupNode, ListNode
from .written import Written, nodes_within

__all__ = ["AS_IT_COMES", "Indents", "Manner", "indents_of"]


@dataclass(frozen=True, slots=True)
class Manner:
    """What the models know of a file: the keys of the group at a path, in their order, and which values are words."""

    keys: Callable[[FieldPath], Sequence[str]]
    is_words: Callable[[FieldPath], bool]


AS_IT_COMES = Manner(lambda _: (), lambda _: False)
"""Without models: a new key stands last, and a number is left without quotes."""


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
