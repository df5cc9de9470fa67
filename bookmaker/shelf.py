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
from math import erf, hypot, sqrt

from .spec.spaces import SpaceEntry

__all__ = ["SpaceFit", "Standing", "Uncertainty", "Verdict", "fit_space", "root_sum_square"]


class Verdict(StrEnum):
    """`over`: does not fit as computed. `tight`: fits as computed, but the likely error is larger than the slack."""

    FITS = "fits"
    TIGHT = "tight"
    OVER = "over"


@dataclass(frozen=True, slots=True)
class Uncertainty:
    """How far a length may be off: its slope by stock (mm per mm of caliper) and its own error in mm.

    `of_parts` are the own errors of what it holds, each independent of the others: those of the books in a slipcase.
    """

    slopes: Mapping[str, float]
    own: float
    of_parts: tuple[float, ...] = ()

    @property
    def errors(self) -> tuple[float, ...]:
        """All errors that no other length shares, in mm."""
        return (self.own, *self.of_parts)

    def spread(self, tolerances: Mapping[str, float]) -> tuple[float, float]:
        """Worst case and root-sum-square tolerance, ± mm, for the tolerance of each stock's caliper."""
        return _spread([self], tolerances)


@dataclass(frozen=True, slots=True)
class Standing:
    """What stands on a shelf, a finished book or a slipcase: outer sides in mm, and how far its thickness may be off.

    `number` is that of the book on the list, from 0; a slipcase has none.
    """

    number: int | None
    title: str
    thickness: float
    height: float
    depth: float
    uncertainty: Uncertainty
    stack: str | None = None


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


def root_sum_square(parts: Sequence[float]) -> float:
    """The root of the sum of squares.

    >>> round(root_sum_square([25, 9.7, 2.9, 16.6]), 1)
    31.7
    """
    return hypot(*parts)


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
    worst_case, likely = _spread([book.uncertainty for book in upright], tolerances)
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


def _spread(parts: Sequence[Uncertainty], tolerances: Mapping[str, float]) -> tuple[float, float]:
    """Worst case Σ|tolerances|; likely √(Σ_stocks (Σ slopes · tolerance)² + Σ own²)."""
    shared: dict[str, float] = {}
    for part in parts:
        for stock, slope in part.slopes.items():
            shared[stock] = shared.get(stock, 0.0) + slope * tolerances[stock]
    own = [error for part in parts for error in part.errors]
    return sum(map(abs, shared.values())) + sum(own), root_sum_square([*shared.values(), *own])
