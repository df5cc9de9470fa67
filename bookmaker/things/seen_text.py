"""Whether a text that stands by itself on a side of a thing can be read."""

from __future__ import annotations

from collections.abc import Iterator

from ..ground.drawing import Colour, contrast
from ..ground.problems import Problem, Severity
from ..ground.units import print_mm
from .book.designs.letters.titling import Placed

__all__ = ["LOWEST_CONTRAST", "seen_text"]

SMALLEST_TYPE = 0.5
"""An em below this, in mm, prints as a grey line at 600 dots per inch."""

LOWEST_CONTRAST = 3.0
"""Less is hard to see even in large letters (WCAG 2.x, criterion 1.4.3)."""


def seen_text(placed: Placed, ground: Colour, what: str, fits: str, key: str, remedy: str) -> Iterator[Problem]:
    """What is too faint, or too small; the text was written under a key, and `fits` says what does only just."""
    seen = contrast(placed.colour, ground)
    if seen < LOWEST_CONTRAST:
        yield Problem(
            f"{what} has a contrast of {seen:.1f} to its ground, under {LOWEST_CONTRAST:g}",
            "choose a lighter or darker ink, or leave it out",
            Severity.WARNING,
            field=("ink",),
        )
    if placed.block.size < SMALLEST_TYPE:
        yield Problem(
            f"{fits} only {print_mm(placed.block.size, 2)} high, too small to print",
            remedy,
            Severity.WARNING,
            field=(key,),
        )
