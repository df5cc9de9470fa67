"""Which colours a cover has: what the maker said, or what its palette offers and its neighbours leave."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from random import Random

from ....ground.drawing import Colour, contrast
from .design import Design, DrawnDesign, Words
from .grounds.wear import sunned
from .letters.lettering import best_ink
from .palettes import BONE, GOLD, PALETTES, SOOT, Material
from .tones import apart

__all__ = ["Colours", "coloured", "colours_of", "grounds", "inked", "tooled"]

UNLIKE_NEIGHBOUR = 0.1
"""Neighbours on the shelf are at least so far apart in Oklab, if the palette has such a colour."""

READ = 3.0
"""The contrast that large letters need (WCAG 2.x, level AA)."""

UNLIKE_GROUND = 0.16
"""A label or a stripe is at least so far from the ground."""


@dataclass(frozen=True, slots=True)
class Colours:
    """The ground of a cover, the colour of labels, corners or stripes, and the titling."""

    ground: Colour
    second: Colour
    ink: Colour


def grounds(entry: DrawnDesign, seed: int, material: Material) -> tuple[Colour, ...]:
    """The colours a cover may have, the likeliest first: only one, if the maker named it."""
    if entry.colour:
        return (entry.colour,)
    return _shuffled(PALETTES[entry.palette].grounds[material], seed)


def colours_of(entry: DrawnDesign, seed: int, material: Material, second: Material) -> Colours:
    """The colours of a cover: its ground is of one material, its labels or corners of another."""
    ground = grounds(entry, seed, material)[0]
    offered = _shuffled(PALETTES[entry.palette].grounds[second], seed + 1)
    unlike = next((colour for colour in offered if apart(colour, ground) >= UNLIKE_GROUND), offered[0])
    inks = (GOLD, BONE, SOOT) if seed % 3 else (BONE, GOLD, SOOT)
    return Colours(ground, entry.second_colour or unlike, inked(entry, ground, inks))


def inked(entry: DrawnDesign, ground: Colour, inks: Sequence[Colour] = (GOLD, BONE, SOOT)) -> Colour:
    """The ink on a ground: the maker's, or the first of several that is read well."""
    return entry.ink or best_ink(ground, inks)


def tooled(entry: DrawnDesign, ground: Colour) -> Colour:
    """Gold, or black where gold is not read well, also on the bleached spine; bone white where neither is."""
    bleached = sunned(ground, entry.wear)
    ink = inked(entry, ground, (GOLD, SOOT))
    return ink if entry.ink or contrast(ink, bleached) >= READ else best_ink(bleached, (GOLD, SOOT, BONE))


def coloured(row: Sequence[tuple[Design, Words, str | None]]) -> Iterator[Design]:
    """The designs of a shelf in their order, each with a ground unlike the one before and, if named, the next.

    A design comes with the words of its book and the space that stands in. Books of one set are alike.
    """
    last: tuple[str | None, Colour] | None = None
    of_sets: dict[int, list[Colour]] = {}
    for place, (design, words, space) in enumerate(row):
        following = [row[place + 1][0].ground] if place + 1 < len(row) and row[place + 1][2] == space else []
        before = [last[1]] if last and last[0] == space else []
        ground = design.ground
        if ground is None and isinstance(design, DrawnDesign):
            near = [colour for colour in (*before, *following) if colour]
            before_it = of_sets.setdefault(words.kin, []) if words.in_set else []
            offered = grounds(design, words.kin, design.material)
            ground = _next_of_set(design, offered, before_it) if before_it else _unlike(offered, near)
            before_it.append(ground)
            yield design.model_copy(update={"colour": ground})
        else:
            yield design
        last = (space, ground) if ground else None


def _next_of_set(design: DrawnDesign, offered: Sequence[Colour], before_it: Sequence[Colour]) -> Colour:
    """The colour of the set; where it goes by steps, the next of its palette."""
    if not design.steps:
        return before_it[0]
    # of another palette than the first book's, or for another material, the steps begin with the likeliest
    first = offered.index(before_it[0]) if before_it[0] in offered else 0
    return offered[(first + len(before_it)) % len(offered)]


def _unlike(offered: Sequence[Colour], near: Sequence[Colour]) -> Colour:
    """The first that is unlike all near ones, or the one that is least like them."""

    def distance(colour: Colour) -> float:
        return min((apart(colour, other) for other in near), default=1.0)

    return next((colour for colour in offered if distance(colour) >= UNLIKE_NEIGHBOUR), max(offered, key=distance))


def _shuffled(colours: Sequence[Colour], seed: int) -> tuple[Colour, ...]:
    chance = Random(seed)
    return tuple(sorted(colours, key=lambda _: chance.random()))
