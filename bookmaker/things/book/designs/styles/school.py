"""A school series: smooth cloth in one colour, a heavy frame, a roundel with the number."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random
from typing import Literal

from .....ground.art import Filled, Stroked
from .....ground.drawing import Art, Pen
from .....ground.geometry import Path, Point, Rect, polygon
from ..colouring import inked
from ..grounds.textures import faded_ground, weave
from ..letters.front import inside, title_and_author
from ..letters.lettering import fitted, letter
from ..letters.spine import as_in_set, free_room, letter_number, letter_spine
from ..ornament.ornaments import double_rule, stamp
from ..palettes import BONE, SOOT, Material
from .look import ArtAndWords, Dressing, Look, SkeletonDesign

__all__ = ["School"]


def _covering(cover: Dressing, chance: Random) -> Iterator[Art]:
    yield from faded_ground(cover.faces, cover.ground, cover.entry.wear)
    yield from weave(cover.faces.whole, cover.ground, chance, 0.025, 0.04)
    for side in cover.faces.sides:
        outer, wide, ink = inside(side, 0.08, 0.057), side.width, cover.hand.ink
        yield Stroked(_cut_frame(outer, wide * 0.07), Pen(wide * 0.026, ink))
        yield Stroked(_cut_frame(outer.grown(-wide * 0.035), wide * 0.06), Pen(wide * 0.008, ink))


def _cut_frame(rect: Rect, cut: float) -> Path:
    """A rectangle with its corners cut off."""
    x, y, right, top = rect.x, rect.y, rect.right, rect.top
    return polygon(
        [
            Point(x + cut, y), Point(right - cut, y), Point(right, y + cut), Point(right, top - cut),
            Point(right - cut, top), Point(x + cut, top), Point(x, top - cut), Point(x, y + cut),
        ]
    )  # fmt: skip


def _spine(cover: Dressing, box: Rect) -> ArtAndWords:
    """Thin rules in pairs at head and tail, and over the number, if there is one; the title between."""
    words, ink = cover.words, cover.spine.hand.ink
    end, foot = box.height * 0.05, box.height * 0.205
    rules = [(box.y + end, 1), (box.top - end, -1)]
    if words.volume:
        rules.append((box.y + foot, 1))
    room, low = as_in_set(free_room(box), words), foot if words.volume else end
    free = Rect(room.x, box.y + low + 0.7, room.width, box.height - low - end - 1.4)
    numbered, spine = [], cover.spine
    if words.volume:
        number = Rect(room.x, box.y + end + 0.6, room.width, foot - end - 1.05)
        numbered = [letter_number(words.volume, number, words, spine.hand)]
        # the title is no larger than the number, for which there is only so much room
        size = fitted("volume", words.volume, number, spine.hand, "across", spine.largest).size
        spine = replace(spine, largest=min(spine.largest, size))
    texts = [letter_spine(free, words.on_narrowest().without("volume"), spine), *numbered]
    return [art for y, inward in rules for art in double_rule(y, box.x, box.right, inward, ink)], texts


def _front(cover: Dressing, front: Rect) -> ArtAndWords:
    """Title in the upper half, the roundel under it, the author at the foot."""
    words, hand, room = cover.words, cover.hand.on_front(), inside(front, 0.18, 0.14)
    title, *author = title_and_author(room, words, hand, (0.58, 0.4), 0.15, 0.65, 4.6)
    middle = Point(room.centre.x, room.y + room.height * 0.37)
    radius = min(room.width * 0.2, room.height * 0.13)
    if words.volume:
        disc = Filled(Path.circle(middle, radius), hand.ink)
        ring = Stroked(Path.circle(middle, radius * 1.18), Pen(0.1, hand.ink))
        box = Rect(middle.x - radius * 0.62, middle.y - radius * 0.55, radius * 1.24, radius * 1.1)
        number = letter("volume", words.volume, box, hand.on_ground(hand.ink, hand.ground), "across", 4.0)
        return [disc, ring], [title, number, *author]
    box = Rect(middle.x - radius, middle.y - radius, 2 * radius, 2 * radius)
    return [stamp(cover.fleuron, box, hand.ink)] if cover.fleuron else [], [title, *author]


class School(SkeletonDesign):
    """A schoolbook of a series."""

    style: Literal["school"] = "school"
    material = Material.CLOTH
    look = Look(
        second=Material.PAPER,
        typefaces=(
            ("clarendon bold", "clarendon"),
            ("geometric bold", "geometric"),
            ("humanist bold", "humanist"),
            ("sans bold", "sans"),
            ("caslon", "caslon"),
        ),
        ink=lambda entry, colours: inked(entry, colours.ground, (SOOT, BONE)),
        covering=_covering,
        spine=_spine,
        front=_front,
    )
