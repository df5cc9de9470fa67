"""Outlines of letters as closed contours: lines and curves of Bézier one after the other, points as complex numbers."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import cache
from itertools import pairwise
from typing import Any

import uharfbuzz as hb

__all__ = [
    "Commands",
    "Piece",
    "Spot",
    "chords",
    "closed_contours",
    "direction",
    "enclosed",
    "entering",
    "ink_on_left",
    "leaving",
    "outlining",
    "spot_at",
]

Commands = list[tuple[str | float, ...]]
"""An outline: ``M x y``, ``L x y``, ``Q x1 y1 x y``, ``C x1 y1 x2 y2 x y``, ``Z``; it is filled by non-zero winding."""

Spot = complex
"""A point of the plane, or a way in it."""

Piece = tuple[Spot, ...]
"""A line, or a curve of Bézier by its control points, from end to end; it has a length."""


def closed_contours(outline: Commands) -> Iterator[list[Piece]]:
    """The closed contours as pieces; those without length are left out."""
    pieces: list[Piece] = []
    at = first = 0j
    for kind, *numbers in outline:
        spots = [complex(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]  # type: ignore[arg-type]  # numbers
        if kind in ("M", "Z"):
            if at != first:
                pieces.append((at, first))
            if pieces:
                yield pieces
            pieces, first = [], spots[0] if spots else first
            at = first
        else:
            if any(spot != at for spot in spots):
                pieces.append((at, *spots))
            at = spots[-1]


def ink_on_left(contours: Sequence[list[Piece]]) -> Iterator[list[Piece]]:
    """The contours with their ink to the left: fonts have it on either side, and strays among them.

    A contour is a hole if it lies in others that are wound the other way.
    """
    for contour in contours:
        inside, start = enclosed(contour), spot_at(contour[0], 0.5)
        around = sum(winding(other, start) for other in contours if other is not contour)
        is_hole = around + math.copysign(1, inside) == 0
        if (inside < 0) == is_hole:
            yield contour
        else:
            yield [piece[::-1] for piece in reversed(contour)]


def enclosed(contour: Sequence[Piece]) -> float:
    """The area within a contour, positive where they run round it leftwards."""
    return sum((start.conjugate() * end).imag for start, end in chords(contour)) / 2


def winding(contour: Sequence[Piece], spot: Spot) -> int:
    """How many times a contour runs round a spot, leftwards less rightwards."""
    turns = 0
    for start, end in chords(contour):
        if (start.imag <= spot.imag) != (end.imag <= spot.imag):
            on_left = ((end - start).conjugate() * (spot - start)).imag
            turns += (on_left > 0 and end.imag > start.imag) - (on_left < 0 and end.imag < start.imag)
    return turns


def chords(contour: Sequence[Piece]) -> Iterator[tuple[Spot, Spot]]:
    """A contour as short straight lines, four for each curve."""
    for piece in contour:
        between = () if len(piece) == 2 else (0.25, 0.5, 0.75)
        yield from pairwise([piece[0], *(spot_at(piece, share) for share in between), piece[-1]])


def entering(piece: Piece) -> Spot:
    """The direction in which a piece begins."""
    return next(direction(spot - piece[0]) for spot in piece[1:] if spot != piece[0])


def leaving(piece: Piece) -> Spot:
    """The direction in which a piece ends."""
    return next(direction(piece[-1] - spot) for spot in piece[-2::-1] if spot != piece[-1])


def direction(step: Spot) -> Spot:
    """The direction of a step; 0 for none."""
    return step / abs(step) if step else 0j


def spot_at(piece: Piece, share: float) -> Spot:
    """The point of a curve at a share of its parameter (de Casteljau)."""
    while len(piece) > 1:
        piece = tuple(one + share * (two - one) for one, two in pairwise(piece))
    return piece[0]


@cache
def outlining() -> Any:
    """What HarfBuzz calls for each part of an outline; it hands on the list that takes them."""
    functions = hb.DrawFuncs()
    functions.set_move_to_func(lambda x, y, into: into.append(("M", x, y)))
    functions.set_line_to_func(lambda x, y, into: into.append(("L", x, y)))
    functions.set_quadratic_to_func(lambda *at: at[-1].append(("Q", *at[:-1])))
    functions.set_cubic_to_func(lambda *at: at[-1].append(("C", *at[:-1])))
    functions.set_close_path_func(lambda into: into.append(("Z",)))
    return functions
