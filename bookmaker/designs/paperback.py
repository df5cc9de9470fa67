"""A modern paperback: a field of one colour, stripes of unequal height that run round the spine, plain lettering."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path as FilePath
from random import Random
from typing import Literal

from ..drawing import Art, Colour
from ..flat import Flat
from ..geometry import Path, Point, Rect, polygon
from .colouring import Colours, colours_of, inked
from .design import DrawnDesign, Dress, Words
from .devices import DEVICES
from .faces import Faces, read_faces
from .front import inside, label
from .lettering import Hand, composed
from .palettes import BONE, PALETTES, SOOT, Material
from .shapes import Shape, block, gathered
from .spine import Spine, free_room, letter_spine
from .tones import apart, darker
from .wear import rubbed

__all__ = ["MATERIAL", "Paperback", "dress", "load"]

MATERIAL = Material.CLOTH

FACES = (("sans bold", "sans"), ("text bold", "sans"), ("sans bold", "sans bold"))


class Paperback(DrawnDesign):
    """A paperback with bands of colour."""

    style: Literal["paperback"] = "paperback"


def load(entry: Paperback, folder: FilePath) -> None:
    """Nothing to read."""


def dress(entry: Paperback, _artwork: None, flat: Flat, words: Words) -> Dress:
    """Draw one flat: the stripes lie low on the cover, the words above them."""
    faces, chance = read_faces(flat), Random(words.kin)
    colours = colours_of(entry, words.kin, MATERIAL, MATERIAL)
    title, author = FACES[int(chance.random() * len(FACES))]
    hand = Hand(title, author, inked(entry, colours.ground, (BONE, SOOT)), colours.ground)
    level = faces.spine or faces.front or faces.whole
    top = level.y + level.height * (0.2 + 0.2 * chance.random())
    layers: list[Art] = [
        block(faces.whole, colours.ground),
        *_stripes(faces, level, top, _three(entry, colours), chance),
        *_creases(faces, colours.ground),
        *rubbed(faces, Material.PAPER, colours.ground, entry.wear, Random(words.seed)),
    ]
    texts = []
    if faces.spine:
        spine = Spine(hand, entry.spine_title, entry.abbreviate, device=DEVICES.get(entry.device),
                      author_first=chance.random() < 0.4)  # fmt: skip
        room = free_room(faces.spine)
        above = Rect(room.x, top + 0.6, room.width, room.top - top - 0.6)
        texts.append(letter_spine(above, words, spine))
    if faces.front and entry.front_title:
        room = inside(faces.front, 0.1, 0.07)
        high = room.top - top - faces.front.height * 0.07
        texts.append(label(Rect(room.x, room.top - high, room.width, high), words, hand, 5.0))
    return composed(layers, texts)


def _three(entry: DrawnDesign, colours: Colours) -> list[Colour]:
    """The colours of the stripes: unlike the ground, the first two unlike one another."""
    offered = [
        colour for colour in PALETTES[entry.palette].grounds[Material.PAPER] if apart(colour, colours.ground) > 0.15
    ]
    return [colours.second, *offered[:2], darker(colours.ground, 0.35)]


def _stripes(faces: Faces, level: Rect, top: float, inks: list[Colour], chance: Random) -> Iterator[Art]:
    """Stripes from the foot up to `top`: level ones, a saw edge, or hills."""
    kind = chance.random()
    whole = faces.whole
    heights = [0.2 + chance.random() for _ in range(5)]
    scale = (top - level.y) / sum(heights)
    y = whole.y
    for number in range(len(heights)):
        upper = level.y + scale * sum(heights[: number + 1])
        yield block(Rect(whole.x, y, whole.width, upper - y), inks[number % len(inks)])
        y = upper
    if kind < 0.35:
        yield _saw(whole, top, (top - level.y) * 0.16, inks[0])
    elif kind < 0.65:
        yield _discs(whole, level, top, inks[-1])


def _saw(whole: Rect, y: float, high: float, ink: Colour) -> Shape:
    count = max(3, round(whole.width / (high * 1.6)))
    step = whole.width / count
    teeth = [
        polygon((Point(whole.x + step * i, y - 0.02), Point(whole.x + step * (i + 1), y - 0.02),
                 Point(whole.x + step * (i + 0.5), y + high)))
        for i in range(count)
    ]  # fmt: skip
    return Shape(gathered(teeth), ink)


def _discs(whole: Rect, level: Rect, top: float, ink: Colour) -> Shape:
    radius = (top - level.y) * 0.16
    count = max(3, round(whole.width / (radius * 3.2)))
    step = whole.width / count
    y = level.y + (top - level.y) * 0.55
    return Shape(gathered(Path.circle(Point(whole.x + step * (i + 0.5), y), radius) for i in range(count)), ink)


def _creases(faces: Faces, ground: Colour) -> Iterator[Art]:
    """Where the cover bends on opening: a fine line beside each fold."""
    for x in faces.folds:
        away = 0.9 if faces.spine and x > faces.spine.centre.x else -0.9
        yield block(Rect(x + away - 0.03, faces.whole.y, 0.06, faces.whole.height), darker(ground, 0.18))
