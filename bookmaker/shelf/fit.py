"""Whether the books fit their spaces, and how sure that is.

An upright book takes its thickness of the width; books of one stack lie on one another, take the longest
one's height of the width, and their thicknesses add up to a height. Every book or stack in a row needs
some clearance besides. The error of a stock's caliper is shared by all books cut from it; the error of folding
and gluing is each book's own.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import erf, sqrt
from typing import Literal, NamedTuple

from ..things.standing import Standing, spread
from .space_entry import SpaceEntry

__all__ = ["SpaceFit", "StandsOut", "Verdict", "fit_space"]


class Verdict(StrEnum):
    """`over`: does not fit as computed. `tight`: fits as computed, but may be off by more than the room left."""

    FITS = "fits"
    TIGHT = "tight"
    OVER = "over"


class StandsOut(NamedTuple):
    """Something too large for its space: what it is called, its id if it is no stack, and by how much, in mm."""

    title: str
    side: Literal["tall", "deep"]
    by: float
    thing: str | None = None


@dataclass(frozen=True, slots=True)
class SpaceFit:
    """A space and what stands in it, all in mm; tolerances are ±.

    `used` is what stands there alone, `room_left` what is left of the width when its clearance is taken off too.
    `things` are the ids of all that stands there by itself, and `stands_out` is what is too tall or too deep.
    """

    name: str
    width: float
    used: float
    clearance: float
    room_left: float
    worst_case: float
    likely: float
    verdict: Verdict
    things: tuple[str, ...]
    stands_out: tuple[StandsOut, ...] = ()

    @property
    def probability(self) -> float:
        """The chance that the row fits, Φ(room left/σ), when a tolerance is 2σ."""
        if not self.likely:
            return 1.0 if self.room_left >= 0 else 0.0
        return (1 + erf(self.room_left / (self.likely / 2) / sqrt(2))) / 2


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
    clearance = space.clearance * (len(upright) + len(stacks))
    room_left = space.width - used - clearance
    worst_case, likely = spread([book.uncertainty for book in upright], tolerances)
    stands_out = tuple(_stands_out(space, books, stacks))
    return SpaceFit(
        name=name,
        width=space.width,
        used=used,
        clearance=clearance,
        room_left=room_left,
        worst_case=worst_case,
        likely=likely,
        verdict=_verdict(room_left, likely, stands_out=bool(stands_out)),
        things=tuple(book.thing for book in books),
        stands_out=stands_out,
    )


def _verdict(room_left: float, likely: float, *, stands_out: bool) -> Verdict:
    if room_left < -1e-9 or stands_out:
        return Verdict.OVER
    return Verdict.TIGHT if room_left < likely - 1e-9 else Verdict.FITS


def _stands_out(
    space: SpaceEntry, books: Sequence[Standing], stacks: Mapping[str, Sequence[Standing]]
) -> Iterator[StandsOut]:
    for book in books:
        if book.stack is None and book.height > space.height + 1e-9:
            yield StandsOut(book.title, "tall", book.height - space.height, book.thing)
    for name, stack in stacks.items():
        height = sum(book.thickness for book in stack)
        if height > space.height + 1e-9:
            yield StandsOut(f"the stack {name}", "tall", height - space.height)
    for book in books:
        if book.depth > space.depth + 1e-9:
            yield StandsOut(book.title, "deep", book.depth - space.depth, book.thing)
