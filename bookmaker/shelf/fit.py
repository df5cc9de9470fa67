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
from typing import Literal, NamedTuple

from ..things.chance import Spare, chance_of, coverage, greatest
from ..things.standing import Standing, Uncertainty, summed
from .space_entry import SpaceEntry

__all__ = ["NOISE", "Doubtful", "SpaceFit", "StandsOut", "Verdict", "fit_space"]


NOISE, LEAST_CHANCE = 1e-9, 1e-6
"""Smaller lengths in mm are noise of floats, smaller chances noise of summing them."""


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


class Doubtful(NamedTuple):
    """Something that has room above or behind it as computed, but not surely: what it has to spare, ± in mm."""

    title: str
    side: Literal["tall", "deep"]
    spare: float
    tolerance: float


@dataclass(frozen=True, slots=True)
class SpaceFit:
    """A space and what stands in it, all in mm; tolerances are ± two standard deviations (GUM, k = 2).

    `used` is what stands there alone, `room_left` what is left of the width when its clearance is taken off too;
    `likely` is how far that may be off, `all_one_way` if every error went the same way. `probability` is the chance
    that all of it fits, in width, height and depth; with `reserve` to spare the width fits as surely as the maker
    wishes. `things` are the ids of all that stands there by itself, `stands_out` is what is too tall or too deep, and
    `doubtful` what may be.
    """

    name: str
    width: float
    used: float
    clearance: float
    room_left: float
    all_one_way: float
    likely: float
    reserve: float
    probability: float
    verdict: Verdict
    things: tuple[str, ...]
    stands_out: tuple[StandsOut, ...] = ()
    doubtful: tuple[Doubtful, ...] = ()


def fit_space(name: str, space: SpaceEntry, books: Sequence[Standing], tolerances: Mapping[str, float]) -> SpaceFit:
    """Stand the books in a space; `tolerances` is that of each stock's caliper and of each glue's films, ± mm."""
    upright = [book for book in books if book.stack is None]
    stacks: dict[str, list[Standing]] = {}
    for book in books:
        if book.stack is not None:
            stacks.setdefault(book.stack, []).append(book)
    lengths = [max(book.height for book in stack) for stack in stacks.values()]
    used = sum(book.thickness for book in upright) + sum(lengths)
    clearance = space.clearance * (len(upright) + len(stacks))
    room_left = space.width - used - clearance
    longest = [greatest([one.height for one in stack], [one.cut for one in stack]) for stack in stacks.values()]
    across = summed(
        [*(book.uncertainty for book in upright), *(Uncertainty({}, tolerance) for _, tolerance in longest)]
    )
    width = Spare(room_left - sum(mean for mean, _ in longest) + sum(lengths), across)
    all_one_way, likely = across.spread(tolerances)
    others = [*_above(space, upright, stacks), *_behind(space, books)]
    reserve = likely * coverage(space.chance)
    stands_out = tuple(_stands_out(space, books, stacks))
    probability = chance_of([width, *(spare for _, _, spare in others)], tolerances)
    sure = room_left >= reserve - NOISE and probability >= space.chance - LEAST_CHANCE
    return SpaceFit(
        name=name,
        width=space.width,
        used=used,
        clearance=clearance,
        room_left=room_left,
        all_one_way=all_one_way,
        likely=likely,
        reserve=reserve,
        probability=probability,
        verdict=Verdict.OVER if room_left < -NOISE or stands_out else Verdict.FITS if sure else Verdict.TIGHT,
        things=tuple(book.thing for book in books),
        stands_out=stands_out,
        doubtful=tuple(
            Doubtful(title, side, spare.length, spare.tolerance(tolerances))
            for title, side, spare in others
            if spare.length >= -NOISE and spare.chance(tolerances) < space.chance - LEAST_CHANCE
        ),
    )


Other = tuple[str, Literal["tall", "deep"], Spare]
"""What something is called, the side it may be too long on, and what it has to spare there."""


def _above(space: SpaceEntry, upright: Sequence[Standing], stacks: Mapping[str, Sequence[Standing]]) -> Iterator[Other]:
    for book in upright:
        yield book.title, "tall", Spare(space.height - book.height, Uncertainty({}, book.cut))
    for name, stack in stacks.items():
        height = sum(book.thickness for book in stack)
        yield f"the stack {name}", "tall", Spare(space.height - height, summed([one.uncertainty for one in stack]))


def _behind(space: SpaceEntry, books: Sequence[Standing]) -> Iterator[Other]:
    for book in books:
        yield book.title, "deep", Spare(space.depth - book.depth, Uncertainty({}, book.cut))


def _stands_out(
    space: SpaceEntry, books: Sequence[Standing], stacks: Mapping[str, Sequence[Standing]]
) -> Iterator[StandsOut]:
    for book in books:
        if book.stack is None and book.height > space.height + NOISE:
            yield StandsOut(book.title, "tall", book.height - space.height, book.thing)
    for name, stack in stacks.items():
        height = sum(book.thickness for book in stack)
        if height > space.height + NOISE:
            yield StandsOut(f"the stack {name}", "tall", height - space.height)
    for book in books:
        if book.depth > space.depth + NOISE:
            yield StandsOut(book.title, "deep", book.depth - space.depth, book.thing)
