"""The reverse of a sheet: where it lies behind the front, and how a printer misses it.

The reverse is worked out on the front, as if seen through the paper, and then mirrored as the sheet is
turned: on the long edge of an upright sheet left becomes right; on the short edge up becomes down.
"""

from __future__ import annotations

from math import atan2, degrees

from ..ground.geometry import Point, Rect, Size, Transform
from .printer_entry import SKEW_BASE, PaperPath, Turn

__all__ = ["correction", "reached_on_both", "to_reverse", "upright_within"]


def to_reverse(size: Size, turn: Turn) -> Transform:
    """From a point seen through the front of the sheet to the same point on the page of its reverse, and back.

    An upright A4 sheet turned on its long edge: what lies 10 mm from the left edge lies 10 mm from the right.

    >>> from bookmaker.ground.geometry import Point
    >>> to_reverse(Size(210, 297), Turn.LONG_EDGE).apply(Point(10, 20))
    Point(x=200.0, y=20.0)
    """
    upright = size.height >= size.width
    if upright == (turn is Turn.LONG_EDGE):
        return Transform(a=-1.0, e=size.width)
    return Transform(d=-1.0, f=size.height)


def correction(printer: PaperPath, size: Size) -> Transform:
    """What makes up for a printer that misses the front with the reverse, on the page of the reverse.

    The printer turns what it prints about the middle of the sheet and moves it; here that is undone, last first. A
    skew of 0.24 mm to 120 mm is a turn of 2 mrad: at the corners of A4, 182 mm from the middle, 0.36 mm.
    """
    missed = printer.reverse_offset
    back = Transform.move(-missed.right, -missed.up)
    if not missed.skew:
        return back
    return back.then(Transform.turn(degrees(atan2(missed.skew, SKEW_BASE)), Point(size.width / 2, size.height / 2)))


def reached_on_both(printer: PaperPath, size: Size, reached: Rect) -> Rect:
    """Where the printer reaches a sheet on both sides, as the front is seen; `reached` is what it reaches on a page.

    Margins of 4 mm at the left and 12 mm at the right leave 12 mm free on both sides of a sheet turned on its long
    edge: what lies 4 mm from the left of the front lies 4 mm from the right of the reverse.
    """
    mirror = to_reverse(size, printer.turn)
    behind = mirror.apply_to(upright_within(reached, correction(printer, size)))
    left, low = max(reached.x, behind.x), max(reached.y, behind.y)
    right, top = min(reached.right, behind.right), min(reached.top, behind.top)
    return Rect(left, low, max(0.0, right - left), max(0.0, top - low))


def upright_within(room: Rect, transform: Transform) -> Rect:
    """An upright rectangle whose image under a slight stretch, shear or turn lies within a room, and fills it nearly.

    It is the largest there is where level lines stay level.
    """
    around = transform.inverse.apply_to(room)
    lows, lefts = (around.y, around.top), (around.x, around.right)
    left = max(room.x - transform.e - transform.c * y for y in lows) / transform.a
    right = min(room.right - transform.e - transform.c * y for y in lows) / transform.a
    low = max(room.y - transform.f - transform.b * x for x in lefts) / transform.d
    top = min(room.top - transform.f - transform.b * x for x in lefts) / transform.d
    return Rect(left, low, right - left, top - low)
