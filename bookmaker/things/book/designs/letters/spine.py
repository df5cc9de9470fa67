"""What stands on a spine and where: title, author, volume number, ornament, device.

Everything is set inside the spine less a margin at both folds. Words run across where they can be read so, and
along the spine where that makes them much larger; the books of a set are all lettered as the one with the least
room asks for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import cast

from .....ground.geometry import Rect
from ..design import Lettering, Words
from ..ornament.ornaments import rule, stamp
from .alike import THICKER, Spine, alike, help_for, letters_of, serves_better, stacks_of, stand_upright, way_along
from .lettering import (
    Hand,
    Lettered,
    Way,
    What,
    fitted,
    letter,
    letter_height,
    lettered,
    letters_for,
    together,
    written,
)
from .stack import PAD, READABLE, Name, Order, Stack

__all__ = [
    "Spine",
    "as_in_set",
    "as_narrowest",
    "clear_of_folds",
    "free_room",
    "letter_number",
    "letter_spine",
    "prefers_across",
    "title_letters",
    "way_along",
    "way_for",
]

LARGEST_NUMBER = 3.2
"""The largest number, as the em in mm."""

LEAST_MARGIN, THIN_SHARE, MARGIN_SHARE = 0.4, 0.2, 0.12
"""Words keep 0.4 mm from a fold, which may be off by as much, or on a wide spine 12 % of its width; on a spine too
thin for that, a fifth."""


TOO_SMALL = 0.21
"""Letters lower than this, in mm, close up in print: it is five dots at 600 to the inch (common practice)."""


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
    """A room that is clear of the folds, as wide as on the narrowest spine of the set and, about its middle, as high as
    on the lowest: so all are lettered alike.
    """
    if not words.in_set:
        return room
    less = room.height * (1 - words.in_set.low) / 2
    return _as_wide(room, words.in_set.wider).grown(0, -less, 0, -less)


def _as_wide(room: Rect, wider: float) -> Rect:
    """A room as wide as on a spine that is narrower by so many mm."""
    spine = max(room.width / (1 - 2 * MARGIN_SHARE), room.width + 2 * LEAST_MARGIN)
    if spine < LEAST_MARGIN / THIN_SHARE:
        spine = room.width / (1 - 2 * THIN_SHARE)
    narrow = max(spine - wider, spine * 0.2)
    aside = (room.width - narrow) / 2 + clear_of_folds(narrow)
    return room.grown(-aside, 0, -aside, 0)


def letter_spine(room: Rect, words: Words, spine: Spine) -> Lettered:
    """Set everything into a room that `free_room` gave, or a style's own part of it."""
    if spine.way == "none":
        return Lettered()
    least = as_in_set(room, words)
    stacks = stacks_of(least.size, words, spine)
    own = stacks[words.place]
    body = together(_placed(Rect(least.x, room.y, least.width, room.height), own, stacks, spine))
    told = help_for(own.letters, least.size, words, spine) if own.letters < READABLE else ""
    lettering = (replace(line, help=told) if line.what == "title" else line for line in body.lettering)
    thin = f"write spine_title: none, or {THICKER}: not even one letter finds room on this spine"
    return replace(
        body, lettering=tuple(replace(line, help=thin) if _too_thin(least, line, spine) else line for line in lettering)
    )


def _too_thin(room: Rect, line: Lettering, spine: Spine) -> bool:
    """Whether a text is too small, and even one letter of it alone would be."""
    if line.x_height >= TOO_SMALL:
        return False
    letter_alone = next((sign for sign in line.text if sign.isalnum()), "x")
    face, _ = letters_for(line.what, letter_alone, spine.hand)
    size = fitted(line.what, letter_alone, room, spine.hand, line.way, spine.largest).size
    return size * letter_height(face, written(letter_alone, spine.hand)) < TOO_SMALL


def letter_number(number: str, box: Rect, words: Words, hand: Hand, largest: float = LARGEST_NUMBER) -> Lettered:
    """A number that has a place of its own, as large as the numbers of all books of the set can be there."""
    least = box.height * (words.in_set.low if words.in_set else 1.0)
    box = Rect(box.x, box.centre.y - least / 2, box.width, least)
    numbers = {number, *(fellow.volume or fellow.date for fellow in words.fellows)} - {""}
    size = min(fitted("volume", text, box, hand, "across", largest).size for text in numbers)
    return letter("volume", number, box, hand, "across", size)


def way_for(room: Rect, words: Words, spine: Spine) -> Way:
    """Which way the words run in a room; those of a set all the same."""
    return stacks_of(as_in_set(room, words).size, words, spine)[0].order.way


def title_letters(words: Words, spine: Spine) -> float:
    """How high the letters of a title are, in ems."""
    face, _ = letters_for("title", words.title, spine.hand)
    return letter_height(face, written(words.title, spine.hand))


def prefers_across(across: float, room: Rect, words: Words, spine: Spine) -> bool:
    """Whether titles in letters `across` mm high across the spine serve a set better than along a room."""
    if stand_upright(words.fellows):
        return False
    along = alike(as_in_set(room, words).size, words.fellows, spine, way_along(words))
    return serves_better(across, letters_of(along))


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
        what = cast(What, name)
        way = order.way_of(name)
        setting = own.texts[name].at(own.ems[name])
        if way == "across":  # first lines are level through a set
            box = Rect(box.x, box.top - setting.height, box.width, setting.height)
        yield lettered(what, text, setting, box, spine.hand, way)
