"""The typeface a maker names for some pages, and what it cannot print."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from ..errors import Problem, ShelfFileError
from ..typefaces import Typeface, bundled, load_typeface

__all__ = ["face_of", "missing_glyphs"]

MOST_NAMED = 5


def face_of(name: str, folder: Path) -> Typeface:
    """A typeface by its name here, or by the path of its file as seen from a folder.

    Raises:
        ShelfFileError: there is none, or it cannot be used.
    """
    try:
        return load_typeface(folder / name) if "/" in name or Path(name).suffix else bundled(name)
    except ShelfFileError as refusal:
        raise ShelfFileError([replace(problem, field=("face",)) for problem in refusal.problems]) from None


def missing_glyphs(what: str, face: Typeface, text: str) -> Iterator[Problem]:
    """An error that names the letters of a text which a typeface does not have."""
    missing = face.missing(text)
    if missing:
        named = ", ".join(f"{sign} U+{ord(sign):04X}" for sign in missing[:MOST_NAMED])
        more = f" and {len(missing) - MOST_NAMED} more" if len(missing) > MOST_NAMED else ""
        yield Problem(
            f"{what}: the typeface {face.name} has no glyph for {named}{more}",
            "write face: with the path of a typeface that has them",
            field=("face",),
        )
