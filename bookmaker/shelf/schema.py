"""The shelf file as JSON Schema, for editors that complete and check YAML while it is written."""

from __future__ import annotations

from typing import Any

from ..paper.stock_entry import StockEntry
from ..things.book.entry import BookEntry
from ..things.families import FAMILIES
from .entries import shelf_model

__all__ = ["shelf_schema"]


def shelf_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a shelf file as it is written, with its defaults."""
    schema = shelf_model(FAMILIES).model_json_schema(mode="validation")
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    book = schema["$defs"][BookEntry.__name__]
    row = book["properties"].pop("row")
    anything_of_a_book = dict.fromkeys(book["properties"], True)
    schema["properties"]["defaults"] = {
        "type": "object",
        "description": "keys that all books share; a list of groups is told apart by kind",
        "properties": anything_of_a_book,
        "additionalProperties": False,
    }
    schema["required"].remove("books")  # where things are listed
    schema["properties"]["printer"] = {"anyOf": [{"type": "string"}, schema["properties"]["printer"]]}
    schema["$defs"][StockEntry.__name__]["properties"]["printer"]["anyOf"].insert(0, {"type": "string"})
    # What the defaults supply need not stand in the book.
    for model in schema["$defs"].values():
        if model.get("title") not in {"LifeSize", "PageSize", "SpaceEntry"}:
            model.pop("required", None)
    # A group that leaves its kind or style to the defaults, or to the usual one, may be of several kinds at once.
    for field in book["properties"].values():
        if "oneOf" in field:
            field["anyOf"] = field.pop("oneOf")
            field.pop("discriminator", None)
    book["required"] = ["title"]
    books = schema["properties"]["books"]
    listed = {"type": "string", "pattern": "^from .+"}
    books["items"] = {"anyOf": [books["items"], _row_of_books(row["description"], book["properties"]), listed]}
    schema["properties"]["books"] = {"description": books.pop("description"), "anyOf": [books, listed]}
    return schema


def _row_of_books(description: str, of_a_book: dict[str, Any]) -> dict[str, Any]:
    """An entry that stands for several books: the keys of a book, and a row of titles or further keys."""
    thickness = {"type": "string", "description": "thickness of the block", "examples": ["4 mm", "fill"]}
    item = {
        "type": "object",
        "properties": {**of_a_book, "thickness": thickness},
        "additionalProperties": False,
    }
    row = {
        "type": "array",
        "minItems": 1,
        "description": description,
        "items": {"anyOf": [{"type": "string"}, item]},
    }
    return {
        "type": "object",
        "properties": {**of_a_book, "row": row},
        "additionalProperties": False,
        "required": ["row"],
    }
