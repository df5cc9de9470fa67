"""Words that keep together: what must not begin a line, and what must not be left alone at its end.

A dash between spaces goes with the word before it; initials go with the name after them, which is left whole. What
`ties` knows of goes together unless the lines would become too bad.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import compress

from .boxes import Boxes
from .breaking import FORBIDDEN, Word
from .fount import MOST_WORDS, Style
from .ties import is_one_letter, may_tie, tied

__all__ = ["boxed"]

DASHES = frozenset(sign + dash for sign in ("", *Style) for dash in "-\u2013\u2014\u2015")
"""Words that are nothing but a dash."""

INITIAL = re.compile(r"[\x00-\x06]?(?:[^\W\d_]\.)+")

TIED, TIED_RAGGED = 70_000.0, 200_000.0
"""Penalties for a line that ends in a tie: rather are its spaces four times as wide as usual, or is it short."""

MOVED_DOWN = frozenset({"be", "cs", "pl", "ru", "sk", "uk"})
"""Languages that leave no word of one letter, a preposition or "and", at the end of a line: Czech never (Internetová
jazyková příručka), Polish in titles (PWN, rule 204) and by good custom everywhere, Russian (Bylinsky and Zhilin, 1960).
"""

NO_INITIALS = frozenset({"I."})
"""What looks like an initial and is a word at the end of a sentence."""


def boxed(words: Sequence[str], boxes: Boxes, *, ragged: bool = False) -> list[Word]:
    """The boxes of the words of a paragraph, with penalties where they keep together."""
    placed = list(map(boxes.__getitem__, words))
    if (boxes.fount.language or "").partition("_")[0] in MOVED_DOWN:
        for place, word in enumerate(words[:-1]):
            if is_one_letter(word):
                placed[place] = _bound(placed[place], TIED_RAGGED if ragged else TIED)
    for place in compress(range(len(words)), map(BINDS.__getitem__, words)):
        _tie(words, placed, place, TIED_RAGGED if ragged else TIED)
        word, after = words[place], words[place + 1] if place + 1 < len(words) else ""
        if word in DASHES and place:
            placed[place - 1] = _bound(placed[place - 1])
        elif _is_initial(word) and _is_name(after):
            placed[place] = _bound(placed[place])
            if not _is_initial(after):
                placed[place + 1] = _whole(placed[place + 1], boxes, after)
    return placed


def _tie(words: Sequence[str], placed: list[Word], place: int, penalty: float) -> None:
    """Tie a word to the next one and, if it is a numeral, to the one before it."""
    for before in (place - 1, place):
        if 0 <= before < len(words) - 1 and tied(words[before], words[before + 1]):
            placed[before] = _bound(placed[before], penalty)


class _Binds(dict[str, bool]):
    """Whether words bind others to them, each looked at once."""

    def __missing__(self, word: str) -> bool:
        if len(self) >= MOST_WORDS:
            self.clear()
        binds = self[word] = word in DASHES or _is_initial(word) or may_tie(word)
        return binds


BINDS = _Binds()


def _is_initial(word: str) -> bool:
    return word[-1:] == "." and INITIAL.fullmatch(word) is not None and word not in NO_INITIALS and word.upper() == word


def _is_name(word: str) -> bool:
    return word.lstrip("".join(Style))[:1].isupper()


def _bound(box: Word, penalty: float = FORBIDDEN) -> Word:
    """A box after which no line should end."""
    *inner, end = box.stops
    return box._replace(stops=(*inner, end._replace(penalty=max(penalty, end.penalty))))


def _whole(box: Word, boxes: Boxes, word: str) -> Word:
    """A box that is parted nowhere, if it has room as it is."""
    return box if box.width > boxes.room or word in boxes.wide else box.whole
