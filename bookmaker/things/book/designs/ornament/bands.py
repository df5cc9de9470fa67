"""The spine of a leather binding: raised bands, a label with the title between two of them, tools in the others."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from .....ground.drawing import Art, Colour
from .....ground.geometry import Rect
from ..design import Words
from ..letters.alike import alike, letters_of, stacks_of
from ..letters.lettering import Hand, Lettered, fitted, letter
from ..letters.spine import (
    Spine,
    as_in_set,
    clear_of_folds,
    letter_number,
    letter_spine,
    prefers_across,
    title_letters,
    way_along,
)
from ..letters.stack import READABLE, WIDE_AUTHOR, breadth_of
from .ornaments import rule, stamp
from .tooling import Leather, raised_bands, room_of, small_tools, title_label, title_panel, title_strip

__all__ = ["banded_spine"]

THINNEST = 1.8
"""A spine thinner than this, in mm, has fillets instead of bands."""

SMALLEST_COMPARTMENT = 2.1
"""Compartments lower than this, in mm, are too many."""

AUTHOR_SHARE, ROOM_FOR_AUTHOR, LEAST_ROOM_FOR_AUTHOR = 0.8, 0.42, 4.0
"""The author has no more than this share of the title's size; under a short title it has this share of the width, and
so many mm."""

ONE_LINE = 0.5
"""The author has a height of so many ems of the title, where there is width enough for one line."""

BESIDE_WORDS, NARROW_LABEL = 0.62, 0.76
"""A label reaches so many mm beyond words that run along it; if it would be wider than that share of the spine, it
goes from joint to joint."""

NUMBER_SHARE = 1.3
"""The volume number is no larger than so many times the title."""

GAIN_OF_A_COMPARTMENT = 1.15
"""A label takes a second compartment if that makes a title that is hard to read so many times larger."""

Plate = Callable[[Rect, Leather], Iterator[Art]]
"""What the words stand on in a compartment."""


def banded_spine(
    box: Rect, words: Words, spine: Spine, label: tuple[Colour, Colour], *, labelled: bool
) -> tuple[list[Art], list[Lettered]]:
    """Bands, tools and label, and the words; `spine` has the hand on the skin, `label` its colour and its ink.

    Unless it must be `labelled`, a spine lettered lengthwise may have no label but a panel of fillets on the skin.
    """
    colours = Leather(spine.hand.ground, spine.hand.ink, *label)
    if box.width < THINNEST:
        return _filleted(box, words, spine, colours)
    hand = spine.hand.on_ground(*label)
    compartments = _compartments(box)
    high = _label_across(compartments, words, replace(spine, hand=hand))
    if high:
        return _across(box, compartments, words, replace(spine, hand=hand), colours, high)
    if words.kin % 5 < 2 and not labelled:
        return _along(box, compartments, words, spine, colours, title_panel)
    return _along(box, compartments, words, replace(spine, hand=hand), colours, title_label)


def _compartments(box: Rect) -> list[Rect]:
    """The spaces between the bands, from the head down: six, or four on a low spine; the lowest is the highest."""
    count = 6 if box.height / 6.5 >= SMALLEST_COMPARTMENT else 4
    step = box.height / (count + 0.35)
    tops = [box.top - step * number for number in range(count)]
    return [Rect(box.x, top - step, box.width, step) for top in tops[:-1]] + [
        Rect(box.x, box.y, box.width, tops[-1] - box.y)
    ]


def _label_across(compartments: list[Rect], words: Words, spine: Spine) -> int:
    """How many compartments a label lettered across takes: one or, for a long title, two; none if it runs along."""
    if spine.way not in ("auto", "across"):
        return 0
    single, double = _title_size(compartments, words, spine) * title_letters(words, spine), 0.0
    if single < READABLE and len(compartments) == 6:
        label = _room_in_set(_joined(compartments[1:3]), words)
        double = letters_of(alike(label.size, _in_label(words).fellows, spine, "across"))
    across, high = (double, 2) if double > GAIN_OF_A_COMPARTMENT * single else (single, 1)
    along = _room_in_set(_joined(compartments[1:-1]), words)
    settled = words.on_narrowest().on_lowest(1.0)
    return high if spine.way == "across" or prefers_across(across, along, settled, spine) else 0


def _title_size(compartments: list[Rect], words: Words, spine: Spine) -> float:
    """The em in mm that all titles of the set can have in a label of one compartment."""
    label = _room_in_set(compartments[1], words)
    return min(fitted("title", title, label, spine.hand, "across", spine.largest).size for title in words.titles)


def _in_label(words: Words) -> Words:
    """What stands in a label of two compartments."""
    return words.without("volume").without("date")


def _joined(rects: list[Rect]) -> Rect:
    return Rect.around([corner for rect in rects for corner in rect.corners])


def _room_in_set(compartment: Rect, words: Words) -> Rect:
    """The same room, about its middle, as it would be on the narrowest and lowest spine of the set."""
    if not words.in_set:
        return room_of(compartment)
    less = compartment.height * (1 - words.in_set.low) / 2
    return as_in_set(room_of(compartment.grown(0, -less, 0, -less)), words.on_lowest(1.0))


def _across(
    box: Rect, compartments: list[Rect], words: Words, spine: Spine, colours: Leather, high: int
) -> tuple[list[Art], list[Lettered]]:
    """Title in the second compartment, author in the third, volume in the fourth, date at the tail.

    A label that is two compartments `high` has title and author.
    """
    label = _joined(compartments[1 : 1 + high])
    art: list[Art] = [*title_label(label, colours)]
    texts, size = [_on_label(label, words, spine)], _title_size(compartments, words, spine)
    if high == 1:
        texts = [letter("title", words.title, _room_in_set(label, words), spine.hand, "across", size)]
    skin = spine.hand.on_ground(colours.skin, colours.gold)
    taken = {*range(1, 1 + high)}
    for place, text in _in_compartments(words, len(compartments)):
        if text and place not in taken:
            room, largest = _room_in_set(compartments[place], words), size * NUMBER_SHARE
            alone = words.on_lowest(1.0)
            author = place == 2
            texts.append(
                _author(room, words, skin, size) if author else letter_number(text, room, alone, skin, largest)
            )
            taken.add(place)
    tail = len(compartments) - 1
    if spine.device and tail not in taken:
        art.append(stamp(spine.device, room_of(compartments[tail]), colours.gold))
        taken.add(tail)
    free = [compartment for number, compartment in enumerate(compartments) if number not in taken]
    art += small_tools(free, words.kin, spine, colours)
    bands = [number for number in range(1, len(compartments)) if number != 2 or high == 1]
    return [*raised_bands(box, compartments, colours, tuple(bands)), *art], texts


def _on_label(label: Rect, words: Words, spine: Spine) -> Lettered:
    """Title and author in a label of two compartments."""
    across = replace(spine, way="across", fleuron=None, device=None, rules=True)
    return letter_spine(room_of(label), _fitting(label, _in_label(words)), across)


def _fitting(compartment: Rect, words: Words) -> Words:
    """The words for the room of a compartment: with the share of its height that the lowest of the set has."""
    return words.on_lowest(_room_in_set(compartment, words).height / room_of(compartment).height)


def _author(room: Rect, words: Words, hand: Hand, size: float) -> Lettered:
    """The author under a title with an em of `size` mm: smaller, and hardly wider than the widest of the set."""
    title = max(fitted("title", title, room, hand, "across", size).width for title in words.titles)
    wide = min(room.width, max(WIDE_AUTHOR * title, ROOM_FOR_AUTHOR * room.width, LEAST_ROOM_FOR_AUTHOR))
    high = min(room.height, ONE_LINE * size) if room.width > LEAST_ROOM_FOR_AUTHOR else room.height
    box = Rect(room.centre.x - wide / 2, room.centre.y - high / 2, wide, high)
    return letter("author", words.author, box, hand, "across", size * AUTHOR_SHARE)


def _in_compartments(words: Words, count: int) -> Iterator[tuple[int, str]]:
    if count == 6:
        yield from ((2, words.author), (3, words.volume), (5, words.date))
    else:
        yield 2, words.author
        yield 3, " ".join(text for text in (words.volume, words.date) if text)


def _along(
    box: Rect, compartments: list[Rect], words: Words, spine: Spine, colours: Leather, plate: Plate
) -> tuple[list[Art], list[Lettered]]:
    """One long label or panel between two bands at the head and two at the tail, lettered along the spine."""
    body = _joined(compartments[1:-1])
    along = replace(spine, way=way_along(words) if spine.way == "auto" else spine.way, device=None)
    texts = [] if spine.way == "none" else [letter_spine(room_of(body), _fitting(body, words), along)]
    art: list[Art] = [*plate(body, colours)] if texts else []
    wide = _width_of_words(body, words, along) if texts and plate is title_label else body.width
    if wide <= NARROW_LABEL * body.width:
        art = [*title_strip(Rect(body.centre.x - wide / 2, body.y, wide, body.height), colours)]
    ends = [compartments[0], compartments[-1]]
    if spine.device:
        art.append(stamp(spine.device, room_of(ends.pop()), colours.gold))
    art += small_tools(ends, words.kin, spine, colours)
    return [*raised_bands(box, compartments, colours, (1, len(compartments) - 1)), *art], texts


def _width_of_words(body: Rect, words: Words, spine: Spine) -> float:
    """How wide a label is that goes around words along the spine, alike through a set."""
    stacks = stacks_of(_room_in_set(body, words).size, words, spine)
    return max(map(breadth_of, stacks)) + 2 * BESIDE_WORDS


def _filleted(box: Rect, words: Words, spine: Spine, colours: Leather) -> tuple[list[Art], list[Lettered]]:
    """A thin spine: pairs of gold fillets at head and tail, lettered on the skin itself."""
    art: list[Art] = [
        rule(y, box.x, box.right, wide, colours.gold)
        for share, wide in ((0.04, 0.1), (0.055, 0.06), (0.1, 0.1))
        for y in (box.y + box.height * share, box.top - box.height * share)
    ]
    aside, above = clear_of_folds(box.width), box.height * 0.13
    room = box.grown(-aside, -above, -aside, -above)
    return art, [letter_spine(room, words, spine)]
