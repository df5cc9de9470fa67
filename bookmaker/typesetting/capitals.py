"""Words in capitals as their language writes them (Unicode, SpecialCasing.txt and chapter 5.18)."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable

__all__ = ["has_capitals", "in_capitals", "tells_dotted_i"]

DOTTED = ("tr", "az")
"""Languages that tell a dotted i from a dotless one, in capitals too."""

CAPITAL_SHARP_S = "\N{LATIN CAPITAL LETTER SHARP S}"

GREEK_ACCENTS = {"\u0301", "\u0300", "\u0342", "\u0313", "\u0314", "\u0345"}
"""What Greek leaves out over capitals: all but the diaeresis."""


def in_capitals(text: str, language: str = "", has: Callable[[str], bool] = lambda _: False) -> str:
    """A text in capitals; `language` is a BCP 47 tag, `has` tells which rare letters the typeface has.

    Accents stay, but for those of Greek; ß becomes ẞ where there is one, else SS.

    >>> in_capitals("Straße"), in_capitals("Straße", has=lambda sign: sign == "ẞ"), in_capitals("été")
    ('STRASSE', 'STRAẞE', 'ÉTÉ')
    >>> in_capitals("istikbal", "tr"), in_capitals("Ταΰγετος και Ίδη", "el")
    ('İSTİKBAL', 'ΤΑΫΓΕΤΟΣ ΚΑΙ ΙΔΗ')
    """
    if tells_dotted_i(language):
        text = text.replace("i", "\N{LATIN CAPITAL LETTER I WITH DOT ABOVE}")
    if has(CAPITAL_SHARP_S):
        text = text.replace("ß", CAPITAL_SHARP_S)
    return "".join(_without_accents(sign).upper() if _is_greek(sign) else sign.upper() for sign in text)


def tells_dotted_i(language: str) -> bool:
    """Whether a language has an i with a dot and one without.

    >>> tells_dotted_i("tr-TR"), tells_dotted_i("de")
    (True, False)
    """
    return language.partition("-")[0].casefold() in DOTTED


def _is_greek(sign: str) -> bool:
    return "\u0370" <= sign <= "\u03ff" or "\u1f00" <= sign <= "\u1fff"


def _without_accents(sign: str) -> str:
    parts = unicodedata.normalize("NFD", sign)
    return unicodedata.normalize("NFC", "".join(part for part in parts if part not in GREEK_ACCENTS))


def has_capitals(text: str) -> bool:
    """Whether all its letters belong to scripts that have capitals: Latin, Greek, Cyrillic, Armenian.

    >>> has_capitals("Nº 3, Соль"), has_capitals("שלום")
    (True, False)
    """
    return all(sign < "\u0590" or "\u1e00" <= sign < "\u2000" or not sign.isalpha() for sign in text)
