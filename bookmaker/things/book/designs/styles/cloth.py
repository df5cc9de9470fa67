"""Cloth with stamped titling: a weave in one colour, rules and ornaments in gold or ink."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal, get_args

from .....ground.art import Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Rect
from ..chance import one_of
from ..faces import Faces
from ..grounds.textures import faded_ground, weave
from ..letters.front import inside, letter_front
from ..letters.spine import free_room, letter_spine
from ..ornament.corners import corner_pieces
from ..ornament.ornaments import BandName, band, frame, rule
from ..palettes import Material
from ..tones import darker
from .look import ArtAndWords, Dressing, Look, SkeletonDesign

__all__ = ["Cloth"]

END = 0.085
"""Share of the spine's height that the ornament at head and tail takes."""


CORNERS_END = 0.07 + 0.05 + 0.16 + 0.01
"""So far from head and tail corner pieces reach, as a share of a side's width: the frame, what is free, their size."""


def _covering(cover: Dressing, chance: Random) -> Iterator[Art]:
    # stamped alike through a set, however much weave each volume takes
    stamps = Random(chance.random())
    yield from faded_ground(cover.faces, cover.ground, cover.entry.wear)
    yield from weave(cover.faces.whole, cover.ground, chance)
    yield from _pressed(cover.faces, cover.ground, stamps, cover.words.kin)
    yield from _spine_ends(cover.faces, cover.hand.ink, stamps)


def _spine_ends(faces: Faces, ink: Colour, chance: Random) -> Iterator[Art]:
    """Rules, or a band between rules, at head and tail of the spine; they stop short of the folds' error."""
    name = one_of(get_args(BandName), chance)
    plain = chance.random() < 0.45
    if not faces.spine:
        return
    spine = faces.spine
    left, right, high = spine.x, spine.right, spine.height * END
    for at, way in ((spine.top, -1), (spine.y, 1)):
        yield rule(at + way * high * 0.28, left, right, 0.12, ink)
        if plain or spine.width < 1.6:
            yield rule(at + way * high * 0.5, left, right, 0.06, ink)
            continue
        middle = at + way * high * 0.64
        yield band(name, Rect(left, middle - high * 0.2, right - left, high * 0.4), ink)
        yield rule(at + way * high, left, right, 0.12, ink)


def _pressed(faces: Faces, ground: Colour, chance: Random, kin: int) -> Iterator[Art]:
    """Blind stamping on the sides: a frame pressed into the cloth, darker than it."""
    kind, tone = chance.random(), darker(ground, 0.3)
    for side in faces.sides:
        inner = side.grown(-side.width * 0.07)
        yield from frame(inner, tone, 0.16, second=side.width * 0.03)
        if kind > 0.5:
            yield corner_pieces(inner.grown(-side.width * 0.05), side.width * 0.16, tone, kin)
        elif kind > 0.25:
            yield Stroked(Path.rectangle(inner.grown(-side.width * 0.05)), Pen(0.3, tone))


def _spine(cover: Dressing, spine: Rect) -> ArtAndWords:
    end = spine.height * END * 0.75
    return (), [letter_spine(free_room(spine).grown(0, -end, 0, -end), cover.words, cover.spine)]


def _front(cover: Dressing, front: Rect) -> ArtAndWords:
    """Title and author between the corner pieces, wherever they are pressed."""
    room = inside(front, 0.17, max(0.14, CORNERS_END * front.width / front.height))
    return (), [letter_front(room, cover.words, cover.hand, cover.fleuron)]


class Cloth(SkeletonDesign):
    """Book cloth with stamped titling."""

    style: Literal["cloth"] = "cloth"
    material = Material.CLOTH
    look = Look(
        second=Material.LEATHER,
        typefaces=(
            ("clarendon", "clarendon"),
            ("didone", "caslon italic"),
            ("caslon", "caslon"),
            ("old style", "old style"),
            ("inscriptional", "caslon"),
            ("clarendon bold", "clarendon"),
            ("geometric", "geometric"),
            ("humanist", "humanist"),
        ),
        capitals=0.5,
        spine_ornament=0.6,
        covering=_covering,
        spine=_spine,
        front=_front,
    )
