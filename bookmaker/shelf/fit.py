"""Whether the books fit their spaces, and how sure that is.

An upright book takes its thickness of the width; books of one stack lie on one another, take the longest
one's height of the width, and their thicknesses add up to a height. Every book or stack in a row needs
some ease besides. The error of a stock's caliper is shared by all books cut from it; the error of folding
and gluing is each book's own.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import erf, sqrt

from ..things.standing import Standing, spread
from .space_entry import SpaceEntry

__all__ = ["SpaceFit", "Verdict", "fit_space"]


class Verdict(StrEnum):
    """`over`: does not fit as computed. `tight`: fits as computed, but the likely error is larger than the slack."""

    FITS = "fits"
    TIGHT = "tight"
    OVER = "over"


@dataclass(frozen=True, slots=True)
class SpaceFit:
    """A space and what stands in it, all in mm; tolerances are ±.

    `used` is the books alone, `slack` what is left of the width when their ease is taken off too. `too_tall`
    and `too_deep` name the books (and stacks) that stand out, each with how much. `books` stand by themselves,
    `slipcases` are the boxes among them.
    """

    name: str
    width: float
    used: float
    ease: float
    slack: float
    worst_case: float
    likely: float
    verdict: Verdict
    books: tuple[int, ...]
    too_tall: tuple[tuple[str, float], ...]
    too_deep: tuple[tuple[str, float], ...]
    slipcases: tuple[str, ...] = ()

    @property
    def probability(self) -> float:
        """The chance that the row fits, Φ(slack/σ), when a tolerance is 2σ."""
        if not self.likely:
            return 1.0 if self.slack >= 0 else 0.0
        return (1 + erf(self.slack / (self.likely / 2) / sqrt(2))) / 2


def fit_space(name: str, space: SpaceEntry, books: Sequence[Standing], tolerances: Mapping[str, float]) -> SpaceFit:
    """Stand the books in a space; `tolerances` is that of each stock's caliper, ± mm."""
    upright = [book for book in books if book.stack is None]
    stacks: dict[str, list[Standing]] = {}
    for book in books:
        if book.stack is not None:
            stacks.setdefault(book.stack, []).append(book)
    used = sum(book.thickness for book in upright) + sum(
        max(book.height for book in stack) for stack in stacks.values()
    )
    ease = space.ease * (len(upright) + len(stacks))
    slack = space.width - used - ease
    worst_case, likely = spread([book.uncertainty for book in upright], tolerances)
    too_tall = tuple(_beyond(space.height, [(book.title, book.height) for book in upright] + _heights(stacks)))
    too_deep = tuple(_beyond(space.depth, [(book.title, book.depth) for book in books]))
    return SpaceFit(
        name=name,
        width=space.width,
        used=used,
        ease=ease,
        slack=slack,
        worst_case=worst_case,
        likely=likely,
        verdict=_verdict(slack, likely, stands_out=bool(too_tall or too_deep)),
        books=tuple(book.number for book in books if book.number is not None),
        too_tall=too_tall,
        too_deep=too_deep,
        slipcases=tuple(book.title for book in books if book.number is None),
    )


def _verdict(slack: float, likely: float, *, stands_out: bool) -> Verdict:
    if slack < -1e-9 or stands_out:
        return Verdict.OVER
    return Verdict.TIGHT if slack < likely else Verdict.FITS


def _heights(stacks: Mapping[str, Sequence[Standing]]) -> list[tuple[str, float]]:
    return [(f"the stack {name}", sum(book.thickness for book in stack)) for name, stack in stacks.items()]


def _beyond(limit: float, sides: Sequence[tuple[str, float]]) -> list[tuple[str, float]]:
    return [(title, side - limit) for title, side in sides if side > limit + 1e-9]
