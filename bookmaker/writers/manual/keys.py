"""Every key of the shelf file, made from the models: what they say is what bookmaker reads."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from ...ground.told import Units, print_mm, told_in

__all__ = ["Key", "every_key", "keys_chapter"]

MOST_CHOICES = 12


@dataclass(frozen=True)
class Key:
    """A key, the group it belongs to, what it means, what may be written, and what holds if it is left out."""

    name: str
    group: str
    meaning: str
    example: str
    otherwise: str


def every_key(schema: Mapping[str, Any]) -> Iterator[Key]:
    """The keys of the shelf, then those of each group in the order of their names."""
    yield from _keys("the shelf", schema)
    for name, group in sorted(schema["$defs"].items()):
        yield from _keys(_words(name), group)


def keys_chapter(schema: Mapping[str, Any]) -> str:
    """The same as a chapter of the manual, in Markdown."""
    lines = ["# Every key", "", "Made from what bookmaker itself reads. What needs more words stands in the chapters."]
    group = ""
    for key in every_key(schema):
        if key.group != group:
            group = key.group
            lines += [
                "",
                f"## Keys of {group}",
                "",
                "| key | meaning | you may write | if left out |",
                "|---|---|---|---|",
            ]
        lines.append(f"| `{key.name}` | {key.meaning} | {key.example} | {key.otherwise} |")
    return "\n".join(lines) + "\n"


def _keys(group: str, model: Mapping[str, Any]) -> Iterator[Key]:
    must = model.get("required", ())
    for name, field in model.get("properties", {}).items():
        otherwise = field.get("default", "must be given" if name in must else "–")
        such = ", ".join(_examples(field)) or "–"
        yield Key(name, group, field["description"], such, _in_both(str(otherwise)))


def _in_both(otherwise: str) -> str:
    """A default in the unit it is defined in, and what that is in inches.

    >>> _in_both("5 mm"), _in_both("0 mm"), _in_both("plain")
    ('5 mm (0.197 in)', '0 mm', 'plain')
    """
    found = re.fullmatch(r"([\d.]+) mm", otherwise)
    if not found or not float(found[1]):
        return otherwise
    with told_in(Units.INCHES):
        return f"{otherwise} ({print_mm(float(found[1]))})"


def _examples(field: Mapping[str, Any]) -> list[str]:
    match field:
        case {"enum": values}:
            found = [str(value) for value in values if not isinstance(value, bool)]
        case {"const": value}:
            found = [str(value)]
        case {"examples": values}:
            found = [str(value) for value in values]
        case {"pattern": _}:
            found = ['"#34506b"']
        case {"anyOf": options}:
            found = list(dict.fromkeys(example for option in options for example in _examples(option)))
        case _:
            found = []
    return [f"`{each}`" for each in found[:MOST_CHOICES]]


def _words(name: str) -> str:
    """The name of a model as words.

    >>> _words("HalfTitle")
    'half title'
    """
    words = re.sub(r"(?<!^)(?=[A-Z])", " ", name).lower()
    return re.sub(r" (entry|inside)$", "", words)
