"""Whether the books fit their spaces, and how sure that is.

An upright book takes its thickness of the width; books of one stack lie on one another, take the longest
one's height of the width, and their thicknesses add up to a height. What stands otherwise takes what it covers of
the board; what leans, what it takes beside its neighbours. Every book or stack in a row needs some clearance
besides. The error of a stock's caliper is shared by all books cut from it; the error of folding and gluing is each
book's own.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal, NamedTuple

from ..things.chance import Spare, chance_of, coverage
from ..things.standing import Standing
from .placing.places import Place, places_of
from .placing.widths import extent, fallen, width_error
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
    wishes. `places` are the places of its row; what falls until it meets its neighbour is upright in `used`, and leans
    in its place as far as there is room. `stands_out` is what is too tall or too deep, and `doubtful` what may be.
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
    places: tuple[Place, ...]
    stands_out: tuple[StandsOut, ...] = ()
    doubtful: tuple[Doubtful, ...] = ()

    @property
    def things(self) -> tuple[str, ...]:
        """The ids of all that stands there by itself."""
        return tuple(one.thing for place in self.places for one in place.things)


def fit_space(name: str, space: SpaceEntry, books: Sequence[Standing], tolerances: Mapping[str, float]) -> SpaceFit:
    """Stand the books in a space; `tolerances` is that of each stock's caliper and of each glue's films, ± mm."""
    places = places_of(books)
    used, clearance = extent(places), space.clearance * len(places)
    room_left = space.width - used - clearance
    leant = fallen(places, space.width - clearance)
    across = width_error(places)
    width = Spare(room_left - sum(place.longer for place in places), across)
    all_one_way, likely = across.spread(tolerances)
    others = [*_above(space, leant), *_behind(space, books)]
    reserve = likely * coverage(space.chance)
    stands_out = tuple(_stands_out(space, leant))
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
        places=leant,
        stands_out=stands_out,
        doubtful=tuple(
            Doubtful(title, side, spare.length, spare.tolerance(tolerances))
            for title, side, spare in others
            if spare.length >= -NOISE and spare.chance(tolerances) < space.chance - LEAST_CHANCE
        ),
    )


Other = tuple[str, Literal["tall", "deep"], Spare]
"""What something is called, the side it may be too long on, and what it has to spare there."""


def _above(space: SpaceEntry, places: Sequence[Place]) -> Iterator[Other]:
    for place in places:
        yield place.title, "tall", Spare(space.height - place.top.length, place.top.error)


def _behind(space: SpaceEntry, books: Sequence[Standing]) -> Iterator[Other]:
    for book in books:
        yield book.title, "deep", Spare(space.depth - book.out.length, book.out.error)


def _stands_out(space: SpaceEntry, places: Sequence[Place]) -> Iterator[StandsOut]:
    for place in places:
        if (by := place.top.length - space.height) > NOISE:
            yield StandsOut(place.title, "tall", by, place.things[0].thing if place.stack is None else None)
    for book in (one for place in places for one in place.things):
        if (by := book.out.length - space.depth) > NOISE:
            yield StandsOut(book.title, "deep", by, book.thing)
