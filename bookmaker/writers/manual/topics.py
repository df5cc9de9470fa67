"""What the manual says about a word: its meaning, the keys of that name, and the places that are about it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from .chapters import Section, fold
from .keys import Key

__all__ = ["Topic", "look_up"]

MEANING = re.compile(r"^- \*\*(.+?)\*\*(.*?): (.+)$", re.MULTILINE)
"""An entry of the glossary: the word, its second name in brackets, what it is."""


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

    A chapter called by its name is shown whole.
    """
    wanted = fold(word)
    whole = tuple(section for section in sections if fold(section.chapter) == wanted)
    about = whole or tuple(section for section in sections if _names(section.heading, wanted))
    rest = (section for section in sections if section not in about and section.chapter != "contents")
    return Topic(
        tuple(
            f"{name}{second}: {what}"
            for name, second, what in MEANING.findall(glossary)
            if wanted in _names_of(name, second)
        ),
        tuple(_without_repeats(key for key in keys if fold(key.name) == wanted)),
        about,
        tuple(section for section in rest if f" {wanted} " in f" {fold(section.text)} "),
    )


def _names(heading: str, wanted: str) -> bool:
    return bool(wanted) and f" {wanted} " in f" {fold(heading)} "


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
