"""Line breaking: words into lines, each as full as it goes, flush left.

Widths are ems, so that one measure of a text serves every size of type.
"""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Iterator
from functools import lru_cache

from ..typefaces import Run, Typeface

__all__ = ["INDENTED", "Line", "Widths", "WordRuns", "word_runs", "wrap"]

LONGEST_WORD = 1000
"""Characters; what goes on longer without a space is no word and is broken in any case."""

MOST_WORDS = 50_000
"""So many shaped words are kept for a typeface: the vocabulary of a large shelf, but not endless lists."""

SAFELY_SHORT = 0.95
"""Kerning adds less than a twentieth to the width of a word."""

INDENTED = "\t"
"""A line that begins with this is the first of a paragraph and is set with an indent."""

Line = tuple[str, int]
"""The words of a line, parted by single spaces, and how many words of the text are wholly set by its end."""


class WordRuns(dict[str, Run]):
    """The shaped words of a typeface, each shaped once: the same few thousand make up every text."""

    def __init__(self, typeface: Typeface) -> None:
        super().__init__()
        self.typeface = typeface

    def __missing__(self, word: str) -> Run:
        if len(self) >= MOST_WORDS:
            self.clear()
        run = self[word] = self.typeface.shape(word)
        return run


@lru_cache(maxsize=32)
def word_runs(typeface: Typeface) -> WordRuns:
    """The words of a typeface, shared by all books set in it."""
    return WordRuns(typeface)


class Widths(dict[str, float]):
    """How wide words are, in ems. One beyond `LONGEST_WORD` is not shaped whole but counts as endless."""

    def __init__(self, typeface: Typeface) -> None:
        super().__init__()
        self.runs = word_runs(typeface)

    def __missing__(self, word: str) -> float:
        width = self[word] = self.runs[word].width if len(word) <= LONGEST_WORD else math.inf
        return width


def wrap(text: str, widths: Widths, measure: float, indent: float) -> Iterator[Line]:
    """Break a text, paragraphs parted by line feeds, into lines of at most `measure` ems.

    All paragraphs but the first are indented, unless their first word has no room for it. A word wider
    than the measure is broken between letters. Lines come one at a time: take as many as there is room for.
    """
    done = 0
    room, mark = measure, ""
    for paragraph in text.split("\n"):
        words = paragraph.split(" ")
        yield from _wrap_paragraph(words, widths, measure, room=room, mark=mark, done=done)
        done += len(words)
        room, mark = measure - indent, INDENTED


def _wrap_paragraph(
    words: list[str], widths: Widths, measure: float, *, room: float, mark: str, done: int
) -> Iterator[Line]:
    """One paragraph, whose first line has `room` ems and begins with `mark`; `done` words came before it."""
    space = widths[" "]
    used, start = -space, 0
    # this loop sees every word of the shelf: look-ups stay in C, and the rare cases come last
    for i, width in enumerate(map(widths.__getitem__, words)):
        used += space + width
        if used <= room:
            continue
        if i > start:
            yield mark + " ".join(words[start:i]), done + i
        start, used, room, mark = i, width, measure, ""
        if width > measure:
            rest = ""
            for piece in _pieces(words[i], widths, measure):
                if rest:
                    yield rest, done + i
                rest = piece
            words[i], used = rest, widths[rest]
    yield mark + " ".join(words[start:]), done + len(words)


def _pieces(word: str, widths: Widths, measure: float) -> Iterator[str]:
    """A word in pieces no wider than the measure, each of at least one letter with its marks."""
    piece, total = "", 0.0
    for letter in _letters(word):
        total += widths[letter]
        # kerning may make the shaped piece wider than its letters: near the measure, ask the shaped one
        full = total > measure or (total > measure * SAFELY_SHORT and widths[piece + letter] > measure)
        if piece and full:
            yield piece
            piece, total = "", widths[letter]
        piece += letter
    yield piece


def _letters(word: str) -> Iterator[str]:
    """The letters of a word, each with the marks that belong to it."""
    letter = ""
    for sign in word:
        if letter and not _joins(sign) and not _joins(letter[-1], only_joiner=True):
            yield letter
            letter = ""
        letter += sign
    yield letter


def _joins(sign: str, *, only_joiner: bool = False) -> bool:
    if sign == "\u200d":
        return True
    return not only_joiner and (sign == "\u200c" or unicodedata.category(sign) in {"Mn", "Me", "Mc"})
