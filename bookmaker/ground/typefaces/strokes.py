"""How thick the strokes of a typeface are and how wide its counters, measured on the outlines of its letters.

From points all along an outline straight lines are drawn into the ink, square to its edge. Where such a line comes out
through an edge that faces the first one, its length is the thickness of the stroke. A counter is as wide as the largest
circle that fits into it.
"""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from .contours import Spot, chords, closed_contours, direction, ink_on_left
from .typeface import Typeface

__all__ = ["Strokes", "strokes_of"]

MEASURED = "abdegnopqsvy"
"""Letters with all the strokes and counters of their alphabet, straight, round and slanting."""

COUNTERED = "abdegopq"
"""Those with counters that are closed; the two bowls of a g clog together, and so do the openings of an a."""

OTHERS = 12
"""So many letters of a typeface without these are measured."""

FACING = math.cos(math.radians(30))
"""Edges face one another if they turn away from being parallel by less than this; so no stroke is measured at a tip."""

UPRIGHT = math.cos(math.radians(25))
"""Stems may lean by so much: italics lean by 8 to 20 degrees."""

THINNEST = 0.05
"""This share of the outlines may face a thinner stroke than the hairline: where one tapers, and where bows join."""

ITSELF = 1e-9
"""An edge that is met no farther away than this, in ems, is the one that a line sets out from."""

AROUND = [complex(math.cos(turn * math.tau / 60), math.sin(turn * math.tau / 60)) for turn in range(0, 7 * 60, 7)]
"""A counter is shut in: in each of these directions there is ink. They go round seven times: a gap is met soon."""


@dataclass(frozen=True, slots=True)
class Strokes:
    """The strokes of a typeface in ems: its upright stems, its hairlines, and how wide the counter of each letter is.

    Of a letter with two counters the larger one is meant. There are none where there are no small Latin letters.
    """

    stem: float
    hairline: float
    counters: Mapping[str, float] = field(default_factory=dict)

    def times(self, size: float) -> Strokes:
        """The strokes in type of a size, in its unit."""
        counters = {letter: width * size for letter, width in self.counters.items()}
        return Strokes(self.stem * size, self.hairline * size, counters)

    def heavier(self, by: float) -> Strokes:
        """The strokes of letters whose edges lie `by` ems further out.

        >>> Strokes(0.25, 0.125, {"e": 0.5}).heavier(0.0625)
        Strokes(stem=0.375, hairline=0.25, counters={'e': 0.375})
        """
        counters = {letter: max(0.0, width - 2 * by) for letter, width in self.counters.items()}
        return Strokes(self.stem + 2 * by, self.hairline + 2 * by, counters)


class _Bend(NamedTuple):
    """A piece of an outline as straight edges from spot to spot, ink to their left, and the circle that it lies in."""

    spots: Sequence[Spot]
    centre: Spot
    radius: float


class _Crossing(NamedTuple):
    """A way across a stroke or a counter: its length, how much of the outline it stands for, its middle, its way."""

    length: float
    weight: float
    middle: Spot
    way: Spot


class _Met(NamedTuple):
    """An edge that a line meets: how far along, whether the line enters ink there, 1, or leaves it, -1.

    The way of the edge is seen along the line.
    """

    at: float
    turn: int
    way: Spot


@lru_cache(maxsize=64)
def strokes_of(typeface: Typeface) -> Strokes | None:
    """The strokes of a typeface; None if it has no letters.

    >>> from .files import bundled
    >>> measured = strokes_of(bundled("text"))
    >>> round(measured.stem, 3), round(measured.hairline, 3), round(measured.counters["e"], 3)
    (0.094, 0.044, 0.176)
    """
    strokes, counters = list[_Crossing](), dict[str, float]()
    for letter in [letter for letter in MEASURED if ord(letter) in typeface.characters] or _others(typeface):
        bends = list(_bends(typeface, letter))
        ways = [_across(edge, bends) for bend in bends for edge in pairwise(bend.spots)]
        strokes += [stroke for stroke, _ in ways if stroke]
        counter = _counter([white for _, white in ways if white], bends) if letter in COUNTERED else 0.0
        if counter:
            counters[letter] = counter
    if not strokes:
        return None
    stems = [one for one in strokes if abs(one.way.real) > UPRIGHT]
    return Strokes(_length_at(stems or strokes, 0.5), _length_at(strokes, THINNEST), counters)


