"""The shelf file as JSON Schema, for editors that complete and check YAML while it is written."""

from __future__ import annotations

from typing import Any

from .shelf_spec import BookEntry, ShelfSpec

__all__ = ["shelf_schema"]


def shelf_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a shelf file as it is written, with its defaults."""
    schema = ShelfSpec.model_json_schema(mode="validation")
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    book = schema["$defs"][BookEntry.__name__]
    anything_of_a_book = dict.fromkeys(book["properties"], True)
    schema["properties"]["defaults"] = {
        "type": "object",
        "description": "keys that all books share; a list of groups is told apart by kind",
        "properties": anything_of_a_book,
        "additionalProperties": False,
    }
    schema["properties"]["printer"] = {"anyOf": [{"type": "string"}, schema["properties"]["printer"]]}
    # What the defaults supply need not stand in the book.
    for model in schema["$defs"].values():
        if model.get("title") not in {"LifeSize", "PageSize", "SpaceEntry"}:
            model.pop("required", None)
    book["required"] = ["title"]
    return schema
