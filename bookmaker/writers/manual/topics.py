"""What the manual says about a word: its meaning, the keys of that name, and the places that are about it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from .chapters import FENCE, Section, fold
from .keys import Key

__all__ = ["Topic", "look_up", "names_told_of", "passages"]

MEANING = re.compile(r"^- \*\*(.+?)\*\*(.*?): (.+)$", re.MULTILINE)
"""An entry of the glossary: the word, its second name in brackets, what it is."""

LISTS = ("contents", "every-message")
"""Chapters that are lists: they are shown when they are called by their names, and what they name comes last."""

PASSAGE = re.compile(r"\n\n+|\n(?=\||[-*] |\d+\. )")
"""What parts paragraphs, items of lists and rows of tables."""


@dataclass(frozen=True)
class Topic:
    """What was found for a word; `elsewhere` are sections that only mention it."""

    meanings: tuple[str, ...]
    keys: tuple[Key, ...]
    sections: tuple[Section, ...]
    elsewhere: tuple[Section, ...]

    @property
    def empty(self) -> bool:
        """Whether nothing was found at all."""
        return not (self.meanings or self.keys or self.sections or self.elsewhere)


def look_up(word: str, sections: Sequence[Section], keys: Iterable[Key], glossary: str) -> Topic:
    """Everything about a word: `sections` are those of all chapters.

    A chapter called by its name is shown whole, and a section called by its heading, or by chapter and heading, by
    itself. A word that nothing has is looked up with one s more or less.
    """
    all_keys = tuple(keys)
    found = (_found(fold(each), sections, all_keys, glossary) for each in (word, word.removesuffix("s"), f"{word}s"))
    topics = tuple(found)
    return next((topic for topic in topics if not topic.empty), topics[0])


def _found(wanted: str, sections: Sequence[Section], keys: Sequence[Key], glossary: str) -> Topic:
    about = (
        tuple(section for section in sections if fold(section.chapter) == wanted)
        or tuple(section for section in sections if wanted in (fold(section.heading), _called(section)))
        or tuple(s for s in sections if s.chapter not in LISTS and _mentions(s.heading, wanted))
    )
    rest = (s for s in sections if s not in about and s.chapter != "contents" and _mentions(s.text, wanted))
    return Topic(
        tuple(
            f"{name}{second}: {what}"
            for name, second, what in MEANING.findall(glossary)
            if wanted in _names_of(name, second)
        ),
        tuple(_without_repeats(key for key in keys if fold(key.name) == wanted)),
        about,
        tuple(sorted(rest, key=lambda section: section.chapter in LISTS)),
    )


def names_told_of(sections: Iterable[Section], keys: Iterable[Key], glossary: str) -> frozenset[str]:
    """All names under which something is told."""
    headed = {name for s in sections if s.chapter not in LISTS for name in (s.chapter, s.heading.lower())}
    of_words = {each for name, second, _ in MEANING.findall(glossary) for each in _names_of(name, second)}
    return frozenset(headed | {key.name for key in keys} | of_words)


def passages(text: str, word: str) -> tuple[str, ...]:
    """The paragraphs, items and rows of a section that have a word, examples left out.

    >>> passages("A tray is open.\\n\\nA tuck box takes cards.", "Tuck Box")
    ('A tuck box takes cards.',)
    """
    return tuple(each for each in PASSAGE.split(FENCE.sub("", text)) if _mentions(each, fold(word)))


def _called(section: Section) -> str:
    return fold(f"{section.chapter} {section.heading}")


def _mentions(text: str, wanted: str) -> bool:
    return bool(wanted) and f" {wanted} " in f" {fold(text)} "


def _names_of(name: str, second: str) -> set[str]:
    return {fold(each) for each in (name, *re.split(r",|\bor\b", second.strip(" ()")))} - {""}


def _without_repeats(keys: Iterable[Key]) -> Iterable[Key]:
    """One key for all groups in which it means the same."""
    groups: Mapping[tuple[str, ...], list[Key]] = {}
    found: dict[tuple[str, ...], list[Key]] = dict(groups)
    for key in keys:
        found.setdefault((key.meaning, key.example, key.otherwise), []).append(key)
    for alike in found.values():
        first = alike[0]
        yield Key(first.name, ", ".join(key.group for key in alike), first.meaning, first.example, first.otherwise)
