"""The keys of a model of the shelf file, and of the groups in it, as paths with dots."""

from __future__ import annotations

import types
from collections.abc import Iterator
from typing import Any, Union, get_args, get_origin

from pydantic import BaseModel

__all__ = ["dotted_keys"]


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


def _keys(model: type[BaseModel]) -> Iterator[tuple[str, bool]]:
    for key, field in model.model_fields.items():
        groups = list(_models(field.annotation))
        yield key, bool(groups)
        for group in groups:
            yield from ((f"{key}.{path}", is_group) for path, is_group in _keys(group))


def _models(kind: Any) -> Iterator[type[BaseModel]]:
    """The models that a field may hold; not those of a list, which has no keys of its own."""
    while hasattr(kind, "__metadata__"):
        kind = kind.__origin__
    if get_origin(kind) in (Union, types.UnionType):
        for option in get_args(kind):
            yield from _models(option)
    elif isinstance(kind, type) and issubclass(kind, BaseModel):
        yield kind
