"""What stands on a spine and where: title, author, volume number, ornament, device.

Everything is set inside the spine less a margin at both folds. Words run across where they can be read so, and
along the spine where that makes them much larger; the books of a set are all lettered as the one with the least
room asks for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import cast

from ..geometry import Path, Rect
from .design import SpineTitle, Words
from .lettering import (
    Hand,
    Lettered,
    Way,
    What,
    face_of,
    fitted,
    letter,
    letter_height,
    lettered,
    together,
    typeface_for,
    written,
)
from .names import surname
from .ornaments import rule, stamp
from .stack import PAD, READABLE, Name, Order, Stack, stacked
from .wording import reads_upwards, shortened

__all__ = ["LARGEST", "Spine", "as_in_set", "as_narrowest", "clear_of_folds", "free_room",
           "letter_number", "letter_spine", "prefers_across", "way_along", "way_for"]  # fmt: skip

LARGEST = 5.0
"""The largest titling, as the em in mm, that a folio asks for at 1:12."""

LARGEST_NUMBER = 1.8
"""The largest number, as the em in mm."""

LEAST_MARGIN, THIN_SHARE, MARGIN_SHARE = 0.4, 0.2, 0.12
"""Words keep 0.4 mm from a fold, which may be off by as much, or on a wide spine 12 % of its width; on a spine too
thin for that, a fifth."""

ACROSS_IF = 0.82
"""Titles run across if that makes them at least this share of the size they would have along the spine."""

ACROSS_WHERE_LARGE = 0.55
"""The same for letters that are read easily both ways."""

EASY = 0.5
"""Letters of this height in mm are read easily: 5.7 minutes of arc at 300 mm."""

AUTHOR_EASY = 0.26
"""An author's name in letters of this height in mm is not shortened for the title's sake."""

NEARLY = 0.87
"""What makes the title no smaller than this share of what it could be is kept: ornament, first name."""

Form = tuple[bool, float, bool]

FORMS: tuple[Form, ...] = (
    (True, 0.72, True), (True, 0.72, False), (False, 0.72, True), (False, 0.72, False),
)  # fmt: skip
"""What is given up for the title's sake, step by step: whether the author's name is in full, its size as a share of
the title's, whether there is an ornament."""

LAST_FORM: Form = (False, 0.55, False)
"""What is given up only where the title cannot be read otherwise, and gains by it."""

WORTH_IT = 1.15
"""So many times larger must letters become for a remedy to be named."""


@dataclass(frozen=True, slots=True)
class Spine:
    """How a spine is asked to look: a style says the hand and the ornaments, the maker the way."""

    hand: Hand
    way: SpineTitle = "auto"
    abbreviate: bool = False
    fleuron: Path | None = None
    device: Path | None = None
    author_first: bool = False
    rules: bool = False
    largest: float = LARGEST


def clear_of_folds(width: float) -> float:
    """How far words keep from either fold of a spine, in mm.

    >>> [round(clear_of_folds(width), 2) for width in (1.5, 2.0, 3.0, 10.0)]
    [0.3, 0.4, 0.4, 1.2]
    """
    return max(min(LEAST_MARGIN, width * THIN_SHARE), width * MARGIN_SHARE)


def free_room(spine: Rect) -> Rect:
    """The part of a spine where words may stand: clear of both folds, and of head and tail."""
    aside, above = clear_of_folds(spine.width), min(1.3, spine.height * 0.06)
    return spine.grown(-aside, -above, -aside, -above)


def as_narrowest(spine: Rect, words: Words) -> Rect:
    """A spine as narrow as the narrowest of the set, about the same middle."""
    aside = min(words.in_set.wider / 2, spine.width * 0.4) if words.in_set else 0.0
    return spine.grown(-aside, 0, -aside, 0)


def as_in_set(room: Rect, words: Words) -> Rect:
    """A room that is clear of the folds, as wide as on the narrowest spine of the set: so all are lettered alike."""
    if not words.in_set:
        return room
    spine = max(room.width / (1 - 2 * MARGIN_SHARE), room.width + 2 * LEAST_MARGIN)
    if spine < LEAST_MARGIN / THIN_SHARE:
        spine = room.width / (1 - 2 * THIN_SHARE)
    narrow = max(spine - words.in_set.wider, spine * 0.2)
    aside = (room.width - narrow) / 2 + clear_of_folds(narrow)
    return room.grown(-aside, 0, -aside, 0)


