"""Words as boxes for line breaking: how wide, where they may be parted, and what hangs into the margins."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from ...ground.kept import digest
from .breaking import Glue, Line, Stop, Word
from .fount import ADDED_HYPHEN, Fount, Style, as_read
from .ideographs import has_ideographs, is_wide
from .solid import blank_half
from .tracking import LOOSENING

__all__ = ["LETTER_BREAK", "LONGEST_WORD", "STRETCH", "TIGHTENING", "Boxes"]

LONGEST_WORD = 1000
"""Characters; what goes on longer without a space is no word and is broken in any case."""

LETTER_BREAK = 2000.0
"""Penalty for a break between two letters of a word too wide for the measure."""

SAFELY_SHORT = 0.97
"""Kerning adds less than this leaves over to the width of a row of letters."""

ROUNDING = 1e-6
"""Ems by which sums of widths may differ."""

STRETCH = 1 / 3
"""What a space may gain at a ratio of 1, as a share of itself (common practice).

With the loosening of letters beside it, a third makes a good compromise between wide spaces and hyphens on small pages:
tests/bench/bench_lines.py measures both.
"""

SHRINK, SHRINK_THIN, THIN = 0.3, 1 / 4, 0.18
"""What a space may lose at a ratio of 1, as shares of itself: less if under so many ems would be left of it.

In narrower ones words run together (common practice: a fifth of an em, or a sixth in faces that run narrow). The text
face's space of 0.26 em comes down to 0.18, so that its lines, tighter by a little, are on an average less wide.
"""

TIGHTENING = 0.01
"""How far letters may be tracked closer for the sake of even spaces, in ems (common practice)."""

SOLID_LOOSENING = 0.2
"""The same for type that is set solid, which has no spaces to share it with: a sign that must not begin a line takes
another one down with it, and leaves an em or two (common practice)."""

DRAWN_OUT = 0.06
"""How much longer words of an Arabic line may become by tatweel, as a share of the measure (common practice)."""

STYLES = frozenset(Style)

VIRAMA = 9
"""The class of what joins letters of Indic scripts to the next one (Unicode, canonical combining classes): no line ends
within such a cluster."""

MANY_PLACES = 8
"""Words that may be parted at more places than these are long."""

LETTERS_AN_EM = 2.2
"""Letters and spaces that stand on an em, about."""

SPREAD = 1.0
"""Ems that a line is lent in the last pass."""

LEFT_HANGING = {
    "\u2018": 0.7, "\u201c": 0.5, "'": 0.7, '"': 0.5, "\u00ab": 0.4, "\u2039": 0.4, "\u201e": 0.5, "\u201a": 0.7,
    "\u00bb": 0.4, "\u203a": 0.4, "(": 0.15, "\u2014": 0.2, "\u2013": 0.2,
}  # fmt: skip
RIGHT_HANGING = {
    ".": 0.7, ",": 0.7, "-": 0.6, "\u2010": 0.6, "\u2019": 0.7, "\u201d": 0.5, "\u2018": 0.7, "\u201c": 0.5,
    ":": 0.4, ";": 0.4, "!": 0.2, "?": 0.15, "\u2014": 0.2, "\u2013": 0.3, "'": 0.7, '"': 0.5, "\u00bb": 0.4,
    "\u203a": 0.4, "\u00ab": 0.4, "\u2039": 0.4, "\u2026": 0.2, ")": 0.15,
}  # fmt: skip
"""How much of a sign's width hangs into the margin, so that the edges look straight (common practice)."""


def _shrink(space: float) -> float:
    """What a space may lose at a ratio of 1, in ems.

    >>> [round(_shrink(space), 3) for space in (0.26, 0.23, 0.2)]
    [0.078, 0.058, 0.05]
    """
    return min(space * SHRINK, max(space * SHRINK_THIN, space - THIN))


class Cut(NamedTuple):
    """A stop in letters: before which character, and whether a hyphen is added."""

    at: int
    hyphened: bool


