"""How the books of a set are lettered alike: which way, in which form, how large; and what would make it larger.

A book that belongs to no set is a set of its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import cast

from .....ground.geometry import Path, Size
from .....ground.quantities import show
from .....typesetting.lines.ideographs import has_ideographs
from ..design import SpineTitle, Words
from .lettering import Hand, Way, letter_height, letters_for, written
from .names import surname
from .stack import NUMBERS, READABLE, SMALLEST_NUMBER, Name, Order, Stack, stacked
from .titling import SUBTITLE
from .wording import reads_upwards, shortened, with_subtitle

__all__ = [
    "LARGEST",
    "THICKER",
    "Spine",
    "alike",
    "help_for",
    "letters_of",
    "serves_better",
    "stacks_of",
    "stand_upright",
    "way_along",
]

LARGEST = 5.0
"""The largest titling, as the em in mm, that a folio asks for at 1:12."""

THICKER = "make the book thicker (thicker paper, or more pages, filled up with dummy text)"
"""How a spine becomes wider: in one breath with what then becomes of the pages, which a text may not fill."""

ACROSS_IF = 0.82
"""Titles run across if that makes them at least this share of the size they would have along the spine."""

ACROSS_WHERE_LARGE = 0.55
"""The same for letters that are read easily both ways."""

EASY = 0.5
"""Letters of this height in mm are read easily: 5.7 minutes of arc at 300 mm."""

AUTHOR_EASY = 0.26
"""An author's name in letters of this height in mm is not shortened for the title's sake."""

HALF_EMPTY, WIDE = 0.4, 5.0
"""On a room narrower than this, in mm, words across that take less of its height look lost: they run along the spine
where that makes them larger."""

SUBTITLE_EASY = 0.36
"""Subtitles in lower letters, in mm, are left out."""

NEARLY = 0.87
"""What makes the title no smaller than this share of what it could be is kept: ornament, first name."""

Form = tuple[bool, float, bool]
"""Whether the author's name is in full, its size as a share of the title's, whether there is an ornament."""

FORMS: tuple[Form, ...] = (
    (True, 0.72, True), (True, 0.72, False), (False, 0.72, True), (False, 0.72, False),
)  # fmt: skip
"""What is given up for the title's sake, step by step: the ornament, then all but the surname."""

LAST_FORM: Form = (False, 0.55, False)
"""What is given up only where the title cannot be read otherwise, and gains by it."""

GAIN_OF_A_WORD = 1.04
"""A title is shortened once more only if its letters become so many times larger."""

WORTH_IT = 1.15
"""So many times larger must letters become for a remedy to be named."""


@dataclass(frozen=True, slots=True)
class Spine:
    """How a spine is asked to look: a style says the hand and the ornaments, the maker the way.

    `abbreviate` is whether titles may be shortened; None where a maker cannot say so.
    """

    hand: Hand
    way: SpineTitle = "auto"
    abbreviate: bool | None = False
    fleuron: Path | None = None
    device: Path | None = None
    author_first: bool = False
    rules: bool = False
    largest: float = LARGEST


def way_along(words: Words) -> Way:
    """Which way words run along a spine, by the practice of their language; those of a set as in its first book."""
    first = words.fellows[0]
    return "up" if reads_upwards(first.language, first.title) else "down"


def stacks_of(room: Size, words: Words, spine: Spine) -> list[Stack]:
    """The stacks of all books of the set, or of the one book: alike in way, sizes and ornament.

    Subtitles that nobody could read are left out (common practice), whether titles may be shortened or not.
    """
    best: list[Stack] = []
    for fellows in _worded(_without_small_subtitles(room, words.fellows, spine), spine):
        found = _one_way(room, fellows, spine)
        if not best or letters_of(found) > letters_of(best) * GAIN_OF_A_WORD:
            best = found
        if letters_of(best) >= READABLE:
            break
    return best


def _without_small_subtitles(room: Size, fellows: Sequence[Words], spine: Spine) -> Sequence[Words]:
    """The books of a set as they are, or all without subtitles."""
    plain = [replace(words, title=with_subtitle(words.title)[0]) for words in fellows]
    if plain == list(fellows) or SUBTITLE * letters_of(_one_way(room, fellows, spine)) >= SUBTITLE_EASY:
        return fellows
    return plain


def _worded(fellows: Sequence[Words], spine: Spine) -> Iterator[list[Words]]:
    """The books as they are, and if they may be, with shorter and shorter titles."""
    yield list(fellows)
    if spine.abbreviate:
        ways = [list(shortened(words.title)) for words in fellows]
        for step in range(1, max(map(len, ways))):
            yield [
                replace(words, title=titles[min(step, len(titles) - 1)])
                for words, titles in zip(fellows, ways, strict=True)
            ]


def _one_way(room: Size, fellows: Sequence[Words], spine: Spine) -> list[Stack]:
    """The stacks of a set in the way that is asked for, or in that which serves it best."""
    if spine.way != "auto":
        return alike(room, fellows, spine, cast(Way, spine.way))
    along = alike(room, fellows, spine, way_along(fellows[0]))
    if stand_upright(fellows):
        return along
    across = alike(room, fellows, spine, "across")
    lost = max(map(_filled, across)) < HALF_EMPTY and room.width < WIDE
    larger = lost and letters_of(across) < ACROSS_IF * letters_of(along)
    return along if larger or not serves_better(letters_of(across), letters_of(along)) else across


