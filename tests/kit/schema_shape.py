"""Whether a shelf file is of the shape that a schema tells, by a validator of JSON Schema and a reader of YAML 1.2."""

from __future__ import annotations

import json
from typing import Any

from jsonschema import Draft202012Validator
from ruamel.yaml import YAML

__all__ = ["astray"]


def astray(text: str, schema: dict[str, Any]) -> list[str]:
    """What a validator finds wrong with the text of a shelf file."""
    Draft202012Validator.check_schema(schema)
    value = json.loads(json.dumps(YAML(typ="safe", pure=True).load(text), default=str))
    return [error.message for error in Draft202012Validator(schema).iter_errors(value)]
