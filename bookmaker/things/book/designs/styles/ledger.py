"""A ledger: canvas sides, spine and corners in leather, broad bands, a label, a number."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from random import Random
from typing import Literal

from .....ground.art import Filled, Group
from .....ground.drawing import Art
from .....ground.geometry import Rect
from ..colouring import tooled
from ..grounds.textures import faded_ground, grain, weave
from ..letters.front import pasted_label
from ..letters.lettering import Lettered, best_ink, together
from ..letters.spine import as_in_set, free_room, letter_number, letter_spine, way_along, way_for
from ..ornament.ornaments import rule
from ..ornament.tooling import ridge
from ..palettes import BONE, SOOT, Material
from ..tones import darker, mixed
from .half_leather import outlines_of_sides, seams
from .look import ArtAndWords, Dressing, Look, SkeletonDesign, Stuff

__all__ = ["LedgerDesign"]

PLACES = (0.1, 0.3, 0.7, 0.9)
"""Where the bands lie, as shares of the spine's height."""

PLACES_ALONG = (0.06, 0.18, 0.82, 0.94)
"""Where they lie when the words run along the spine and need more of its length."""

LARGEST_NUMBER = 1.8
"""The em of a number between the lower bands, in mm at the most."""


def _covering(cover: Dressing, chance: Random) -> Iterator[Art]:
    assert cover.sides is not None  # the table below says of what
    faces, leather, canvas = cover.faces, cover.ground, cover.sides.colours[0]
    yield from faded_ground(faces, leather, cover.entry.wear)
    yield from grain(faces.whole, leather, chance)
    for outline in outlines_of_sides(faces):
        area = Rect.around(outline.points())
        threads = weave(area, canvas, Random(chance.random()), 0.036, 0.07)
        yield Group((Filled.box(area, canvas), *threads), clip=outline)
    yield from seams(faces, darker(leather, 0.4))


def _spine(cover: Dressing, box: Rect) -> ArtAndWords:
    places, lettered = _words(cover, box)
    return list(_bands(cover, box, places)), [lettered]


def _bands(cover: Dressing, box: Rect, places: Sequence[float]) -> Iterator[Art]:
    """Four broad bands, with a fine fillet on both sides of each."""
    high = min(0.95, box.height * 0.036)
    for share in places:
        y = box.y + box.height * share
        if box.width >= 2.2:
            yield from ridge(box, y, high, cover.bleached)
        for off in (-0.85, 0.85):
            yield rule(y + off * high, box.x, box.right, 0.07, cover.hand.ink)


def _words(cover: Dressing, box: Rect) -> tuple[Sequence[float], Lettered]:
    """Where the bands lie, and the words: across, the title stands between the middle ones and the number under it."""
    room, spine, words = as_in_set(free_room(box), cover.words), cover.spine, cover.words.on_narrowest()
    between, long = _between(room, box, PLACES), _between(room, box, PLACES_ALONG)
    if cover.entry.spine_title == "none":
        return PLACES, Lettered()
    if way_for(long, words, spine) != "across" or way_for(between, words, spine) != "across":
        along = replace(spine, way=way_along(words)) if spine.way == "auto" else spine
        return PLACES_ALONG, letter_spine(long, words, along)
    number = words.volume or words.date
    if not number:
        return PLACES, letter_spine(between, words, spine)
    rest = words.without("volume" if words.volume else "date")
    below = Rect(room.x, box.y + box.height * 0.15, room.width, box.height * 0.1)
    numbered = letter_number(number, below, words, spine.hand, LARGEST_NUMBER)
    return PLACES, together((letter_spine(between, rest, spine), numbered))


def _between(room: Rect, box: Rect, places: Sequence[float]) -> Rect:
    """The room between the middle bands, clear of them."""
    low, high = (box.y + box.height * (share + off) for share, off in ((places[1], 0.05), (places[2], -0.05)))
    return Rect(room.x, low, room.width, high - low)


def _front(cover: Dressing, front: Rect) -> ArtAndWords:
    wide, high = front.width * 0.58, front.height * 0.28
    plate = Rect(front.centre.x - wide / 2 + front.width * 0.06, front.y + front.height * 0.5, wide, high)
    hand = cover.hand_on_label("clarendon", "script", cover.entry.ink or SOOT, BONE)
    red = best_ink(BONE, (cover.ground, SOOT))
    return pasted_label(plate, cover.words, hand, red, 0.3, 0.8, 0.14, second=0.25, largest=4.0)


class LedgerDesign(SkeletonDesign):
    """An account book: `colour` is the canvas, `second_colour` the leather."""

    style: Literal["ledger"] = "ledger"
    material = Material.CLOTH
    look = Look(
        second=Material.LEATHER,
        typefaces=(
            ("clarendon bold", "clarendon"),
            ("clarendon", "clarendon"),
            ("caslon", "caslon"),
        ),
        ornamented=False,
        rubs=Material.LEATHER,
        ground=lambda colours: colours.second,
        ink=lambda entry, colours: tooled(entry, colours.second),
        sides=lambda _, colours, __: Stuff(Material.CLOTH, (mixed(colours.ground, BONE, 0.12),)),
        covering=_covering,
        spine=_spine,
        front=_front,
    )
