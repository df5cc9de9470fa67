"""The words of a title as lines may break them, and how a title is shortened where the maker allows it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

__all__ = ["grace", "reads_upwards", "shortened", "units"]

ARTICLES = frozenset(
    {
        "the", "a", "an", "le", "la", "les", "un", "une", "der", "die", "das", "den", "dem", "ein", "eine", "el",
        "los", "las", "il", "lo", "gli", "i", "o", "os", "as", "uma", "um", "de", "het", "een",
    }
)  # fmt: skip
"""Words that never stand alone on a line nor end one: articles of the languages of western Europe."""

LINKS = frozenset(
    {
        "of", "and", "&", "in", "on", "to", "for", "by", "at", "from", "with", "or", "et", "du", "des", "von",
        "zu", "und", "e", "y", "di", "da", "van", "en",
    }
)  # fmt: skip
"""Words that rather begin a line than end it."""

INITIAL = re.compile(r"(?:[^\W\d_]\.-?)+")
"""Letters that stand for names: A. or J.-P."""

UPWARDS = ("fr", "de", "es", "it", "pl", "cs", "ro", "ru", "hu", "sk", "ca", "pt", "el", "uk", "bg")
"""Languages whose books are mostly lettered up the spine (common practice; ISO 6357 asks for downwards)."""

CYRILLIC = range(0x400, 0x530)


def units(text: str) -> tuple[str, ...]:
    """The parts of a text that a line holds whole.

    An article stays with the word it belongs to, initials with the name they are of. A short link stays with
    what follows, unless the two would be the longest part of all.

    >>> units("The History of the Lamp")
    ('The History', 'of the Lamp')
    >>> units("Letters from A")
    ('Letters', 'from A')
    """
    parts = _joined(text.split(), ARTICLES, longest=None)
    longest = max((len(part) for part in parts), default=0)
    return tuple(_joined(parts, LINKS, longest))


def _joined(parts: list[str], small: frozenset[str], longest: int | None) -> list[str]:
    """Small words tied to the part after them, or a last one to the part before."""
    done: list[str] = []
    held = ""
    for part in parts:
        whole = f"{held} {part}" if held else part
        if held and longest is not None and len(whole) > longest:
            done.append(held)
            whole = part
        if part.casefold() in small or (small is ARTICLES and INITIAL.fullmatch(part)):
            held = whole
        else:
            done.append(whole)
            held = ""
    if held and done:
        done[-1] = f"{done[-1]} {held}"
    elif held:
        done.append(held)
    return done


def grace(lines: Sequence[str]) -> float:
    """How well lines break, from 1 down: a link alone on a line costs 0.4 of the size, one at its end less.

    >>> grace(("Tales", "of the Sea")), grace(("Tales of", "Ice")), grace(("Tales", "of", "Ice"))
    (1.0, 0.92, 0.6)
    """
    worth = 1.0
    for line in lines[:-1]:
        words = line.split()
        if words and words[-1].casefold() in LINKS:
            worth *= 0.6 if len(words) == 1 else 0.92
    return worth


def shortened(title: str) -> Iterator[str]:
    """The title, then shorter and shorter ways to say it: no subtitle, no article in front, long words cut.

    >>> list(shortened("The Navigation of Canals: A Handbook"))[1:3]
    ['The Navigation of Canals', 'Navigation of Canals']
    """
    yield title
    for sign in (": ", " – ", " — ", "; "):
        if sign in title:
            title = title.split(sign, maxsplit=1)[0]
            yield title
    words = title.split()
    if len(words) > 1 and words[0].casefold() in ARTICLES:
        words = words[1:]
        yield " ".join(words)
    if len(words) > 1:
        yield " ".join(word if len(word) <= 6 else f"{word[:4]}." for word in words)


def reads_upwards(language: str, text: str) -> bool:
    """Whether a spine in this language is mostly lettered from tail to head; the letters tell, if nobody did."""
    if language:
        return language.casefold().split("-")[0] in UPWARDS
    return any(ord(sign) in CYRILLIC for sign in text)
