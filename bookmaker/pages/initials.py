"""Drop capitals: which letter a chapter begins with, how large it is, and how far it stands in the text.

All is measured by ink, not by what the typeface says of its capitals: no part of the letter touches a line.
"""

from __future__ import annotations

import unicodedata
from typing import NamedTuple

from ..typefaces import Run
from .fount import SIGNS, Style
from .setting import Setting, reach

__all__ = ["Dropped", "Opening", "dropped", "opening_of"]

MARKS = frozenset("\u2018\u2019\u201a\u201c\u201d\u201e\u00ab\u00bb\u2039\u203a'\"([\u00a1\u00bf")
"""What may stand before the first letter; it is set small, before the capital."""

OVERSHOOT = 0.12
"""Ems of the text by which the ink of a capital may go below its baseline, as round letters do."""


class Opening(NamedTuple):
    """The first words of a chapter: signs before its first letter, the letter, and all that follows."""

    marks: str
    capital: str
    rest: str


class Dropped(NamedTuple):
    """A capital in its place, in mm: the em, its baseline below that of the first line, where its ink begins and ends.

    `left` and `right` are counted from its own left.
    """

    size: float
    drop: float
    left: float
    right: float


def opening_of(text: str, *, small_capitals: bool) -> Opening | None:
    """How a passage begins, the rest of its first word in small capitals; None if that is not with a capital.

    Emphasis of this word gives way to the small capitals.

    >>> opening_of("\\u201c\\x01Never\\x00, she said", small_capitals=False)
    Opening(marks='“', capital='N', rest='\\x01ever\\x00, she said')
    """
    word, space, others = text.partition(" ")
    marks, style = "", ""
    for at, sign in enumerate(word):
        if sign in set(Style):
            style = sign
        elif sign in MARKS:
            marks += sign
        elif sign.isalpha() and not sign.islower():
            end = at + 1
            while unicodedata.category(word[end : end + 1] or " ")[0] == "M":
                end += 1
            return Opening(marks, word[at:end], _ending(word[end:], style, small_capitals) + space + others)
        else:
            break
    return None


def _ending(letters: str, style: str, small_capitals: bool) -> str:
    """What is left of the first word, in its own style or in small capitals."""
    if not letters:
        return ""
    styled = SIGNS.search(letters)
    plain = letters[: styled.start()] if styled else letters
    return (Style.SMALL_CAPITALS if small_capitals and plain else style) + letters


def dropped(letter: Run, setting: Setting, depth: int, headroom: float) -> Dropped:
    """A capital that reaches from the top of the first line to the baseline of the last of `depth` lines.

    What goes below that baseline, as the tails of J and Q do in many typefaces, would touch the next line: such
    a letter is made smaller and lifted, so that its ink keeps to its lines. Accents may stand out over the first
    line by `headroom` mm.
    """
    face, size = setting.typeface, setting.size
    drop, above = (depth - 1) * setting.leading, face.cap_height * size
    full = size + drop / face.cap_height
    top, bottom, left, right = letter.top, letter.bottom, letter.left, letter.right
    white = setting.leading - reach(face)[0] * size
    below = max(0.0, min(OVERSHOOT * size, white / 2))
    over = headroom if top * full <= drop + above + headroom else OVERSHOOT * size / 2
    if top * full <= drop + above + over and -bottom * full <= below:
        return Dropped(full, drop, left * full, right * full)
    # a tail stands on the baseline itself, a round letter goes below it as it likes
    foot = below if -bottom * full <= below else 0.0
    scaled = min(full, (drop + above + foot) / (top - bottom))
    return Dropped(scaled, drop + bottom * scaled + foot, left * scaled, right * scaled)
