"""Which scene a cover has, its inks, and how it lies there: all over, across the spines of a set, in a window."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from random import Random
from typing import Literal, NamedTuple

from .....ground.art import Group
from .....ground.drawing import Art, Colour, luminance
from .....ground.geometry import Path, Rect
from ..chance import one_of
from ..design import InSet
from ..faces import Faces
from ..palettes import PALETTES, Material, PaletteName
from ..tones import apart, darker, lighter, mixed
from .creatures import fish, geese, moths, mushrooms, poppies
from .far_places import city, dunes, islands, snow, works
from .landscapes import coast, fields, firs, hills, mountains
from .manners import DARK, MANNERS, MannerName, manners_for
from .poster_plates import cut_paper, night, plants, shingle
from .sights import castle, church, lighthouse, oak, tents, windmill
from .stage import Inks, Mark, Stage
from .townscapes import bridge, harbour, roofs
from .travels import balloons, biplane, kites, lamps, ship, train

__all__ = [
    "LAND",
    "SCENES",
    "Plate",
    "SceneName",
    "choose_plate",
    "inks_of",
    "scene_on_spines",
    "scene_over",
    "scene_within",
]

SceneName = Literal[
    "balloons", "biplane", "bridge", "castle", "church", "city", "coast", "cut paper", "dunes", "fields", "firs",
    "fish", "geese", "harbour", "hills", "islands", "kites", "lamps", "lighthouse", "moths", "mountains", "mushrooms",
    "night", "oak", "plants", "poppies", "roofs", "shingle", "ship", "snow", "tents", "train", "windmill", "works",
]  # fmt: skip


LAND = 0.54
"""The share of a stage's height that land and things take."""


class Motif(NamedTuple):
    """What is to be seen, the first year in which it could be, and whether by day, by night, or both.

    `top` is the share of a stage's height that it reaches.
    """

    draw: Callable[[Stage, Inks], Iterator[Mark]]
    since: int = 0
    light: Literal["any", "day", "night"] = "any"
    top: float = LAND

    def on(self, stage: Stage, inks: Inks) -> Iterator[Mark]:
        """Draw it on a stage, as high as all others."""
        larger = LAND / self.top
        large = replace(stage, high=stage.high * larger, clear=stage.clear / larger, enlarged=larger)
        return self.draw(large, inks)


SCENES: Mapping[SceneName, Motif] = {
    "balloons": Motif(balloons, 1783),
    "biplane": Motif(biplane, 1909),
    "bridge": Motif(bridge),
    "castle": Motif(castle),
    "church": Motif(church),
    "city": Motif(city, 1900),
    "coast": Motif(coast),
    "cut paper": Motif(cut_paper, 1945),
    "dunes": Motif(dunes),
    "fields": Motif(fields, light="day"),
    "firs": Motif(firs),
    "fish": Motif(fish),
    "geese": Motif(geese),
    "harbour": Motif(harbour, top=0.42),
    "hills": Motif(hills),
    "islands": Motif(islands, top=0.48),
    "kites": Motif(kites, light="day"),
    "lamps": Motif(lamps, 1810, light="night"),
    "lighthouse": Motif(lighthouse),
    "moths": Motif(moths),
    "mountains": Motif(mountains),
    "mushrooms": Motif(mushrooms, top=0.42),
    "night": Motif(night, light="night"),
    "oak": Motif(oak),
    "plants": Motif(plants),
    "poppies": Motif(poppies, light="day", top=0.34),
    "roofs": Motif(roofs, light="night"),
    "shingle": Motif(shingle, light="day", top=0.37),
    "ship": Motif(ship),
    "snow": Motif(snow, top=0.39),
    "tents": Motif(tents),
    "train": Motif(train, 1830),
    "windmill": Motif(windmill),
    "works": Motif(works, 1800),
}

FAR = -60.0
"""The back side of a quarter binding lies so far from the front one in their landscape, in mm."""


class Plate(NamedTuple):
    """A motif in a manner, by their names."""

    scene: SceneName
    manner: MannerName

    def draw(self, stage: Stage, inks: Inks) -> Iterator[Art]:
        """Draw it on a stage."""
        return MANNERS[self.manner].draw(stage, tuple(SCENES[self.scene].on(stage, inks)), inks)


def choose_plate(
    scene: SceneName | Literal["auto"], manner: MannerName | Literal["auto"], sky: Colour, year: int | None, kin: int
) -> Plate:
    """The plate of a book: what was asked for, the rest as its look will have it, for a sky and a year."""
    chance = Random(kin + 7)
    sort = "night" if luminance(sky) < DARK else "day"
    offered = [name for name, motif in SCENES.items()
               if motif.light in ("any", sort) and (year is None or motif.since <= year)]  # fmt: skip
    drawn, printed = one_of(offered, chance), one_of(manners_for(sky, year), chance)
    return Plate(drawn if scene == "auto" else scene, printed if manner == "auto" else manner)


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


def scene_over(faces: Faces, area: Rect, plate: Plate, inks: Inks, seed: int, place: InSet | None = None,
               rise: float = 1.0) -> Art:  # fmt: skip
    """A scene over an area of a cover, cut off at its edges; what there is to look at stands on the front.

    Its height is the share `rise` of what is usual. The books of a set show parts of one landscape; it is as high as
    the shortest of them asks for, and all stand on it.
    """
    level = faces.spine or (faces.shown(faces.sides[0]) if faces.sides else faces.whole)
    focus = faces.front or level
    if faces.side_alone and faces.back:  # what there is to look at stays on the front
        level = level._replace(x=level.x + faces.outward(faces.back) * FAR)
        focus = level
    middle = focus.x + focus.width * (0.34 + 0.32 * Random(seed).random())
    begins, shorter = (place.begins, place.shorter) if place else (0.0, 0.0)
    stage = Stage(area.grown(0.3), level.y, (level.height - shorter) * rise, middle, level.x - begins, seed)
    return _clipped(plate, stage, inks, Path.rectangle(area))


def scene_on_spines(spine: Rect, area: Rect, plate: Plate, inks: Inks, seed: int, place: InSet) -> Art:
    """The part of a scene that falls on one spine of a set.

    The skyline is that of `scene_over`; what there is to look at stands in the middle of the row.
    """
    origin = spine.x - place.begins
    high = spine.height - place.shorter
    stage = Stage(area.grown(0.3), spine.y, high, origin + place.width / 2, origin, seed, clear=0.47)
    return _clipped(plate, stage, inks, Path.rectangle(area))


def scene_within(window: Path, plate: Plate, inks: Inks, seed: int, filling: float = 0.62) -> Art:
    """A scene seen through a window, of which it takes the share `filling` as it takes half of a cover."""
    box = Rect.around(window.points())
    middle = box.x + box.width * (0.4 + 0.2 * Random(seed).random())
    return _clipped(plate, Stage(box.grown(0.2), box.y, box.height / filling, middle, box.x, seed), inks, window)


def _clipped(plate: Plate, stage: Stage, inks: Inks, window: Path) -> Art:
    return Group(tuple(plate.draw(stage, inks)), clip=window)
