"""Titles and authors, the same every time: the first ones stay as they are when more are asked for."""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Container, Iterator, Sequence
from typing import NamedTuple

from .words import GIVEN, PATTERNS, SURNAMES, THINGS

__all__ = ["Invention", "ranked", "titles"]


class Invention(NamedTuple):
    """A book that nobody wrote, in a language by its tag."""

    title: str
    author: str
    language: str


class _Draft(NamedTuple):
    language: str
    pattern: str
    thing: str


def titles(
    subjects: Sequence[str], languages: Sequence[str], seed: str, used: Container[str] = ()
) -> Iterator[Invention]:
    """As many as there are, things and patterns in turn; no title twice, and none that is `used`, in small letters."""
    left = [
        _Draft(language, pattern, thing)
        for language in languages
        for pattern in PATTERNS[language]
        for subject in subjects
        for thing in THINGS[language][subject]
    ]
    left.sort(key=lambda draft: ranked(seed, *draft))
    often: Counter[str] = Counter()
    while left:
        # the fewest times used before; of those alike in that, as chance ranked them
        draft = min(left, key=lambda one: 2 * often[one.thing] + often[one.pattern] + often[one.language] / 100)
        left.remove(draft)
        often.update(draft)
        title = draft.pattern.format(draft.thing)
        title = title[0].upper() + title[1:]
        if title.casefold() not in used:
            yield Invention(title, _author(draft.language, seed, title), draft.language)


def _author(language: str, seed: str, title: str) -> str:
    given, surname = (
        min(names, key=lambda name: ranked(seed, title, name)) for names in (GIVEN[language], SURNAMES[language])
    )
    return f"{given} {surname}"


def ranked(*texts: str) -> int:
    """A number that hangs on some texts alone, and on nothing else."""
    return int.from_bytes(hashlib.sha256("\0".join(texts).encode()).digest()[:8])
