"""Small capitals of letters that a language draws in a way of its own.

A typeface may have another f for German, so that it meets no umlaut; where its small capitals are made of the usual f
alone, that one stays small among them (OpenType puts `locl` before `smcp`).
"""

from __future__ import annotations

from ...ground.typefaces import Typeface
from ..capitals import tells_dotted_i

__all__ = ["leaves_small"]


def leaves_small(typeface: Typeface, text: str, features: tuple[str, ...], language: str) -> bool:
    """Whether letters stay small among small capitals for the sake of their language, and need not.

    Not in Turkish and Azerbaijani: their usual i would be read as the dotless one.
    """
    if "smcp" not in features or not language or tells_dotted_i(language):
        return False
    others = tuple(feature for feature in features if feature != "smcp")
    usual = typeface.shape(text, features=(*features, "-locl"), language=language)
    own = typeface.shape(text, features=features, language=language)
    small = {glyph.gid for glyph in typeface.shape(text, features=others, language=language).glyphs}
    return any(one.gid != other.gid and one.gid in small for one, other in zip(own.glyphs, usual.glyphs, strict=False))
