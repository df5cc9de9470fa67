"""A publisher's picture cover of our own drawing: a scene all over, with a title panel, or behind a window."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random
from typing import Literal

from .....ground.art import Filled, Stroked
from .....ground.drawing import Art, Colour, Pen
from .....ground.geometry import Path, Rect, Transform
from ..chance import one_of
from ..colouring import Colours
from ..design import DrawnDesign, Words
from ..faces import Faces
from ..letters.front import inside
from ..letters.lettering import Hand, best_ink
from ..ornament.ornaments import frame
from ..palettes import BONE, PALETTES, SOOT, Material
from ..scenes.scenes import LAND, Plate, inks_of, scene_on_spines, scene_over, scene_within
from ..scenes.stage import Inks
from ..tones import apart, darker

__all__ = ["LOWEST", "Poster", "poster", "rise_of"]

Layout = Literal["open", "panel", "foot panel", "framed", "arch"]
LAYOUTS: tuple[Layout, ...] = ("open", "panel", "framed", "arch", "foot panel")


IN_SETS: tuple[Layout, ...] = ("open", "panel", "foot panel")
"""The layouts whose scene goes right round the book, and on to the next of its set."""


NARROW, WIDE, LOWEST = 3.0, 5.0, 0.8
"""On a spine of the first width in mm and less a landscape is so much lower than on one of the second, so that the
words along it, which have the sky to themselves, are longer."""


@dataclass(frozen=True, slots=True)
class Poster:
    """What is drawn on a cover, and where title and author of the front stand, on which ground.

    `back` is the room on the back that the scene leaves free; `round_it` says whether the scene goes round the spine.
    """

    layers: tuple[Art, ...]
    front: Rect | None
    hand: Hand
    back: Rect | None = None
    round_it: bool = False


def poster(entry: DrawnDesign, plate: Plate, faces: Faces, colours: Colours, words: Words, hand: Hand) -> Poster:
    """Draw scene, frame and panel; a set shares scene and layout, and its scene runs across all spines.

    In a quarter or half binding spine and corners are of plain stuff, and the front alone has a picture.
    """
    if faces.pieced:
        return Poster((), None, hand)
    chance = Random(words.kin + 7)
    inks = inks_of(colours.ground, entry.second_colour, entry.palette, chance)
    layout = one_of(IN_SETS if words.in_set else LAYOUTS, chance)
    if layout in ("framed", "arch"):
        return _behind_window(entry, plate, faces, colours, words, hand, layout, chance)
    seed = words.kin % 1_000_003
    layers: list[Art] = [Filled.box(faces.whole, colours.ground)]
    rise = rise_of(faces.spine, words)
    layers.append(scene_over(faces, faces.whole, plate, inks, seed, words.in_set, rise))
    strip = faces.spine_to_bleed()
    if faces.spine and strip and words.in_set:
        layers.append(scene_on_spines(faces.spine, strip, plate, inks, seed, words.in_set))
    front_room, front_hand = faces.front and _open_room(faces.front, rise), hand
    if faces.front and layout in ("panel", "foot panel") and entry.front_title:
        panel = _plate(faces.front, layout, rise)
        art, front_hand = _panel(panel, inks, hand, entry.ink)
        layers += art
        front_room = panel.grown(-panel.width * 0.1, -panel.height * 0.17, -panel.width * 0.1, -panel.height * 0.15)
    return Poster(tuple(layers), front_room, front_hand, _sky_of(faces.back), round_it=True)


def rise_of(spine: Rect | None, words: Words) -> float:
    """How high a landscape round a spine rises, as a share of what it does round a wide one, or round a whole set."""
    if spine is None or words.in_set:
        return 1.0
    share = (spine.width - NARROW) / (WIDE - NARROW)
    return LOWEST + (1 - LOWEST) * min(1.0, max(0.0, share))


def _behind_window(
    entry: DrawnDesign, plate: Plate, faces: Faces, colours: Colours, words: Words, hand: Hand, layout: Layout,
    chance: Random,
) -> Poster:  # fmt: skip
    """The scene behind a window of the front; spine and back are of the ground."""
    behind, layers = _another_sky(entry, colours.ground, chance), list[Art]()
    side = faces.front or (faces.back if not faces.side_alone else None)
    if side:
        window = _window(side, layout)
        layers.append(scene_within(window, plate, behind, words.kin % 1_000_003))
        layers += _framed(window, hand.ink, side.width)
    return Poster(tuple(layers), _over_window(faces), hand, faces.back if faces.front else None)


def _sky_of(back: Rect | None) -> Rect | None:
    """As much of a back as lies over the land of a scene."""
    return back and Rect(back.x, back.y + back.height * 0.52, back.width, back.height * 0.48)


def _another_sky(entry: DrawnDesign, ground: Colour, chance: Random) -> Inks:
    """The inks behind a window: under a sky unlike the ground around it."""
    cloths = PALETTES[entry.palette].grounds[Material.CLOTH]
    unlike = sorted(cloths, key=lambda colour: -apart(colour, ground))[:5]
    return inks_of(one_of(unlike, chance), None, entry.palette, chance)


def _over_window(faces: Faces) -> Rect | None:
    """The room for the words over a window."""
    if not faces.front:
        return None
    room = inside(faces.front, 0.12, 0.08)
    return Rect(room.x, room.y + room.height * 0.73, room.width, room.height * 0.27)


def _open_room(front: Rect, rise: float) -> Rect:
    """The sky over a scene, for words without a panel."""
    room, land = inside(front, 0.12, 0.08), front.y + front.height * (LAND * rise + 0.06)
    return Rect(room.x, land, room.width, room.top - land)


def _window(side: Rect, layout: Layout) -> Path:
    """The window on a side, in its lower part."""
    wide, high = side.width * 0.8, side.height * 0.56
    foot = side.y + side.height * 0.08
    box = Rect(side.centre.x - wide / 2, foot, wide, high)
    if layout == "framed":
        return Path.rectangle(box)
    r, h = wide / 2, wide / 2 * 0.5523
    spring = box.top - r * 0.8
    x, right, middle, top = box.x, box.right, box.centre.x, box.top
    return Path((("M", x, box.y), ("L", right, box.y), ("L", right, spring),
                 ("C", right, spring + h * 0.8, middle + h, top, middle, top),
                 ("C", middle - h, top, x, spring + h * 0.8, x, spring), ("Z",)))  # fmt: skip


def _framed(window: Path, ink: Colour, width: float) -> tuple[Art, ...]:
    """A line round a window, and one further out."""
    box = Rect.around(window.points())
    out = width * 0.026
    grown = Transform.stretch((box.width + 2 * out) / box.width, (box.height + 2 * out) / box.height, box.centre)
    wider = window.transformed(grown)
    return Stroked(window, Pen(max(0.1, width * 0.008), ink)), Stroked(wider, Pen(max(0.16, width * 0.015), ink))


def _plate(front: Rect, layout: Layout, rise: float) -> Rect:
    """The title panel in the sky over a scene, or a broad one that reaches into the scene."""
    lower = 1.0 - rise
    if layout == "panel":
        foot, aside, high = 0.66 - 0.34 * lower, 0.1, 0.26 + 0.2 * lower
    else:
        foot, aside, high = 0.56 - 0.34 * lower, 0.13, 0.34 + 0.1 * lower
    wide = front.width * (1 - 2 * aside)
    return Rect(front.x + front.width * aside, front.y + front.height * foot, wide, front.height * high)


def _panel(plate: Rect, inks: Inks, hand: Hand, asked: Colour | None) -> tuple[list[Art], Hand]:
    paper = inks.light
    ink = asked or best_ink(paper, (darker(inks.near, 0.3), SOOT, BONE))
    art: list[Art] = [Filled.box(plate, paper), *frame(plate.grown(-plate.height * 0.05), ink, 0.14, second=0.26)]
    return art, hand.on_ground(paper, ink)
