"""Blocks that take what is left on their space: how much there is, and how it is shared.

Two steps: every other book is planned first, and the blocks to fill as thin as they may be. What the row then has to
spare, less its likely error or what is to be left, is shared among them in a natural spread, no two alike, so that the
sum of what can be cut is the largest that fits.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor

from ...ground.problems import FieldPath, Problem, Severity, ShelfFileError
from ...ground.quantities import counted
from ...ground.told import rounded_down, rounded_up
from ...ground.units import print_mm
from ..fit import SpaceFit
from .spread import Bounds, natural_wishes
from .sums import Chosen, best_choice

__all__ = ["Filler", "Filling", "fill_space"]

UNIT = 0.001
"""Thicknesses are added up in these, in mm."""

STEP = 10
"""Blocks that are cut to measure differ by so many units, a hundredth of a millimetre: no saw knows less."""

ASUNDER = 100
"""Thicknesses that differ by less, in units, are kept apart where there is room for that: a tenth is seen."""

THICKEST_IN_LIFE = 144.0
"""A book thicker than this in life looks like a box, in mm: 12 mm at 1:12 (common practice)."""


@dataclass(frozen=True, slots=True)
class Filler:
    """A block to fill with: the id of its book, and the thicknesses it may have, in mm; `field` is where it says so.

    `now` is how thick its row has it, `about` what it is to be about, `choices` all it can be if that is not any.
    Which of several is thick and which thin hangs on the `look` of each.
    """

    thing: str
    at_least: float
    at_most: float | None
    field: FieldPath
    now: float
    about: float | None = None
    choices: tuple[float, ...] = ()
    look: int = 0


@dataclass(frozen=True, slots=True)
class Filling:
    """The thickness of each block by the id of its book, in mm, and what there is to say."""

    thicknesses: Mapping[str, float]
    notes: tuple[Problem, ...] = ()


def fill_space(
    fit: SpaceFit, fillers: Sequence[Filler], scale: float, to_spare: float, others: Sequence[float] = ()
) -> Filling:
    """Share what is left but for what is to spare, in mm; `others` are the thicknesses of blocks that are settled.

    Raises:
        ShelfFileError: even with every block as thin as it may be the row is not sure to fit.
    """
    room = fit.room_left - to_spare + sum(filler.now for filler in fillers)
    # of many without bounds none takes more than four times its share
    unbound = sum(filler.at_most is None for filler in fillers)
    options = [_options(filler, min(room, 4 * room / unbound) if unbound else room) for filler in fillers]
    least = sum(min(own) for own in options) * UNIT
    if room < least - 1e-9:
        raise ShelfFileError((_no_space_left(fit, fillers, least, least - room, to_spare),))
    limit = floor(room / UNIT + 1e-6)
    abouts = [filler.about and filler.about / UNIT for filler in fillers]
    bounds = [Bounds(min(own), max(own), about) for own, about in zip(options, abouts, strict=True)]
    wishes = natural_wishes([str(filler.look) for filler in fillers], bounds, limit)
    taken = [round(other / UNIT) for other in others]
    chosen = best_choice(options, limit, wishes, taken=taken, gap=_gap(options))
    assert chosen is not None  # the thinnest of each have room
    found = {filler.thing: round(length * UNIT, 3) for filler, length in zip(fillers, chosen.lengths, strict=True)}
    left = room - sum(chosen.lengths) * UNIT
    notes = (
        *_left_over(fit, fillers, left),
        *_too_thick(fit, fillers, found, scale),
        *_not_reached(fit, fillers, chosen),
    )
    return Filling(found, notes)


def _options(filler: Filler, room: float) -> list[int]:
    """All thicknesses in units that a block may have, and that are no more than the room; the thinnest in any case."""
    if filler.choices:
        whole = [round(choice / UNIT) for choice in filler.choices]
        return [length for length in whole if length * UNIT <= room + 1e-9] or whole[:1]
    low = ceil(filler.at_least / UNIT - 1e-6)
    high = floor(max(filler.at_least, min(filler.at_most or room, room)) / UNIT + 1e-6)
    first, last = -(-low // STEP) * STEP, high // STEP * STEP
    return sorted({low, *range(first, last + 1, STEP), *((high,) if filler.at_most else ())})


def _gap(options: Sequence[Sequence[int]]) -> int:
    """How far thicknesses are kept apart: half of what they would be, spread evenly, at most."""
    span = max(max(own) for own in options) - min(min(own) for own in options)
    return min(ASUNDER, max(1, span // (2 * len(options))))


def _no_space_left(fit: SpaceFit, fillers: Sequence[Filler], least: float, short: float, to_spare: float) -> Problem:
    count = len(fillers)
    missing, wide = (print_mm(rounded_up(length, 2), 2) for length in (short, fit.width + short))
    spared = "for the likely error" if to_spare == fit.reserve else "to spare"
    sign = "± " if to_spare == fit.reserve else ""
    blocks = "the block that is to fill it" if count == 1 else f"the {count} blocks that are to fill it"
    return Problem(
        f"{fit.name} has no room left for {blocks}: with {print_mm(least, 2)} for "
        f"{'it' if count == 1 else 'them'} and {sign}{print_mm(to_spare, 2)} {spared} the row is "
        f"{missing} too long",
        f"take a book out, write a smaller at_least, or write width: {wide} for {fit.name}",
        field=(*fillers[0].field, "thickness"),
        thing=fillers[0].thing,
    )


def _left_over(fit: SpaceFit, fillers: Sequence[Filler], left: float) -> Iterator[Problem]:
    if left >= STEP * UNIT * len(fillers):
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
    sharing = sum(filler.at_most is None for filler in fillers)
    more = ceil(sharing * thickest / most - 1e-9) - sharing  # as unlike one another as these are
    which = "the block that fills" if len(fillers) == 1 else f"the thickest of the {len(fillers)} blocks that fill"
    yield Problem(
        f"{which} {fit.name} becomes {print_mm(thickest, 2)} thick, like a book of {print_mm(thickest * scale, 0)}",
        f"add {more} more to share the space, or write at_most: {print_mm(rounded_down(most), 1)} "
        "and leave the rest empty",
        Severity.NOTE,
        field=(*giants[0].field, "thickness"),
        thing=giants[0].thing,
    )


def _not_reached(fit: SpaceFit, fillers: Sequence[Filler], chosen: Chosen) -> Iterator[Problem]:
    """What the search could not do, and why."""
    if chosen.twins:
        yield Problem(
            f"{fit.name} has blocks of equal thickness: "
            f"the bounds of its {counted(len(fillers), 'block')} leave no other choice",
            "write wider bounds, or layers_of with one paper more",
            Severity.NOTE,
            field=(*fillers[0].field, "thickness"),
            thing=fillers[0].thing,
        )
    if not chosen.proved:
        yield Problem(
            f"{fit.name} may be filled a little better: not every way was tried",
            "give some of its blocks a thickness, or wider bounds",
            Severity.NOTE,
            field=(*fillers[0].field, "thickness"),
            thing=fillers[0].thing,
        )
