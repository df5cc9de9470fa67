"""What stands on a spine and where: title, author, volume number, ornament, device.

Everything is set inside the spine less an inset, so that it stays clear of the folds. Words run across where
that makes them as large as running along would, and along the spine otherwise.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import cast

from ..geometry import Path, Rect
from .design import SpineTitle, Words
from .lettering import Hand, Lettered, Way, fitted, letter, together
from .ornaments import rule, stamp
from .wording import reads_upwards, shortened

__all__ = ["LARGEST", "Spine", "alike", "as_in_set", "free_room", "letter_spine", "way_for"]

INSET = 0.35
"""Words keep this far from the folds of the spine, in mm: a fold may be that far off."""

LARGEST = 5.0
"""The largest titling, as the em in mm, that a folio asks for at 1:12."""

AUTHOR_SHARE = 0.72
"""The author is set no larger than this share of the title."""

ACROSS_IF = 0.82
"""Titles run across if that makes them at least this share of the size they would have along the spine."""

SMALL = 0.3
"""A title with letters lower than this, in mm, is told what would help."""

WORTH_IT = 1.15
"""So many times larger must letters become for a remedy to be named."""

LEGIBLE = 0.5
"""A title that may be shortened is, until its em has this many mm."""


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


def free_room(spine: Rect) -> Rect:
    """The part of a spine where words may stand: clear of both folds, and of head and tail."""
    aside, above = min(INSET, spine.width * 0.2), min(1.3, spine.height * 0.06)
    return spine.grown(-aside, -above, -aside, -above)


def as_in_set(room: Rect, words: Words) -> Rect:
    """A room no wider than on the narrowest spine of the set, so that all are lettered alike and on one line."""
    aside = min(words.in_set.wider / 2, room.width * 0.4) if words.in_set else 0.0
    return room.grown(-aside, 0, -aside, 0)


def letter_spine(room: Rect, words: Words, spine: Spine) -> Lettered:
    """Set everything into a room that `free_room` gave, or a style's own part of it."""
    if spine.way == "none":
        return Lettered()
    room = as_in_set(room, words)
    room, foot = _foot(room, words, spine)
    spine = alike(room, words, spine)
    title = _title_to_set(room, words, spine)
    way = way_for(room, title, words, spine)
    body = _across(room, title, words, spine) if way == "across" else _along(room, title, words, spine, way)
    return together((_with_help(body, room, words, spine), *foot))


def _with_help(body: Lettered, room: Rect, words: Words, spine: Spine) -> Lettered:
    """What would make a small title larger, told with it."""
    small = [line for line in body.lettering if line.what == "title" and line.x_height < SMALL]
    if not small:
        return body
    told = _help(small[0].x_height, room, words, spine)
    lettering = tuple(replace(line, help=told) if line in small else line for line in body.lettering)
    return replace(body, lettering=lettering)


def _help(now: float, room: Rect, words: Words, spine: Spine) -> str:
    def height(title: str, way: SpineTitle) -> float:
        asked = replace(spine, way=way)
        way_taken = way_for(room, title, words, asked)
        body = _across(room, title, words, asked) if way_taken == "across" else _along(
            room, title, words, asked, way_taken)  # fmt: skip
        return max(line.x_height for line in body.lettering if line.what == "title")

    ways: tuple[SpineTitle, ...] = ("across", "down")
    advice = [f"spine_title: {way}" for way in ways if height(words.title, way) > now * WORTH_IT]
    if not spine.abbreviate:
        shorter = max(shortened(words.title), key=lambda title: height(title, spine.way))
        if height(shorter, spine.way) > now * WORTH_IT:
            advice.append(f"abbreviate: yes, which sets {shorter!r}")
    return " or ".join([*(f"write {text}" for text in advice), "make the book thicker"])


def alike(room: Rect, words: Words, spine: Spine) -> Spine:
    """The spine asked for, with the way and the size that suit all titles of a set."""
    if len(words.titles) == 1 or spine.way == "none":
        return spine
    ways = {way_for(room, title, words, spine) for title in words.titles}
    along: Way = "up" if reads_upwards(words.language, words.title) else "down"
    way = ways.pop() if len(ways) == 1 else along
    box = _top(room, 0.5) if way == "across" else _shares(room, words.title, words, spine)[0]
    sizes = [fitted("title", title, box, spine.hand, way, spine.largest).size for title in words.titles]
    return replace(spine, way=way, largest=min(sizes))


def way_for(room: Rect, title: str, words: Words, spine: Spine) -> Way:
    """Which way the title runs."""
    if spine.way != "auto":
        return cast(Way, spine.way)
    along: Way = "up" if reads_upwards(words.language, words.title) else "down"
    across = fitted("title", title, _top(room, 0.5), spine.hand, "across", spine.largest)
    return "across" if across.size >= ACROSS_IF * _along_size(room, title, words, spine) else along


def _along_size(room: Rect, title: str, words: Words, spine: Spine) -> float:
    upper, _ = _shares(room, title, words, spine)
    return fitted("title", title, upper, spine.hand, "down", spine.largest).size


