"""How some things are hung or laid out together: in a row on one line, in a grid, or as a salon hang.

Each takes the sizes of the things and a room on the surface, in mm, and gives a rectangle for each, in their order.
What does not go into the room is given all the same where that can be: who looks on says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate

from ...ground.geometry import Point, Rect, Size

__all__ = ["EYE_LEVEL", "USUAL_GAP", "grid", "row", "salon"]

EYE_LEVEL = 1475.0
"""The centre of a picture above the floor in life, in mm: 1450 to 1500 (common practice of those who hang them).

At 1:12 that is 122.9 mm.
"""

USUAL_GAP = 100.0
"""Between pictures in life, in mm: 75 to 150 (common practice). At 1:12 that is 8.3 mm."""

TO_AND_FRO = 1.6
"""How much further a place above or below the centre is than one beside it: a salon hang is wider than high."""


def row(sizes: Sequence[Size], start: float, end: float, centre: float, gap: float | None) -> tuple[Rect, ...]:
    """On one centre line, in the middle of a stretch; without a gap all gaps are even, those at the ends too.

    Three of 20 mm between 0 and 100 mm stand at 10, 40 and 70 mm.
    """
    widths = [size.width for size in sizes]
    if gap is None:
        gap = (end - start - sum(widths)) / (len(sizes) + 1)
    whole = sum(widths) + gap * (len(sizes) - 1)
    lefts = accumulate((width + gap for width in widths[:-1]), initial=(start + end - whole) / 2)
    return tuple(Rect(x, centre - size.height / 2, *size) for x, size in zip(lefts, sizes, strict=True))


def grid(sizes: Sequence[Size], columns: int, middle: Point, gap: float) -> tuple[Rect, ...]:
    """In rows of so many, line by line from the top left; each in the middle of its cell.

    A column is as wide as its widest, a line as high as its highest.
    """
    lines = [sizes[at : at + columns] for at in range(0, len(sizes), columns)]
    wide = [max(line[at].width for line in lines if at < len(line)) for at in range(min(columns, len(sizes)))]
    high = [max(size.height for size in line) for line in lines]
    left = middle.x - (sum(wide) + gap * (len(wide) - 1)) / 2
    top = middle.y + (sum(high) + gap * (len(high) - 1)) / 2
    across = [begin + side / 2 for begin, side in zip(_begins(wide, gap, left), wide, strict=True)]
    down = [top - begin - side / 2 for begin, side in zip(_begins(high, gap, 0.0), high, strict=True)]
    return tuple(
        Rect(x - size.width / 2, y - size.height / 2, *size)
        for y, line in zip(down, lines, strict=True)
        for x, size in zip(across, line, strict=False)
    )


def _begins(sides: Sequence[float], gap: float, first: float) -> Iterator[float]:
    return accumulate((side + gap for side in sides[:-1]), initial=first)


def salon(sizes: Sequence[Size], room: Rect, middle: Point, gap: float) -> tuple[Rect | None, ...]:
    """Close together around a centre, the largest in the middle, with the same gap between neighbours.

    Each next one lies against what hangs already, where it is nearest to the centre. None for what goes nowhere.
    """
    # with half a gap all around each, those a gap apart touch
    around = room.grown(gap / 2)
    found: dict[int, Rect] = {}
    for at in sorted(range(len(sizes)), key=lambda at: -sizes[at].width * sizes[at].height):
        size = Size(sizes[at].width + gap, sizes[at].height + gap)
        places = _against(tuple(found.values()), size) if found else [_within(_about(middle, size), around)]
        free = (
            place
            for place in sorted(places, key=lambda place: _distance(place, middle))
            if around.contains(place) and not any(place.overlaps(other) for other in found.values())
        )
        if place := next(free, None):
            found[at] = place
    dx, dy = _to_middle(tuple(found.values()), middle, around)
    return tuple(found[at].moved(dx, dy).grown(-gap / 2) if at in found else None for at in range(len(sizes)))


def _to_middle(rects: Sequence[Rect], middle: Point, room: Rect) -> Point:
    """How far all are moved so that what they cover has its middle there, as far as the room allows."""
    if not rects:
        return Point(0, 0)
    whole = Rect.around([corner for rect in rects for corner in rect.corners])
    home = _within(_about(middle, whole.size), room)
    return Point(home.x - whole.x, home.y - whole.y)


def _about(middle: Point, size: Size) -> Rect:
    return Rect(middle.x - size.width / 2, middle.y - size.height / 2, *size)


def _within(rect: Rect, room: Rect) -> Rect:
    """The same moved into the room, if it is not larger."""
    x = max(room.x, min(rect.x, room.right - rect.width))
    return Rect(x, max(room.y, min(rect.y, room.top - rect.height)), *rect.size)


def _against(others: Sequence[Rect], size: Size) -> Iterator[Rect]:
    """Places that touch one of the others, level with an edge or the middle of any."""
    levels = {y for one in others for y in (one.y, one.top - size.height, one.centre.y - size.height / 2, one.top)}
    upright = {x for one in others for x in (one.x, one.right - size.width, one.centre.x - size.width / 2, one.right)}
    for one in others:
        for x in (one.x - size.width, one.right):
            yield from (Rect(x, y, *size) for y in sorted(levels) if y < one.top and y + size.height > one.y)
        for y in (one.y - size.height, one.top):
            yield from (Rect(x, y, *size) for x in sorted(upright) if x < one.right and x + size.width > one.x)


def _distance(place: Rect, middle: Point) -> float:
    """How far from the centre its furthest corner is, further for what is above or below."""
    aside = max(abs(place.x - middle.x), abs(place.right - middle.x))
    above = max(abs(place.y - middle.y), abs(place.top - middle.y))
    return aside**2 + (TO_AND_FRO * above) ** 2
