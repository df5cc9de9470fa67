"""The schema as shelf files are written: defaults with their units, yes and no, numbers as titles, nothing empty."""

from __future__ import annotations

from typing import Any

from ..ground.units import MM_PER_INCH, PT_PER_INCH

__all__ = ["as_written"]

FLAG = [True, False, "yes", "no"]
"""Readers of YAML 1.2 take yes and no for words, those of YAML 1.1 for what they mean."""

UNITS = {"mm": 1.0, "um": 0.001, "pt": MM_PER_INCH / PT_PER_INCH, "dpi": 1.0}
"""How many of the kept units, mm or dpi, there are in those in which examples are written."""

TELLS_APART = {"kind": "which kind it is", "style": "which style it is"}


def as_written(part: Any, name: str = "") -> Any:
    """A part of the schema of what is read, turned into that of the text it is read from; `name` is its key.

    Every default is as one writes it, every key is described, and none may be empty: `kind: ` is refused.
    """
    if isinstance(part, list):
        return [as_written(each) for each in part if each != {"type": "null"}]
    if not isinstance(part, dict) or name in {"examples", "default", "enum", "required"}:
        return part
    if name in {"properties", "$defs"}:
        return {key: _described(key, as_written(value)) for key, value in part.items()}
    return _form({key: as_written(value, key) for key, value in part.items()})


def _described(key: str, field: dict[str, Any]) -> dict[str, Any]:
    return {"description": TELLS_APART[key], **field} if key in TELLS_APART and "const" in field else field


def _form(field: dict[str, Any]) -> dict[str, Any]:
    field.pop("discriminator", None)
    if "oneOf" in field:  # a group that leaves its kind to the defaults may be of several kinds at once
        field["anyOf"] = field.pop("oneOf")
    if len(field.get("anyOf", ())) == 1:
        field = {**field.pop("anyOf")[0], **field}
    if "default" in field:
        written = _default(field.pop("default"), field)
        field |= {} if written is None else {"default": written}
    match field:
        case {"type": "boolean"}:
            return {key: value for key, value in field.items() if key != "type"} | {"enum": FLAG}
        case {"type": "string"} if not {"pattern", "enum", "const", "examples"} & set(field):
            return field | {"type": ["string", "number"]}
    return field


def _default(value: Any, field: dict[str, Any]) -> Any:
    """What is taken if the key is left out, as one would write it; None where there is nothing to write."""
    match value:
        case None | "" | [] | dict():
            return None
        case bool():
            return "yes" if value else "no"
        case [red, green, blue]:
            return f"#{round(red * 255):02x}{round(green * 255):02x}{round(blue * 255):02x}"
        case float() if field.get("type") == "string":
            return _with_unit(value, str(field["examples"][0]))
    return value


def _with_unit(value: float, example: str) -> str:
    unit = example.rpartition(" ")[2]
    if unit in UNITS:
        return f"{round(value / UNITS[unit], 4):g} {unit}"
    return f"1:{value:g}"
