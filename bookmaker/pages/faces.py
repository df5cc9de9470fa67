"""The typeface a maker names for some pages, and what it cannot print."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from ..errors import Problem, ShelfFileError
from ..typefaces import Typeface, bundled, load_typeface

__all__ = ["face_of", "listed", "missing_glyphs"]

MOST_NAMED = 5
"""Signs a message names; the others are counted."""


def face_of(name: str, folder: Path, key: str = "face") -> Typeface:
    """A typeface by its name here, or by the path of its file as seen from a folder; `key` names it in the shelf file.

    Raises:
        ShelfFileError: there is none, or it cannot be used.
    """
    try:
        return load_typeface(folder / name, name) if "/" in name or Path(name).suffix else bundled(name)
    except ShelfFileError as refusal:
        raise ShelfFileError([replace(problem, field=(key,)) for problem in refusal.problems]) from None


def missing_glyphs(what: str, face: Typeface, text: str) -> Iterator[Problem]:
    """An error that names the letters of a text which a typeface does not have."""
    missing = face.missing(text)
    if missing:
        yield Problem(
            f"{what}: the typeface {face.name} has no glyph for {listed(missing)}",
            "write face: with the path of a typeface that has them",
            field=("face",),
        )


def listed(missing: Sequence[str]) -> str:
    """Signs with their code points; those beyond the first few are counted.

    >>> listed("☂⚓"), listed("abcdefg")[-19:]
    ('☂ U+2602, ⚓ U+2693', 'e U+0065 and 2 more')
    """
    named = ", ".join(f"{sign} U+{ord(sign):04X}" for sign in missing[:MOST_NAMED])
    return f"{named} and {len(missing) - MOST_NAMED} more" if len(missing) > MOST_NAMED else named
