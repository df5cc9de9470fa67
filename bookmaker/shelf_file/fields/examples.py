"""The least that may be written for a field of the shelf file, as its type describes itself for JSON Schema."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from pydantic import BaseModel, TypeAdapter

__all__ = ["example_in", "example_of"]

Schema = Mapping[str, Any]


def example_of(kind: Any) -> Any:
    """A value of a type: text, or lists and groups of text.

    Groups hold the keys that must be given, and those that say of which kind they are.
    """
    whole = _schema(kind)
    return _example(whole, whole.get("$defs", {}))


def example_in(model: type[BaseModel], key: str) -> Any:
    """A value for a key of a group."""
    whole = _schema(model)
    return _example(whole["properties"][key], whole.get("$defs", {}))


@lru_cache(maxsize=256)
def _schema(kind: Any) -> Schema:
    return TypeAdapter(kind).json_schema()


def _example(schema: Schema, known: Schema) -> Any:
    match schema:
        case {"$ref": name}:
            value = _example(known[name.rpartition("/")[2]], known)
        case {"const": only} | {"enum": [only, *_]} | {"examples": [only, *_]}:
            value = only
        case {"oneOf": [first, *_]} | {"anyOf": [first, *_]}:
            value = _example(first, known)
        case {"properties": keys}:
            must = schema.get("required", ())
            value = {key: _example(part, known) for key, part in keys.items() if key in must or "const" in part}
        case {"type": "array", "items": item}:
            value = [_example(item, known)]
        case _:
            value = _plain_example(schema)
    return value


def _plain_example(schema: Schema) -> Any:
    match schema:
        case {"minimum": least}:
            return str(least)
        case {"type": "boolean"}:
            return "no"
        case {"type": "object"}:
            return {}
        case {"pattern": _}:  # the only pattern is that of colours
            return "#000000"
    return "x"
