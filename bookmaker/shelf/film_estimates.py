"""What measured blocks and books say about films of glue, beside what they say about the paper.

Papers and films are unknown together: a block has two sheets to each film, so one cannot be told from the other by
blocks alone that are made alike. What the shelf file says of each, with its tolerance, counts as a first measure; each
block or book that was measured then moves all it is made of, by as much as its own error allows (R. E. Kalman, "A new
approach to linear filtering and prediction problems", Journal of Basic Engineering 82, 1960, for constants).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import hypot, sqrt

from ..ground.problems import Problem, Severity
from ..ground.thin import figure_um, small_unit
from ..paper.glue import films_of, glue_called
from ..paper.thickness import ASSEMBLY_TOLERANCE, READING_TOLERANCE
from .feedback import caliper_estimates
from .plan import ShelfPlan

__all__ = ["FilmEstimate", "Reading", "film_estimates", "film_notes", "learnt"]

WORTH_TELLING = 0.7
"""An estimate is told if its tolerance is at most this share of what was known before."""


@dataclass(frozen=True, slots=True)
class Reading:
    """How far something measures from what was computed, in mm, what it is made of, by count, and its own error, ±."""

    difference: float
    counts: Mapping[str, float]
    error: float


@dataclass(frozen=True, slots=True)
class FilmEstimate:
    """What `measures` blocks and books say of a film: its thickness before and now, in mm, each ± two deviations."""

    before: float
    tolerance_before: float
    film: float
    tolerance: float
    measures: int


def film_estimates(plan: ShelfPlan) -> tuple[FilmEstimate, ...]:
    """An estimate for every glue of which at least two things that were measured have films, if it is worth telling.

    Where a paper that is glued with it is estimated already, the same measures are not told twice.
    """
    readings = list(_readings(plan))
    tolerances = plan.terms.tolerances
    found = learnt(readings, tolerances)
    estimates = []
    told = {estimate.stock for estimate in caliper_estimates(plan)}
    taken = {plan.stocks[name].glue for name in told}
    for film in sorted({stock.glue for stock in plan.stocks.values()} - taken):
        name = films_of(film)
        measures = sum(name in reading.counts for reading in readings)
        off, tolerance = found[name]
        if measures > 1 and film + off > 0 and tolerance <= WORTH_TELLING * tolerances[name]:
            estimates.append(FilmEstimate(film, tolerances[name], film + off, tolerance, measures))
    return tuple(estimates)


def _readings(plan: ShelfPlan) -> Iterator[Reading]:
    for one in plan.plans.values():
        for part in one.measurable:
            thick = part.thickness
            if thick.measured is not None:
                hands = ASSEMBLY_TOLERANCE if part.scatter is None else part.scatter
                yield Reading(thick.measured - thick.computed, thick.counts, hypot(hands, READING_TOLERANCE))


def learnt(readings: Sequence[Reading], tolerances: Mapping[str, float]) -> dict[str, tuple[float, float]]:
    """How far each paper and film is off what was said, and how far that may be off in turn, ± mm.

    One block of one film and nothing else, known to ± 0.03, that measures 0.02 too much ± 0.04: the film is off by
    0.02 · 0.03² / (0.03² + 0.04²) = 0.0072, ± 0.03 · 0.04 / 0.05 = 0.024.
    """
    names = list(tolerances)
    mean = dict.fromkeys(names, 0.0)
    spread = {(a, b): (tolerances[a] / 2) ** 2 if a == b else 0.0 for a in names for b in names}
    for reading in readings:
        along = {a: sum(spread[a, b] * count for b, count in reading.counts.items()) for a in names}
        whole = sum(along[a] * count for a, count in reading.counts.items()) + (reading.error / 2) ** 2
        missing = reading.difference - sum(mean[a] * count for a, count in reading.counts.items())
        mean = {a: mean[a] + along[a] * missing / whole for a in names}
        spread = {(a, b): value - along[a] * along[b] / whole for (a, b), value in spread.items()}
    return {name: (mean[name], 2 * sqrt(max(0.0, spread[name, name]))) for name in names}


def film_notes(estimates: Sequence[FilmEstimate]) -> Iterator[Problem]:
    """Proposes what is known better now."""
    for one in estimates:
        film, error, typed = figure_um(one.film), figure_um(one.tolerance), small_unit(typed=True)
        yield Problem(
            f"{one.measures} measured blocks and books make a film of {glue_called(one.before)} {film} ± {error} "
            f"{small_unit()} thick, the shelf file {figure_um(one.before)} ± {figure_um(one.tolerance_before)} "
            f"{small_unit()}",
            f"write glue: {film} {typed} in its stocks, and glue_tolerances: {{{film} {typed}: {error} {typed}}}",
            Severity.NOTE,
            field=("stocks",),
        )
