"""The form of a thing: the keys that it takes, what is written there, and what may be chosen.

All of it comes from the models of the shelf file, so that the page knows no kind of book.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Any

from pydantic import BaseModel

from ...ground.problems import FieldPath
from ...shelf.entries import ShelfSpec
from ...shelf_file.fields.entry import Entry, named_by
from ...shelf_file.fields.keys import kinds_at
from ...shelf_file.yaml_tree import Tree
from ...writers.manual.places import key_place
from ..replies import Value

__all__ = ["KIND_KEYS", "form_of", "is_one_value", "key_told", "models_told_apart"]

WITHOUT = ("row", "volumes", "inside", "invented", "measured_rows", "id")
"""Keys that no form has here: what is written with them is several books, or a list."""

KIND_KEYS = ("kind", "style")
"""Keys that say which other keys there are."""


def form_of(entry: Entry, tree: Tree, field: FieldPath, spec: ShelfSpec) -> list[Value]:
    """The groups of a form, the keys of the thing itself first; `tree` is the shelf as it was read."""
    own: list[Value] = []
    groups: list[Value] = []
    for key in type(entry).model_fields:
        below = getattr(entry, key)
        if key in WITHOUT:
            continue
        if isinstance(below, Entry):
            groups.append(_group(key, below, tree, field, models_told_apart(type(entry), key), spec))
        elif below is None and (model := _group_left_out(type(entry), key)):
            groups.append({"key": key, "fields": [*_told_of(model, tree, (*field, key), spec).values()]})
        elif is_one_value(type(entry), key, tree.below((*field, key))):
            own.append(key_told(key, tree, (*field, key), spec, type(entry)))
    return [{"key": "", "fields": own}, *groups]


def is_one_value(group: type[Entry], key: str, written: Tree | None) -> bool:
    """Whether a key of a group takes a value that a field of a form can hold, and has no group or list now."""
    groups = any(isinstance(one, type) and issubclass(one, BaseModel) for one in kinds_at(group, (key,)))
    return not groups and not (written and isinstance(written.value, list | dict))


def _group(
    key: str, entry: Entry, tree: Tree, field: FieldPath, models: Mapping[str, type[Entry]], spec: ShelfSpec
) -> Value:
    """The keys of a group, among them the one that says of which kind it is."""
    place = (*field, key)
    fields = _told_of(type(entry), tree, place, spec)
    for name in KIND_KEYS:
        told = fields.pop(name, None)
        if told and len(models) > 1:
            others = {kind: [*_told_of(model, tree, place, spec).values()] for kind, model in models.items()}
            told |= {"choices": list(models), "default": str(getattr(entry, name)), "description": "which kind it is"}
            fields = {name: told | {"kinds": others}, **fields}
    return {"key": key, "fields": [*fields.values()]}


def _told_of(group: type[Entry], tree: Tree, place: FieldPath, spec: ShelfSpec) -> dict[str, Value]:
    """The keys of a group that take one value, by their names."""
    return {
        name: key_told(name, tree, (*place, name), spec, group)
        for name in group.model_fields
        if is_one_value(group, name, tree.below((*place, name)))
    }


def _group_left_out(holder: type[Entry], key: str) -> type[Entry] | None:
    """The one group of keys that may stand under a key, such as a jacket, if there is but one."""
    models = [kind for kind in kinds_at(holder, (key,)) if isinstance(kind, type) and issubclass(kind, Entry)]
    return models[0] if len(models) == 1 else None


@lru_cache
def models_told_apart(holder: type[Entry], key: str) -> Mapping[str, type[Entry]]:
    """The kinds that a group may be of which stands under a key, by the word that says so."""
    found: dict[str, type[Entry]] = {}
    for model in kinds_at(holder, (key,)):
        if isinstance(model, type) and issubclass(model, Entry):
            tells = next((name for name in KIND_KEYS if name in model.model_fields), None)
            if tells:
                found[str(model.model_fields[tells].default)] = model
    return found


@lru_cache
def _schemas(group: type[Entry]) -> Mapping[str, Mapping[str, Any]]:
    """What the schema tells of each key of a group: long to make, and always the same."""
    told: Mapping[str, Mapping[str, Any]] = group.model_json_schema()["properties"]
    return told


def key_told(key: str, tree: Tree, field: FieldPath, spec: ShelfSpec, group: type[Entry]) -> Value:
    """One key of a group: what it is, what is written there, what may be, and where the manual tells of it."""
    written, schema = tree.below(field), _schemas(group)[key]
    options = [schema, *schema.get("anyOf", ())]
    choices = next((option["enum"] for option in options if "enum" in option), None)
    if (names := named_by(group, key)) and not any(option.get("type") == "array" for option in options):
        named: Mapping[str, Iterable[str]] = {"space": spec.spaces, "stock": spec.stocks, "surface": spec.surfaces}
        choices = [*named[names]]
    elif any(option.get("type") == "boolean" for option in options):
        choices = ["yes", "no"]
    return {
        "key": ".".join(map(str, field[2:])),
        "description": schema.get("description", ""),
        "written": _text(written),
        "choices": [str(choice) for choice in choices] if choices else None,
        "colour": any(str(option.get("pattern", "")).startswith("^#") for option in options),
        "examples": [str(example) for option in options for example in option.get("examples", ())],
        "default": _default(schema.get("default")),
        "manual": key_place(key, group.model_fields),
    }


def _text(written: Tree | None) -> str | None:
    if written is None or isinstance(written.value, list | dict):
        return None
    return written.value


def _default(value: object) -> str:
    """What a key is if it is left out, as far as a few letters say that."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value) if isinstance(value, str | int) else ""
