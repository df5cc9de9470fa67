"""Where words may be parted: by the patterns of their language, after dashes, and where the author says so.

The patterns are F. M. Liang's, as pyphen carries them for some sixty languages.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

import pyphen

from .ideographs import has_ideographs, is_wide, places_to_part

__all__ = [
    "SOFT_HYPHEN", "Parting", "has_own_script", "has_seam", "known_language", "language_of", "languages", "partings",
    "partings_at_blanks",
]  # fmt: skip

SOFT_HYPHEN = "\u00ad"
"""Invisible; the author's own place to part a word."""

PREFERRED = {"en": "en_US"}
"""Where several sets of patterns serve one language: Liang's own for English."""

PATTERN, COMPOUND, DASH = 500.0, 800.0, 20.0
"""Penalties: a hyphen by pattern, one more hyphen in a word that has one, the end of a line after a dash.

A line whose spaces are about 1.7 times as wide as usual is as bad as a hyphen: tests/bench/bench_lines.py.
"""

LEAST_LETTERS = 5
"""Shorter words are left whole."""

LEAST = 3
"""Letters that stay on the line, and that come to the next, if nothing better is known of a language.

English patterns themselves let two stay; on narrow lines that would be one hyphen in three (common practice: three).
"""

TWO_LETTERS = re.compile("be|cs|da|de|el|es|et|hr|hu|id|it|lt|lv|nb|nl|nn|pl|pt|ro|ru|sk|sv|uk")
"""Languages in which syllables of two letters may stand alone (common practice), though not all patterns say so."""

HEAD = 300
"""So many characters into a file of patterns it is said how many letters stay and come."""

LEAST_AFTER_DASH = 2
"""Letters that may stand alone on a line before a dash or after it."""

GREEK, CYRILLIC = re.compile(r"[\u0370-\u03ff\u1f00-\u1fff]"), re.compile(r"[\u0400-\u052f]")

BY_SCRIPT = ((GREEK, frozenset({"el"}), "el"), (CYRILLIC, frozenset({"be", "bg", "mn", "ru", "sr", "uk"}), "ru"))
"""Scripts, the languages that are written in them, and the one whose patterns serve words in a text of another."""

LIGATED = tuple("ijlthbk")
"""Letters that typefaces join to an f before them."""

LETTERS = re.compile(r"[^\W\d_]+")
DASHES = re.compile(r"(?<=\w)[\u2010-]+(?=\w)|(?<=\w)[\u2013\u2014]+(?=[\w\u2018\u201c])|(?<=\w)/(?=\w)")


class Parting(NamedTuple):
    """A word may end a line before the character `at`; a hyphen is added if it is `hyphened`."""

    at: int
    penalty: float
    flagged: bool
    hyphened: bool


def languages() -> tuple[str, ...]:
    """The tags of all languages there are patterns for."""
    return tuple(sorted({name.replace("_", "-") for name in pyphen.LANGUAGES}))


def known_language(tag: str) -> str | None:
    """A language tag as the patterns know it, or None.

    >>> known_language("en-gb"), known_language("de-LI"), known_language("en")
    ('en_GB', 'de', 'en_US')
    """
    plain = tag.strip().replace("-", "_")
    found: str | None = pyphen.language_fallback(PREFERRED.get(plain.casefold(), plain))
    return found


@lru_cache(maxsize=16)
def _patterns(language: str) -> pyphen.Pyphen:
    left, right = _least_letters(language)
    return pyphen.Pyphen(lang=language, left=left, right=right)


def _least_letters(language: str) -> tuple[int, int]:
    """How many letters of a word stay on the line, and how many come to the next.

    >>> _least_letters("en_GB"), _least_letters("ru"), _least_letters("mr"), _least_letters("af")
    ((3, 3), (2, 2), (3, 4), (3, 3))
    """
    if language.startswith("en"):
        return LEAST, LEAST
    head = Path(pyphen.LANGUAGES[language]).read_bytes()[:HEAD].decode("latin-1")
    least = 2 if TWO_LETTERS.match(language) else LEAST
    said = (re.search(rf"^{side}HYPHENMIN (\d+)", head, re.M) for side in ("LEFT", "RIGHT"))
    left, right = (max(2, int(found[1])) if found else least for found in said)
    return left, right


