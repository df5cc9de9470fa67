"""A worn pamphlet: a paper wrapper, set in type like a playbill, spotted, creased and frayed."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal

from .....ground.art import Filled
from .....ground.drawing import Art, Colour
from .....ground.geometry import Rect
from ..colouring import inked
from ..faces import Faces
from ..grounds.textures import faded_ground, fibres, spots
from ..grounds.wear import creased
from ..letters.front import inside
from ..letters.lettering import fitted, letter
from ..letters.spine import free_room, letter_spine
from ..ornament.ornaments import frame, rule, stamp
from ..palettes import SOOT, Material
from ..tones import mixed
from .look import ArtAndWords, Dressing, Look, SkeletonDesign

__all__ = ["Pamphlet"]

BROWN = Colour.from_hex("#8a6a3c")

BROWN_STEPS, BROWN_STEP = 5, 0.28
"""The browning fades in so many steps, each so many mm wide."""


def _covering(cover: Dressing, chance: Random) -> Iterator[Art]:
    faces, paper, wear = cover.faces, cover.ground, cover.entry.wear
    yield from faded_ground(faces, mixed(paper, BROWN, 0.05), wear)
    yield from _browned(faces, paper)
    yield from fibres(faces.whole, paper, chance, 1.8, 0.1)
    if wear != "none":
        marks = faces.whole.width * faces.whole.height
        yield from spots(faces.whole, paper, chance, min(140, int(marks / (30 if wear == "light" else 14))))
        yield from creased(faces, mixed(paper, BROWN, 0.12), chance, 1 if wear == "light" else 3)


def _browned(faces: Faces, paper: Colour) -> Iterator[Art]:
    """Edges darkened by light and air, in steps inwards: the fore-edges, and head and tail, over the spine as well."""
    board = faces.spine or (faces.shown(faces.sides[0]) if faces.sides else None)
    if board is None:
        return
    for step in range(BROWN_STEPS):
        tone, depth = mixed(paper, BROWN, 0.26 - 0.05 * step), 0.25 + BROWN_STEP * step
        beyond = faces.whole.top - board.top
        thick = depth + beyond if step == 0 else BROWN_STEP
        left, right = faces.whole.x, faces.whole.right
        for side in faces.sides:
            out = faces.outward(side)
            far = side.right - depth if out > 0 else side.x + depth
            edge = (right if out > 0 else left) if step == 0 else far + out * BROWN_STEP
            low, high = sorted((far, edge))
            yield Filled.box(Rect(low, board.y + depth - thick, high - low, board.height - 2 * depth + 2 * thick), tone)
            left, right = (left, high) if out > 0 else (low, right)
        yield Filled.box(Rect(left, board.y + depth - thick, right - left, thick), tone)
        yield Filled.box(Rect(left, board.top - depth, right - left, thick), tone)


def _spine(cover: Dressing, spine: Rect) -> ArtAndWords:
    return (), [letter_spine(free_room(spine), cover.words, cover.spine)]


def _front(cover: Dressing, front: Rect) -> ArtAndWords:
    """A frame of rules; title, dash, ornament, author."""
    words, hand, room = cover.words, cover.hand.on_front(), inside(front, 0.16, 0.13)
    art: list[Art] = [*frame(inside(front, 0.08, 0.06), hand.ink, 0.14, second=0.28)]
    title = Rect(room.x, room.y + room.height * 0.55, room.width, room.height * 0.43)
    size = fitted("title", words.title, title, hand, "across", 5.4).size
    texts = [letter("title", words.title, title, hand, "across", 5.4)]
    for y in (0.5, 0.2):
        line = room.y + room.height * y
        art.append(rule(line, room.centre.x - room.width * 0.22, room.centre.x + room.width * 0.22, 0.1, hand.ink))
    if cover.fleuron:
        side = min(room.width * 0.24, room.height * 0.18)
        middle = room.y + room.height * 0.35
        art.append(stamp(cover.fleuron, Rect(room.centre.x - side / 2, middle - side / 2, side, side), hand.ink))
    foot = [text for text in (words.author, " ".join(part for part in (words.volume, words.date) if part)) if text]
    for number, text in enumerate(foot):
        high = room.height * 0.15 / len(foot)
        box = Rect(room.x, room.y + room.height * 0.015 + high * (len(foot) - 1 - number), room.width, high * 0.86)
        texts.append(letter("author" if number == 0 else "volume", text, box, hand, "across", size * 0.6))
    return art, texts


class Pamphlet(SkeletonDesign):
    """A pamphlet that has been read."""

    style: Literal["pamphlet"] = "pamphlet"
    material = Material.PAPER
    look = Look(
        second=Material.CLOTH,
        typefaces=(
            ("clarendon bold", "clarendon"),
            ("didone", "caslon italic"),
            ("old style", "old style italic"),
            ("blackletter", "caslon"),
            ("typewriter", "typewriter"),
            ("caslon", "caslon italic"),
        ),
        rules=False,
        worn=lambda paper: mixed(paper, BROWN, 0.2),
        ink=lambda entry, colours: inked(entry, colours.ground, (SOOT, colours.second)),
        covering=_covering,
        spine=_spine,
        front=_front,
    )
