"""What an edit makes of plain values: what a text has to read like once it was edited."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterator

from ...ground.problems import FieldPath
from ..yaml_tree import HIDDEN, Plain
from .edit import Edit, Insert, Move, Remove, Rename, Reorder, SetValue
from .refusal import absent, refused, refused_of

__all__ = ["outcome", "sole_around", "value_at"]

VISIBLE = "write visible letters only"

NAMED_ANEW = "choose another name"


def outcome(plain: Plain, edit: Edit) -> Plain:
    """The values after an edit; those given stay as they are.

    >>> outcome({"books": ["Salt", "Fog"]}, Move(("books", 1), ("books", 0)))
    {'books': ['Fog', 'Salt']}

    Raises:
        EditRefused: there is nothing at the path, or what is asked for cannot stand there.
    """
    _refuse_hidden(edit)
    match edit:
        case SetValue(path, value):
            return _with_value(plain, path, value)
        case Remove(path, whole_groups):
            return _without(plain, sole_around(plain, path) if whole_groups else path)
        case Insert(path, value):
            return _with_item(plain, path, value)
        case Rename(path, key):
            value_at(plain, path)
            return _changed(plain, path[:-1], lambda around: _renamed(around, path, key))
        case Reorder(path, order):
            return _changed(plain, path, lambda items: _in_order(items, path, order))
        case _:
            return _moved(plain, edit) if isinstance(edit, Move) else _copied(plain, edit.path, edit.to)


def _refuse_hidden(edit: Edit) -> None:
    """No file holds signs that would command a terminal, or halves of letters."""
    new = edit.value if isinstance(edit, SetValue | Insert) else edit.key if isinstance(edit, Rename) else None
    names: list[Plain] = [part for part in edit.path if isinstance(part, str)]
    for text in _texts([*names, new]):
        hidden = next((sign for sign in text if unicodedata.category(sign) in HIDDEN and sign not in "\n\t"), "")
        if hidden:
            raise refused(f"the text holds the control character U+{ord(hidden):04X}", VISIBLE, edit.path)


def _texts(value: Plain) -> Iterator[str]:
    """Every text in a value, keys too."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        yield from value
        yield from _texts(list(value.values()))
    else:
        for item in value or ():
            yield from _texts(item)


def _moved(plain: Plain, edit: Move) -> Plain:
    value, name = value_at(plain, edit.path), edit.path[-1]
    rest = _without(plain, edit.path)
    return _with_item(rest, edit.to, value) if isinstance(name, int) else _with_key(rest, edit.to, name, value)


def value_at(plain: Plain, path: FieldPath) -> Plain:
    """The value at a path.

    Raises:
        EditRefused: there is none.
    """
    for number, part in enumerate(path, start=1):
        in_group = isinstance(plain, dict) and part in plain
        in_list = isinstance(plain, list) and isinstance(part, int) and 0 <= part < len(plain)
        if not in_group and not in_list:
            raise absent(path[:number])
        plain = plain[part]  # type: ignore[index]  # it was found there
    return plain


def sole_around(plain: Plain, path: FieldPath) -> FieldPath:
    """The outermost key that holds nothing but what is at a path.

    >>> sole_around({"cover": {"turn_in": "5 mm"}, "title": "Fog"}, ("cover", "turn_in"))
    ('cover',)
    """
    value_at(plain, path)
    while len(path) > 1 and isinstance(path[-1], str) and isinstance(path[-2], str):
        around = value_at(plain, path[:-1])
        if not isinstance(around, dict) or len(around) > 1:
            break
        path = path[:-1]
    return path


def _changed(plain: Plain, path: FieldPath, change: Callable[[Plain], Plain]) -> Plain:
    """The values with the one at a path changed."""
    value = change(value_at(plain, path))
    for length in range(len(path) - 1, -1, -1):
        value = _put(value_at(plain, path[:length]), path[length], value)
    return value


