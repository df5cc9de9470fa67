"""What holds a section together: the holes through its spine fold, what the thread adds, and the marks of the order.

Marks lie on the outside of the outermost sheet's spine fold, where the cover hides them.
"""

from __future__ import annotations

from collections.abc import Iterator

from ....ground.geometry import Rect
from ....sheets.flat import Mark, MarkKind

__all__ = ["CLOSEST", "collation_mark", "hole_marks", "holes", "stations_for"]

STATION_DISTANCE = 10.0
"""About one hole for so many mm of the spine (common practice for books this small)."""
SMALLEST_FOR_TWO_STAPLES = 12.0
"""A page lower than this, in mm, has room for one staple only (common practice)."""
CLOSEST = 1.5
"""Holes that lie closer together than this, in mm, tear out (common practice)."""
KETTLE_SHARE, KETTLE_LEAST = 1 / 10, 1.0
"""The outermost stitches, the kettle stitches, lie this share of the height, or so many mm, from head and tail."""
HOLE = 0.3
"""Side of the mark of a hole, in mm."""
MARK_SHARE = 0.8
"""How much of its step a mark of the order fills."""


def stations_for(height: float, *, stapled: bool) -> int:
    """How many holes a page so many mm high asks for; each staple has two.

    >>> [stations_for(height, stapled=False) for height in (8, 21, 60)]
    [2, 3, 7]
    """
    if stapled:
        return 4 if height >= SMALLEST_FOR_TWO_STAPLES else 2
    return 1 + max(1, round(height / STATION_DISTANCE))


def holes(count: int, height: float) -> tuple[float, ...]:
    """How far above the tail each hole lies, in mm: evenly spaced, the same from head and tail.

    >>> holes(3, 21)
    (2.1, 10.5, 18.9)
    """
    end = max(KETTLE_LEAST, height * KETTLE_SHARE)
    return tuple(round(end + (height - 2 * end) * hole / (count - 1), 9) for hole in range(count))


def hole_marks(spine: float, tail: float, heights: tuple[float, ...]) -> Iterator[Mark]:
    """Marks of holes on a spine fold at x = `spine`, on a page whose tail lies at y = `tail`."""
    for height in heights:
        yield Mark(MarkKind.HOLE, Rect(spine - HOLE / 2, tail + height - HOLE / 2, HOLE, HOLE))


def collation_mark(section: int, sections: int, spine: float, room: tuple[float, float], width: float) -> Mark:
    """The mark of a section's place, counted from 0: each stands a step lower than the one before.

    Gathered in order, the marks form a stair from the upper end of the room to its lower end. `room` gives
    both in mm above the lower edge of the flat; `width` is what the fold shows from behind.
    """
    low, high = room
    step = (high - low) / sections
    tall = step * MARK_SHARE
    return Mark(MarkKind.COLLATION, Rect(spine - width / 2, high - section * step - tall, width, tall))
