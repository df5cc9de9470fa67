"""Where in a shelf file the checker of the spec found fault, and what the models know of that spot."""

from __future__ import annotations

import types
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel, Tag

from ..ground.problems import FieldPath

__all__ = ["TELLING", "Spot", "models_in", "spot_of", "tags_of", "told_apart_by"]

TELLING = ("kind", "style", "pattern")
"""Keys that say which of several sorts a group is."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a failure is: its field as the file has it, and what the models know of it.

    `owner` is the model that holds the last key, if a model does, and `kind` the type of what belongs there;
    `others` are the models that its group might have been as well, told apart by kind or style. `around` is the
    spot of the group.
    """

    field: FieldPath
    owner: type[BaseModel] | None
    others: Sequence[type[BaseModel]]
    kind: Any
    around: Spot | None = None

    @property
    def choices(self) -> list[type[BaseModel]]:
        """The models that may stand here."""
        return models_in(self.kind)


def spot_of(loc: FieldPath, model: type[BaseModel]) -> Spot:
    """Follow the checker's steps through the models."""
    return _below(_group(loc[:-1], model), loc[-1]) if loc else Spot((), None, (), model)


@lru_cache(maxsize=256)
def _group(loc: FieldPath, model: type[BaseModel]) -> Spot:
    """The spot of a group, which is the same for all that is wrong in it."""
    return spot_of(loc, model)


def _below(spot: Spot, part: str | int) -> Spot:
    """One step on from a spot."""
    chosen = _marked(spot.kind, part) or _tagged(spot.kind, part)
    if chosen is not None:
        return replace(spot, kind=chosen, others=[other for other in spot.choices if other is not chosen])
    owner, kind = _step(spot.kind, part)
    others = spot.others if owner is spot.kind else ()
    return Spot((*spot.field, part), owner, others, kind, around=spot)


def _step(kind: Any, part: str | int) -> tuple[type[BaseModel] | None, Any]:
    """The model that knows the key, if one does, and the type of what stands under it."""
    for option in _options(kind):
        if isinstance(option, type) and issubclass(option, BaseModel):
            known = option.model_fields.get(str(part))
            return option, known.annotation if known else None
        if get_origin(option) is dict:
            return None, get_args(option)[1]
        if get_origin(option) is tuple:
            return None, get_args(option)[0]
    return None, None


def _options(kind: Any) -> tuple[Any, ...]:
    """The members of a union, and of the unions in it, or the one type there is."""
    while hasattr(kind, "__metadata__"):
        kind = kind.__origin__
    if get_origin(kind) not in (Union, types.UnionType):
        return (kind,)
    return tuple(option for member in get_args(kind) for option in _options(member))


def _marked(kind: Any, part: Any) -> Any:
    """The member of a union, however deep, that is marked with this word."""
    if any(isinstance(mark, Tag) and mark.tag == part for mark in getattr(kind, "__metadata__", ())):
        return kind
    while hasattr(kind, "__metadata__"):
        kind = kind.__origin__
    if get_origin(kind) not in (Union, types.UnionType):
        return None
    return next((found for member in get_args(kind) if (found := _marked(member, part)) is not None), None)


def _tagged(kind: Any, part: str | int) -> Any:
    """The member of a union of models that goes by this tag."""
    options = models_in(kind)
    return next((option for option in options if len(options) > 1 and part in tags_of(option)), None)


def models_in(kind: Any) -> list[type[BaseModel]]:
    """The models that may stand where a type is asked for."""
    return [option for option in _options(kind) if isinstance(option, type) and issubclass(option, BaseModel)]


def told_apart_by(models: Sequence[type[BaseModel]]) -> str:
    """The key that says which sort of group it is."""
    return next((key for key in TELLING for model in models if key in model.model_fields), TELLING[0])


def tags_of(model: type[BaseModel]) -> tuple[str, ...]:
    """The words by which a sort of group goes."""
    fields = (model.model_fields.get(key) for key in TELLING)
    return tuple(
        tag
        for field in fields
        if field and get_origin(field.annotation) is Literal
        for tag in get_args(field.annotation)
    )
