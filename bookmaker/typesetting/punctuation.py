"""Punctuation as compositors set it: what was typed on a keyboard becomes the marks of the text's language.

A keyboard has one quotation mark for all of them, and hyphens and points where print has dashes and an
ellipsis. The marks of each language are the delimiters of the Unicode CLDR (an open standard), version 48.2; where it
names only one pair, or print differs, by common practice. Marks that are curled already stay.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from ..ground.scripts import reads_from_right
from ..ground.type_styles import Style

__all__ = ["AS_WRITTEN", "Punctuation", "is_punctuated", "punctuation_of"]

APOSTROPHE = "\u2019"
PRIMES = ("\u2032", "\u2033")
"""Minutes and seconds, or feet and inches."""

GERESH_AND_GERSHAYIM = ("\u05f3", "\u05f4")
"""Within Hebrew words: after a letter of a foreign sound, and in letters that stand for several words."""

TYPED = ("'", '"')
"""What stands for both of these pairs in typefaces that lack them."""

EN_DASH, EM_DASH, ELLIPSIS = "\u2013", "\u2014", "\u2026"
THIN, WIDE = "\u202f", "\u00a0"
"""The narrow no-break space and the usual one: what stands inside them stays on its line."""

SPACED = re.compile(
    rf"({Style.TYPEWRITER}[^\x00-\x06 \n\t]*)|(?<=[^\s;:!?])[ {THIN}{WIDE}]?([;!?])(?![\w/])"
    rf"|(?<=[^\s;:!?])[ {THIN}{WIDE}]?(:)(?=[\s\x00-\x06]|$)|\u00ab[ {THIN}{WIDE}]?|[ {THIN}{WIDE}]?\u00bb"
)
"""What stands apart in French: ; ! ? by a narrow space, : and what is inside guillemets by a usual one, none to be
broken (Lexique des règles typographiques en usage à l’Imprimerie nationale). Typewriter is left alone.
"""

MARKED = re.compile(r"[\"']|--|\.\.\.|(?:^|[ \n])-[ .,;:]")
"""What there is to do something about."""

PIECES = re.compile(r"[\x00-\x06]|[ \n\t]|[\"']|-{2,}|(?:(?<= )|(?<=\n)|^)-(?=[.,;:]?(?: |$))|\.{3,}")
"""Signs of style, the ends of words, and marks that were typed."""

STYLES = frozenset(map(str, Style))

OPENERS = "([{\u2014\u2013-/\u00a0\u202f\u2018\u201c\u201e\u201a\u00ab\u2039\u00bf\u00a1"
"""After these a quotation begins."""

WORD = re.compile(r"[^\W_]+")
CLOSING = re.compile(r"\S'(?!\w)")
"""The end of a quotation in single marks."""

DASHES = "-\u2013\u2014"

CLOSERS = ")]}.,;:!?\u2026\u2014\u2013-\"'"
"""Before these it ends."""

ELISIONS = {
    "en": ("tis", "twas", "twere", "twill", "twould", "em", "til", "cause", "bout", "round", "neath", "n"),
    "de": ("s", "n", "ne", "nen", "nem", "ner"),
    "nl": ("s", "t", "n", "k", "r", "m"),
    "af": ("n", "t", "k", "s"),
}
"""Words that begin with an apostrophe (common practice)."""


@dataclass(frozen=True, slots=True)
class Punctuation:
    """The marks of a language: four quotation marks, the outer pair and that inside it, and the dash between spaces.

    `elided` are words that begin with an apostrophe. Marks that are `spaced` stand apart from their word, as in French.
    A dash that begins a paragraph may be `speech`. `in_words` are the marks within Hebrew words, for one typed
    mark and for two.
    """

    double: tuple[str, str] = ("\u201c", "\u201d")
    single: tuple[str, str] = ("\u2018", "\u2019")
    dash: str = EN_DASH
    elided: tuple[str, ...] = ()
    primes: tuple[str, str] = PRIMES
    in_words: tuple[str, str] | None = None
    spaced: bool = False
    speech: bool = False
    as_written: bool = False

    def set(self, text: str) -> str:
        """A passage with its marks; words in typewriter are left as they are.

        >>> print(Punctuation().set('"Stay," he said -- and didn\\'t...'))
        “Stay,” he said – and didn’t…
        """
        if self.as_written or not (self.spaced or MARKED.search(text)):
            return text
        found = _Passage(text, self).set()
        return SPACED.sub(_spaced, found) if self.spaced else found

    def printed(self, text: str, *covers: Callable[[str], bool]) -> str:
        """A title or a few lines in typefaces that have, or have not, its signs.

        What is read from right to left is left as it is written, unless these are the marks of such a language.

        >>> print(Punctuation().printed('The "Keeper\\'s" Log -- with Charts'))
        The “Keeper’s” Log – with Charts
        """
        if reads_from_right(text) and not self.in_words:
            return text
        return self.covered(lambda sign: all(has(sign) for has in covers)).set(text)

    def covered(self, covers: Callable[[str], bool]) -> Punctuation:
        """The same for typefaces that do not have all of its signs: what they lack stays as it is written."""
        signs = "".join((*self.double, *self.single, self.dash, APOSTROPHE, EM_DASH, ELLIPSIS))
        if not all(map(covers, signs)):
            return AS_WRITTEN
        found = self if all(map(covers, self.primes)) else replace(self, primes=TYPED)
        return found if all(map(covers, found.in_words or ())) else replace(found, in_words=TYPED)


AS_WRITTEN = Punctuation(as_written=True)
"""For text that is set as its author typed it."""


def _pairs(marks: str) -> tuple[tuple[str, str], tuple[str, str]]:
    outer, outer_end, inner, inner_end = marks.split(" ")
    return (outer, outer_end), (inner, inner_end)


MARKS = {
    "\u201c \u201d \u2018 \u2019": "en en-GB en-US af da eo gl hi id ko lv nl pt tr vi zh zu",
    "\u300c \u300d \u300e \u300f": "ja zh-Hant zh-TW zh-HK",
    "\u201e \u201c \u201a \u2018": "de cs is sk sl bg lt",
    "\u00ab \u00bb \u2039 \u203a": "de-CH de-LI fa",
    f"\u00ab{WIDE} {WIDE}\u00bb \u201c \u201d": "fr",
    "\u00ab \u00bb \u201c \u201d": "ca el es eu it pt-PT sq",
    "\u00ab \u00bb \u201e \u201c": "ru be uk",
    "\u00ab \u00bb \u2018 \u2019": "nb nn no",
    "\u201e \u201d \u00ab \u00bb": "pl ro",
    "\u201e \u201d \u00bb \u00ab": "hu",
    "\u201e \u201d \u2018 \u2019": "sr",
    "\u201e \u201d \u201a \u2019": "hr",
    "\u201e \u201c \u00ab \u00bb": "et",
    "\u201d \u201d \u2019 \u2019": "fi sv he",
    "\u201d \u201c \u2019 \u2018": "ar",
}
"""Outer and inner quotation marks, and the languages that have them."""

DOWNWARDS = "\u300e \u300f \u300c \u300d"

LANGUAGES = {tag.casefold(): marks for marks, tags in MARKS.items() for tag in tags.split()}

EM_DASHED = frozenset({"ru", "be", "uk", "bg", "es"})
"""Languages whose dash between spaces is as long as the type is large (common practice)."""


SPACED_MARKS = frozenset({"fr", "fr-fr", "fr-be", "fr-lu"})
"""Tags of French as it is printed in Europe; elsewhere habits differ."""

SPOKEN_WITH_DASH = EM_DASHED | {"cs", "da", "el", "fr", "hr", "hu", "it", "pl", "pt", "ro", "sk", "sr", "tr"}
"""Languages in which a dash at the beginning of a paragraph tells that someone speaks (common practice)."""


def punctuation_of(language: str, *, vertical: bool = False) -> Punctuation:
    """The punctuation of a language tag (BCP 47); of English, if nothing is known of it.

    In Chinese lines that run down the page, corners stand for quotation marks (GB/T 15834, from memory).

    >>> punctuation_of("de-AT").double
    ('„', '“')
    """
    tag = language.replace("_", "-").casefold()
    root = tag.partition("-")[0]
    marks = LANGUAGES.get(tag) or LANGUAGES.get(root) or LANGUAGES["en"]
    double, single = _pairs(DOWNWARDS if vertical and marks == LANGUAGES["zh"] else marks)
    dash = EM_DASH if root in EM_DASHED else EN_DASH
    in_words = GERESH_AND_GERSHAYIM if root == "he" else None
    elided, spaced, speech = ELISIONS.get(root, ()), tag in SPACED_MARKS, root in SPOKEN_WITH_DASH
    return Punctuation(double, single, dash, elided, in_words=in_words, spaced=spaced, speech=speech)


def is_punctuated(language: str) -> bool:
    """Whether anything is known of the punctuation of a language tag."""
    tag = language.replace("_", "-").casefold()
    return bool({tag, tag.partition("-")[0]} & LANGUAGES.keys())


def _spaced(found: re.Match[str]) -> str:
    if found[1]:
        return found[1]
    if found[2] or found[3]:
        return THIN + found[2] if found[2] else WIDE + found[3]
    return found[0][0] + WIDE if found[0][0] == "\u00ab" else WIDE + found[0][-1]


class _Passage:
    """One passage, gone through from left to right."""

    def __init__(self, text: str, marks: Punctuation) -> None:
        self.text = text
        self.marks = marks
        self.open = {'"': False, "'": False}
        closings = [found.start() for found in CLOSING.finditer(text)]
        self._last_closing = closings[-1] if closings else -1
        self.opened = -1
        """Where the mark that began a quotation last stands: what follows it begins something too."""

    def set(self) -> str:
        """The passage with its marks."""
        found: list[str] = []
        end, typewritten = 0, False
        for piece in PIECES.finditer(self.text):
            sign = piece[0]
            if sign in " \n\t" or sign in STYLES:
                typewritten = sign == Style.TYPEWRITER
            elif not typewritten:
                found += (self.text[end : piece.start()], self._mark(sign, piece.start(), piece.end()))
                end = piece.end()
        return "".join((*found, self.text[end:]))

    def _mark(self, sign: str, start: int, end: int) -> str:
        before, after = self._beside(start, -1), self._beside(end, 1)
        if sign[0] == "-":
            return self._dash(sign, before, after)
        if sign[0] == ".":
            return ELLIPSIS + sign[3:] if len(sign) < 5 else sign
        begins = before.isspace() or before in OPENERS or self._follows_opening(start)
        # one mark before another begins with it, unless it comes after a word or a dash
        ends = after.isspace() or (after in CLOSERS and not (after in "\"'" and begins and before not in DASHES))
        if sign == '"':
            return self._double(start, before, begins=begins and not (ends and self.open[sign]), ends=ends)
        return self._single(start, before, after, begins=begins, ends=ends)

    def _beside(self, at: int, step: int) -> str:
        """The sign before or after a place, past signs of style; a line feed stands for the ends of the passage."""
        at = at - 1 if step < 0 else at
        while 0 <= at < len(self.text) and self.text[at] in STYLES:
            at += step
        return self.text[at] if 0 <= at < len(self.text) else "\n"

    def _follows_opening(self, start: int) -> bool:
        return self.opened >= 0 and all(self.text[at] in STYLES for at in range(self.opened + 1, start))

    def _dash(self, sign: str, before: str, after: str) -> str:
        if len(sign) > 3:
            return sign
        if len(sign) == 3:
            return EM_DASH
        if before.isspace() and (after.isspace() or sign == "-"):
            if before == "\n":
                return EM_DASH if sign != "-" or self.marks.speech else sign
            return self.marks.dash
        return EN_DASH if before.isdigit() and after.isdigit() else EM_DASH

    def _double(self, start: int, before: str, *, begins: bool, ends: bool) -> str:
        if before.isdigit() and not self.open['"']:
            return self.marks.primes[1]
        if self.marks.in_words and _is_hebrew(before) and _is_hebrew(self._beside(start + 1, 1)):
            return self.marks.in_words[1]
        # between two letters the state must tell
        opening = begins if begins is not ends else not self.open['"']
        self.open['"'] = opening
        self.opened = start if opening else self.opened
        return self.marks.double[0 if opening else 1]

    def _single(self, start: int, before: str, after: str, *, begins: bool, ends: bool) -> str:
        if begins and not ends and not self._is_elision(start, before):
            self.open["'"] = True
            self.opened = start
            return self.marks.single[0]
        if ends and self.open["'"] and not before.isspace():
            self.open["'"] = False
            return self.marks.single[1]
        if self.marks.in_words and _is_hebrew(before):
            return self.marks.in_words[0]
        return self.marks.primes[0] if before.isdigit() and not after.isalpha() else APOSTROPHE

    def _is_elision(self, start: int, before: str) -> bool:
        """Whether an apostrophe stands for letters left out: ’tis, ’98, or no quotation that ever ends."""
        word = WORD.match(self.text, start + 1)
        letters = word[0] if word else ""
        decade = re.fullmatch(r"\d\ds?", letters) and self._beside(start + 1 + len(letters), 1) != "'"
        if decade or letters.casefold() in self.marks.elided:
            return True
        return before != "\n" and start >= self._last_closing


def _is_hebrew(sign: str) -> bool:
    return "\u05d0" <= sign <= "\u05ea"
