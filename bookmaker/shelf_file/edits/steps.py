"""One edit parted into smaller ones: a group or a list that changes in part is not written anew."""

from __future__ import annotations

from collections.abc import Iterator

from ...ground.problems import FieldPath
from ..yaml_tree import Plain
from .edit import Edit, Insert, Remove, SetValue

__all__ = ["steps"]


def steps(path: FieldPath, old: Plain, new: Plain) -> Iterator[Edit]:
    """The edits, one after the other, that make one value of another.

    >>> list(steps((), {"title": "Fog", "pages": "8"}, {"title": "Fog", "pages": "9"}))
    [SetValue(path=('pages',), value='9')]
    """
    if isinstance(old, dict) and isinstance(new, dict) and old.keys() & new.keys():
        for key, value in new.items():
            if key in old:
                yield from steps((*path, key), old[key], value)
            else:
                yield SetValue((*path, key), value)
        yield from (Remove((*path, key)) for key in old if key not in new)
    elif isinstance(old, list) and isinstance(new, list) and old and new:
        yield from _of_lists(path, old, new)
    elif old != new:
        yield SetValue(path, new)


def _of_lists(path: FieldPath, old: list[Plain], new: list[Plain]) -> Iterator[Edit]:
    """The same for lists: what is alike at their beginnings and ends stays."""
    least = min(len(old), len(new))
    first = next((at for at in range(least) if old[at] != new[at]), least)
    last = next((at for at in range(least - first) if old[-1 - at] != new[-1 - at]), least - first)
    for at in range(first, least - last):
        yield from steps((*path, at), old[at], new[at])
    yield from (Insert((*path, at), new[at]) for at in range(least - last, len(new) - last))
    yield from (Remove((*path, at)) for at in reversed(range(least - last, len(old) - last)))
