"""Where lines of Chinese, Japanese and Korean may end, and how their marks close up.

These scripts part no words: a line ends between any two signs but where the Unicode Line Breaking Algorithm (UAX #14,
revision 53) forbids it. It calls that by classes; here are those that meet wide signs, with the values of its
LineBreak.txt. Small kana begin no line (class CJ as NS, the strict way). These are the rules of kinsoku in Requirements
for Japanese Text Layout too (JLREQ, 3.1.7 and 3.1.8). What both sides of a pair are narrow is not looked at: `hyphens`
knows that.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from ...ground.type_styles import Style

__all__ = ["CLASS_OF", "has_ideographs", "is_wide", "joins_lines", "places_to_part"]

WIDE = re.compile(r"[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\ua960-\ua97c\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f"
                  r"\uff01-\uff60\uffe0-\uffe6\U00016fe0-\U0003fffd]")  # fmt: skip
"""Signs as wide as they are high."""

HANGUL = re.compile(r"[\u1100-\u11ff\ua960-\ua97c\uac00-\ud7a3]")

SYLLABLE = 40.0
"""Penalty for a line that ends within a Korean word: rather between two (common practice)."""

BY_CLASS = {
    "N": "\u3005\u301c\u303b\u303c\u309b-\u309e\u30a0\u30fb\u30fd\u30fe\uff1a\uff1b\u203c\u203d\u2047-\u2049"
    "\u3041\u3043\u3045\u3047\u3049\u3063\u3083\u3085\u3087\u308e\u3095\u3096\u30a1\u30a3\u30a5\u30a7\u30a9\u30c3"
    "\u30e3\u30e5\u30e7\u30ee\u30f5\u30f6\u30fc\u31f0-\u31ff",
    "E": "!?\uff01\uff1f",
    "S": ",.:;/",
    "D": "\u2024-\u2026\u22ef",
    "B": "\u2014\u2e3a\u2e3b",
    "P": "%\u00a2\u00b0\u2030-\u2037\u2103\u2109\uff05\uffe0",
    "R": "$\u00a3\u00a4\u00a5+\\\\\u00b1\u20a9\u20ac\u2116\u2212\uff04\uffe1\uffe5\uffe6",
    "C": "\u3001\u3002\uff0c\uff0e",
    "H": "\\-\u2010\u2012\u2013",
    "G": "\u00a0\u2007\u2011\u202f\u2060\ufeff",
    "Q": "\"'",
}
"""Signs by their class, which has one letter here: NS and CJ, EX, IS and SY, IN, B2, PO, PR, CL, BA and HY, GL, QU."""

BY_CATEGORY = {"Ps": "o", "Pe": "c", "Pi": "O", "Pf": "C", "Nd": "9", "Mn": "M", "Me": "M", "Mc": "M", "Cf": "M"}
"""The same for whole categories: brackets and quotation marks that open and close, figures, marks on letters."""

CLASSES = {cls: re.compile(f"[{signs}]") for cls, signs in BY_CLASS.items()}

NEVER_AT_END, NEVER_AT_BEGINNING = "oOGQ", "NESDCcHGQ"
"""Classes after which and before which no line ends beside a wide sign (LB7, LB11 to LB16, LB19, LB21, LB22, LB25)."""

BETWEEN = re.compile(f"[^s{NEVER_AT_END}]s*(?=[^s{NEVER_AT_BEGINNING}])")
"""A sign after which a line may end, in the letters of classes; s is a sign for a style."""

TOGETHER = frozenset(
    {
        "BB",
        "IP",
        "LP",
        "9P",
        "PL",
        "P9",
        "Po",
        "cL",
        "c9",
        "CR",
        "CP",
        "cR",
        "cP",
        "RI",
        "RL",
        "R9",
        "Ro",
        "9R",
        "LR",
        "SL",
        "S9",
        "H9",
        "BM",
    }
)
"""Pairs that stay together besides (LB17, LB23 to LB25, LB29, LB30)."""


class _Classes(dict[str, str]):
    """The class of each sign, looked up once."""

    def __missing__(self, sign: str) -> str:
        cls = self[sign] = _class_of(sign)
        return cls


def _class_of(sign: str) -> str:
    if sign in set(Style):
        return "s"
    known = next((cls for cls, signs in CLASSES.items() if signs.match(sign)), "")
    if known:
        return known
    cls = BY_CATEGORY.get(unicodedata.category(sign), "I" if WIDE.match(sign) else "L")
    return {"o": "O", "c": "C", "9": "I"}.get(cls, cls) if WIDE.match(sign) else cls


CLASS_OF = _Classes()
"""The letter for the class of a sign; I for ideographs and all that are like them, L for other letters."""


def has_ideographs(text: str) -> bool:
    """Whether a text has signs of scripts that part no words.

    >>> has_ideographs("灯台"), has_ideographs("lamp")
    (True, False)
    """
    return not text.isascii() and WIDE.search(text) is not None


def is_wide(sign: str) -> bool:
    """Whether a sign is as wide as it is high.

    >>> is_wide("灯"), is_wide("é")
    (True, False)
    """
    return WIDE.match(sign) is not None


def joins_lines(before: str, after: str) -> bool:
    """Whether lines that were typed one below the other go on without a blank: all but Korean do, which has blanks.

    >>> joins_lines("灯", "台"), joins_lines("등", "대"), joins_lines("灯", "a")
    (True, False, False)
    """
    return is_wide(before) and is_wide(after) and not (HANGUL.match(before) and HANGUL.match(after))


def places_to_part(word: str) -> Iterator[tuple[int, float]]:
    """Before which signs of a word a line may begin, and at what penalty, wherever wide signs let it.

    >>> list(places_to_part("灯台、です。"))
    [(1, 0.0), (3, 0.0), (4, 0.0)]
    """
    classes = "".join(map(CLASS_OF.__getitem__, word))
    for found in BETWEEN.finditer(classes):
        at, after = found.start() + 1, found.end()
        if Style.SUPERIOR in word[at:after]:  # the figure of a note stays with what it belongs to
            continue
        if classes[after] == "M" or classes[found.start()] + classes[after] in TOGETHER:
            continue
        before = word[found.start()]
        if is_wide(before) or is_wide(word[after]):
            yield at, SYLLABLE if HANGUL.match(before) and HANGUL.match(word[after]) else 0.0