def _title_to_set(room: Rect, words: Words, spine: Spine) -> str:
    """The title, shortened as far as it takes to be legible, if it may be."""
    if not spine.abbreviate:
        return words.title
    sizes: list[tuple[float, str]] = []
    for title in shortened(words.title):
        way = way_for(room, title, words, spine)
        box = _top(room, 0.5) if way == "across" else _shares(room, title, words, spine)[0]
        size = fitted("title", title, box, spine.hand, way, spine.largest).size
        if size >= LEGIBLE:
            return title
        sizes.append((size, title))
    return max(sizes)[1]


def _top(room: Rect, share: float) -> Rect:
    return Rect(room.x, room.top - room.height * share, room.width, room.height * share)


def _foot(room: Rect, words: Words, spine: Spine) -> tuple[Rect, list[Lettered]]:
    """Device, date and volume number at the tail, from below; and the room that is left over them."""
    parts: list[Lettered] = []
    if spine.device and room.width >= 1.2:
        side = min(room.width, 0.13 * room.height, 3.2)
        box = Rect(room.x, room.y, room.width, side)
        parts.append(Lettered((stamp(spine.device, box, spine.hand.ink),)))
        room = room.grown(0, -side * 1.35, 0, 0)
    for text in (words.date, words.volume):
        if text:
            high = min(max(room.width * 0.55, 0.6), 0.1 * room.height, 2.0)
            box = Rect(room.x, room.y, room.width, high)
            parts.append(letter("volume", text, box, spine.hand, "across", spine.largest * 0.6))
            room = room.grown(0, -high * 1.5, 0, 0)
    return room, parts


def _shares(room: Rect, title: str, words: Words, spine: Spine) -> tuple[Rect, Rect]:
    """The length of the spine shared between title and author by the letters they have; the title's part first."""
    if not words.author:
        return room, room
    gap = room.height * (0.1 if spine.fleuron else 0.06)
    letters = len(title) if len(words.titles) == 1 else max(map(len, words.titles))
    rest = len(words.author) * AUTHOR_SHARE
    share = min(0.74, max(0.5, letters / (letters + rest)))
    high = (room.height - gap) * share
    low = room.height - gap - high
    upper, lower = Rect(room.x, room.top - high, room.width, high), Rect(room.x, room.y, room.width, low)
    if spine.author_first:
        return upper.moved(0, -low - gap), lower.moved(0, high + gap)
    return upper, lower


def _along(room: Rect, title: str, words: Words, spine: Spine, way: Way) -> Lettered:
    upper, lower = _shares(room, title, words, spine)
    parts = [letter("title", title, upper, spine.hand, way, spine.largest)]
    if words.author:
        size = fitted("title", title, upper, spine.hand, way, spine.largest).size
        parts.append(letter("author", words.author, lower, spine.hand, way, size * AUTHOR_SHARE))
        parts += _between(upper, lower, spine)
    return together(parts)


def _between(one: Rect, other: Rect, spine: Spine) -> Iterator[Lettered]:
    """The ornament between title and author."""
    low, high = sorted((one, other), key=lambda box: box.y)
    gap = Rect(low.x, low.top, low.width, high.y - low.top)
    if spine.fleuron and gap.width >= 0.8:
        side = min(gap.width, gap.height * 0.8, 1.6)
        yield Lettered((stamp(spine.fleuron, Rect(gap.x, gap.centre.y - side / 2, gap.width, side), spine.hand.ink),))


def _across(room: Rect, title: str, words: Words, spine: Spine) -> Lettered:
    """Title under the head, a rule or an ornament, then the author."""
    most = _top(room, 0.5 if words.author else 0.6)
    size = fitted("title", title, most, spine.hand, "across", spine.largest)
    box = Rect(most.x, most.top - size.height - 1e-6, most.width, size.height + 1e-6)
    parts = [letter("title", title, box, spine.hand, "across", spine.largest)]
    below = Rect(room.x, room.y, room.width, box.y - room.y)
    if words.author:
        parts.append(_author_across(below, words.author, spine, size.size))
    elif spine.fleuron and below.height > room.width:
        side = min(room.width * 0.8, below.height * 0.4, 2.4)
        parts.append(Lettered((stamp(spine.fleuron, Rect(below.x, below.centre.y - side / 2, below.width, side),
                                     spine.hand.ink),)))  # fmt: skip
    return together(parts)


def _author_across(below: Rect, author: str, spine: Spine, title_size: float) -> Lettered:
    gap = min(below.height * 0.3, title_size * (1.6 if spine.fleuron else 1.0))
    room = Rect(below.x, below.y, below.width, below.height - gap)
    most = _top(room, 0.5)
    setting = fitted("author", author, most, spine.hand, "across", title_size * AUTHOR_SHARE)
    box = Rect(most.x, most.top - setting.height - 1e-6, most.width, setting.height + 1e-6)
    parts = [letter("author", author, box, spine.hand, "across", title_size * AUTHOR_SHARE)]
    middle = Rect(below.x, box.top + gap * 0.2, below.width, gap * 0.6)
    if spine.fleuron:
        parts.append(Lettered((stamp(spine.fleuron, middle, spine.hand.ink),)))
    elif spine.rules:
        half = below.width * 0.3
        centre = below.centre.x
        line = rule(middle.centre.y, centre - half, centre + half, max(0.06, title_size * 0.07), spine.hand.ink)
        parts.append(Lettered((line,)))
    return together(parts)
