"""Sizes of type that a page has no room for."""

from __future__ import annotations

import math

from ..errors import Problem
from ..units import print_mm, print_pt, to_pt
from .page import PageFrame

__all__ = ["too_large"]


def too_large(what: str, size: float, largest: float, frame: PageFrame) -> Problem:
    """An error: something does not fit in type of a size; sizes are ems in mm."""
    page = f"{print_mm(frame.width, 2)} × {print_mm(frame.height, 2)}"
    return Problem(
        f"{what} does not fit in {print_pt(size)} type on a page of {page}",
        f"write size: {math.floor(to_pt(largest) * 10 + 1e-6) / 10:g} pt or smaller",
        field=("size",),
    )
