"""Blocks that take what is left on their space: how much there is, and how it is shared.

Two steps: every other book is planned first, and the blocks to fill as thin as they may be. What the row then
has to spare, less its likely error, is shared among them, so that the row fits as surely as any other.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor, inf

from ..ground.problems import FieldPath, Problem, Severity, ShelfFileError
from ..ground.units import print_mm
from .fit import SpaceFit

__all__ = ["Filler", "Filling", "fill_space", "shares"]

STEP = 0.01
"""Thicknesses to fill are rounded down to this, in mm: no saw knows less."""


THICKEST_IN_LIFE = 144.0
"""A book thicker than this in life looks like a box, in mm: 12 mm at 1:12 (common practice)."""


@dataclass(frozen=True, slots=True)
class Filler:
    """A block to fill with: the id of its book, and the thicknesses it may have, in mm; `field` is where it says so."""

    thing: str
    at_least: float
    at_most: float | None = None
    field: FieldPath = ()


@dataclass(frozen=True, slots=True)
class Filling:
    """The thickness of each block by the id of its book, in mm, and what there is to say."""

    thicknesses: Mapping[str, float]
    notes: tuple[Problem, ...] = ()


def fill_space(fit: SpaceFit, fillers: Sequence[Filler], scale: float) -> Filling:
    """Share what is left; `fit` is the row with every block as thin as it may be.

    Raises:
        ShelfFileError: even so the row is not sure to fit.
    """
    spare = fit.room_left - fit.likely
    if spare < -1e-9:
        raise ShelfFileError((_no_space_left(fit, fillers),))
    room = spare + sum(filler.at_least for filler in fillers)
    thick = shares(room, [(filler.at_least, filler.at_most or inf) for filler in fillers])
    found = {filler.thing: _down(share, filler) for filler, share in zip(fillers, thick, strict=True)}
    notes = (*_left_over(fit, fillers, room - sum(thick)), *_too_thick(fit, fillers, found, scale))
    return Filling(found, notes)


def shares(room: float, bounds: Sequence[tuple[float, float]]) -> tuple[float, ...]:
    """Equal shares of the room within each one's bounds; together they are the room, or all at their most.

    Whoever is bound keeps to it, and the others share the rest alike:

    >>> shares(12, [(1, 3), (1, 100), (5, 100)])
    (3, 4.0, 5)
    """
    level = _level(room, bounds)
    return tuple(min(max(level, least), most) for least, most in bounds)


def _level(room: float, bounds: Sequence[tuple[float, float]]) -> float:
    """The thickness of those that no bound holds. Between two bounds what is used rises in a straight line."""
    edges = sorted({edge for pair in bounds for edge in pair if edge < inf})
    for below, above in pairwise([*edges, inf]):
        bound = sum(least if least > below else most for least, most in bounds if not least <= below < most)
        free = sum(least <= below < most for least, most in bounds)
        level = (room - bound) / free if free else inf
        if level <= above:
            return max(level, below)
    return inf


def _down(share: float, filler: Filler) -> float:
    return max(filler.at_least, round(floor(share / STEP + 1e-6) * STEP, 2))


def _no_space_left(fit: SpaceFit, fillers: Sequence[Filler]) -> Problem:
    count, least = len(fillers), sum(filler.at_least for filler in fillers)
    missing = print_mm(ceil((fit.likely - fit.room_left) * 100 - 1e-6) / 100, 2)
    blocks = "the block that is to fill it" if count == 1 else f"the {count} blocks that are to fill it"
    return Problem(
        f"{fit.name} has no room left for {blocks}: with {print_mm(least, 2)} for "
        f"{'it' if count == 1 else 'them'} and ± {print_mm(fit.likely, 2)} for the likely error the row is "
        f"{missing} too long",
        f"take a book out, write a smaller at_least, or make the space {missing} wider",
        field=(*fillers[0].field, "thickness"),
        thing=fillers[0].thing,
    )


def _left_over(fit: SpaceFit, fillers: Sequence[Filler], left: float) -> Iterator[Problem]:
    if left >= STEP:
        yield Problem(
            f"{fit.name} is not filled: {print_mm(left, 2)} stay empty when its blocks are as thick as they may be",
            "write a larger at_most, or add a book",
            Severity.NOTE,
            field=(*fillers[0].field, "at_most"),
            thing=fillers[0].thing,
        )


def _too_thick(fit: SpaceFit, fillers: Sequence[Filler], found: Mapping[str, float], scale: float) -> Iterator[Problem]:
    """A nearly empty space makes a giant of the block that fills it, unless the maker said how thick it may be."""
    most = THICKEST_IN_LIFE / scale
    giants = [filler for filler in fillers if filler.at_most is None and found[filler.thing] > most]
    if not giants:
        return
    thickest = max(found[filler.thing] for filler in giants)
    more = ceil(sum(found[filler.thing] for filler in giants) / most) - len(giants)
    which = "the block that fills" if len(giants) == 1 else f"the {len(giants)} blocks that fill"
    yield Problem(
        f"{which} {fit.name} {'becomes' if len(giants) == 1 else 'become'} {print_mm(thickest, 2)} thick, "
        f"like a book of {print_mm(thickest * scale, 0)}",
        f"add {more} more to share the space, or write at_most: {print_mm(floor(most * 10) / 10, 1)} "
        "and leave the rest empty",
        Severity.NOTE,
        field=(*giants[0].field, "thickness"),
        thing=giants[0].thing,
    )
