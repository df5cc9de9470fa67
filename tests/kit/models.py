"""The groups of keys that a shelf file may have."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any, get_args, get_origin

from pydantic import BaseModel

from bookmaker.shelf.entries import ShelfSpec

__all__ = ["all_models"]


def _models(kind: Any) -> Iterator[type[BaseModel]]:
    """The models that a type is made of."""
    for part in get_args(kind):
        yield from _models(part)
    if get_origin(kind) is None and isinstance(kind, type) and issubclass(kind, BaseModel):
        yield kind


def all_models() -> list[type[BaseModel]]:
    """The shelf and every group of keys that may stand in it."""
    found: dict[type[BaseModel], None] = {ShelfSpec: None}
    waiting: list[type[BaseModel]] = [ShelfSpec]
    while waiting:
        fields = waiting.pop().model_fields.values()
        below = [
            model for field in fields for model in _models(Annotated[field.annotation, *(field.metadata or [None])])
        ]
        new = [model for model in dict.fromkeys(below) if model not in found]
        found |= dict.fromkeys(new)
        waiting += new
    return list(found)
