"""Full leather: grained skin, raised bands, a title label, gold fillets round the sides."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal

from .....ground.drawing import Art
from .....ground.geometry import Rect
from ..colouring import inked, tooled
from ..grounds.textures import faded_ground, grain
from ..letters.front import inside, letter_front
from ..ornament.bands import banded_spine
from ..ornament.corners import corner_pieces
from ..ornament.ornaments import frame
from ..palettes import Material
from .look import ArtAndWords, Dressing, Look, SkeletonDesign

__all__ = ["Leather", "banded"]


def _covering(cover: Dressing, chance: Random) -> Iterator[Art]:
    """Fillets round each side, corner pieces within them."""
    yield from faded_ground(cover.faces, cover.ground, cover.entry.wear)
    yield from grain(cover.faces.whole, cover.ground, chance)
    gold, wide = cover.hand.ink, chance.random() < 0.5
    for side in cover.faces.sides:
        yield from frame(inside(side, 0.06, 0.045), gold, 0.1, second=0.3)
        if wide:
            inner = inside(side, 0.14, 0.105)
            yield from frame(inner, gold, 0.06)
            yield corner_pieces(inner, side.width * 0.13, gold, cover.words.kin)
        else:
            yield corner_pieces(inside(side, 0.095, 0.07), side.width * 0.15, gold, cover.words.kin)


def banded(cover: Dressing, spine: Rect) -> ArtAndWords:
    """Bands and a label in the second colour, which a maker who names it will want to see."""
    label, entry = cover.colours.second, cover.entry
    on_label = (label, inked(entry, label))
    return banded_spine(spine, cover.words, cover.spine, on_label, labelled=entry.second_colour is not None)


def _front(cover: Dressing, front: Rect) -> ArtAndWords:
    return (), [letter_front(inside(front, 0.22, 0.2), cover.words, cover.hand, cover.fleuron, 4.0)]


class Leather(SkeletonDesign):
    """Leather with raised bands and a title label."""

    style: Literal["leather"] = "leather"
    material = Material.LEATHER
    look = Look(
        second=Material.LEATHER,
        typefaces=(
            ("caslon", "caslon"),
            ("didone", "didone"),
            ("old style", "old style"),
            ("inscriptional", "caslon"),
        ),
        capitals=1.0,
        spine_ornament=1.0,
        rules=False,
        ink=lambda entry, colours: tooled(entry, colours.ground),
        covering=_covering,
        spine=banded,
        front=_front,
    )
