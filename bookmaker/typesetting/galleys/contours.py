"""Contours: how far the ink of letters reaches to the right, at the height of each line beside them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ...ground.typefaces import Run, Typeface

__all__ = ["right_of_ink"]

CHORDS = 8
"""A curve of an outline is followed by so many: in a capital three lines high they keep within a hundredth of an em."""

_At = tuple[float, float]


def right_of_ink(run: Run, bottom: float, top: float) -> float:
    """How far the ink of letters reaches between two heights over their baseline, in ems from their left; 0 for none.

    >>> from ...ground.typefaces import bundled
    >>> run = bundled("text").shape("L")
    >>> [round(right_of_ink(run, *heights), 2) for heights in ((0.0, 0.1), (0.4, 0.5), (2.0, 3.0))]
    [0.58, 0.23, 0.0]
    """
    reached, x = 0.0, 0.0
    for glyph in run.glyphs:
        shift = x + glyph.dx
        for one, other in _edges(run.typeface, glyph.gid):
            reached = max(reached, shift + _furthest(one, other, bottom - glyph.dy, top - glyph.dy))
        x += glyph.advance
    return reached


def _furthest(one: _At, other: _At, bottom: float, top: float) -> float:
    """The greatest x of an edge between two heights; far to the left if no part of it lies there."""
    (x, y), (to_x, to_y) = sorted((one, other), key=lambda at: at[1])
    if to_y < bottom or y > top:
        return float("-inf")
    slope = (to_x - x) / (to_y - y) if to_y > y else 0.0
    ends = [(to_x if to_y <= top else x + slope * (top - y)), (x if y >= bottom else x + slope * (bottom - y))]
    return max(*ends, *((x, to_x) if to_y == y else ()))


def _edges(typeface: Typeface, gid: int) -> Iterator[tuple[_At, _At]]:
    """The edges of a glyph, its curves followed by chords, in ems."""
    em, at, begin = typeface.units_per_em, (0.0, 0.0), (0.0, 0.0)
    for kind, *numbers in typeface.outline(gid):
        values = [float(number) / em for number in numbers]
        points = [at, *zip(values[::2], values[1::2], strict=True)] if kind != "Z" else [at, begin]
        if kind == "M":
            begin = points[-1]
        else:
            yield from pairwise(
                points if len(points) == 2 else [_on_curve(points, n / CHORDS) for n in range(CHORDS + 1)]
            )
        at = points[-1]


def _on_curve(points: list[_At], share: float) -> _At:
    """A point of a Bézier curve, by de Casteljau's way."""
    while len(points) > 1:
        points = [(x + (to_x - x) * share, y + (to_y - y) * share) for (x, y), (to_x, to_y) in pairwise(points)]
    return points[0]
