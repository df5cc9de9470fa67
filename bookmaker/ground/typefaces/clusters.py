"""What each glyph of a cluster stands for, so that the text can be read out of a file glyph by glyph.

HarfBuzz tells which glyphs a group of characters became, but not which of them is whose.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Sequence
from functools import cache

__all__ = ["shared"]

JOINED_FORMS = ((0xFB1D, 0xFB4F), (0xFE70, 0xFEFC))
"""Hebrew letters with points, and Arabic letters with their vowels or joined to one another (Unicode)."""


def shared(said: str, gids: Sequence[int], nominal: Callable[[int], int | None], from_right: bool) -> list[str]:
    """What each glyph of a cluster stands for, as they stand from left to right.

    `said` are the characters of the cluster, `nominal` gives the usual glyph of one. Where a letter and its marks came
    out one by one each has its own; else the first stands for all, and the others for nothing. Of characters that
    are read from the right and became one glyph the single character that means them all is given, if there is one:
    readers turn such text round and would turn them round too.

    >>> shared("ab", [2, 1], {97: 1, 98: 2}.get, True), shared("ab", [2, 1], {97: 1}.get, False)
    (['b', 'a'], ['ab', ''])
    """
    own = _own(said, gids, nominal, from_right) if len(gids) > 1 else [said]
    return [_joined_form(text) for text in own] if from_right else own


def _own(said: str, gids: Sequence[int], nominal: Callable[[int], int | None], from_right: bool) -> list[str]:
    own, left = [""] * len(gids), list(said)
    usual = [nominal(ord(char)) for char in said]
    in_reading = range(len(gids))[:: -1 if from_right else 1]
    for place in in_reading:
        if gids[place] in usual:
            at = usual.index(gids[place])
            own[place], left[at], usual[at] = said[at], "", None
    silent = [place for place in in_reading if not own[place]]
    if len(silent) == 1:
        own[silent[0]] = "".join(left)
    told = "".join(own[place] for place in in_reading)
    # shapers put points and vowels in another order where that means the same
    same = unicodedata.normalize("NFD", told) == unicodedata.normalize("NFD", said) if from_right else told == said
    is_whole = all(own) and same
    return own if is_whole else [said, *[""] * (len(gids) - 1)]


def _joined_form(text: str) -> str:
    """The one character for several, or these.

    >>> _joined_form("\\u0644\\u0627") == "\\ufefb"
    True
    """
    return _joined_forms().get(text, text) if len(text) > 1 else text


@cache
def _joined_forms() -> dict[str, str]:
    """The single characters by what they mean; of several that mean the same, the one that stands alone."""
    forms = [chr(code) for first, last in JOINED_FORMS for code in range(first, last + 1)]
    return {unicodedata.normalize("NFKD", form): form for form in reversed(forms)}
