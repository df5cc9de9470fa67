"""Outlines of letters made heavier: every edge is moved outwards by one distance, curves as curves.

A stroke around the letters would do the same on paper in theory; but programs that print widen strokes thinner than a
printer's dot to a whole one, and an outline they fill as it is.

Edges are moved one by one along their normals (W. Tiller and E. G. Hanson, IEEE Computer Graphics 4/9, 1984: the legs
of a control polygon are moved, and halved until they are true) and joined at the corners. What overlaps in an inner
corner is wound twice the same way, so it is filled too by the rule of non-zero winding, which fonts, PDF and SVG share.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from .contours import (
    Commands,
    Piece,
    Spot,
    closed_contours,
    direction,
    enclosed,
    entering,
    ink_on_left,
    leaving,
    spot_at,
)

__all__ = ["thickened"]

FARTHEST = 1.25
"""A sharp corner reaches so many distances beyond either end of its edges; beyond, it is cut off straight."""

TRUE_TO = 0.02
"""Curves are moved true to this share of the distance."""

MOST_HALVINGS = 5
DECIMALS = 3
STRAIGHT_ON = 1e-3
"""Edges that turn by a smaller angle (radians) go on in one line."""


def thickened(outline: Commands, by: float) -> Commands:
    """An outline whose edges lie `by` units further outwards; its units are those of the outline.

    Holes that are nowhere wider than what is taken off them are gone.

    >>> square = [("M", 0, 0), ("L", 10, 0), ("L", 10, 10), ("L", 0, 10), ("Z",)]
    >>> thickened(square, 1)
    [('M', -1.0, -1.0), ('L', 11.0, -1.0), ('L', 11.0, 11.0), ('L', -1.0, 11.0), ('Z',)]
    """
    contours = list(closed_contours(outline))
    if not by or not contours:
        return outline
    return [
        command
        for contour in ink_on_left(contours)
        if enclosed(contour) > 0 or not _closes(contour, by)
        for command in _written(list(_moved(contour, -1j * by)))
    ]


def _closes(hole: Sequence[Piece], by: float) -> bool:
    """Whether a hole is no larger than what is taken off it from both sides."""
    spots = [spot for piece in hole for spot in piece]
    across, up = [spot.real for spot in spots], [spot.imag for spot in spots]
    return max(max(across) - min(across), max(up) - min(up)) <= 2 * by


def _moved(contour: Sequence[Piece], by: Spot) -> Iterator[Piece]:
    """The pieces of a contour moved outwards, and what joins them; `by` turns a direction into the way to move."""
    for piece, after in pairwise([*contour, contour[0]]):
        yield from _piece_moved(piece, by, MOST_HALVINGS)
        yield from _joined(piece[-1], leaving(piece), entering(after), by)


def _piece_moved(piece: Piece, by: Spot, halvings: int) -> Iterator[Piece]:
    moved = _legs_moved(piece, by)
    if len(piece) == 2 or not halvings or (moved and _is_true(piece, moved, by)):
        yield moved or (piece[0] + by * entering(piece), piece[-1] + by * leaving(piece))
        return
    for half in _halves(piece):
        yield from _piece_moved(half, by, halvings - 1)


def _legs_moved(piece: Piece, by: Spot) -> Piece | None:
    """The control polygon with every leg moved; None where it has legs without length or folds back."""
    ways = [direction(two - one) for one, two in pairwise(piece)]
    if not all(ways):
        return None
    inner = []
    for spot, (before, after) in zip(piece[1:-1], pairwise(ways), strict=True):
        turned = 1 + (before.conjugate() * after).real
        if turned < 0.5:
            return None
        inner.append(spot + by * (before + after) / turned)
    return (piece[0] + by * ways[0], *inner, piece[-1] + by * ways[-1])


def _is_true(piece: Piece, moved: Piece, by: Spot) -> bool:
    """Whether a moved curve lies as far from its own as it should, at its quarters."""
    for share in (0.25, 0.5, 0.75):
        way = direction(spot_at(_slopes(piece), share))
        off = spot_at(moved, share) - spot_at(piece, share) - by * way
        # along the curve it may lie where it will
        if abs((way.conjugate() * off).imag) > TRUE_TO * abs(by):
            return False
    return True


def _joined(corner: Spot, before: Spot, after: Spot, by: Spot) -> Iterator[Piece]:
    """What joins two moved edges at a corner: their continuations on its outer side, the corner itself on its inner."""
    start, end = corner + by * before, corner + by * after
    turn = math.atan2((before.conjugate() * after).imag, (before.conjugate() * after).real)
    if abs(turn) < STRAIGHT_ON:
        return
    if turn * by.imag > 0:  # away from the side that is moved to: an inner corner
        yield from ((start, corner), (corner, end))
        return
    reach = min(math.tan(abs(turn) / 2), FARTHEST) * abs(by)
    first, second = start + reach * before, end - reach * after
    spots = [start, first, end] if abs(first - second) < 1e-6 * abs(by) else [start, first, second, end]
    yield from pairwise(spots)


def _slopes(piece: Piece) -> Piece:
    return tuple(two - one for one, two in pairwise(piece))


def _halves(piece: Piece) -> tuple[Piece, Piece]:
    first, last = [piece[0]], [piece[-1]]
    while len(piece) > 1:
        piece = tuple((one + two) / 2 for one, two in pairwise(piece))
        first.append(piece[0])
        last.append(piece[-1])
    return tuple(first), tuple(reversed(last))


def _written(pieces: Sequence[Piece]) -> Commands:
    """Pieces as commands; lines that go on in one line are one."""
    merged = _merged(pieces)
    commands: Commands = [("M", *_numbers(merged[0][:1]))]
    commands += [("LQC"[len(piece) - 2], *_numbers(piece[1:])) for piece in merged]
    if commands[-1][0] == "L":
        commands.pop()  # the contour closes itself
    return [*commands, ("Z",)]


def _numbers(spots: Piece) -> Iterator[float]:
    return (round(number, DECIMALS) for spot in spots for number in (spot.real, spot.imag))


def _merged(pieces: Sequence[Piece]) -> list[Piece]:
    """Pieces without steps of no length; of lines in one direction the first is made longer."""
    merged: list[Piece] = []
    for piece in pieces:
        if abs(piece[-1] - piece[0]) < 1e-9 and len(piece) == 2:
            continue
        if merged and _in_line(merged[-1], piece):
            merged[-1] = (merged[-1][0], piece[1])
        else:
            merged.append(piece)
    if len(merged) > 1 and _in_line(merged[-1], merged[0]):
        merged[0] = (merged.pop()[0], merged[0][1])
    return merged


def _in_line(one: Piece, other: Piece) -> bool:
    if len(one) != 2 or len(other) != 2:
        return False
    before, after = leaving(one), entering(other)
    return abs(before - after) < 1e-6
