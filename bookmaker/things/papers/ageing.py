"""What time did to a paper, by degrees: it toned, from its edges inwards, it has brown spots, its folds are worn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random

from ...ground.art import Filled, Stroked
from ...ground.drawing import WHITE, Art, Colour, Pen
from ...ground.geometry import Path, Point, Rect
from ...sheets.flat import Fold
from ..book.designs.grounds.textures import fibres, spots
from ..book.designs.tones import mixed

__all__ = ["aged", "toned", "worn_folds"]

TAN = Colour.from_hex("#c79a5b")
"""Where paper is going that holds acid and lay in the light."""

OF_ALL, OF_EDGES = 0.34, 0.5
"""How far it goes there at the highest degree: all of it, and its edges besides."""

BANDS, DEEP = 7, 0.16
"""The edges are toned in so many bands, over such a share of the shorter side."""

SPOTS = 0.035
"""So many spots a mm² has a paper of the highest degree."""

RUBBED = Colour.from_hex("#fbf5e6")
"""What shows where print is rubbed off a fold."""


def toned(paper: Colour, degree: float) -> Colour:
    """The colour of a paper after time, between its edges."""
    return mixed(paper, TAN, OF_ALL * degree)


def aged(area: Rect, reach: Rect, paper: Colour | None, degree: float, chance: Random) -> Iterator[Art]:
    """The ground of a paper of a colour, out to `reach`; degree 0 leaves it new, and white paper without ink."""
    if degree <= 0:
        if paper:
            yield Filled.box(reach, paper)
        return
    middle = toned(paper or WHITE, degree)
    edge = mixed(middle, TAN, OF_EDGES * degree)
    yield Filled.box(reach, edge)
    wide = min(area.size) * DEEP
    for band in range(1, BANDS + 1):
        share = band / BANDS
        yield Filled(_uneven(area, wide * share**1.4, wide / BANDS, chance), mixed(edge, middle, share))
    yield from fibres(area, middle, chance, 0.5, 0.05 * degree)
    count = round(SPOTS * degree**2 * area.width * area.height)
    if count:
        yield from spots(area, middle, chance, count, 0.25)


def _uneven(area: Rect, inset: float, wander: float, chance: Random) -> Path:
    """The area less a border that is now wider, now narrower: a curve through points all round it."""
    inner = area.grown(-inset)
    points = [at.plus(*_off(wander, chance)) for side in _sides(inner) for at in side]
    count = len(points)
    commands: list[tuple[str | float, ...]] = [("M", *points[0])]
    for n in range(count):
        before, here, there, after = (points[(n + k) % count] for k in (-1, 0, 1, 2))
        one = here.plus((there.x - before.x) / 6, (there.y - before.y) / 6)
        two = there.plus((here.x - after.x) / 6, (here.y - after.y) / 6)
        commands.append(("C", *one, *two, *there))
    return Path((*commands, ("Z",)))


def _off(wander: float, chance: Random) -> tuple[float, float]:
    return wander * (chance.random() - 0.5), wander * (chance.random() - 0.5)


def _sides(rect: Rect) -> Iterator[list[Point]]:
    """Points along each side, about as far apart everywhere, the corners rounded off."""
    steps = 6
    corners = rect.corners
    for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
        yield [
            Point(start.x + (end.x - start.x) * n / steps, start.y + (end.y - start.y) * n / steps)
            for n in range(1, steps)
        ]


def worn_folds(folds: Sequence[Fold], degree: float, chance: Random) -> Iterator[Art]:
    """Print rubbed off along folds in broken lines: the older, the more of it."""
    if degree <= 0:
        return
    for fold in folds:
        dash = tuple(0.1 + chance.random() * length for length in (1.2 * degree, 0.7, 0.9 * degree, 0.4))
        yield Stroked.line(fold.start, fold.end, Pen(0.05 + 0.05 * degree, RUBBED, dash))
