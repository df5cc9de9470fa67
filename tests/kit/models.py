"""The groups of keys that a shelf file may have."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from bookmaker.shelf.entries import shelf_model
from bookmaker.things.families import all_families

__all__ = ["all_models", "models_of"]


def _models(kind: Any) -> Iterator[type[BaseModel]]:
    """The models that a type is made of."""
    for part in get_args(kind):
        yield from _models(part)
    if get_origin(kind) is None and isinstance(kind, type) and issubclass(kind, BaseModel):
        yield kind


def models_of(field: FieldInfo) -> list[type[BaseModel]]:
    """The groups of keys that a key may hold."""
    return list(dict.fromkeys(_models(Annotated[field.annotation, *(field.metadata or [None])])))


def all_models() -> list[type[BaseModel]]:
    """The shelf and every group of keys that may stand in it."""
    whole = shelf_model(all_families())
    found: dict[type[BaseModel], None] = {whole: None}
    waiting: list[type[BaseModel]] = [whole]
    while waiting:
        fields = waiting.pop().model_fields.values()
        below = [model for field in fields for model in models_of(field)]
        new = [model for model in dict.fromkeys(below) if model not in found]
        found |= dict.fromkeys(new)
        waiting += new
    return list(found)
