"""What stands together and is moved as one: a book, a stack, what one entry or one row of the file stands for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from ...things.standing import Standing
from ...things.thing import Plan
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
    return Unit(
        things=tuple(things),
        width=sum(width + clearance for width in _widths(standing)),
        height=max(_highest(standing)),
        depth=max(one.depth for one in standing),
        first=_worn(plans[things[0]], standing[0]),
        last=_worn(plans[things[-1]], standing[-1]),
    )


def _widths(standing: Sequence[Standing]) -> Iterator[float]:
    """Of each upright book its thickness, of a stack the height of its tallest book."""
    yield from (one.thickness for one in standing if one.stack is None)
    if lying := [one.height for one in standing if one.stack is not None]:
        yield max(lying)


def _highest(standing: Iterable[Standing]) -> Iterator[float]:
    lying = [one.thickness for one in standing if one.stack is not None]
    yield sum(lying)
    yield from (one.height for one in standing if one.stack is None)


def _worn(plan: Plan, standing: Standing) -> Worn:
    """What is seen of one; a book that lies shows its spine along the board."""
    if standing.stack is None:
        return Worn(standing.height, standing.thickness, plan.style, plan.tone)
    return Worn(standing.thickness, standing.height, plan.style, plan.tone)
