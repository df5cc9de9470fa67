"""How thick the strokes of a typeface are and how wide its counters, measured on the outlines of its letters.

From points all along an outline straight lines are drawn into the ink, square to its edge. Where such a line comes out
through an edge that faces the first one, its length is the thickness of the stroke. A counter is as wide as the largest
circle that fits into it.
"""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
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

AROUND = [complex(math.cos(turn * math.tau / 60), math.sin(turn * math.tau / 60)) for turn in range(60)]
"""A counter is shut in: in each of these directions there is ink."""


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


class _Edge(NamedTuple):
    """A short straight part of an outline, ink to its left."""

    start: Spot
    end: Spot

    @property
    def middle(self) -> Spot:
        return (self.start + self.end) / 2

    @property
    def way(self) -> Spot:
        return direction(self.end - self.start)


class _Crossing(NamedTuple):
    """A way across a stroke or a counter: its length, how much of the outline it stands for, its middle, its way."""

    length: float
    weight: float
    middle: Spot
    way: Spot


class _Met(NamedTuple):
    """An edge that a line meets: how far along, and whether the line enters ink there, 1, or leaves it, -1."""

    at: float
    turn: int
    edge: _Edge


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
        edges = list(_edges(typeface, letter))
        strokes += filter(None, (_across(edge, edges, inwards=True) for edge in edges))
        counter = _counter(edges) if letter in COUNTERED else None
        if counter is not None:
            counters[letter] = counter
    if not strokes:
        return None
    stems = [one for one in strokes if abs(one.way.real) > UPRIGHT]
    return Strokes(_length_at(stems or strokes, 0.5), _length_at(strokes, THINNEST), counters)


def _others(typeface: Typeface) -> list[str]:
    signs = map(chr, typeface.characters)
    return [sign for sign in signs if unicodedata.category(sign)[0] == "L"][:OTHERS]


def _edges(typeface: Typeface, letter: str) -> Iterator[_Edge]:
    """The edges of a letter in ems, as they follow one another."""
    em = typeface.units_per_em
    for glyph in typeface.shape(letter).glyphs:
        for contour in ink_on_left(list(closed_contours(typeface.outline(glyph.gid)))):
            yield from (_Edge(start / em, end / em) for start, end in chords(contour) if start != end)


def _across(edge: _Edge, edges: Sequence[_Edge], *, inwards: bool) -> _Crossing | None:
    """The way from the middle of an edge through ink, or outwards through white, to the edge that faces it.

    None if there is none, or the edge lies within the ink of another part of the letter.
    """
    middle, way = edge.middle, edge.way
    into = way * (1j if inwards else -1j)
    before, through = (0, 1) if inwards else (1, 0)
    met = sorted((one for one in _met(middle, into, edges) if one.edge is not edge), key=lambda one: one.at)
    if sum(one.turn for one in met if one.at < 0) != before:
        return None
    depth = through
    for one in met:
        if one.at > 0:
            depth += one.turn
            if depth == before:
                facing = (one.edge.way.conjugate() * -way).real > FACING
                return (
                    _Crossing(one.at, abs(edge.end - edge.start), middle + into * one.at / 2, into) if facing else None
                )
    return None


def _met(spot: Spot, way: Spot, edges: Sequence[_Edge]) -> Iterator[_Met]:
    """The edges that a line through a spot meets."""
    x, y, dx, dy = spot.real, spot.imag, way.real, way.imag
    for edge in edges:
        start, end = edge
        before = (start.imag - y) * dx - (start.real - x) * dy
        after = (end.imag - y) * dx - (end.real - x) * dy
        if (before < 0) != (after < 0):
            met = start + (end - start) * (before / (before - after))
            yield _Met((met.real - x) * dx + (met.imag - y) * dy, 1 if before > after else -1, edge)


def _counter(edges: Sequence[_Edge]) -> float | None:
    """The width of the largest counter of a letter; None if white is shut in nowhere."""
    whites = filter(None, (_across(edge, edges, inwards=False) for edge in edges))
    circles = sorted(((_clearance(white.middle, edges), white) for white in whites), key=lambda one: -one[0])
    return next((2 * radius for radius, white in circles if _shut_in(white.middle, edges)), None)


def _shut_in(spot: Spot, edges: Sequence[_Edge]) -> bool:
    return all(any(one.at > 0 for one in _met(spot, way, edges)) for way in AROUND)


def _clearance(spot: Spot, edges: Sequence[_Edge]) -> float:
    """How far the nearest edge is."""
    nearest = math.inf
    for start, end in edges:
        along = (spot - start) / (end - start)
        nearest = min(nearest, abs(start + min(max(along.real, 0.0), 1.0) * (end - start) - spot))
    return nearest


def _length_at(crossings: Sequence[_Crossing], share: float) -> float:
    """The length that a share of the outline does not reach."""
    left = share * sum(one.weight for one in crossings)
    for one in sorted(crossings, key=lambda one: one.length):
        left -= one.weight
        if left <= 0:
            return one.length
    return crossings[-1].length