def _put(around: Plain, part: str | int, value: Plain) -> Plain:
    if isinstance(around, list):
        assert isinstance(part, int)  # the path was walked
        return [*around[:part], value, *around[part + 1 :]]
    assert isinstance(around, dict)
    return {**around, str(part): value}


def _with_value(plain: Plain, path: FieldPath, value: Plain) -> Plain:
    """A value set; from the first group on that lacks its key, all groups are new."""
    for length, part in enumerate(path):
        around = value_at(plain, path[:length])
        lacking = around is None or (isinstance(around, dict) and part not in around)
        if lacking and all(isinstance(key, str) for key in path[length:]):
            for key in reversed(path[length + 1 :]):
                value = {str(key): value}
            return _changed(plain, path[:length], lambda group: {**_keys(group), str(part): value})  # noqa: B023
    return _changed(plain, path, lambda _: value)


def _keys(group: Plain) -> dict[str, Plain]:
    return group if isinstance(group, dict) else {}


def _without(plain: Plain, path: FieldPath) -> Plain:
    value_at(plain, path)
    if not path:
        raise refused("the whole file cannot be removed", "remove what is in it")
    last = path[-1]

    def change(around: Plain) -> Plain:
        if isinstance(around, list):
            return [item for number, item in enumerate(around) if number != last]
        return {key: value for key, value in _keys(around).items() if key != last}

    return _changed(plain, path[:-1], change)


def _with_item(plain: Plain, path: FieldPath, value: Plain) -> Plain:
    """A list with one item more."""

    def change(around: Plain) -> Plain:
        items = [] if around is None else around
        at = _position(path, len(items) if isinstance(items, list) else -1)
        assert isinstance(items, list)  # others have no positions
        return [*items[:at], value, *items[at:]]

    return _changed(plain, path[:-1], change)


def _with_key(plain: Plain, path: FieldPath, key: str, value: Plain) -> Plain:
    """A group with one key more, at a position among the others."""

    def change(around: Plain) -> Plain:
        group = {} if around is None else around
        at = _position(path, len(group) if isinstance(group, dict) else -1)
        assert isinstance(group, dict)
        if key in group:
            raise refused_of((*path[:-1], key), "is there already", NAMED_ANEW, path)
        entries = list(group.items())
        return dict([*entries[:at], (key, value), *entries[at:]])

    return _changed(plain, path[:-1], change)


def _position(path: FieldPath, count: int) -> int:
    """The last part of a path, if it is a position among so many entries or behind them."""
    at = path[-1]
    if not isinstance(at, int) or not 0 <= at <= count:
        if count < 0:
            raise refused_of(path[:-1], "has no entries of this sort", "choose a list, or a group of keys", path)
        message = f"has {count} entries, and no place {at!r} among them"
        raise refused_of(path[:-1], message, f"count from 0 to {count}", path)
    return at


def _copied(plain: Plain, path: FieldPath, to: FieldPath) -> Plain:
    value, key = value_at(plain, path), to[-1]
    if isinstance(key, int):
        return _with_item(plain, to, value)
    group = _keys(value_at(plain, to[:-1]))
    beside = list(group).index(str(path[-1])) + 1 if path[:-1] == to[:-1] else len(group)
    return _with_key(plain, (*to[:-1], beside), key, value)


def _renamed(around: Plain, path: FieldPath, key: str) -> Plain:
    if not isinstance(around, dict):
        raise refused_of(path, "is an item of a list and has no name", "name a key")
    if key in around and key != path[-1]:
        raise refused_of((*path[:-1], key), "is there already", NAMED_ANEW, path)
    return {key if name == path[-1] else name: value for name, value in around.items()}


def _in_order(items: Plain, path: FieldPath, order: tuple[int, ...]) -> Plain:
    if not isinstance(items, list) or sorted(order) != list(range(len(items))):
        raise refused_of(path, "cannot be put in this order", "give the number of each of its items once")
    return [items[number] for number in order]
