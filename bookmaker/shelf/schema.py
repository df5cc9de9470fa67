"""The shelf file as JSON Schema, for editors that complete and check YAML while it is written."""

from __future__ import annotations

from typing import Any

from ..paper.stock_entry import StockEntry
from ..things.book.entry import BookEntry
from ..things.families import all_families
from .entries import shelf_model
from .schema_forms import as_written

__all__ = ["shelf_schema"]


def shelf_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a shelf file as it is written, with its defaults."""
    schema: dict[str, Any] = as_written(shelf_model(all_families()).model_json_schema(mode="validation"))
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    book = schema["$defs"][BookEntry.__name__]
    row, invented = book["properties"].pop("row"), book["properties"].pop("invented")
    anything_of_a_book = dict.fromkeys(book["properties"], True)
    schema["properties"]["defaults"] = {
        "type": "object",
        "description": "keys that all books share; a list of groups is told apart by kind",
        "properties": anything_of_a_book,
        "additionalProperties": False,
    }
    schema["required"].remove("books")  # where things are listed
    schema["properties"]["printer"] = _named_or(schema["properties"]["printer"], "the printer, or its profile")
    of_a_stock = schema["$defs"][StockEntry.__name__]["properties"]
    of_a_stock["printer"] = _named_or(of_a_stock["printer"], of_a_stock["printer"]["description"])
    # What the defaults supply need not stand in the book.
    for model in schema["$defs"].values():
        if model.get("title") not in {"LifeSize", "PageSize", "SpaceEntry"}:
            model.pop("required", None)
    book |= {"title": "a book", "required": ["title"]}
    books = schema["properties"]["books"]
    listed = {"title": "books from a list", "type": "string", "pattern": "^from .+"}
    books["items"] = {"anyOf": [books["items"], _row_of_books(row["description"], book["properties"]),
                                _invented_books(invented, book["properties"]), listed]}  # fmt: skip
    schema["properties"]["books"] = {"description": books.pop("description"), "anyOf": [books, listed]}
    return schema


def _named_or(group: dict[str, Any], description: str) -> dict[str, Any]:
    """A group of keys, or the name of the file that has them."""
    return {"description": description, "anyOf": [{"type": "string"}, {"$ref": group["$ref"]}]}


def _invented_books(invented: dict[str, Any], of_a_book: dict[str, Any]) -> dict[str, Any]:
    """An entry that stands for invented books: the keys of a book, and what is to be invented."""
    return {
        "type": "object",
        "title": "invented books",
        "properties": {**of_a_book, "invented": invented},
        "additionalProperties": False,
        "required": ["invented"],
    }


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
        "items": {"anyOf": [{"type": ["string", "number"]}, item]},
    }
    return {
        "title": "a row of books",
        "type": "object",
        "properties": {**of_a_book, "row": row},
        "additionalProperties": False,
        "required": ["row"],
    }
