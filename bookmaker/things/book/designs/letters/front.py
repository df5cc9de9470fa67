"""What stands on the front: title, ornament, author."""

from __future__ import annotations

from collections.abc import Iterator

from .....ground.geometry import Path, Rect
from ..design import Words
from ..ornament.ornaments import stamp
from .lettering import Hand, Lettered, fitted, letter, together

__all__ = ["inside", "label", "letter_front"]

LARGEST = 6.0

SMALLEST = 0.22
"""Letters of this height in mm have 5 dots at 600 to the inch; what is smaller closes up (common practice)."""

AUTHOR_SHARE = 0.6
ON_LABEL = 0.75
"""The author is set no larger than these shares of the title, on the front itself and on a label."""


def letter_front(
    room: Rect, words: Words, hand: Hand, fleuron: Path | None = None, largest: float = LARGEST
) -> Lettered:
    """Title in the upper half of a room, the ornament under it, the author at the foot."""
    hand = hand.on_front()
    parts = [_title(room, 0.52, 0.44, words, hand, largest)]
    size = fitted("title", words.title, _part(room, 0.52, 0.44), hand, "across", largest).size
    if fleuron:
        side = min(room.width * 0.26, room.height * 0.2)
        middle = _part(room, 0.34, 0.1).centre.y if words.author else _part(room, 0.2, 0.1).centre.y
        box = Rect(room.centre.x - side / 2, middle - side / 2, side, side)
        parts.append(Lettered((stamp(fleuron, box, hand.ink),)))
    if words.author:
        parts.append(letter("author", words.author, _part(room, 0.0, 0.18), hand, "across", size * AUTHOR_SHARE))
    parts += _volume(room, words, hand, size)
    return together(parts)


def label(room: Rect, words: Words, hand: Hand, largest: float = LARGEST) -> Lettered:
    """Title and author close together, as on a label; an author that would be too small to print is left out."""
    hand = hand.on_front()
    if not words.author:
        return letter("title", words.title, room, hand, "across", largest)
    title, foot = _part(room, 0.38, 0.62), _part(room, 0.0, 0.28)
    size = fitted("title", words.title, title, hand, "across", largest).size
    author = letter("author", words.author, foot, hand, "across", size * ON_LABEL)
    if author.lettering[0].x_height < SMALLEST:
        return letter("title", words.title, room, hand, "across", largest)
    return together([letter("title", words.title, title, hand, "across", largest), author])


def inside(face: Rect, aside: float, above: float) -> Rect:
    """A face less a share of its width on both sides, and of its height at head and tail."""
    wide, high = face.width * aside, face.height * above
    return face.grown(-wide, -high, -wide, -high)


def _title(room: Rect, low: float, high: float, words: Words, hand: Hand, largest: float) -> Lettered:
    return letter("title", words.title, _part(room, low, high), hand, "across", largest)


def _volume(room: Rect, words: Words, hand: Hand, size: float) -> Iterator[Lettered]:
    if words.volume:
        yield letter("volume", words.volume, _part(room, 0.2, 0.09), hand, "across", size * AUTHOR_SHARE)


def _part(room: Rect, low: float, high: float) -> Rect:
    """A level part of a room: from a share of its height, as high as another share."""
    return Rect(room.x, room.y + room.height * low, room.width, room.height * high)
