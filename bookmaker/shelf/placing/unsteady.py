"""What would not stay as it leans: it slides, stands up by itself, has nothing to lean on, or turns that over."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, floor, radians

from ...ground.problems import Problem, Severity
from ...ground.units import print_mm
from ..arrangement import row_of
from ..fit import SpaceFit
from ..plan import ShelfPlan
from .leaning import FRICTION, holds, least_lean, most_lean, push
from .places import Place, Placed

__all__ = ["lean_findings"]

LITTLE = 1.0
"""What has no more room than this beside it, in mm, cannot be turned over."""

FIELD = ("stands", "lean")


def lean_findings(fit: SpaceFit, plan: ShelfPlan) -> Iterator[Problem]:
    """What is to be said of everything that leans on a space."""
    if not any(place.things[0].stance.lean or place.things[0].stance.falls for place in fit.places):
        return
    row = row_of(fit, plan)
    for number, one in enumerate(row):
        standing = one.place.things[0].stance
        if standing.lean or standing.falls:
            yield from _by_itself(one, fit)
            yield from _over(row, number, fit)


def _by_itself(one: Placed, fit: SpaceFit) -> Iterator[Problem]:
    (thing,) = one.place.things
    thick, high, lean = thing.thickness, thing.height, abs(one.place.lean)
    least = least_lean(thick, high)
    if lean < least:
        yield Problem(
            f"{thing.title} would stand up by itself: it leans {lean:.1f}°, and is {print_mm(thick, 1)} thick and "
            f"{print_mm(high, 1)} high, so that it leans from {least:.1f}° on",
            f"write lean: {floor(least) + 1} degrees or more"
            if thing.stance.lean
            else "leave it more room, or take lean away",
            Severity.WARNING,
            field=FIELD,
            thing=thing.thing,
        )
    elif one.met is None:
        yield Problem(
            f"{thing.title} leans to the right in {fit.name}, where nothing is that it could lean on: the upright is "
            f"{print_mm(max(fit.width - one.right, 0.0), 1)} away",
            "write towards: left, or list it before a book that it can lean on",
            field=FIELD,
            thing=thing.thing,
        )
    elif not holds(thick, high, lean, one.met):
        most = _most(thick, high, lean, one.met)
        yield Problem(
            f"{thing.title} would slide: it leans {lean:.1f}°"
            + (f", and paper on paper holds it up to {most}°" if most else " over something far too low to hold it"),
            f"write lean: {most} degrees or less" if most else "put it beside something higher",
            Severity.WARNING,
            field=FIELD,
            thing=thing.thing,
        )


def _most(thick: float, high: float, lean: float, met: float) -> int:
    """The most whole degrees at which it stays beside the same; 0 if it would stand up before."""
    if met >= high * cos(radians(lean)) - 1e-6:  # its head touches something at least so high
        return floor(most_lean(thick, high))
    steps = range(floor(lean), floor(least_lean(thick, high)), -1)
    return next((degrees for degrees in steps if holds(thick, high, degrees, met)), 0)


def _over(row: Sequence[Placed], number: int, fit: SpaceFit) -> Iterator[Problem]:
    """What leans to the right turns over or pushes away what stands there, if that has room to go.

    To the left all stand against the upright.
    """
    if row[number].place.lean >= 0 or (number and row[number - 1].place.lean < 0):
        return
    last = next(at for at in range(number, len(row)) if at + 1 == len(row) or row[at + 1].place.lean >= 0)
    pushing, holding = [one.place for one in row[number : last + 1]], [one.place for one in row[last + 1 :]]
    met = row[last].met
    if not holding or met is None or fit.width - row[-1].right <= LITTLE + fit.clearance:
        return
    turning = sum(map(_push, pushing))
    if turning > _against(holding) or turning > FRICTION * met * sum(map(_weight, holding)):
        (thing,) = row[number].place.things
        yield Problem(
            f"{thing.title} would push {holding[0].title} over: what it leans on weighs too little to hold it",
            "write towards: left, lean it less, or stand more books behind that",
            Severity.WARNING,
            field=FIELD,
            thing=thing.thing,
        )


def _against(places: Sequence[Place]) -> float:
    """What keeps a row of things from being turned over to the right; behind what leans to the left stands no more."""
    against = 0.0
    for place in places:
        if place.lean > 0:
            return against + _push(place)
        against += _weight(place) * place.width / 2
    return against


def _push(place: Place) -> float:
    return _weight(place) * push(place.width, place.height, abs(place.lean))


def _weight(place: Place) -> float:
    """As its volume: all are of paper and board."""
    return sum(one.thickness * one.height * one.depth for one in place.things)
