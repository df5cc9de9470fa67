"""What can be asked of a text: a value set, an entry removed, inserted, moved, copied, renamed, or all put in order.

A path leads to a value as the text has it: keys of groups, numbers of lists, such as ``("books", 3, "block",
"pages")``. An entry is an item of a list, or a key with its value.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from ...ground.problems import FieldPath
from ..yaml_tree import Plain

__all__ = ["Copy", "Edit", "Insert", "Move", "Remove", "Rename", "Reorder", "SetValue"]


@dataclass(frozen=True, slots=True)
class SetValue:
    """A value under a key, or in the place of an item; groups that are missing on the way are made.

    `of_set`: of a volume that is written only as one of its set, for the whole set.
    """

    path: FieldPath
    value: Plain
    of_set: bool = field(default=False, repr=False)


@dataclass(frozen=True, slots=True)
class Remove:
    """An entry taken out; `whole_groups`: with the groups around it that would be left without a key."""

    path: FieldPath
    whole_groups: bool = False


@dataclass(frozen=True, slots=True)
class Insert:
    """A new item of a list; the path says where it stands afterwards."""

    path: FieldPath
    value: Plain


@dataclass(frozen=True, slots=True)
class Move:
    """An entry, with its notes, put elsewhere; `to` is where it stands afterwards.

    A key keeps its name: `to` is then the path of a group, and which of its keys it becomes, from 0.
    """

    path: FieldPath
    to: FieldPath


@dataclass(frozen=True, slots=True)
class Copy:
    """An item of a list written a second time, without the notes above it; `to` is where the copy stands."""

    path: FieldPath
    to: FieldPath


@dataclass(frozen=True, slots=True)
class Rename:
    """Another name for a key."""

    path: FieldPath
    key: str


@dataclass(frozen=True, slots=True)
class Reorder:
    """All items of a list in another order, each with its notes: `order` gives their numbers as they are before."""

    path: FieldPath
    order: tuple[int, ...]


Edit = SetValue | Remove | Insert | Move | Copy | Rename | Reorder