def letter_spine(room: Rect, words: Words, spine: Spine) -> Lettered:
    """Set everything into a room that `free_room` gave, or a style's own part of it."""
    if spine.way == "none":
        return Lettered()
    room = as_in_set(room, words)
    stacks = _stacks(room, words, spine)
    own = stacks[words.fellows.index(replace(words, in_set=None)) if len(stacks) > 1 else 0]
    body = together(_placed(room, own, stacks, spine))
    if own.letters >= READABLE:
        return body
    told = _help(own.letters, room, words, spine)
    lettering = tuple(replace(line, help=told) if line.what == "title" else line for line in body.lettering)
    return replace(body, lettering=lettering)


def letter_number(number: str, box: Rect, words: Words, hand: Hand) -> Lettered:
    """A number that has a place of its own, as large as the numbers of all books of the set can be there."""
    numbers = {number, *(fellow.volume or fellow.date for fellow in words.fellows)} - {""}
    size = min(fitted("volume", text, box, hand, "across", LARGEST_NUMBER).size for text in numbers)
    return letter("volume", number, box, hand, "across", size)


def way_along(words: Words) -> Way:
    """Which way words run along a spine, by the practice of their language; those of a set as in its first book."""
    first = words.fellows[0]
    return "up" if reads_upwards(first.language, first.title) else "down"


def way_for(room: Rect, words: Words, spine: Spine) -> Way:
    """Which way the words run in a room; those of a set all the same."""
    return _stacks(as_in_set(room, words), words, spine)[0].order.way


def _stacks(room: Rect, words: Words, spine: Spine) -> list[Stack]:
    """The stacks of all books of the set, or of the one book: alike in way, sizes and ornament."""
    best: list[Stack] = []
    for fellows in _worded(words.fellows, spine):
        found = _one_way(room, fellows, spine)
        if not best or _letters(found) > _letters(best):
            best = found
        if _letters(best) >= READABLE:
            break
    return best


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


def _one_way(room: Rect, fellows: Sequence[Words], spine: Spine) -> list[Stack]:
    """The stacks of a set in the way that is asked for, or in that which serves it best."""
    if spine.way != "auto":
        return _alike(room, fellows, spine, cast(Way, spine.way))
    along = _alike(room, fellows, spine, way_along(fellows[0]))
    across = _alike(room, fellows, spine, "across")
    return across if _serves_better(_letters(across), _letters(along)) else along


def prefers_across(size: float, room: Rect, words: Words, spine: Spine) -> bool:
    """Whether titles with an em of `size` mm across the spine serve a set better than along a room."""
    face, _ = typeface_for(words.title, face_of("title", spine.hand))
    across = size * letter_height(face, written(words.title, spine.hand))
    return _serves_better(across, _letters(_alike(as_in_set(room, words), words.fellows, spine, way_along(words))))


def _serves_better(across: float, along: float) -> bool:
    """Whether words should run across, by the height of their letters in mm both ways: the easier to read, the rather.

    What cannot be read across runs along the spine, unless it is still smaller there.
    """
    wanted = ACROSS_WHERE_LARGE if across >= EASY else ACROSS_IF if across >= READABLE else 1.0
    return across >= wanted * along


def _letters(stacks: Sequence[Stack]) -> float:
    return min(stack.letters for stack in stacks)


def _alike(room: Rect, fellows: Sequence[Words], spine: Spine, way: Way) -> list[Stack]:
    """The stacks of a set one way, all of one size and one form."""
    tried = [[stacked(order) for order in _orders(room, fellows, spine, way, form)] for form in FORMS]
    best = max(min(stack.worth for stack in stacks) for stacks in tried)
    best_author = max(_author_letters(stacks) for stacks in tried)
    chosen = next((stacks for stacks in tried if _enough(stacks, best, best_author)), tried[-1])
    if _letters(chosen) < READABLE:
        last = [stacked(order) for order in _orders(room, fellows, spine, way, LAST_FORM)]
        chosen = last if _letters(last) > _letters(chosen) * WORTH_IT else chosen
    if len(fellows) == 1:
        return chosen
    least: dict[Name, float] = {}
    for stack in chosen:
        for name, em in stack.ems.items():
            least[name] = min(em, least.get(name, em))
    return [stacked(replace(stack.order, most=tuple(least.items()))) for stack in chosen]


