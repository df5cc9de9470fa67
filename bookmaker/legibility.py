"""What a cover's lettering is warned about: too few printer dots, too little contrast; and what would help."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from .designs import Lettering
from .errors import Problem, Severity
from .eyesight import Legibility
from .quantities import show
from .units import print_mm

__all__ = ["lettering_problems"]

FEWEST_DOTS = 5.0
"""Letters of fewer printer dots close up (common practice).

That is sooner than letters of a page become texture: a title stands alone, and no words around it help to guess it.
"""

LOWEST_CONTRAST = 3.0
"""Less is hard to see even in large letters (WCAG 2.x, criterion 1.4.3)."""


def lettering_problems(lettering: Iterable[Lettering], resolution_dpi: float) -> Iterator[Problem]:
    """Warnings for lettering that is too small to print or too faint; fields are relative to the design."""
    for line in dict.fromkeys(lettering):
        high = Legibility(line.x_height, resolution_dpi).dots
        if high < FEWEST_DOTS:
            yield Problem(
                f"{show(line.text)!r} fits the {line.on} only {print_mm(line.x_height, 2)} high, "
                f"{high:.1f} printer dots: too small to print",
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
