"""The schemas as they are printed and written: JSON Schema of the shelf file, and of the plan."""

from __future__ import annotations

from typing import Any

__all__ = ["plan_schema_text", "schema_text"]


def schema_text() -> str:
    """That of the shelf file."""
    from ..shelf.schema import shelf_schema

    return _text(shelf_schema())


def plan_schema_text() -> str:
    """That of plan.json."""
    from ..writers.plan_schema import plan_schema

    return _text(plan_schema())


def _text(schema: dict[str, Any]) -> str:
    import json  # only those who ask for a schema wait for it

    return json.dumps(schema, ensure_ascii=False, indent=1)
