"""The keys of a model of the shelf file, and of the groups in it, as paths with dots."""

from __future__ import annotations

import types
from collections.abc import Iterator
from typing import Any, Union, get_args, get_origin

from pydantic import BaseModel

from ...ground.problems import FieldPath

__all__ = ["dotted_keys", "kinds_at"]


def dotted_keys(model: type[BaseModel]) -> dict[str, bool]:
    """Every key by its path, and whether a group of keys may stand under it; of a union, the keys of all its kinds.

    >>> from ...paper.printer_entry import PrinterEntry
    >>> keys = dotted_keys(PrinterEntry)
    >>> keys["resolution"], keys["margins"], keys["margins.left"]
    (False, True, False)
    """
    found: dict[str, bool] = {}
    for path, is_group in _keys(model):
        found[path] = found.get(path, False) or is_group
    return found


def kinds_at(model: type[BaseModel], path: FieldPath) -> list[Any]:
    """What may stand at a path below a model, of whatever kind the groups on the way are.

    >>> from ...paper.printer_entry import PrinterEntry
    >>> kinds_at(PrinterEntry, ("margins", "left")), kinds_at(PrinterEntry, ("margins", "nothing"))
    ([<class 'float'>], [])
    """
    kinds: list[Any] = [model]
    for part in path:
        kinds = [option for kind in kinds for below in _below(kind, part) for option in _options(below)]
    return list({id(kind): kind for kind in kinds}.values())


def _below(kind: Any, part: str | int) -> Iterator[Any]:
    """What may stand under a key of a group, or as an item of a list."""
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        if str(part) in kind.model_fields:
            yield kind.model_fields[str(part)].annotation
    elif get_origin(kind) is dict:
        yield get_args(kind)[1]
    elif get_origin(kind) in (tuple, list) and isinstance(part, int):
        yield get_args(kind)[0]


def _options(kind: Any) -> Iterator[Any]:
    """The members of a union, and of the unions in it, or the one type there is."""
    while hasattr(kind, "__metadata__"):
        kind = kind.__origin__
    if get_origin(kind) in (Union, types.UnionType):
        for option in get_args(kind):
            yield from _options(option)
    else:
        yield kind


def _keys(model: type[BaseModel]) -> Iterator[tuple[str, bool]]:
    for key, field in model.model_fields.items():
        groups = list(_models(field.annotation))
        yield key, bool(groups)
        for group in groups:
            yield from ((f"{key}.{path}", is_group) for path, is_group in _keys(group))


def _models(kind: Any) -> Iterator[type[BaseModel]]:
    """The models that a field may hold; not those of a list, which has no keys of its own."""
    for option in _options(kind):
        if isinstance(option, type) and issubclass(option, BaseModel):
            yield option
