"""How well a cover's lettering is seen: its height to the eye and to the printer, its contrast, and what would help."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import atan, degrees

from .designs import Lettering
from .errors import Problem, Severity
from .units import MM_PER_INCH, print_mm

__all__ = ["READING_DISTANCE", "arc_minutes", "dots", "lettering_problems", "seen"]

READING_DISTANCE = 300.0
"""From the eye to the shelf, in mm."""

READABLE = 5.0
"""Arc minutes that sharp eyes need for a letter (Snellen; a visual acuity of 20/20)."""

FEWEST_DOTS = 5.0
"""Small letters of fewer printer dots close up (common practice)."""

LOWEST_CONTRAST = 3.0
"""Less is hard to see even in large letters (WCAG 2.x, criterion 1.4.3)."""


def arc_minutes(height: float, distance: float = READING_DISTANCE) -> float:
    """The angle under which a height is seen, both in mm.

    >>> round(arc_minutes(0.436), 2)
    5.0
    """
    return degrees(atan(height / distance)) * 60


def dots(height: float, resolution_dpi: float) -> float:
    """Printer dots in a height in mm.

    >>> round(dots(25.4, 600))
    600
    """
    return height / MM_PER_INCH * resolution_dpi


def seen(line: Lettering, resolution_dpi: float) -> str:
    """What letters of this height are good for: readable, with a lens, or texture only."""
    if dots(line.x_height, resolution_dpi) < FEWEST_DOTS:
        return "texture only"
    return "readable" if arc_minutes(line.x_height) >= READABLE else "with a lens"


def lettering_problems(lettering: Iterable[Lettering], resolution_dpi: float) -> Iterator[Problem]:
    """Warnings for lettering that is too small to print or too faint; fields are relative to the design."""
    for line in dict.fromkeys(lettering):
        high = dots(line.x_height, resolution_dpi)
        if high < FEWEST_DOTS:
            yield Problem(
                f"{line.text!r} fits the {line.on} only {print_mm(line.x_height, 2)} high, {high:.1f} printer dots: "
                "too small to print",
                line.help or f"write a shorter {line.what}",
                Severity.WARNING,
                field=("spine_title",) if line.on == "spine" else (),
            )
        if line.contrast < LOWEST_CONTRAST:
            yield Problem(
                f"the {line.what} on the {line.on} has a contrast of {line.contrast:.1f} to its ground, under 3",
                "choose a lighter or darker ink, or leave it out",
                Severity.WARNING,
                field=("ink",),
            )
