"""Set texts as they are kept on disk: plain JSON, read back only if it has the form it must have.

What a text comes to depends on the code that sets it too: the keys of these files hold a digest of that code, and
the releases of the libraries that shape and part words.
"""

from __future__ import annotations

import json
import sys
import unicodedata
from collections.abc import Mapping
from functools import cache
from importlib.metadata import version
from pathlib import Path

from pydantic import FiniteFloat, TypeAdapter, ValidationError

from ..ground.kept import digest
from .lines.set_lines import SetLine, SetLines

__all__ = ["code_digest", "lines_read", "lines_written", "number_read", "number_written"]

LIBRARIES = ("fonttools", "pyphen", "uharfbuzz")

_Line = tuple[str, FiniteFloat, FiniteFloat, int, FiniteFloat]
_Lines = tuple[list[_Line], list[str], list[str]]


@cache
def code_digest() -> str:
    """What stands for the code that sets texts, and all it may call; empty if it cannot be read.

    Then nothing should be kept.
    """
    package = Path(__file__).parents[1]
    try:
        code = [file.read_bytes() for file in sorted(package.rglob("*.py"))]
    except OSError:
        return ""
    releases = [version(library) for library in LIBRARIES]
    return digest(code, releases, sys.version_info[:2], unicodedata.unidata_version) if code else ""


def lines_written(paragraphs: Mapping[str, SetLines]) -> bytes:
    """Paragraphs by their keys, as JSON."""
    plain = {key: ([line[:5] for line in lines], wide, short) for key, (lines, wide, short) in paragraphs.items()}
    return json.dumps(plain, ensure_ascii=False, separators=(",", ":")).encode("utf-8", "surrogatepass")


def lines_read(value: bytes) -> dict[str, SetLines]:
    """The paragraphs by their keys; none if they do not have their form."""
    try:
        found = TypeAdapter(dict[str, _Lines]).validate_json(value, strict=True)
    except ValidationError:
        return {}
    return {
        key: SetLines(tuple(SetLine(*line) for line in lines), tuple(wide), tuple(short))
        for key, (lines, wide, short) in found.items()
    }


def number_written(number: float) -> bytes:
    """A number, as JSON."""
    return json.dumps(number).encode("ascii")


def number_read(value: bytes) -> float | None:
    """The number; None if it does not have its form."""
    try:
        return TypeAdapter(FiniteFloat).validate_json(value, strict=True)
    except ValidationError:
        return None
