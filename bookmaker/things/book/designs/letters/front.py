"""What stands on the front: title, ornament, author."""

from __future__ import annotations

from .....ground.art import Filled
from .....ground.drawing import Art, Colour
from .....ground.geometry import Path, Rect
from ..design import Words
from ..ornament.ornaments import frame, stamp
from .lettering import Hand, Lettered, fitted, letter, lettered, together

__all__ = ["inside", "label", "letter_front", "pasted_label", "title_and_author"]

LARGEST = 6.0

SMALLEST = 0.22
"""Letters of this height in mm have 5 dots at 600 to the inch; what is smaller closes up (common practice)."""

ASIDE = 0.05
"""Words on a label keep this share of its width clear at both sides, besides what they keep all round."""

NUMBER_SHARE = 0.8
"""A volume number is no larger than this share of the title."""

MOTIF = 0.45
"""An ornament takes no more than this share of what is free between title and author."""

AUTHOR_SHARE = 0.6
ON_LABEL = 0.75
"""The author is set no larger than these shares of the title, on the front itself and on a label."""


def letter_front(
    room: Rect, words: Words, hand: Hand, fleuron: Path | None = None, largest: float = LARGEST
) -> Lettered:
    """Title in the upper half of a room, the author at the foot, ornament and number in equal steps between them."""
    hand, box = hand.on_front(), _part(room, 0.52, 0.44)
    title = fitted("title", words.title, box, hand, "across", largest)
    parts = [lettered("title", words.title, title, box, hand, "across")]
    head, foot = box.centre.y - title.height / 2, room.y
    if words.author:
        below = _part(room, 0.0, 0.18)
        author = fitted("author", words.author, below, hand, "across", title.size * AUTHOR_SHARE)
        parts.append(lettered("author", words.author, author, below, hand, "across"))
        foot = below.centre.y + author.height / 2
    number = fitted("volume", words.volume, _part(room, 0.2, 0.1), hand, "across", title.size * NUMBER_SHARE)
    side = min(room.width * 0.26, room.height * 0.2, (head - foot - number.height) * MOTIF) if fleuron else 0.0
    gap = (head - foot - side - number.height) / (1 + bool(fleuron) + bool(words.volume))
    if fleuron:
        parts.append(
            Lettered((stamp(fleuron, Rect(room.centre.x - side / 2, head - gap - side, side, side), hand.ink),))
        )
    if words.volume:
        place = Rect(room.x, foot + gap, room.width, number.height)
        parts.append(lettered("volume", words.volume, number, place, hand, "across"))
    return together(parts)


def title_and_author(
    room: Rect, words: Words, hand: Hand, title: tuple[float, float], foot: float, share: float, largest: float
) -> list[Lettered]:
    """The title in a level part of a room, and the author, if there is one, in as much of its foot.

    Parts are shares of its height: `title` where it begins and how high it is. The author is no larger than a `share`
    of the title, which is no larger than `largest` (the em, in mm).
    """
    hand, box = hand.on_front(), _part(room, *title)
    setting = fitted("title", words.title, box, hand, "across", largest)
    texts = [lettered("title", words.title, setting, box, hand, "across")]
    if words.author:
        below = _part(room, 0.0, foot)
        texts.append(letter("author", words.author, below, hand, "across", setting.size * share))
    return texts


def label(room: Rect, words: Words, hand: Hand, largest: float = LARGEST) -> Lettered:
    """Title and author close together, as on a label; an author that would be too small to print is left out."""
    parts = title_and_author(room, words, hand, (0.38, 0.57), 0.28, ON_LABEL, largest)
    if len(parts) == 2 and parts[1].lettering[0].x_height >= SMALLEST:
        return together(parts)
    return letter("title", words.title, _part(room, 0.08, 0.84), hand.on_front(), "across", largest)


def pasted_label(
    plate: Rect,
    words: Words,
    hand: Hand,
    border: Colour,
    inset: float,
    clear: float,
    width: float,
    *,
    largest: float = 3.6,
    second: float = 0.0,
    paper: Colour | None = None,
) -> tuple[list[Art], list[Lettered]]:
    """A label of paper with title and author, `clear` mm from its edges, and a little more at both sides.

    A border `width` mm wide goes round it `inset` mm from its edges, with a finer one `second` mm within.
    """
    edge = frame(plate.grown(-inset), border, width, second=second)
    art: list[Art] = [Filled.box(plate, paper or hand.ground), *edge]
    aside = clear + ASIDE * plate.width
    return art, [label(plate.grown(-aside, -clear, -aside, -clear), words, hand, largest)]


def inside(face: Rect, aside: float, above: float) -> Rect:
    """A face less a share of its width on both sides, and of its height at head and tail."""
    wide, high = face.width * aside, face.height * above
    return face.grown(-wide, -high, -wide, -high)


def _part(room: Rect, low: float, high: float) -> Rect:
    """A level part of a room: from a share of its height, as high as another share."""
    return Rect(room.x, room.y + room.height * low, room.width, room.height * high)
