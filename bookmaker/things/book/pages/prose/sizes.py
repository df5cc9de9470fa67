"""Sizes of type that a page has no room for, or that a printer has not the dots for."""

from __future__ import annotations

import math
from collections.abc import Iterator

from .....ground.problems import FieldPath, Problem, Severity
from .....ground.typefaces import Typeface
from .....ground.units import print_mm, print_pt, to_pt
from .....paper.eyesight import FEWEST_DOTS
from .....typesetting.page import PageFrame

__all__ = ["type_too_large", "type_too_small"]


def type_too_large(what: str, size: float, largest: float, frame: PageFrame) -> Problem:
    """An error: something does not fit in type of a size; sizes are ems in mm."""
    frame = frame.upright
    page = f"{print_mm(frame.width, 2)} × {print_mm(frame.height, 2)}"
    return Problem(
        f"{what} does not fit in {print_pt(size)} type on a page of {page}",
        f"write size: {math.floor(to_pt(largest) * 10 + 1e-6) / 10:g} pt or smaller",
        field=("size",),
    )


def type_too_small(
    what: str, face: Typeface, size: float, frame: PageFrame, remedy: str, field: FieldPath = ()
) -> Iterator[Problem]:
    """A note, if small letters of a size (the em in mm) have too few printer dots to be read."""
    dots = face.x_height * size / frame.dot
    if dots < FEWEST_DOTS - 1e-9:
        yield Problem(
            f"small letters of {what} are only {dots:.1f} printer dots high, in {to_pt(size):.2g} pt type: "
            "they print as texture",
            remedy,
            Severity.NOTE,
            field=field,
        )
