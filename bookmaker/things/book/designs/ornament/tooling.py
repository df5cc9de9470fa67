"""What is worked on a leather spine: raised bands, labels and panels between them, small tools."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import sqrt

from .....ground.art import Filled
from .....ground.drawing import Art, Colour
from .....ground.geometry import Rect
from ..letters.spine import Spine, clear_of_folds
from ..tones import darker, lighter
from .ornaments import BandName, band, frame, rule, stamp

__all__ = ["Leather", "raised_bands", "ridge", "room_of", "small_tools", "title_label", "title_panel", "title_strip"]

SHADING = (0.12, 0.3, 0.22, 0.08, -0.05, -0.13, -0.1, 0.0, 0.12, 0.07)
"""How dark a band is from the shadow under it to the one over it: shares of black, or of white where negative."""

ROUND_THE_BEND = 0.3
"""A label goes so far round the bend of the joints, in mm: seen from the back it leaves no leather beside it."""

OVER = 0.32
"""Bands go on so far beyond the folds, in mm, into the joints, and end there bluntly."""

ROWS: tuple[BandName, ...] = ("dots", "lozenges", "chain", "waves")
"""Small tools that are worked in rows."""


@dataclass(frozen=True, slots=True)
class Leather:
    """Colours of a leather spine: the skin and the gold on it, the label and the gold on that."""

    skin: Colour
    gold: Colour
    label: Colour
    on_label: Colour


def _band_height(box: Rect) -> float:
    return max(0.25, min(0.75, box.height * 0.024))


def room_of(compartment: Rect) -> Rect:
    """Inside a label: clear of the folds, the bands and the fillets."""
    aside, above = clear_of_folds(compartment.width), min(0.85, compartment.height * 0.26)
    return compartment.grown(-aside, -above, -aside, -above)


def title_label(compartment: Rect, colours: Leather) -> Iterator[Art]:
    """A thin skin of another colour from joint to joint, with a double fillet at both ends."""
    edge = _band_height(compartment) * 0.25
    plate = compartment.grown(ROUND_THE_BEND, -edge, ROUND_THE_BEND, -edge)
    yield Filled.box(plate, colours.label)
    for y, inward in ((plate.y, 1), (plate.top, -1)):
        for off, wide in ((0.16, 0.09), (0.3, 0.05)):
            yield rule(y + inward * (off + edge), plate.x, plate.right, wide, colours.on_label)


def title_strip(body: Rect, colours: Leather) -> Iterator[Art]:
    """A long label in the middle of a wide spine, clear of the bands, within a double fillet."""
    above = _band_height(body) * 0.9
    plate = body.grown(0, -above, 0, -above)
    yield Filled.box(plate, colours.label)
    yield from frame(plate.grown(-0.16), colours.on_label, 0.08, second=0.14)


def title_panel(compartment: Rect, colours: Leather) -> Iterator[Art]:
    """A double frame of gold on the skin, clear of the bands."""
    aside, above = min(0.16, compartment.width * 0.05), _band_height(compartment) * 0.9
    yield from frame(compartment.grown(-aside, -above, -aside, -above), colours.gold, 0.08, second=0.16)


def small_tools(compartments: list[Rect], kin: int, spine: Spine, colours: Leather) -> Iterator[Art]:
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
            yield from frame(room_of(compartment).grown(0.1, 0.15), colours.gold, 0.07)
        elif manner == 2 and roomy:
            high = min(0.42, compartment.height * 0.12)
            for way in (-1, 1):
                y = middle.y + way * (compartment.height / 2 - _band_height(compartment) - high)
                yield band(rows, Rect(compartment.x, y - high / 2, compartment.width, high), colours.gold)


def raised_bands(box: Rect, compartments: list[Rect], colours: Leather, where: tuple[int, ...]) -> Iterator[Art]:
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
    """A raised band right across a spine about `y`, shaded as if it stood out, its ends rounded off."""
    step = high / (len(SHADING) - 2)
    for number, dark in enumerate(SHADING):
        off = step * (number - (len(SHADING) - 1) / 2)
        out = OVER - 0.45 * high * (1 - sqrt(max(0.0, 1 - (1.7 * off / high) ** 2)))
        tone = darker(skin, dark) if dark > 0 else lighter(skin, -dark)
        yield Filled.box(Rect(box.x - out, y + off - step * 0.51, box.width + 2 * out, step * 1.02), tone)
