"""Which colours a cover has: what the maker said, or what its look picks of its palette."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from random import Random

from ....ground.drawing import Colour, contrast
from .design import Design, DrawnDesign, Words
from .grounds.wear import sunned
from .letters.lettering import best_ink
from .palettes import BONE, GOLD, PALETTES, SOOT, Material
from .tones import apart

__all__ = ["UNLIKE_NEIGHBOUR", "Colours", "coloured", "colours_of", "grounds", "inked", "tooled"]

UNLIKE_NEIGHBOUR = 0.1
"""Neighbours on the shelf that are less far apart in Oklab look alike."""

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


def coloured(row: Iterable[tuple[Design, Words]]) -> Iterator[Design]:
    """The designs of a shelf with their grounds, each by the look of its book; those of one set are alike.

    What stands beside a book is no matter: whatever is added or taken away there, it stays as it was printed.
    """
    of_sets: dict[tuple[str, ...], list[Colour]] = {}
    for written, words in row:
        design = written.settled(words)
        if design.ground is not None or not isinstance(design, DrawnDesign):
            yield design
            continue
        before_it = of_sets.setdefault(words.set_words, []) if words.in_set else []
        offered = grounds(design, words.kin, design.material)
        ground = _next_of_set(design, offered, before_it) if before_it else offered[0]
        before_it.append(ground)
        yield design.model_copy(update={"colour": ground})


def _next_of_set(design: DrawnDesign, offered: Sequence[Colour], before_it: Sequence[Colour]) -> Colour:
    """The colour of the set; where it goes by steps, the next of its palette."""
    if not design.steps:
        return before_it[0]
    # of another palette than the first book's, or for another material, the steps begin with the likeliest
    first = offered.index(before_it[0]) if before_it[0] in offered else 0
    return offered[(first + len(before_it)) % len(offered)]


def _shuffled(colours: Sequence[Colour], seed: int) -> tuple[Colour, ...]:
    chance = Random(seed)
    return tuple(sorted(colours, key=lambda _: chance.random()))
