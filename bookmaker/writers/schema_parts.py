"""Parts of a JSON Schema, each with what it says of itself."""

from __future__ import annotations

from typing import Any

__all__ = [
    "Schema",
    "all_of",
    "count",
    "group",
    "listed",
    "number",
    "numbers",
    "of",
    "one",
    "or_null",
    "sides",
    "text",
    "yes",
]

Schema = dict[str, Any]


def group(said: str, keys: Schema, *, optional: Schema | None = None) -> Schema:
    """An object with keys that must be there, and some that may be."""
    properties = {**keys, **(optional or {})}
    required = list(keys)
    return {
        "type": "object",
        "description": said,
        "properties": properties,
        "required": required,
        "additionalProperties": False,
    }


def of(kind: str, said: str) -> Schema:
    """A value of a type."""
    return {"type": kind, "description": said}


def number(said: str) -> Schema:
    """A number."""
    return of("number", said)


def count(said: str) -> Schema:
    """A whole number."""
    return of("integer", said)


def text(said: str) -> Schema:
    """A text."""
    return of("string", said)


def yes(said: str) -> Schema:
    """Yes or no."""
    return of("boolean", said)


def or_null(schema: Schema) -> Schema:
    """The same, or nothing."""
    return {"anyOf": [schema, {"type": "null"}], "description": schema.get("description", "")}


def listed(said: str, items: Schema) -> Schema:
    """A list."""
    return {"type": "array", "description": said, "items": items}


def all_of(said: str, name: str) -> Schema:
    """A list of what has a name."""
    return listed(said, {"$ref": f"#/$defs/{name}"})


def one(name: str, said: str) -> Schema:
    """One of what has a name."""
    return {"$ref": f"#/$defs/{name}", "description": said}


def numbers(said: str, how_many: int) -> Schema:
    """So many numbers."""
    return listed(said, {"type": "number"}) | {"minItems": how_many, "maxItems": how_many}


def sides(said: str, *sides: str) -> Schema:
    """Lengths of some sides, in mm."""
    return group(said, {side: number(f"{side}, in mm") for side in sides})
