"""Paper boards: block-printed or plain paper over boards, titles on printed paper labels."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random
from typing import Literal

from .....ground.art import Filled, Group
from .....ground.drawing import Art
from .....ground.geometry import Path, Rect
from ..faces import Faces
from ..grounds.textures import faded_ground, fibres
from ..letters.front import pasted_label
from ..letters.lettering import Hand
from ..letters.spine import as_narrowest, clear_of_folds, free_room, letter_spine, way_for
from ..ornament.fleurons import choose_fleuron
from ..ornament.ornaments import rule
from ..ornament.repeats import printed_paper
from ..palettes import BONE, SOOT, Material
from ..tones import darker, lighter, mixed
from .look import ArtAndWords, Dressing, Look, SkeletonDesign

__all__ = ["PaperBoards"]


def _covering(cover: Dressing, chance: Random) -> Iterator[Art]:
    """Plain now and then; else a repeat on the sides, or all round, never so strong that it outshouts the labels."""
    faces, ground = cover.faces, cover.ground
    fleuron = choose_fleuron(cover.entry.ornament, chance)
    yield from faded_ground(faces, ground, cover.entry.wear)
    yield from fibres(faces.whole, ground, chance)
    if not fleuron or chance.random() >= 0.72:
        return
    tone, everywhere = mixed(ground, cover.colours.second, 0.62), chance.random() < 0.4
    sheet = int(chance.random() * 2**32)
    beside = [_beside_spine(faces, side) for side in faces.sides]
    areas = [faces.whole] if everywhere or not beside else beside
    for area in areas:
        yield Group(tuple(printed_paper(area, tone, Random(sheet))), clip=Path.rectangle(area))
    if not everywhere and faces.spine:
        for area in areas:
            x = area.x if area.centre.x > faces.spine.centre.x else area.right
            yield Filled.box(Rect(x - 0.06, area.y, 0.12, area.height), darker(ground, 0.25))


def _beside_spine(faces: Faces, side: Rect) -> Rect:
    """A side, out to the bleed, less a strip along the spine that is left plain."""
    whole = faces.to_bleed(side)
    strip = side.width * 0.12 if faces.spine else 0.0
    return whole.grown(-strip, 0, 0, 0) if faces.outward(side) > 0 else whole.grown(0, 0, -strip, 0)


def _on_label(cover: Dressing) -> Hand:
    """The hand on the paper of the labels."""
    return cover.hand.on_ground(mixed(BONE, cover.ground, 0.06))


def _spine(cover: Dressing, spine: Rect) -> ArtAndWords:
    """A paper label near the head, as high as its words need, with a rule at both ends."""
    asked, words = replace(cover.spine, hand=_on_label(cover)), cover.words
    if asked.way == "none":
        return (), ()
    slim, alone, paper = as_narrowest(spine, words), words.on_narrowest(), asked.hand.ground
    way = way_for(free_room(slim), alone, asked)
    high = spine.height * ((0.42 if words.author else 0.3) if way == "across" else 0.68)
    plate, slim_plate = (_under_head(box, high) for box in (spine, slim))
    edge = max(min(0.35, slim_plate.width * 0.12), clear_of_folds(slim.width) - slim_plate.x + slim.x)
    art = [Filled.box(plate.grown(0.05), darker(paper, 0.3)), Filled.box(plate, paper)]
    for y in (plate.y + 0.28, plate.top - 0.28):
        art.append(rule(y, plate.x + 0.1, plate.right - 0.1, 0.1, cover.colours.second))
    return art, [letter_spine(slim_plate.grown(-edge, -0.55, -edge, -0.55), alone, asked)]


def _under_head(spine: Rect, high: float) -> Rect:
    """Where the label lies on a spine: a little narrower than it, under the head."""
    aside = min(0.22, spine.width * 0.1)
    return Rect(spine.x + aside, spine.top - spine.height * 0.09 - high, spine.width - 2 * aside, high)


def _front(cover: Dressing, front: Rect) -> ArtAndWords:
    wide, high = front.width * 0.68, front.height * 0.29
    plate = Rect(front.centre.x - wide / 2, front.y + front.height * 0.56, wide, high)
    hand = _on_label(cover)
    art, words = pasted_label(
        plate,
        cover.words,
        hand,
        cover.colours.second,
        0.3,
        0.75,
        0.12,
        second=0.2,
        largest=3.6,
        paper=lighter(hand.ground, 0.1),
    )
    return [Filled.box(plate.grown(0.06), darker(hand.ground, 0.3)), *art], words


class PaperBoards(SkeletonDesign):
    """Paper over boards with printed labels."""

    style: Literal["paper boards"] = "paper boards"
    material = Material.PAPER
    look = Look(
        second=Material.CLOTH,
        typefaces=(
            ("caslon", "caslon italic"),
            ("old style", "old style italic"),
            ("didone", "caslon italic"),
            ("clarendon", "clarendon"),
            ("typewriter", "typewriter"),
        ),
        ornamented=False,
        labelled=True,
        ink=lambda entry, _: entry.ink or SOOT,
        covering=_covering,
        spine=_spine,
        front=_front,
    )
