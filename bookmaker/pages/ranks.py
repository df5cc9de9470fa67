"""Ranks of headings: what is the title of the text, what a part of it, what a chapter, and what is smaller.

Authors write the ranks of headings as they like; what a heading is, its neighbours tell. After `ranked` the level
of a heading is one of the ranks here.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..errors import Problem, Severity
from .passage import Passage, Role

__all__ = ["CHAPTER", "PART", "TITLE", "ranked"]

TITLE, PART, CHAPTER = 1, 2, 3
"""Levels of headings after `ranked`; sections have the levels after these."""


@dataclass(frozen=True, slots=True)
class _Head:
    """A heading of the highest level: where it stands, and what stands under it before the next.

    `below` says that headings do, `speaks` that text stands between it and the first of them, or the next.
    """

    place: int
    below: bool
    speaks: bool


def ranked(passages: Sequence[Passage], name: str) -> tuple[list[Passage], list[Problem]]:
    """The passages with the ranks of their headings as levels, and a note where another reading was near.

    A single highest heading with which the text begins is its title, if there are others under it. Highest
    headings are parts where others follow at once under at least two of them, and under none of them later.
    Else they are chapters.

    >>> heads = [Passage("One", Role.HEADING, 1), Passage("i", Role.HEADING, 2), Passage("Fog")]
    >>> [passage.level for passage in ranked([*heads, *heads], "log.md")[0]]
    [2, 3, 0, 2, 3, 0]
    """
    levels = sorted({passage.level for passage in passages if passage.role is Role.HEADING})
    if not levels:
        return list(passages), []
    heads = list(_heads(passages, levels[0]))
    title, parts, notes = _told(heads, passages, name)
    nested = len(levels) > 1 and (bool(parts) or (title is not None and heads[0].below))
    chapters = levels[1] if nested else levels[0]
    rank = {level: CHAPTER + max(0, level - chapters) for level in levels}
    ranks = {head.place: PART for head in parts} | ({title: TITLE} if title is not None else {})
    return [
        passage._replace(level=ranks.get(place, rank[passage.level])) if passage.role is Role.HEADING else passage
        for place, passage in enumerate(passages)
    ], notes


def _told(
    heads: Sequence[_Head], passages: Sequence[Passage], name: str
) -> tuple[int | None, list[_Head], list[Problem]]:
    """Where the title of the text stands, which headings are parts, and what to say of it."""
    first = next((place for place, passage in enumerate(passages) if passage.text), None)
    begins = heads[0].place == first
    if len(heads) == 1:
        return (heads[0].place if begins and heads[0].below else None), [], []
    followed = [head for head in heads if head.below]
    if any(head.speaks for head in followed) or not followed:
        notes = [_note(name, "chapters, and those under them sections")] if begins and followed == [heads[0]] else []
        return None, [], notes
    if followed == [heads[0]] and begins:
        return heads[0].place, [], [_note(name, "chapters like those under the first, which is the title")]
    silent = begins and not heads[0].below and not heads[0].speaks
    return (heads[0].place if silent else None), followed, [_note(name, "parts, and those under them chapters")]


def _heads(passages: Sequence[Passage], highest: int) -> Iterator[_Head]:
    places = [
        place for place, passage in enumerate(passages) if passage.role is Role.HEADING and passage.level == highest
    ]
    for place, end in zip(places, [*places[1:], len(passages)], strict=True):
        under = passages[place + 1 : end]
        first = next((at for at, passage in enumerate(under) if passage.role is Role.HEADING), None)
        speaks = any(passage.role is Role.BODY and not passage.inset for passage in under[:first])
        yield _Head(place, first is not None, speaks)


def _note(name: str, what: str) -> Problem:
    return Problem(
        f"the highest headings of {name} are {what}",
        "write text between a heading and those under it to make it a chapter with sections",
        Severity.NOTE,
        field=("file",),
    )
