"""What lettering is warned about: too few printer dots, too little contrast, titles that need a lens.

Each with what would help.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from ...ground.problems import Problem, Severity
from ...ground.quantities import show
from ...ground.units import print_mm
from ...paper.eyesight import READABLE_MINUTES, Legibility, Sight
from .designs.design import Lettering
from .plan import BookPlan

__all__ = ["lettering_problems", "titles_for_a_lens"]

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


def titles_for_a_lens(covers: Sequence[tuple[BookPlan, Lettering | None, float]], distance: float) -> Iterator[Problem]:
    """One note about all spine titles that are printed well, but too small to be read from a distance in mm.

    `covers` are all books, each with its title on the spine that the shelf shows, and the dots to the inch that is
    printed with.
    """
    seen = [
        (book, line, Legibility(line.x_height, resolution_dpi, distance))
        for book, line, resolution_dpi in covers
        if line is not None
    ]
    small = [one for one in seen if one[2].sight is not Sight.READABLE and one[2].dots >= FEWEST_DOTS]
    if not small:
        return
    book, line, letters = min(small, key=lambda one: one[1].x_height)
    name = show(book.name)
    sharp = f"{letters.minutes:.1f} minutes of arc where sharp eyes need {READABLE_MINUTES:g}"
    said = f"the spine title of {name} cannot be read from {print_mm(distance)} without a lens: {sharp}"
    if len(small) > 1:
        said = (
            f"{len(small)} of {len(seen)} spine titles cannot be read from {print_mm(distance)} without a lens; "
            f"the smallest is that of {name}, {sharp}"
        )
    yield Problem(
        said,
        f"{line.help or 'write a shorter title'}; check --spines shows all titles",
        Severity.NOTE,
        field=("design", "spine_title"),
        thing=book.id,
    )