def has_own_script(language: str) -> bool:
    """Whether a language is one of those here that are not written in Latin letters."""
    return any(language.partition("_")[0] in written for _, written, _ in BY_SCRIPT)


def language_of(word: str, language: str) -> str:
    """The language whose patterns part a word in a text of a language: its script may tell that it is of another.

    >>> language_of("lamp", "el"), language_of("\u043b\u0430\u043c\u043f\u0430", "el")
    ('el', 'ru')
    """
    if not word.isascii():
        for script, written, other in BY_SCRIPT:
            if script.search(word):
                return language if language.partition("_")[0] in written else other
    return language


def partings(word: str, language: str | None) -> list[Parting]:
    """Where a word may be parted, from left to right; without a language only at dashes and soft hyphens.

    >>> [(parting.at, parting.hyphened) for parting in partings("boat-building", "en_US")]
    [(5, False), (10, True)]
    """
    found = {parting.at: parting for parting in _by_author(word)}
    if has_ideographs(word):
        # their own rules hold beside them, after dashes too
        found = {at: parting for at, parting in found.items() if parting.hyphened or not _beside_wide(word, at)}
        found |= {at: Parting(at, penalty, flagged=False, hyphened=False) for at, penalty in places_to_part(word)}
    compound = any(parting.flagged for parting in found.values())
    if language and len(word) >= LEAST_LETTERS:
        for at in _by_pattern(word, language_of(word, language)):
            found.setdefault(at, Parting(at, COMPOUND if compound else PATTERN, flagged=True, hyphened=True))
    return [found[at] for at in sorted(found)]


def _beside_wide(word: str, at: int) -> bool:
    return is_wide(word[at - 1]) or is_wide(word[at])


def has_seam(word: str, spoken: str) -> bool:
    """Whether a ligature would join what a German compound is made of, by the tag of the language that is spoken.

    Ligatures stand only within a stem: Auf|lage has none, Pflanze has (Duden, 2006, p. 112). A seam is where the
    patterns part an f from what follows it; from a second f only after three of them, or after auf.

    >>> [has_seam(word, "de-AT") for word in ("Auflage", "Pflanze", "Schifffahrt", "Waffel", "käuflich")]
    [True, False, True, False, True]
    """
    if "f" not in word or not spoken.casefold().startswith("de"):
        return False
    return any(_joins(word[:at].casefold(), word[at:]) for at in _by_pattern(word, "de_DE"))


def _joins(before: str, after: str) -> bool:
    if not before.endswith("f"):
        return False
    return before.endswith(("ff", "auf")) if after.startswith("f") else after.startswith(LIGATED)


def partings_at_blanks(line: str, blank: str) -> Iterator[Parting]:
    """Where a line may be parted whose blanks are kept: after each run of them, but the one it begins with."""
    for blanks in re.finditer(rf"(?<=[^{blank}\x00-\x06]){blank}+", line):
        yield Parting(blanks.end(), 0.0, flagged=False, hyphened=False)


def _by_author(word: str) -> Iterator[Parting]:
    for at, sign in enumerate(word):
        if sign == SOFT_HYPHEN and 0 < at < len(word) - 1:
            yield Parting(at + 1, PATTERN, flagged=True, hyphened=True)
    if not word.isalpha():
        for dash in DASHES.finditer(word):
            hyphen = dash[0][0] in "-\u2010"
            room = len(word) - dash.end() >= LEAST_AFTER_DASH <= dash.start()
            if room:
                yield Parting(dash.end(), PATTERN if hyphen else DASH, flagged=hyphen, hyphened=False)


def _by_pattern(word: str, language: str) -> Iterator[int]:
    if SOFT_HYPHEN in word:
        return  # the author knows better
    patterns = _patterns(language)
    for letters in LETTERS.finditer(word):
        if len(letters[0]) >= LEAST_LETTERS:
            for place in patterns.positions(letters[0]):
                if place.data is None:  # else letters would change at the break
                    yield letters.start() + int(place)
