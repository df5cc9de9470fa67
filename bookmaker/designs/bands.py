"""The spine of a leather binding: raised bands, a label with the title between two of them, tools in the others."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from ..drawing import Art, Colour
from ..geometry import Path, Point, Rect, polygon
from .alike import alike, letters_of, stacks_of
from .design import Words
from .faces import Faces
from .lettering import Hand, Lettered, fitted, letter
from .ornaments import BandName, band, frame, rule, stamp
from .shapes import Shape, block
from .spine import (
    Spine,
    as_in_set,
    clear_of_folds,
    letter_number,
    letter_spine,
    prefers_across,
    title_letters,
    way_along,
)
from .stack import READABLE, WIDE_AUTHOR, breadth_of
from .tones import darker, lighter

__all__ = ["banded_spine", "ridge"]

THINNEST = 1.8
"""A spine thinner than this, in mm, has fillets instead of bands."""

SMALLEST_COMPARTMENT = 2.1
"""Compartments lower than this, in mm, are too many."""

SHADING = (0.34, 0.16, -0.1, -0.2, -0.08, 0.14, 0.36)
"""How dark a band is from its lower to its upper edge: shares of black, or of white where negative."""

OVER = 0.75
"""Bands run out on the sides so far beyond the folds, in mm, tapering."""

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

ROWS: tuple[BandName, ...] = ("dots", "lozenges", "chain", "waves")
"""Small tools that are worked in rows."""


@dataclass(frozen=True, slots=True)
class Leather:
    """Colours of a leather spine: the skin and the gold on it, the label and the gold on that."""

    skin: Colour
    gold: Colour
    label: Colour
    on_label: Colour


Plate = Callable[[Rect, Leather], Iterator[Art]]
"""What the words stand on in a compartment."""


def banded_spine(
    faces: Faces, words: Words, spine: Spine, label: tuple[Colour, Colour], *, labelled: bool
) -> tuple[list[Art], list[Lettered]]:
    """Bands, tools and label, and the words; `spine` has the hand on the skin, `label` its colour and its ink.

    Unless it must be `labelled`, a spine lettered lengthwise may have no label but a panel of fillets on the skin.
    """
    if not faces.spine:
        return [], []
    box = faces.spine
    colours = Leather(spine.hand.ground, spine.hand.ink, *label)
    if box.width < THINNEST:
        return _filleted(box, words, spine, colours)
    hand = spine.hand.on_ground(*label)
    compartments = _compartments(box)
    high = _label_across(compartments, words, replace(spine, hand=hand))
    if high:
        return _across(box, compartments, words, replace(spine, hand=hand), colours, high)
    if words.kin % 5 < 2 and not labelled:
        return _along(box, compartments, words, spine, colours, _panel)
    return _along(box, compartments, words, replace(spine, hand=hand), colours, _label)


def _compartments(box: Rect) -> list[Rect]:
    """The spaces between the bands, from the head down: six, or four on a low spine; the lowest is the highest."""
    count = 6 if box.height / 6.5 >= SMALLEST_COMPARTMENT else 4
    step = box.height / (count + 0.35)
    tops = [box.top - step * number for number in range(count)]
    return [Rect(box.x, top - step, box.width, step) for top in tops[:-1]] + [
        Rect(box.x, box.y, box.width, tops[-1] - box.y)
    ]


def _band_height(box: Rect) -> float:
    return max(0.25, min(0.75, box.height * 0.024))


def _label_across(compartments: list[Rect], words: Words, spine: Spine) -> int:
    """How many compartments a label lettered across takes: one or, for a long title, two; none if it runs along."""
    if spine.way not in ("auto", "across"):
        return 0
    single, double = _title_size(compartments, words, spine) * title_letters(words, spine), 0.0
    if single < READABLE and len(compartments) == 6:
        label = as_in_set(_room(_joined(compartments[1:3])), words)
        double = letters_of(alike(label.size, _in_label(words).fellows, spine, "across"))
    across, high = (double, 2) if double > GAIN_OF_A_COMPARTMENT * single else (single, 1)
    along = _room(_joined(compartments[1:-1]))
    return high if spine.way == "across" or prefers_across(across, along, words, spine) else 0


def _title_size(compartments: list[Rect], words: Words, spine: Spine) -> float:
    """The em in mm that all titles of the set can have in a label of one compartment."""
    label = as_in_set(_room(compartments[1]), words)
    return min(fitted("title", title, label, spine.hand, "across", spine.largest).size for title in words.titles)


def _in_label(words: Words) -> Words:
    """What stands in a label of two compartments."""
    return words.without("volume").without("date")


def _joined(rects: list[Rect]) -> Rect:
    return Rect.around([corner for rect in rects for corner in rect.corners])


def _room(compartment: Rect) -> Rect:
    """Inside a label: clear of the folds, the bands and the fillets."""
    aside, above = clear_of_folds(compartment.width), min(0.85, compartment.height * 0.26)
    return compartment.grown(-aside, -above, -aside, -above)


def _across(
    box: Rect, compartments: list[Rect], words: Words, spine: Spine, colours: Leather, high: int
) -> tuple[list[Art], list[Lettered]]:
    """Title in the second compartment, author in the third, volume in the fourth, date at the tail.

    A label that is two compartments `high` has title and author.
    """
    label = _joined(compartments[1 : 1 + high])
    art: list[Art] = [*_label(label, colours)]
    texts, size = [_on_label(label, words, spine)], _title_size(compartments, words, spine)
    if high == 1:
        texts = [letter("title", words.title, as_in_set(_room(label), words), spine.hand, "across", size)]
    skin = spine.hand.on_ground(colours.skin, colours.gold)
    taken = {*range(1, 1 + high)}
    for place, text in _in_compartments(words, len(compartments)):
        if text and place not in taken:
            room, largest = as_in_set(_room(compartments[place]), words), size * NUMBER_SHARE
            author = place == 2
            texts.append(
                _author(room, words, skin, size) if author else letter_number(text, room, words, skin, largest)
            )
            taken.add(place)
    tail = len(compartments) - 1
    if spine.device and tail not in taken:
        art.append(stamp(spine.device, _room(compartments[tail]), colours.gold))
        taken.add(tail)
    free = [compartment for number, compartment in enumerate(compartments) if number not in taken]
    art += _tools(free, words.kin, spine, colours)
    bands = [number for number in range(1, len(compartments)) if number != 2 or high == 1]
    return [*_bands(box, compartments, colours, tuple(bands)), *art], texts


def _on_label(label: Rect, words: Words, spine: Spine) -> Lettered:
    """Title and author in a label of two compartments."""
    across = replace(spine, way="across", fleuron=None, device=None, rules=True)
    return letter_spine(_room(label), _in_label(words), across)


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
    texts = [] if spine.way == "none" else [letter_spine(_room(body), words, along)]
    art: list[Art] = [*plate(body, colours)] if texts else []
    wide = _width_of_words(body, words, along) if texts and plate is _label else body.width
    if wide <= NARROW_LABEL * body.width:
        art = [*_strip(Rect(body.centre.x - wide / 2, body.y, wide, body.height), colours)]
    ends = [compartments[0], compartments[-1]]
    if spine.device:
        art.append(stamp(spine.device, _room(ends.pop()), colours.gold))
    art += _tools(ends, words.kin, spine, colours)
    return [*_bands(box, compartments, colours, (1, len(compartments) - 1)), *art], texts


def _width_of_words(body: Rect, words: Words, spine: Spine) -> float:
    """How wide a label is that goes around words along the spine, alike through a set."""
    stacks = stacks_of(as_in_set(_room(body), words).size, words, spine)
    return max(map(breadth_of, stacks)) + 2 * BESIDE_WORDS


def _filleted(box: Rect, words: Words, spine: Spine, colours: Leather) -> tuple[list[Art], list[Lettered]]:
    """A thin spine: pairs of gold fillets at head and tail, lettered on the skin itself."""
    art: list[Art] = [
        rule(y, box.x, box.right, wide, colours.gold)
        for share, wide in ((0.04, 0.1), (0.055, 0.06), (0.1, 0.1))
        for y in (box.y + box.height * share, box.top - box.height * share)
    ]
    aside, above = min(0.35, box.width * 0.2), box.height * 0.13
    room = box.grown(-aside, -above, -aside, -above)
    return art, [letter_spine(room, words, spine)]


def _label(compartment: Rect, colours: Leather) -> Iterator[Art]:
    """A thin skin of another colour from joint to joint, with a double fillet at both ends."""
    edge = _band_height(compartment) * 0.25
    plate = compartment.grown(0, -edge, 0, -edge)
    yield block(plate, colours.label)
    for y, inward in ((plate.y, 1), (plate.top, -1)):
        for off, wide in ((0.16, 0.09), (0.3, 0.05)):
            yield rule(y + inward * (off + edge), plate.x, plate.right, wide, colours.on_label)


def _strip(body: Rect, colours: Leather) -> Iterator[Art]:
    """A long label in the middle of a wide spine, clear of the bands, within a double fillet."""
    above = _band_height(body) * 0.9
    plate = body.grown(0, -above, 0, -above)
    yield block(plate, colours.label)
    yield from frame(plate.grown(-0.16), colours.on_label, 0.08, second=0.14)


def _panel(compartment: Rect, colours: Leather) -> Iterator[Art]:
    """A double frame of gold on the skin, clear of the bands."""
    aside, above = min(0.16, compartment.width * 0.05), _band_height(compartment) * 0.9
    yield from frame(compartment.grown(-aside, -above, -aside, -above), colours.gold, 0.08, second=0.16)


def _tools(compartments: list[Rect], kin: int, spine: Spine, colours: Leather) -> Iterator[Art]:
    """The ornament in each compartment: alone, within a fillet, or between two rows of small tools."""
    manner = kin // 5 % 3
    rows = ROWS[kin // 15 % len(ROWS)]
    for compartment in compartments:
        if not spine.fleuron:
            continue
        roomy = compartment.height > 1.9 and compartment.width > 2.2
        side = min(compartment.width * 0.7, compartment.height * (0.55 if manner == 0 or not roomy else 0.42), 2.6)
        middle = compartment.centre
        yield stamp(spine.fleuron, Rect(middle.x - side / 2, middle.y - side / 2, side, side), colours.gold)
        if manner == 1 and roomy:
            yield from frame(_room(compartment).grown(0.1, 0.15), colours.gold, 0.07)
        elif manner == 2 and roomy:
            high = min(0.42, compartment.height * 0.12)
            for way in (-1, 1):
                y = middle.y + way * (compartment.height / 2 - _band_height(compartment) - high)
                yield band(rows, Rect(compartment.x, y - high / 2, compartment.width, high), colours.gold)


def _bands(box: Rect, compartments: list[Rect], colours: Leather, where: tuple[int, ...]) -> Iterator[Art]:
    """A band over each compartment named, with gold on both sides, and gold at head and tail."""
    high = _band_height(box)
    for number in where:
        y = compartments[number].top
        yield from ridge(box, y, high, colours.skin)
        for off in (-0.85, 0.85):
            yield rule(y + off * high, box.x, box.right, 0.07, colours.gold)
    for y in (box.y + 0.35, box.y + 0.55, box.top - 0.35, box.top - 0.55):
        yield rule(y, box.x, box.right, 0.06, colours.gold)


def ridge(box: Rect, y: float, high: float, skin: Colour) -> Iterator[Art]:
    """A raised band across a spine about `y`, shaded as if it stood out."""
    step = high / len(SHADING)
    for number, dark in enumerate(SHADING):
        low = y - high / 2 + step * number
        tone = darker(skin, dark) if dark > 0 else lighter(skin, -dark)
        yield Shape(_tapered(box, low, step * 1.02, y), tone)


def _tapered(box: Rect, low: float, step: float, y: float) -> Path:
    """A strip of a band; beyond the folds it runs to a point at the band's middle."""
    one, two, three, four = Rect(box.x, low, box.width, step).corners
    return polygon([one, two, Point(box.right + OVER, y), three, four, Point(box.x - OVER, y)])