class Boxes(dict[str, Word]):
    """The boxes of a fount's words, in ems; no part of any is wider than `room`, if its letters are not.

    `wide` are the words that had to be parted between letters. With `hanging`, punctuation hangs. Boxes that
    are `sparing` are parted by hyphens only where they are too wide; `hyphens` is what each hyphen added costs besides.
    Letters may be `loosening` ems further apart.
    All boxes of one `key` are alike.
    """

    def __init__(
        self,
        fount: Fount,
        room: float,
        *,
        hanging: bool,
        sparing: bool = False,
        hyphens: float = 0.0,
        loosening: float = LOOSENING,
    ) -> None:
        super().__init__()
        self.fount = fount
        self.room = room
        self.hanging = hanging
        self.sparing = sparing
        self.hyphens = hyphens
        self.key = digest(fount.key, room, hanging, sparing, hyphens, loosening)
        self.wide = set[str]()
        self.cuts: dict[str, tuple[Cut, ...]] = {}
        width = fount.word_space
        self.loosening, self.tightening = (SOLID_LOOSENING, 0.0) if fount.solid else (loosening, TIGHTENING)
        letters = 0.0 if fount.right_to_left else room if fount.solid else LETTERS_AN_EM * room
        looser, tighter = self.loosening * letters, self.tightening * letters
        if fount.tatweel:
            looser = DRAWN_OUT * room
        self.justified = Glue(width, width * STRETCH, _shrink(width), SPREAD, looser, tighter)
        self.ragged = Glue(width, 0.0, 0.0, SPREAD)

    def __missing__(self, word: str) -> Word:
        endless = len(word) > LONGEST_WORD and not has_ideographs(word)
        width = sum(map(self.fount.width, _letters(word))) if endless else self.fount.width(word)
        inner, after = [] if endless else self._inner(word), self.fount.after(word)
        if self.sparing:
            inner = self._spared(inner, width - after)
        if width - after > self.room and max(_spans(inner, width - after)) > self.room:
            self.wide.add(word)
            inner = list(self._between_letters(word, inner, width))
            # the last part is no longer kerned with what stood before it
            for cut, stop in inner[-1:]:
                rest = sum(advance for _, advance in self._advances(word, cut.at, len(word)))
                width = max(width, stop.after + rest)
        self.cuts[word] = tuple(cut for cut, _ in inner)
        end = Stop(width - self.right_hang(word) - after, width)
        box = self[word] = Word(width, self.left_hang(word), (*(stop for _, stop in inner), end))
        return box

    def text_of(self, line: Line, words: Sequence[str]) -> tuple[str, bool]:
        """The words of a line, and whether it ends with the end of one."""
        first, last = words[line.first], words[line.last]
        cuts = self.cuts[last]
        whole = line.closed == len(cuts)
        start = self.cuts[first][line.opened].at if line.opened is not None else 0
        end, hyphened = (len(last), False) if whole else cuts[line.closed]
        part = self.fount.part
        if line.first == line.last:
            return (part(first, start, end, hyphened=hyphened) if start or not whole else first), whole
        opening = part(first, start, len(first)) if start else first
        closing = last if whole else part(last, 0, end, hyphened=hyphened)
        return " ".join((opening, *words[line.first + 1 : line.last], closing)), whole

    def parted(self, words: Sequence[str]) -> tuple[str, ...]:
        """Those of some words that were parted between letters."""
        return tuple(filter(self.wide.__contains__, words)) if self.wide else ()

    def opened_hang(self, line: Line, words: Sequence[str]) -> float:
        """How far the first sign of a line that begins within a word hangs into the left margin."""
        word, opened = words[line.first], line.opened or 0
        return self.opening_hang(word, self.cuts[word][opened].at)

    def left_hang(self, word: str) -> float:
        """How far the first sign of a word hangs into the left margin."""
        return self._hang(word, 0, LEFT_HANGING)

    def opening_hang(self, word: str, at: int) -> float:
        """The same where a word is parted before the character `at`: the blank half of a wide mark."""
        trims = self.fount.solid and self.hanging and is_wide(word[at])
        return self._blank_half(word[at], at_end=False) if trims else 0.0

    def right_hang(self, word: str) -> float:
        """How far the last sign of a word hangs into the right margin."""
        return self._hang(word, -1, RIGHT_HANGING)

    def _hang(self, word: str, end: int, shares: dict[str, float]) -> float:
        if not self.hanging or len(word) < 2 or word[0] == Style.TYPEWRITER:  # whose letters stand under one another
            return 0.0
        if end < 0 and word.endswith(ADDED_HYPHEN):
            sign = self.fount.hyphen
        else:
            sign = word[end] if word[end].isprintable() else as_read(word)[end:][:1]
        if self.fount.solid and is_wide(sign):
            return self._blank_half(sign, at_end=end < 0)
        share = shares.get(sign)
        return share * self.fount.width(sign) if share else 0.0

    def _blank_half(self, sign: str, *, at_end: bool) -> float:
        return blank_half(self.fount.runs(sign)[0], at_end=at_end)

    def _inner(self, word: str) -> list[tuple[Cut, Stop]]:
        fount, found = self.fount, []
        places = fount.partings(word)
        reaches = fount.reaches(word) if len(places) > MANY_PLACES else {}
        for at, penalty, flagged, hyphened in places:
            offset = reaches[at] if at in reaches else fount.offset(word, at)
            if hyphened:
                before = offset + fount.width(fount.hyphen) - self.right_hang("x" + fount.hyphen)
            else:
                before = offset - self.right_hang(word[:at])
            before -= fount.after(word)
            cost = penalty + self.hyphens if hyphened else penalty
            found.append((Cut(at, hyphened), Stop(before, offset + self.opening_hang(word, at), cost, flagged)))
        return found

    def _spared(self, inner: list[tuple[Cut, Stop]], width: float) -> list[tuple[Cut, Stop]]:
        """The stops of a word without added hyphens, but for those in what is too wide between two dashes."""
        ends = [stop for cut, stop in inner if not cut.hyphened] + [Stop(width, width)]
        begins = [0.0, *(stop.after for stop in ends)]
        room = self.room + ROUNDING
        wide = [(begin, end.after) for begin, end in zip(begins, ends, strict=False) if end.before - begin > room]
        return [
            (cut, stop)
            for cut, stop in inner
            if not cut.hyphened or any(begin < stop.after < end for begin, end in wide)
        ]

    def _between_letters(self, word: str, inner: list[tuple[Cut, Stop]], width: float) -> Iterator[tuple[Cut, Stop]]:
        """The stops of a word, and more between its letters wherever they lie too far apart."""
        start, reached = 0, 0.0
        for cut, stop in [*inner, (Cut(len(word), hyphened=False), Stop(width, width))]:
            total = 0.0
            if stop.before - reached > self.room:
                at, x = start, reached
                for letter, advance in self._advances(word, start, cut.at):
                    if total and total + advance > self.room * SAFELY_SHORT:
                        yield Cut(at, hyphened=False), Stop(x, x, LETTER_BREAK)
                        total = 0.0
                    total += advance
                    at, x = at + len(letter), x + advance
            if cut.at < len(word):
                yield cut, stop
            start, reached = cut.at, stop.after

    def _advances(self, word: str, start: int, end: int) -> Iterator[tuple[str, float]]:
        """The letters of a part of a word, each with its width in the style it has there, and the signs of style."""
        style = self.fount.part(word, start, start)
        for letter in _letters(word[start:end]):
            style = letter if letter in STYLES else style
            yield letter, 0.0 if letter in STYLES else self.fount.width(style + letter)


def _spans(inner: list[tuple[Cut, Stop]], width: float) -> Iterator[float]:
    """How wide each part of a word between two stops is."""
    start = 0.0
    for _, stop in inner:
        yield stop.before - start
        start = stop.after
    yield width - start


def _letters(word: str) -> Iterable[str]:
    """The letters of a word, each with the marks that belong to it."""
    return word if word.isascii() else _marked_letters(word)


def _marked_letters(word: str) -> Iterator[str]:
    letter = ""
    for sign in word:
        if letter and not _joins(sign) and letter[-1] != "\u200d" and unicodedata.combining(letter[-1]) != VIRAMA:
            yield letter
            letter = ""
        letter += sign
    if letter:
        yield letter


def _joins(sign: str) -> bool:
    return sign in "\u200c\u200d" or unicodedata.category(sign) in {"Mn", "Me", "Mc"}
