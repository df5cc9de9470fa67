"""Whether a maker's own artwork fits the cover it was made for: fine enough, of its size, of its proportions."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from ....ground.geometry import Size
from ....ground.imported import ImportedPage
from ....ground.pictures import Picture, show_dpi
from ....ground.problems import Problem, Severity
from ....ground.units import MM_PER_INCH, print_mm
from .artwork import LOWEST_RESOLUTION, Fit

__all__ = ["flat_problems", "picture_problems", "scan_problems"]

CLOSE_ENOUGH = 0.02
"""A picture may be so much wider or higher than its place before it is said what is cropped."""

TRUE_TO_FOLDS = 0.1
"""Artwork may be so far off the size of its flat, in mm: folds drawn on it then lie where they belong.

A block that measures as much more than was reckoned is to be measured and made anew (see the guide).
"""

OVER_THE_TEMPLATE = "draw it over the template that make --templates writes"


def picture_problems(picture: Picture, place: Size, whole: str, *, fitted: bool = False) -> Iterator[Problem]:
    """A warning if a picture is too coarse for its place in mm, or not of its proportions; `whole` is what it shows.

    The size in the remedy puts both right. The parts of one that is `fitted` are stretched to their places.
    """
    name, pixels = picture.path.name, Size(picture.width_px, picture.height_px)
    fit = Fit.of(pixels, place)
    resolution = MM_PER_INCH / fit.scale
    coarse, cropped = resolution < LOWEST_RESOLUTION - 0.5, fit.lost > CLOSE_ENOUGH and not fitted
    wanted = [ceil(side / MM_PER_INCH * max(resolution, LOWEST_RESOLUTION) - 1e-6) for side in place]
    large = f"{wanted[0]} × {wanted[1]} pixels"
    if coarse:
        and_cropped = f" and does not have the proportions of the {whole}: {fit.cropped}" if cropped else ""
        remedy = f"use a picture of at least {large}"
        yield _warning(f"{name} prints at only {show_dpi(resolution)}{and_cropped}", remedy)
    elif whole == "book":
        if cropped:
            remedy = f"crop it to {large}, back, spine and front"
            yield _warning(f"{name} does not have the proportions of the book: {fit.cropped}", remedy)
    elif abs(fit.wider) > TRUE_TO_FOLDS + MM_PER_INCH / resolution:
        yield _off_the_folds(name, pixels, place, fit)


def _off_the_folds(name: str, pixels: Size, place: Size, fit: Fit) -> Problem:
    """A picture that is too narrow for its height, or too low for its width: no dot of it is lost where it grows."""
    across, up = place.width / pixels.width, place.height / pixels.height
    if fit.wider > 0:
        off = f"{print_mm(place.height - pixels.height * across, 2)} too low for its width"
    else:
        off = f"{print_mm(-fit.wider, 2)} too narrow for its height"
    wide, high = (ceil(side / min(across, up) - 1e-6) for side in place)
    return _warning(
        f"{name} is {off}: the folds drawn on it are off",
        f"the book may have changed since: make the picture {wide} × {high} pixels, or {OVER_THE_TEMPLATE}",
    )


def flat_problems(page: ImportedPage, label: str, place: Size, flat: str) -> Iterator[Problem]:
    """A warning if a page of a PDF file is not as large as the flat of this name with its bleed, in mm."""
    width, height = page.size
    if max(abs(width - place.width), abs(height - place.height)) <= TRUE_TO_FOLDS:
        return
    fit = Fit.of(page.size, place)
    lost = f", and {fit.cropped}" if fit.lost > CLOSE_ENOUGH / 4 else ""
    yield _warning(
        f"{label} is {_large(page.size)}, but the {flat} with its bleed {_large(place)}: "
        f"it is printed at {fit.scale:.0%}{lost}",
        OVER_THE_TEMPLATE,
    )


def scan_problems(page: ImportedPage, place: Size) -> Iterator[Problem]:
    """A warning if a page of a PDF file does not have the proportions of the book."""
    fit = Fit.of(page.size, place)
    if fit.lost > CLOSE_ENOUGH:
        wanted = f"{_large(place)} or another size of these proportions"
        yield _warning(
            f"{page.path.name} does not have the proportions of the book: {fit.cropped}", f"crop it to {wanted}"
        )


def _large(size: Size) -> str:
    return f"{print_mm(size.width, 2)} × {print_mm(size.height, 2)}"


def _warning(message: str, remedy: str) -> Problem:
    return Problem(message, remedy, Severity.WARNING, field=("picture",))
