"""Numbers as PDF operands: points, without exponent, as few digits as true size needs."""

from __future__ import annotations

from ...ground.geometry import Point, Transform
from ...ground.units import to_pt

__all__ = ["matrix", "number", "point", "points"]


FORMATS = {digits: b"%%.%df" % digits for digits in range(1, 10)}


def number(value: float, digits: int = 4) -> bytes:
    """A number with at most `digits` decimals, from 1 to 9.

    >>> number(2.5), number(-0.00001), number(12)
    (b'2.5', b'0', b'12')
    """
    text = (FORMATS[digits] % value).rstrip(b"0").rstrip(b".")
    return b"0" if text == b"-0" else text


def points(mm: float) -> bytes:
    """A length in mm as points; 4 decimals are 0.00004 mm.

    >>> points(25.4)
    b'72'
    """
    # as `number` does: a sheet has a million of them
    text = (b"%.4f" % to_pt(mm)).rstrip(b"0").rstrip(b".")
    return b"0" if text == b"-0" else text


def point(at: Point) -> bytes:
    """A position in mm as two operands."""
    return points(at.x) + b" " + points(at.y)


def matrix(transform: Transform) -> bytes:
    """The six operands of a transform.

    The four factors keep 8 decimals: at the far end of a sheet 4 would be off by 0.02 mm.
    """
    a, b, c, d, e, f = transform
    return b" ".join((*(number(factor, 8) for factor in (a, b, c, d)), points(e), points(f)))
