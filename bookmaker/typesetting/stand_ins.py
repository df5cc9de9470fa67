"""Typefaces that stand in for another one where it lacks the letters of a name: on labels, in the guide, in lists."""

from __future__ import annotations

from ..ground.typefaces import Typeface, bundled

__all__ = ["face_with", "printable"]

STAND_INS = ("sans", "text", "old style")
"""Bundled typefaces with many letters, in the order in which they are tried."""


def face_with(text: str, name: str, own: Typeface | None = None) -> Typeface:
    """The bundled typeface of a name, or else one that has all letters of a text; `own` is one of the maker's.

    If none has them all it is the one of the name.

    >>> face_with("Fog", "sans"), face_with("Ὁ λύχνος", "sans")
    (Typeface('Open Sans'), Typeface('Noto Serif'))
    """
    first = bundled(name)
    others = (*map(bundled, STAND_INS), *([own] if own else []))
    return next((face for face in (first, *others) if not face.missing(text)), first)


def printable(text: str, own: Typeface | None = None) -> bool:
    """Whether one of these typefaces has all letters of a text."""
    return not face_with(text, STAND_INS[0], own).missing(text)
