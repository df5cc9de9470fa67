"""What stands together and is moved as one: a book, a stack, what one entry or one row of the file stands for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ...ground.geometry import Rect
from ...things.standing import Standing
from ...things.thing import Plan
from ..placing.places import places_of
from .pleasing import Worn

__all__ = ["Unit", "units_in"]


@dataclass(frozen=True, slots=True)
class Unit:
    """Some things in their order, by id, and the room they take: width with clearance, height and depth in mm."""

    things: tuple[str, ...]
    width: float
    height: float
    depth: float
    first: Worn
    last: Worn


def units_in(
    things: Sequence[str], plans: Mapping[str, Plan], entries: Mapping[str, int], clearance: float
) -> list[Unit]:
    """The things of a space as units, in their order; those of one entry or one stack stand where their first does."""
    groups: dict[object, list[str]] = {}
    for id in things:
        standing = plans[id].standing
        stack = standing.stack if standing else None
        groups.setdefault(("entry", entries[id]) if stack is None else ("stack", stack), []).append(id)
    return [_unit(group, plans, clearance) for group in groups.values()]


def _unit(things: Sequence[str], plans: Mapping[str, Plan], clearance: float) -> Unit:
    standing = [found for id in things if (found := plans[id].standing)]
    places = places_of(standing)
    return Unit(
        things=tuple(things),
        width=sum(Rect.around(place.outline).width + clearance for place in places),
        height=max(place.top.length for place in places),
        depth=max(one.out.length for one in standing),
        first=_worn(plans[things[0]], standing[0]),
        last=_worn(plans[things[-1]], standing[-1]),
    )


def _worn(plan: Plan, standing: Standing) -> Worn:
    """What is seen of one; a book in a stack shows its spine along the board."""
    if standing.stack is None:
        return Worn(standing.up.length, standing.across.length, plan.style, plan.tone)
    return Worn(standing.thickness, standing.height, plan.style, plan.tone)
