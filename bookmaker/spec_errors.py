"""The words of the spec's checker turned into words for makers."""

from __future__ import annotations

import re
import types
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel, Tag, ValidationError

from .errors import FieldPath, Problem, near_match, show_field
from .quantities import show

__all__ = ["explain"]

GROUP = ("is not a group of keys", "write keys and values under it, or between { and }")
LIST = ("is not a list", "write a list, each item after a -")
SHAPES = {
    "model_type": GROUP,
    "model_attributes_type": GROUP,
    "dict_type": GROUP,
    "tuple_type": LIST,
    "list_type": LIST,
    "string_type": ("is not a text", "write one value on the line"),
}
"""What the checker found instead of the shape it wanted, and what to write."""

OTHER_WORDS = {"date": "year", "publisher": "imprint", "font": "face", "typeface": "face"}
"""Keys that makers know from elsewhere, and what some groups call the same."""

VERBS = ("is", "has", "gives", "holds", "lies", "lists", "says")
"""Messages that begin so go on from the name of the field; others stand after a colon."""


def explain(failure: ValidationError, model: type[BaseModel]) -> Iterator[Problem]:
    """Every failure as a problem; fields follow the file, without the checker's own steps between."""
    for error in failure.errors(include_url=False):
        yield _explained(error["type"], error, model)


def _explained(kind: str, error: Mapping[str, Any], model: type[BaseModel]) -> Problem:
    field, owner, kinds = _walk(error["loc"], model)
    context = error.get("ctx") or {}
    name = show_field(field) or "the shelf"
    match kind:
        case "maker":
            message, remedy, limit = context["message"], context["remedy"], context["limit"]
            joined = f"{name} {message}" if message.split()[0] in VERBS else f"{name}: {message}"
            return Problem(joined, remedy, field=field, limit=limit)
        case "missing":
            around = show_field(field[:-1]) or "the shelf"
            return Problem(f"{around} has no {field[-1]}", f"add {field[-1]}: {_meaning(owner, field)}", field=field)
        case "extra_forbidden":
            return _unknown_key(field, owner, kinds, error["input"])
        case "union_tag_not_found":
            key, tags = context["discriminator"].strip("'"), _tags(error["loc"], model)
            return Problem(f"{name} has no {key}", f"add {key}: with one of {tags}", field=field)
        case "literal_error" | "enum" | "union_tag_invalid":
            return _not_a_choice(name, field, error, context)
    found, remedy = SHAPES.get(kind, (f"cannot be used ({error['msg']})", f"write {_meaning(owner, field)}"))
    if error["input"] is None:
        found = "is empty"
    return Problem(f"{name} {found}", remedy, field=field)


def _unknown_key(
    field: FieldPath, owner: type[BaseModel] | None, kinds: Sequence[type[BaseModel]], written: object
) -> Problem:
    """A key that its group does not know; `kinds` are the others the group might have been, with keys of their own."""
    if field == ("defaults",):  # laid under the books, and still here only if they have another shape
        return Problem("defaults is not a group of keys", GROUP[1], field=field)
    known = [*(owner.model_fields if owner else []), *(["defaults"] if len(field) == 1 else [])]
    other = OTHER_WORDS.get(str(field[-1]), "")
    meant = other if other in known else near_match(str(field[-1]), known)
    remedy = f"did you mean {meant}?" if meant else "known here: " + ", ".join(known)
    others = [tag for kind in kinds if field[-1] in kind.model_fields for tag in _tags_of(kind)]
    if others:
        remedy = f"it belongs to {' or '.join(others)}: name the one you mean, or leave the key out"
    elif written is None and not meant:
        remedy = "give it a value; or, if it is part of a text that holds a comma, put that text in quotes"
    if field[-1] == "<<":
        remedy = "write what books share under defaults"
    around = show_field(field[:-1]) or "the shelf"
    return Problem(f"{around} has an unknown key {show(str(field[-1]))!r}", remedy, field=field, value=str(field[-1]))


def _not_a_choice(name: str, field: FieldPath, error: Mapping[str, Any], context: Mapping[str, Any]) -> Problem:
    written = str(context.get("tag", error["input"]))
    if "tag" in context:
        told_apart_by = context["discriminator"].strip("'")
        field, name = (*field, told_apart_by), f"{name}.{told_apart_by}"
    choices = re.findall(r"'([^']*)'", str(context.get("expected") or context.get("expected_tags")))
    meant = near_match(written, choices)
    remedy = f"did you mean {meant}?" if meant else "write one of " + ", ".join(choices)
    return Problem(f"{name}: {show(written)!r} is not known", remedy, field=field, value=written)


def _meaning(owner: type[BaseModel] | None, field: FieldPath) -> str:
    """What belongs in a field, by its own description."""
    described = owner.model_fields[str(field[-1])] if owner and str(field[-1]) in owner.model_fields else None
    return (described.description if described else None) or "a value"


def _walk(
    loc: FieldPath, model: type[BaseModel]
) -> tuple[FieldPath, type[BaseModel] | None, Sequence[type[BaseModel]]]:
    """Follow the checker's steps through the models.

    Returns the field as the file has it, the model that holds its last key, if a model does, and the other
    models that its group might have been, told apart by kind or style.
    """
    field: FieldPath = ()
    kind: Any = model
    owner: type[BaseModel] | None = None
    others: Sequence[type[BaseModel]] = ()
    for part in loc:
        chosen = _marked(kind, part) or _tagged(kind, part)
        if chosen is not None:
            others = [other for other in _models(kind) if other is not chosen]
            kind = chosen
            continue
        stepped_from = kind
        owner, kind = _step(kind, part)
        others = others if owner is stepped_from else ()
        field = (*field, part)
    return field, owner, others


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
    options = _models(kind)
    return next((option for option in options if len(options) > 1 and part in _tags_of(option)), None)


def _models(kind: Any) -> list[type[BaseModel]]:
    return [option for option in _options(kind) if isinstance(option, type) and issubclass(option, BaseModel)]


def _tags_of(model: type[BaseModel]) -> tuple[str, ...]:
    fields = (model.model_fields.get(key) for key in ("kind", "style"))
    return tuple(
        tag
        for field in fields
        if field and get_origin(field.annotation) is Literal
        for tag in get_args(field.annotation)
    )


def _tags(loc: FieldPath, model: type[BaseModel]) -> str:
    kind: Any = model
    for part in loc:
        kind = _marked(kind, part) or _tagged(kind, part) or _step(kind, part)[1]
    return ", ".join(tag for option in _options(kind) if isinstance(option, type) for tag in _tags_of(option))
