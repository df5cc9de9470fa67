"""Typefaces that stand in for another one where it lacks the letters of a name: on labels, in the guide, in lists."""

from __future__ import annotations

from string import ascii_letters

from fontTools.unicodedata import script

from ..ground.typefaces import Typeface, bundled

__all__ = ["face_with", "lacking", "latin_stand_in", "printable"]

STAND_INS = ("sans", "text", "old style")
"""Bundled typefaces with many letters, in the order in which they are tried."""

EVERYWHERE = frozenset({"Latn", "Zyyy", "Zinh"})


def face_with(text: str, name: str, own: Typeface | None = None) -> Typeface:
    """The bundled typeface of a name, or else one that has all letters of a text; `own` is one of the maker's.

    If none has them all it is the one of the name.

    >>> face_with("Fog", "sans"), face_with("Ὁ λύχνος", "sans")
    (Typeface('Open Sans'), Typeface('Noto Serif'))
    """
    first = bundled(name)
    others = (*map(bundled, STAND_INS), *([own] if own else []))
    return next((face for face in (first, *others) if not face.missing(text)), first)


def latin_stand_in(face: Typeface) -> Typeface | None:
    """The text face, for the Latin words and points of a typeface without Latin letters; None for others."""
    return None if any(map(face.covers, ascii_letters)) else bundled("text")


def lacking(face: Typeface, stand_in: Typeface | None, text: str) -> list[str]:
    """The signs of a text that a typeface lacks, and the one that stands in for it too.

    That gives those which are Latin, or used with every script (Unicode, script values Common and Inherited).
    """
    missing = face.missing(text)
    if stand_in is None:
        return missing
    return [sign for sign in missing if script(sign) not in EVERYWHERE or not stand_in.covers(sign)]


def printable(text: str, own: Typeface | None = None) -> bool:
    """Whether one of these typefaces has all letters of a text."""
    return not face_with(text, STAND_INS[0], own).missing(text)