def _others(typeface: Typeface) -> list[str]:
    signs = map(chr, typeface.characters)
    return [sign for sign in signs if unicodedata.category(sign)[0] == "L"][:OTHERS]


def _bends(typeface: Typeface, letter: str) -> Iterator[_Bend]:
    """The outlines of a letter in ems, piece by piece."""
    em = typeface.units_per_em
    for glyph in typeface.shape(letter).glyphs:
        for contour in ink_on_left(list(closed_contours(typeface.outline(glyph.gid)))):
            for piece in contour:
                spots = [piece[0] / em, *(end / em for start, end in chords([piece]) if start != end)]
                centre = (spots[0] + spots[-1]) / 2
                yield _Bend(spots, centre, max(abs(spot - centre) for spot in spots) + ITSELF)


def _across(edge: tuple[Spot, Spot], bends: Sequence[_Bend]) -> tuple[_Crossing | None, _Crossing | None]:
    """The ways from the middle of an edge through ink, and outwards through white, to the edges that face it.

    There are none if it lies within the ink of another part of the letter.
    """
    start, end = edge
    middle, into = (start + end) / 2, direction(end - start) * 1j
    met = sorted(_met(middle, into, bends), key=lambda one: one.at)
    behind, ahead = [one for one in met if one.at < -ITSELF], [one for one in met if one.at > ITSELF]
    if sum(one.turn for one in behind):
        return None, None
    ends = _end(ahead), _end(reversed(behind))
    stroke, white = (at and _Crossing(abs(at), abs(end - start), middle + into * at / 2, into) for at in ends)
    return stroke or None, white or None


def _end(met: Iterable[_Met]) -> float:
    """How far along a line the stroke ends that it is in, or the white; 0 if no edge there faces where it came in."""
    depth = 0
    for one in met:
        depth += one.turn
        if depth < 0:
            return one.at if one.way.imag > FACING * abs(one.way) else 0.0
    return 0.0


def _met(spot: Spot, way: Spot, bends: Sequence[_Bend]) -> Iterator[_Met]:
    """The edges that a line through a spot meets."""
    back = way.conjugate()
    for spots, centre, radius in bends:
        if -radius <= ((centre - spot) * back).imag <= radius:
            for before, after in pairwise([(corner - spot) * back for corner in spots]):
                if (before.imag < 0) != (after.imag < 0):
                    share = before.imag / (before.imag - after.imag)
                    at = before.real + (after.real - before.real) * share
                    yield _Met(at, 1 if before.imag > after.imag else -1, after - before)


def _counter(whites: Iterable[_Crossing], bends: Sequence[_Bend]) -> float:
    """The width of the largest counter of a letter; 0 if white is shut in nowhere.

    No circle around the middle of a way across white is larger than that way is long.
    """
    widest = 0.0
    for white in sorted(whites, key=lambda one: -one.length):
        if white.length <= widest:
            break
        width = 2 * _clearance(white.middle, bends)
        if width > widest and _shut_in(white.middle, bends):
            widest = width
    return widest


def _shut_in(spot: Spot, bends: Sequence[_Bend]) -> bool:
    return all(any(one.at > 0 for one in _met(spot, way, bends)) for way in AROUND)


def _clearance(spot: Spot, bends: Sequence[_Bend]) -> float:
    """How far the nearest edge is."""
    nearest = math.inf
    for spots, centre, radius in bends:
        if abs(centre - spot) - radius < nearest:
            for start, end in pairwise(spots):
                along = ((spot - start) / (end - start)).real
                nearest = min(nearest, abs(start + min(max(along, 0.0), 1.0) * (end - start) - spot))
    return nearest


def _length_at(crossings: Sequence[_Crossing], share: float) -> float:
    """The length that a share of the outline does not reach."""
    left = share * sum(one.weight for one in crossings)
    for one in sorted(crossings, key=lambda one: one.length):
        left -= one.weight
        if left <= 0:
            return one.length
    return crossings[-1].length
