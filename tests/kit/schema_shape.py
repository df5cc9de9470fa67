"""Whether a value is of the shape that a schema tells."""

from __future__ import annotations

import re
from typing import Any

__all__ = ["astray"]

SCALARS = {"string": "", "integer": "^[0-9]+$", "number": "^[0-9.]+$", "boolean": "^(yes|no|true|false)$"}
"""What the text of a scalar looks like, by its type."""


def astray(value: Any, schema: Any, root: dict[str, Any], at: str = "shelf") -> list[str]:
    """Where a value, all of whose scalars are text, is not of the shape of a schema. Draft 2020-12, the parts used."""
    if schema is True:
        return []
    if "$ref" in schema:
        return astray(value, root["$defs"][schema["$ref"].rpartition("/")[2]], root, at)
    for choice in ("anyOf", "oneOf"):
        if choice in schema:
            tried = [astray(value, option, root, at) for option in schema[choice]]
            return [] if [] in tried else [f"{at}: no choice suits", *min(tried, key=len)]
    if "enum" in schema or "const" in schema:
        known = schema.get("enum", [schema.get("const")])
        return [] if value in known else [f"{at}: {value} is none of {known}"]
    match schema.get("type"):
        case "object":
            wrong = _astray_in_group(value, schema, root, at)
        case "array" if isinstance(value, list):
            wrong = [wrong for item in value for wrong in astray(item, schema["items"], root, f"{at}[]")]
        case "null":
            wrong = [] if value is None else [f"{at}: not empty"]
        case kind:
            pattern = schema.get("pattern", SCALARS.get(kind, "(?!)"))
            wrong = [] if isinstance(value, str) and re.search(pattern, value) else [f"{at}: {value} is no {kind}"]
    return wrong


def _astray_in_group(value: Any, schema: dict[str, Any], root: dict[str, Any], at: str) -> list[str]:
    if not isinstance(value, dict):
        return [f"{at}: no group of keys"]
    known, others = schema.get("properties", {}), schema.get("additionalProperties", True)
    wrong = [f"{at}: no {key}" for key in schema.get("required", ()) if key not in value]
    for key, item in value.items():
        if key in known or others is not False:
            wrong += astray(item, known.get(key, others), root, f"{at}.{key}")
        else:
            wrong.append(f"{at}: unknown key {key}")
    return wrong
