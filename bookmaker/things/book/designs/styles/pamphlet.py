"""A worn pamphlet: a paper wrapper, set in type like a playbill, spotted, creased and frayed."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal

from .....ground.art import Filled
from .....ground.drawing import Art, Colour
from .....ground.geometry import Path, Rect
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..colouring import colours_of, inked
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.textures import faded_ground, fibres, spots
from ..grounds.wear import creased, rubbed, sunned
from ..letters.front import inside
from ..letters.lettering import Hand, Lettered, composed, fitted, letter
from ..letters.spine import Spine, free_room, letter_spine
from ..ornament.devices import DEVICES
from ..ornament.ornaments import choose_fleuron, frame, rule, stamp
from ..palettes import SOOT, Material
from ..tones import mixed

__all__ = ["MATERIAL", "Pamphlet"]

MATERIAL = Material.PAPER

BROWN = Colour.from_hex("#8a6a3c")

BROWN_STEPS, BROWN_STEP = 5, 0.28
"""The browning fades in so many steps, each so many mm wide."""

FACES = (
    ("text bold", "text italic"),
    ("old style", "old style italic"),
    ("blackletter", "text"),
    ("typewriter", "typewriter"),
)


class Pamphlet(DrawnDesign):
    """A pamphlet that has been read."""

    style: Literal["pamphlet"] = "pamphlet"
    material = MATERIAL

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return dress(self, flat, words)


def dress(entry: Pamphlet, flat: Flat, words: Words) -> Dress:
    """Draw one flat."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, Material.CLOTH)
    paper = colours.ground
    title, author = FACES[int(chance.random() * len(FACES))]
    hand = Hand(title, author, inked(entry, paper, (SOOT, colours.second)), paper)
    fleuron = choose_fleuron(entry.ornament, chance)
    layers: list[Art] = [
        *faded_ground(faces, mixed(paper, BROWN, 0.05), entry.wear),
        *_browned(faces, paper),
        *fibres(faces.whole, paper, chance, 1.8, 0.1),
    ]
    if entry.wear != "none":
        marks = faces.whole.width * faces.whole.height
        layers += spots(faces.whole, paper, chance, min(140, int(marks / (30 if entry.wear == "light" else 14))))
        layers += creased(faces, mixed(paper, BROWN, 0.12), chance, 1 if entry.wear == "light" else 3)
    layers += rubbed(faces, MATERIAL, mixed(paper, BROWN, 0.2), entry.wear, Random(words.seed))
    texts: list[Lettered] = []
    if faces.spine:
        on_spine = hand.on_ground(sunned(paper, entry.wear))
        spine = Spine(on_spine, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device))
        texts.append(letter_spine(free_room(faces.spine), words, spine))
    if faces.front and entry.front_title:
        art, lettered = _front(faces.front, words, hand, fleuron)
        layers += art
        texts += lettered
    return composed(layers, texts, hand, fleuron)


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


def _front(front: Rect, words: Words, hand: Hand, fleuron: Path | None) -> tuple[list[Art], list[Lettered]]:
    """A frame of rules; title, dash, ornament, author."""
    hand = hand.on_front()
    room = inside(front, 0.16, 0.13)
    art: list[Art] = [*frame(inside(front, 0.08, 0.06), hand.ink, 0.14, second=0.28)]
    title = Rect(room.x, room.y + room.height * 0.55, room.width, room.height * 0.43)
    size = fitted("title", words.title, title, hand, "across", 5.4).size
    texts = [letter("title", words.title, title, hand, "across", 5.4)]
    for y in (0.5, 0.2):
        line = room.y + room.height * y
        art.append(rule(line, room.centre.x - room.width * 0.22, room.centre.x + room.width * 0.22, 0.1, hand.ink))
    if fleuron:
        side = min(room.width * 0.24, room.height * 0.18)
        middle = room.y + room.height * 0.35
        art.append(stamp(fleuron, Rect(room.centre.x - side / 2, middle - side / 2, side, side), hand.ink))
    foot = [text for text in (words.author, " ".join(part for part in (words.volume, words.date) if part)) if text]
    for number, text in enumerate(foot):
        high = room.height * 0.15 / len(foot)
        box = Rect(room.x, room.y + room.height * 0.015 + high * (len(foot) - 1 - number), room.width, high * 0.86)
        texts.append(letter("author" if number == 0 else "volume", text, box, hand, "across", size * 0.6))
    return art, texts
