"""Ranks of headings: what is the title of the text, what a part of it, what a chapter, and what is smaller.

Authors write the levels of headings as they like; which rank a heading has, its neighbours tell.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import Enum, IntEnum

from ...ground.problems import Problem, Severity, ShelfFileError
from .passage import Passage, Role

__all__ = ["OTHER", "RUNNING_TEXT", "Rank", "ranked", "ranks_of"]

RUNNING_TEXT, OTHER = 0, -1
"""What stands between headings: paragraphs, and all that may stand under the title of a part too."""


LONGEST_HEADING = 10_000
"""Letters; old books have titles of a thousand."""


class Rank(IntEnum):
    """What a heading heads; what is smaller than a section has the ranks after it."""

    TITLE = 1
    PART = 2
    CHAPTER = 3
    SECTION = 4


class _Reading(Enum):
    """How the highest headings were understood, where another way was near."""

    CHAPTERS = "chapters, and those under them sections"
    TITLE = "chapters, but for the first, which is the title"
    PARTS = "parts, and those under them chapters"


@dataclass(frozen=True, slots=True)
class _Head:
    """A heading of the highest level: where it stands, and what stands under it before the next.

    `below` counts the headings among it, `speaks` that text stands between it and the first of these, or the next.
    """

    place: int
    below: int
    speaks: bool


def ranked(passages: Sequence[Passage], name: str) -> tuple[list[Passage], list[Problem]]:
    """The passages with the ranks of their headings as levels, and a note where another reading was near.

    Raises:
        ShelfFileError: a heading is longer than any book has: a mark turned a whole text into one.

    >>> heads = [Passage("One", Role.HEADING, 1), Passage("i", Role.HEADING, 2), Passage("Fog")]
    >>> [passage.level for passage in ranked([*heads, *heads], "log.md")[0]]
    [2, 3, 0, 2, 3, 0]
    """
    long = (p.text for p in passages if p.role is Role.HEADING and len(p.text) > LONGEST_HEADING)
    if text := next(long, ""):
        message = f"{name} has a heading of {len(text)} letters, more than {LONGEST_HEADING}: {text[:20]!r}…"
        remedy = "write the text under it on a line of its own, after a blank one"
        raise ShelfFileError((Problem(message, remedy, field=("file",)),))
    ranks, reading = ranks_of([_kind(passage) for passage in passages])
    found, part = [], 0
    for place, passage in enumerate(passages):
        if passage.role is Role.HEADING:
            rank = ranks.get(place, Rank.SECTION)
            if rank == Rank.PART:
                part = passage.level
            elif part >= passage.level and not passage.inset:
                part = 0  # what is as high as a part stands beside it
            found.append(passage._replace(level=int(rank), within=rank == Rank.CHAPTER and part > 0))
        else:
            found.append(passage)
    return found, [_note(name, reading)] if reading else []


def ranks_of(kinds: Sequence[int]) -> tuple[dict[int, int], _Reading | None]:
    """The rank of each heading by its place; `kinds` are the levels of headings from 1, and what is between them.

    A single highest heading with which the text begins is its title, if there are others under it. Highest
    headings are parts where others follow at once under at least two of them, and no text stands between.
    Else they are chapters.

    >>> ranks_of([1, 2, RUNNING_TEXT, 2, RUNNING_TEXT])[0]
    {0: <Rank.TITLE: 1>, 1: 3, 3: 3}
    """
    levels = sorted({kind for kind in kinds if kind > 0})
    if not levels:
        return {}, None
    heads = list(_heads(kinds, levels[0]))
    larger, reading = _larger(heads, begins=RUNNING_TEXT not in kinds[: heads[0].place])
    nested = any(head.below and head.place in larger for head in heads)
    chapters = levels[nested]
    ranks: dict[int, int] = {
        place: Rank.CHAPTER + max(0, level - chapters) for place, level in enumerate(kinds) if level > 0
    }
    return {place: larger.get(place, rank) for place, rank in ranks.items()}, reading


def _larger(heads: Sequence[_Head], *, begins: bool) -> tuple[dict[int, Rank], _Reading | None]:
    """Which of the highest headings are more than chapters."""
    first, followed = heads[0], [head for head in heads if head.below]
    if len(heads) == 1:
        return ({first.place: Rank.TITLE} if begins and first.below else {}), None
    alone = begins and followed == [first]
    if not followed or any(head.speaks for head in followed):
        return {}, _Reading.CHAPTERS if alone and first.below > 1 else None
    if alone:
        return {first.place: Rank.TITLE}, _Reading.TITLE
    parts = {head.place: Rank.PART for head in followed}
    titled = begins and not first.below and not first.speaks
    return parts | ({first.place: Rank.TITLE} if titled else {}), _Reading.PARTS


def _heads(kinds: Sequence[int], highest: int) -> Iterator[_Head]:
    places = [place for place, kind in enumerate(kinds) if kind == highest]
    for place, end in zip(places, [*places[1:], len(kinds)], strict=True):
        under = kinds[place + 1 : end]
        first = next((at for at, kind in enumerate(under) if kind > 0), None)
        yield _Head(place, sum(kind > 0 for kind in under), RUNNING_TEXT in under[:first])


def _kind(passage: Passage) -> int:
    if passage.inset:
        return OTHER
    if passage.role is Role.HEADING:
        return passage.level
    return RUNNING_TEXT if passage.role in {Role.BODY, Role.VERSE} else OTHER


def _note(name: str, reading: _Reading) -> Problem:
    return Problem(
        f"the highest headings of {name} are {reading.value}",
        "write a paragraph between a heading and those under it to make it a chapter with sections"
        if reading is not _Reading.CHAPTERS
        else "leave out the text between the first heading and that under it to make it the title",
        Severity.NOTE,
        field=("file",),
    )
