"""What stands together and is moved as one: a book, a stack, a set, a slipcase, what one entry stands for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from ...ground.geometry import Rect
from ...things.standing import Standing
from ...things.thing import Plan
from ..placing.places import places_of
from .pleasing import Worn

__all__ = ["Unit", "units_in", "written_in"]


@dataclass(frozen=True, slots=True)
class Unit:
    """Some things in their order, by id, and the room they take: width with clearance, height and depth in mm.

    `books` are those in the list of books that stand there, or stand in what stands there. `at` says where in its row
    the unit stays, if it is pinned to a place, and `stays` whether it keeps its space.
    """

    things: tuple[str, ...]
    books: tuple[str, ...]
    width: float
    height: float
    depth: float
    volume: float
    first: Worn
    last: Worn
    at: str = ""
    stays: bool = False


def written_in(thing: str, plans: Mapping[str, Plan], entries: Mapping[str, int]) -> tuple[str, ...]:
    """The books of the list that a thing is, or that stand in it, in the order of the list."""
    if thing in entries:
        return (thing,)
    inside = {book for id in plans[thing].held for book in written_in(id, plans, entries)}
    return tuple(id for id in entries if id in inside)


def units_in(
    things: Sequence[str],
    plans: Mapping[str, Plan],
    entries: Mapping[str, int],
    clearance: float,
    beside: Mapping[str, Sequence[str]],
) -> list[Unit]:
    """The things of a space as units, in their order; those of one stand where the first of them does.

    One are those of one entry, of one stack, of one set, what leans and what it leans on, what is pinned beside others.
    """
    groups: dict[object, list[str]] = {}
    for id in things:
        groups.setdefault(_kept_with(id, plans, entries), []).append(id)
    joined = _joined(_joined(list(groups.values()), _leaning(things, plans)), _pairs(beside))
    return [_unit(group, things, plans, entries, clearance) for group in joined]


def _kept_with(id: str, plans: Mapping[str, Plan], entries: Mapping[str, int]) -> object:
    standing, series = plans[id].standing, plans[id].thing.name.series
    if standing and standing.stack is not None:
        return "stack", standing.stack
    if id not in entries:
        return "holder", id
    return ("set", series) if series else ("entry", entries[id])


def _leaning(things: Sequence[str], plans: Mapping[str, Plan]) -> Iterator[tuple[str, str]]:
    """What leans, and what it leans on."""
    for at, id in enumerate(things):
        side = _side(id, plans)
        if side > 0 and at:
            yield things[at - 1], id
        elif side < 0 and at + 1 < len(things):
            yield id, things[at + 1]


def _side(id: str, plans: Mapping[str, Plan]) -> float:
    """More than 0 of what leans to the left, less of what leans to the right."""
    standing = plans[id].standing
    return standing.stance.lean or standing.stance.falls if standing else 0.0


def _pairs(beside: Mapping[str, Sequence[str]]) -> Iterator[tuple[str, str]]:
    return ((one, other) for one, others in beside.items() for other in others)


def _joined(groups: Sequence[Sequence[str]], pairs: Iterable[tuple[str, str]]) -> list[list[str]]:
    """Groups of which things are to stand side by side as one; what would need a third side is left."""
    number = {id: at for at, group in enumerate(groups) for id in group}
    chains = {at: [at] for at in range(len(groups))}
    of_chain = dict(zip(chains, chains, strict=True))
    for one, other in pairs:
        if one not in number or other not in number:
            continue
        left, right = of_chain[number[one]], of_chain[number[other]]
        ends = chains[left], chains[right]
        if left == right or number[one] not in _ends(ends[0]) or number[other] not in _ends(ends[1]):
            continue
        first, second = ends
        if first[-1] != number[one]:
            first = first[::-1]
        if second[0] != number[other]:
            second = second[::-1]
        chains[left] = [*first, *second]
        del chains[right]
        of_chain |= dict.fromkeys(chains[left], left)
    found = sorted(chains.values(), key=min)
    return [[id for at in chain for id in groups[at]] for chain in found]


def _ends(chain: Sequence[int]) -> tuple[int, int]:
    return chain[0], chain[-1]


def _unit(
    things: Sequence[str],
    row: Sequence[str],
    plans: Mapping[str, Plan],
    entries: Mapping[str, int],
    clearance: float,
) -> Unit:
    pins = [plans[id].thing.pinned for id in things]
    at = next((pin.at for pin in pins if pin.at), "")
    if (at == "first" and pins[-1].at == "first") or (at == "last" and pins[0].at == "last"):
        things = things[::-1]
    if not at and _side(row[0], plans) > 0 and row[0] in things:
        at = "first"  # it leans on the upright
    if not at and _side(row[-1], plans) < 0 and row[-1] in things:
        at = "last"
    standing = [found for id in things if (found := plans[id].standing)]
    places = places_of(standing)
    return Unit(
        things=tuple(things),
        books=tuple(book for id in things for book in written_in(id, plans, entries)),
        width=sum(Rect.around(place.outline).width + clearance for place in places),
        height=max(place.top.length for place in places),
        depth=max(one.out.length for one in standing),
        volume=sum(one.thickness * one.height * one.depth for one in standing),
        first=_worn(plans[things[0]], standing[0]),
        last=_worn(plans[things[-1]], standing[-1]),
        at=at,
        stays=any(pin.stays for pin in pins) or any(id not in entries for id in things),
    )


def _worn(plan: Plan, standing: Standing) -> Worn:
    """What is seen of one; a book in a stack shows its spine along the board."""
    if standing.stack is None:
        return Worn(standing.up.length, standing.across.length, plan.style, plan.tone)
    return Worn(standing.thickness, standing.height, plan.style, plan.tone)
