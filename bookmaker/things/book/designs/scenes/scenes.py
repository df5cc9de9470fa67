"""Which scene a cover has, its inks, and how it lies there: all over, across the spines of a set, in a window."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from random import Random

from .....ground.art import Group
from .....ground.drawing import Art, Colour, luminance
from .....ground.geometry import Path, Rect
from ..design import InSet
from ..faces import Faces
from ..palettes import PALETTES, Material, PaletteName
from ..tones import apart, darker, lighter, mixed
from .landscapes import coast, fields, firs, hills, mountains
from .poster_plates import cut_paper, night, plants, shingle
from .stage import Inks, Stage
from .townscapes import bridge, harbour, roofs

__all__ = ["Scene", "choose_scene", "inks_of", "scene_on_spines", "scene_over", "scene_within"]

Scene = Callable[[Stage, Inks], Iterator[Art]]

BY_DAY: Sequence[Scene] = (coast, hills, mountains, fields, firs, harbour, bridge, plants, cut_paper, shingle)
BY_NIGHT: Sequence[Scene] = (night, roofs, coast, firs, mountains, harbour, bridge, plants, cut_paper, hills)

FAR = -60.0
"""The back side of a quarter binding lies so far from the front one in their landscape, in mm."""

DARK = 0.12
"""A ground less luminous than this is a night sky."""


def choose_scene(ground: Colour, chance: Random) -> Scene:
    """A scene for a sky of that colour."""
    offered = BY_NIGHT if luminance(ground) < DARK else BY_DAY
    return offered[int(chance.random() * len(offered))]


def inks_of(ground: Colour, second: Colour | None, palette: PaletteName, chance: Random) -> Inks:
    """Five inks: the ground as the sky, land unlike it, the palette's light, and an accent unlike them all."""
    light = PALETTES[palette].marbling[-1]
    cloths = PALETTES[palette].grounds[Material.CLOTH]
    unlike = sorted(cloths, key=lambda colour: -apart(colour, ground))[:4]
    land = second or unlike[int(chance.random() * len(unlike))]
    accent = max(cloths, key=lambda colour: min(apart(colour, other) for other in (ground, land, light)))
    if luminance(ground) < DARK:
        far, near = mixed(lighter(land, 0.16), ground, 0.35), darker(land, 0.35)
    else:
        far, near = mixed(land, ground, 0.55), darker(land, 0.3)
    return Inks(ground, far, near, light, accent)


def scene_over(faces: Faces, area: Rect, scene: Scene, inks: Inks, seed: int, place: InSet | None = None) -> Art:
    """A scene over an area of a cover, cut off at its edges; what there is to look at stands on the front.

    The books of a set show parts of one landscape; it is as high as the shortest of them asks for, and all stand on it.
    """
    level = faces.spine or (faces.shown(faces.sides[0]) if faces.sides else faces.whole)
    focus = faces.front or level
    if faces.side_alone and faces.back:  # what there is to look at stays on the front
        level = level._replace(x=level.x + faces.outward(faces.back) * FAR)
        focus = level
    middle = focus.x + focus.width * (0.34 + 0.32 * Random(seed).random())
    begins, shorter = (place.begins, place.shorter) if place else (0.0, 0.0)
    stage = Stage(area.grown(0.3), level.y, level.height - shorter, middle, level.x - begins, seed)
    return _clipped(scene, stage, inks, Path.rectangle(area))


def scene_on_spines(spine: Rect, area: Rect, scene: Scene, inks: Inks, seed: int, place: InSet) -> Art:
    """The part of a scene that falls on one spine of a set.

    The skyline is that of `scene_over`; what there is to look at stands in the middle of the row.
    """
    origin = spine.x - place.begins
    high = spine.height - place.shorter
    stage = Stage(area.grown(0.3), spine.y, high, origin + place.width / 2, origin, seed, clear=0.47)
    return _clipped(scene, stage, inks, Path.rectangle(area))


def scene_within(window: Path, scene: Scene, inks: Inks, seed: int, filling: float = 0.62) -> Art:
    """A scene seen through a window, of which it takes the share `filling` as it takes half of a cover."""
    box = Rect.around(window.points())
    middle = box.x + box.width * (0.4 + 0.2 * Random(seed).random())
    return _clipped(scene, Stage(box.grown(0.2), box.y, box.height / filling, middle, box.x, seed), inks, window)


def _clipped(scene: Scene, stage: Stage, inks: Inks, window: Path) -> Art:
    return Group(tuple(scene(stage, inks)), clip=window)
