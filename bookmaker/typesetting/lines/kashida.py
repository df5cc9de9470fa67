"""Kashida: Arabic words lengthened by tatweel, where a line is to be filled.

A letter that joins the one after it may be drawn out. Where, and where rather, is custom: the order here is that of
Microsoft's notes on OpenType for Arabic, one place a word is common practice, and so is that none stands between lam
and alef, which are one shape (all from memory, as is that the W3C's Text Layout Requirements for the Arabic Script
leave the order to the typesetter).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

__all__ = ["DRAWN_OUT_IN", "TATWEEL", "lengthened", "places"]

TATWEEL = "\u0640"

DRAWN_OUT_IN = frozenset({"ar", "fa"})
"""Languages, by their tags, whose words are drawn out."""

MOST = 2
"""No word is drawn out by more than so many of them (common practice: more is calligraphy)."""

FEWEST_LETTERS = 3
"""Shorter words are left as they are."""

NEVER_JOINED = frozenset(
    "\u0621\u0622\u0623\u0624\u0625\u0627\u0629\u062f\u0630\u0631\u0632\u0648"
    "\u0671\u0688\u0691\u0698\u06c0\u06d2\u06d3\u06d5"
)
"""Letters that do not join the one after them: hamza, alef, teh marbuta, dal, reh, waw, and those made of them."""

LETTER = re.compile(r"[\u0620-\u063f\u0641-\u064a\u0671-\u06d3\u06d5]")
MARKS = re.compile(r"[\u064b-\u065f\u0670]*")

SEEN_SAD = frozenset("\u0633\u0634\u0635\u0636")
LAM, ALEFS = "\u0644", frozenset("\u0622\u0623\u0625\u0627\u0671")
BEFORE_LAST = (
    frozenset("\u0629\u0647\u062f\u06c1"),
    frozenset("\u0627\u0637\u0644\u0643\u06a9\u06af"),
    frozenset("\u0631\u064a\u0649\u06cc"),
    frozenset("\u0648\u0639\u063a\u0642\u0641"),
)
"""Last letters before which a word is drawn out, the best first: teh marbuta, heh and dal; alef, tah, lam and kaf;
reh and yeh; waw, ain, qaf and feh."""


def places(word: str) -> Iterator[tuple[int, int]]:
    """Where a word may be drawn out, before which of its characters, each with its rank; 0 is best.

    >>> list(places("\u0633\u0644\u0627\u0645")), list(places("\u0645\u062f\u0631\u0633\u0629"))
    ([(1, 0)], [(1, 5), (4, 0)])
    """
    letters = [found.start() for found in LETTER.finditer(word)]
    if len(letters) < FEWEST_LETTERS or TATWEEL in word:
        return
    for at, after in pairwise(letters):
        letter, following = word[at], word[after]
        joined = MARKS.fullmatch(word, at + 1, after) and letter not in NEVER_JOINED and following != "\u0621"
        if joined and not (letter == LAM and following in ALEFS):
            yield after, _rank(letter, following, last=after == letters[-1])


def _rank(letter: str, following: str, *, last: bool) -> int:
    if letter in SEEN_SAD:
        return 0
    ranks = (rank for rank, letters in enumerate(BEFORE_LAST, start=1) if last and following in letters)
    return next(ranks, len(BEFORE_LAST) + 1)


def lengthened(words: str, count: int) -> str:
    """A line of words with so many tatweels at most, where they do best: one a word, then a second.

    Of places in a word that are equally good the last is taken, and of words those further on.

    >>> lengthened("\u0633\u0644\u0627\u0645 \u0645\u062f\u0631\u0633\u0629", 1)
    '\u0633\u0644\u0627\u0645 \u0645\u062f\u0631\u0633\u0640\u0629'
    """
    parts = words.split(" ")
    best = [min(((rank, -at) for at, rank in places(word)), default=None) for word in parts]
    order = sorted((place[0], -number) for number, place in enumerate(best) if place)
    turns = [-number for _, number in order * MOST][:count]
    for number, place in enumerate(best):
        if place:
            at = -place[1]
            parts[number] = parts[number][:at] + TATWEEL * turns.count(number) + parts[number][at:]
    return " ".join(parts)