def _orders(room: Rect, fellows: Sequence[Words], spine: Spine, way: Way, form: Form) -> list[Order]:
    in_full, share, ornament = form
    most: tuple[tuple[Name, float], ...] = (("title", spine.largest),)
    return [
        Order(
            room=room.size,
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


def _enough(stacks: Sequence[Stack], best: float, best_author: float) -> bool:
    """Whether titles and authors can be read, or are nearly as large as they can be."""
    title = _letters(stacks) >= READABLE or min(stack.worth for stack in stacks) >= NEARLY * best
    author = _author_letters(stacks)
    return title and (author >= AUTHOR_EASY or author >= NEARLY * best_author)


def _author_letters(stacks: Sequence[Stack]) -> float:
    """The height of the smallest letters of an author in mm."""
    sizes = []
    for stack in stacks:
        order = stack.order
        if order.author:
            face, _ = typeface_for(order.author, face_of("author", order.hand))
            sizes.append(stack.ems["author"] * letter_height(face, written(order.author, order.hand)))
    return min(sizes, default=float("inf"))


def _help(now: float, room: Rect, words: Words, spine: Spine) -> str:
    """What would make a small title larger."""

    def grows(words: Words = words, room: Rect = room, **keys: object) -> bool:
        return _letters(_stacks(room, words, replace(spine, **keys))) > now * WORTH_IT  # type: ignore[arg-type]

    advice = [f"spine_title: {way}" for way in ("across", "down") if way != spine.way and grows(way=way)]
    if not spine.abbreviate and grows(abbreviate=True):
        shorter = next(stack for stack in _stacks(room, words, replace(spine, abbreviate=True)))
        advice.append(f"abbreviate: yes, which sets {shorter.order.title!r}")
    said = [f"write {text}" for text in advice]
    if grows(room=Rect(room.x, room.y, room.width * 1.3, room.height)):
        said.append("make the book thicker")
    if grows(room=Rect(room.x, room.y, room.width, room.height * 1.3)):
        said.append("make it taller" if said else "make the book taller")
    return " or ".join(said or ["write a shorter title"])


def _placed(room: Rect, own: Stack, stacks: Sequence[Stack], spine: Spine) -> Iterator[Lettered]:
    """Everything in its place; each thing has as much of the height as the largest of its kind in the set."""
    names = own.order.names
    slots = {name: max(stack.lengths.get(name, 0.0) for stack in stacks) for name in names}
    clear = max(stack.clear for stack in stacks)
    ends = own.ems["title"] * PAD
    spare = room.height - sum(slots.values()) - clear * (len(names) - 1) - 2 * ends
    y = room.top - ends
    for name, before in zip(names, _spaced(names, own.order, max(0.0, spare)), strict=True):
        y -= before + slots[name]
        yield from _thing(name, Rect(room.x, y, room.width, slots[name]), own, spine)
        y -= clear


FOOT: tuple[Name, ...] = ("volume", "date", "device")


def _spaced(names: Sequence[Name], order: Order, spare: float) -> list[float]:
    """How much of the spare height goes over each thing.

    The foot stands at the tail. Along the spine the rest is shared evenly; across it the title stays near the head
    and the author near the title.
    """
    across = order.way == "across"
    weights: list[float] = []
    for number, name in enumerate(names):
        if name in FOOT:
            weights.append(0.0 if number and names[number - 1] in FOOT else 1.0)
        elif number == 0:
            weights.append(0.3 if across else 1.0)
        else:
            weights.append(0.15 if across and order.author else 0.5 if "ornament" in names else 1.0)
    under = 0.0 if names[-1] in FOOT else 1.0
    whole = sum(weights) + under
    return [spare * weight / whole for weight in weights]


def _thing(name: Name, box: Rect, own: Stack, spine: Spine) -> Iterator[Lettered]:
    """One thing in its slot."""
    order, ink = own.order, spine.hand.ink
    if name == "rule":
        half = box.width * 0.3
        yield Lettered((rule(box.centre.y, box.centre.x - half, box.centre.x + half, max(0.06, box.height), ink),))
    elif name in ("ornament", "device"):
        motif = spine.fleuron if name == "ornament" else spine.device
        assert motif is not None  # only what there is is stacked
        side = own.ems[name] if name == "ornament" else box.height
        yield Lettered((stamp(motif, Rect(box.centre.x - side / 2, box.centre.y - side / 2, side, side), ink),))
    else:
        text = {"title": order.title, "author": order.author, "volume": order.volume, "date": order.date}[name]
        what: What = "volume" if name == "date" else cast(What, name)
        way: Way = "across" if name in FOOT else order.way
        setting = own.texts[name].at(own.ems[name])
        if way == "across":  # first lines are level through a set
            box = Rect(box.x, box.top - setting.height, box.width, setting.height)
        yield lettered(what, text, setting, box, spine.hand, way)