def _filled(stack: Stack) -> float:
    """The share of its room that a stack takes at least."""
    return (sum(stack.lengths.values()) + stack.clear * (len(stack.lengths) - 1)) / stack.order.room.height


def stand_upright(fellows: Sequence[Words]) -> bool:
    """Whether titles are of signs that stand upright along the spine, so that nothing is gained across it."""
    return all(has_ideographs(words.title) for words in fellows)


def serves_better(across: float, along: float) -> bool:
    """Whether words should run across, by the height of their letters in mm both ways: the easier to read, the rather.

    What cannot be read across runs along the spine, unless it is still smaller there.
    """
    wanted = ACROSS_WHERE_LARGE if across >= EASY else ACROSS_IF if across >= READABLE else 1.0
    return across >= wanted * along


def letters_of(stacks: Sequence[Stack]) -> float:
    """The height of the smallest letters of a title in mm."""
    return min(stack.letters for stack in stacks)


def alike(room: Size, fellows: Sequence[Words], spine: Spine, way: Way) -> list[Stack]:
    """The stacks of a set one way, all of one size and form; where one number cannot stand upright, none does."""

    def formed(form: Form) -> list[Stack]:
        orders = _orders(room, fellows, spine, way, form)
        upright = [stacked(order) for order in orders]
        turned = tuple(name for name in NUMBERS if not all(_stands(name, stack) for stack in upright))
        return [stacked(replace(order, turned=turned)) for order in orders] if turned else upright

    chosen = formed(FORMS[0])
    if not _easily_read(chosen):
        chosen = _most_fitting([chosen, *map(formed, FORMS[1:])])
    if letters_of(chosen) < READABLE:
        last = formed(LAST_FORM)
        chosen = last if letters_of(last) > letters_of(chosen) * WORTH_IT else chosen
    if len(fellows) == 1:
        return chosen
    least: dict[Name, float] = {}
    for stack in chosen:
        for name, em in stack.ems.items():
            least[name] = min(em, least.get(name, em))
    return [stacked(replace(stack.order, most=tuple(least.items()))) for stack in chosen]


def _stands(name: Name, stack: Stack) -> bool:
    """Whether volume number or date is large enough, as it stands across the spine."""
    least = SMALLEST_NUMBER * stack.ems["title"]
    return stack.order.way == "across" or stack.ems.get(name, least) >= least


def _orders(room: Size, fellows: Sequence[Words], spine: Spine, way: Way, form: Form) -> list[Order]:
    in_full, share, ornament = form
    most: tuple[tuple[Name, float], ...] = (("title", spine.largest),)
    return [
        Order(
            room=room,
            way=way,
            hand=spine.hand,
            title=words.title,
            author=words.author if in_full else surname(words.author, words.language),
            author_share=share,
            volume=words.volume,
            date=words.date,
            ornament=ornament and spine.fleuron is not None,
            rule=spine.rules,
            device=spine.device is not None,
            author_first=spine.author_first,
            most=most,
        )
        for words in fellows
    ]


def _easily_read(stacks: Sequence[Stack]) -> bool:
    """Whether titles and authors can be read as they are."""
    return letters_of(stacks) >= READABLE and _author_letters(stacks) >= AUTHOR_EASY


def _most_fitting(tried: Sequence[list[Stack]]) -> list[Stack]:
    """The first form in which titles and authors can be read, or are nearly as large as they can be."""
    best = max(min(stack.worth for stack in stacks) for stacks in tried)
    best_author = max(_author_letters(stacks) for stacks in tried)
    for stacks in tried:
        title = letters_of(stacks) >= READABLE or min(stack.worth for stack in stacks) >= NEARLY * best
        author = _author_letters(stacks)
        if title and (author >= AUTHOR_EASY or author >= NEARLY * best_author):
            return stacks
    return tried[-1]


def _author_letters(stacks: Sequence[Stack]) -> float:
    """The height of the smallest letters of an author in mm."""
    sizes = []
    for stack in stacks:
        order = stack.order
        if order.author:
            face, _ = letters_for("author", order.author, order.hand)
            sizes.append(stack.ems["author"] * letter_height(face, written(order.author, order.hand)))
    return min(sizes, default=float("inf"))


def help_for(now: float, room: Size, words: Words, spine: Spine) -> str:
    """What would make a small title larger."""

    def grows(words: Words = words, room: Size = room, **keys: object) -> bool:
        return letters_of(stacks_of(room, words, replace(spine, **keys))) > now * WORTH_IT  # type: ignore[arg-type]

    advice = [f"spine_title: {way}" for way in ("across", "down") if way != spine.way and grows(way=way)]
    if spine.abbreviate is False and grows(abbreviate=True):
        shorter = stacks_of(room, words, replace(spine, abbreviate=True))[words.place].order.title
        advice.append(f"abbreviate: yes, which sets {show(shorter)!r}")
    said = [f"write {text}" for text in advice]
    if grows(room=Size(room.width * 1.3, room.height)):
        said.append(THICKER)
    if grows(room=Size(room.width, room.height * 1.3)):
        said.append("make it taller" if said else "make the book taller")
    return ", or ".join(said or ["write a shorter title"])
