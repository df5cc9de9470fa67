"""The typeface a maker names for some pages, and what it cannot print."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from ..ground.problems import Problem, ShelfFileError
from ..ground.typefaces import Typeface, Vertical, across, bundled, is_dotted, load_typeface, vertical_of
from ..ground.typefaces.names import BUNDLED, style_of
from .book_type import Family
from .lines.fount import Fount, Style
from .page import PageFrame

__all__ = [
    "HEAVY",
    "SLANTED",
    "downwards",
    "face_of",
    "face_that_has",
    "family_for",
    "family_of",
    "listed",
    "missing_glyphs",
    "set_across",
]

SLANTED = {"text": "text italic", "old style": "old style italic", "text bold": "text bold italic"}
HEAVY = {"text": "text bold", "sans": "sans bold", "text italic": "text bold italic"}
"""Bundled typefaces that go with one another."""

STAND_INS = ("text", "sans", "old style")
"""Bundled typefaces with many letters: the usual one, and those that are tried after it."""

MOST_NAMED = 24
"""Signs a message names; the others are counted."""

ELSE = "write face: with the path of a typeface that has them"

STYLE_OF_KEY = {"italic_face": "italic", "bold_face": "bold"}
"""What a typeface is that the maker names under these keys."""


def face_of(name: str, folder: Path, key: str = "face") -> Typeface:
    """A typeface by its name here, or by the path of its file as seen from a folder; `key` names it in the shelf file.

    Raises:
        ShelfFileError: there is none, or it cannot be used.
    """
    try:
        return load_typeface(folder / name, name) if "/" in name or Path(name).suffix else bundled(name)
    except ShelfFileError as refusal:
        raise ShelfFileError([replace(problem, field=(key,)) for problem in refusal.problems]) from None


def family_of(name: str | None, folder: Path) -> Family | None:
    """A typeface with the bundled ones that go with it; None if none is named.

    Raises:
        ShelfFileError: it cannot be used.
    """
    if name is None:
        return None
    return _with_others(face_of(name, folder), name)


def _bundled_family(name: str) -> Family:
    return _with_others(bundled(name), name)


def _with_others(roman: Typeface, name: str) -> Family:
    """A typeface with its italic and bold, as far as there are any."""
    slanted, heavy = SLANTED.get(name), HEAVY.get(name)
    both = SLANTED.get(heavy or "") or heavy
    others = {Style.ITALIC: slanted, Style.BOLD: heavy, Style.BOLD_ITALIC: both}
    return {Style.ROMAN: roman} | {style: bundled(other) for style, other in others.items() if other}


def family_for(own: Family | None, frame: PageFrame, words: str) -> Family:
    """What some words of a book are set in: typefaces of their own, or those of its text.

    The bundled text face stands in where the book has no text; where a typeface that nobody named for these words
    lacks letters of theirs, another bundled one does that has them.
    """
    family = own or _following(frame, words)
    return downwards(family) if frame.standing else family


def _following(frame: PageFrame, words: str) -> Family:
    usual = tuple(_bundled_family(name) for name in STAND_INS)
    following = frame.type.family if frame.type else usual[0]
    return next((family for family in (following, *usual) if not family[Style.ROMAN].missing(words)), following)


def downwards(family: Family) -> Family:
    """Typefaces for lines that run down the page; where there is no italic, dots beside the letters stand for it."""
    bold = family.get(Style.BOLD, family[Style.ROMAN])
    dotted = {Style.ITALIC: family[Style.ROMAN], Style.BOLD_ITALIC: bold}
    stressed = {style: vertical_of(face, True) for style, face in dotted.items() if style not in family}
    return {style: vertical_of(face) for style, face in family.items()} | stressed


def set_across(fount: Fount) -> Fount:
    """The same type for lines that run across the page; dots beside letters stand for no style there."""
    if not isinstance(fount.roman, Vertical):
        return fount
    faces = {style: across(face) for style, face in fount.faces.items() if not is_dotted(face)}
    return Fount(faces, fount.language, fount.spoken, stand_in=fount.stand_in and across(fount.stand_in))


def missing_glyphs(what: str, face: Typeface, text: str) -> Iterator[Problem]:
    """An error that names the letters of a text which a typeface does not have."""
    missing = face.missing(text)
    if missing:
        yield Problem(
            f"{what}: the typeface {face.name} has no glyph for {listed(missing)}",
            f"write face: {whole}, which has them all" if (whole := face_that_has(text)) else ELSE,
            field=("face",),
        )


def face_that_has(text: str, key: str = "face") -> str:
    """The bundled typeface of a style that has all letters of a text, or an empty text; `key` is where it is named.

    >>> face_that_has("Ὁ λύχνος"), face_that_has("\u2693")
    ('text', '')
    """
    style = STYLE_OF_KEY.get(key, "")
    return next((name for name in BUNDLED if style_of(name) == style and not bundled(name).missing(text)), "")


def listed(missing: Sequence[str]) -> str:
    """Signs with their code points; those beyond the first few are counted.

    >>> listed("☂⚓"), listed("abcdefghijklmnopqrstuvwxyz")[-19:]
    ('☂ U+2602, ⚓ U+2693', 'x U+0078 and 2 more')
    """
    named = ", ".join(f"{sign} U+{ord(sign):04X}" for sign in missing[:MOST_NAMED])
    return f"{named} and {len(missing) - MOST_NAMED} more" if len(missing) > MOST_NAMED else named
