"""Where each book might stand: on which space, and in which order there.

Books that stand in a space that takes them stay in it. Others go where the least room is left over, the thickest first.
Then each space is put in order: the one that costs least by `pleasing`, or by a plain rule.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from ...things.thing import Plan
from ..fit import SpaceFit
from ..plan import ShelfPlan
from .costs import cost_of
from .order import best_order
from .pleasing import Weights, costs_of
from .units import Unit, units_in

__all__ = ["Arranged", "Proposal", "Rule", "proposed"]

Rule = Literal["height", "thickness", "colour", "title"]
"""Plain orders: what is highest or thickest first, colours round the hues, titles by the alphabet."""

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Arranged:
    """A space with its books as they would stand, by id, and what the order costs before and after.

    Where books came or went before and after cannot be compared: `before` is None.
    """

    space: str
    things: tuple[str, ...]
    before: float | None
    after: float


@dataclass(frozen=True, slots=True)
class Proposal:
    """All spaces, the books that change theirs, and those that no space takes."""

    spaces: tuple[Arranged, ...]
    moved: Mapping[str, str]
    left_over: tuple[str, ...]

    @property
    def changes(self) -> bool:
        """Whether anything would stand elsewhere."""
        return bool(self.moved) or any(one.before is None or one.after < one.before - 1e-9 for one in self.spaces)


def proposed(
    plan: ShelfPlan,
    entries: Mapping[str, int],
    weights: Weights = Weights(),  # noqa: B008 - a frozen value
    rule: Rule | None = None,
    keep: frozenset[str] = frozenset(),
    progress: Progress = lambda *_: None,
) -> Proposal:
    """Propose places for all books of a shelf.

    `entries` are the entries of the file that books come from, by id: what shares one stays together; what has none
    stays where it is. Those in `keep` stay in their place, counted from the left.
    """
    units = {fit.name: _units(fit, plan, entries) for fit in plan.spaces}
    placed, moved, left_over = _housed(plan, units, entries, keep)
    spaces: list[Arranged] = []
    for at, (name, before) in enumerate(units.items()):
        progress(at, len(units))
        now = placed[name]
        costs = costs_of([unit.first for unit in now], [unit.last for unit in now], weights)
        start = tuple(range(len(now)))
        order = best_order(costs, start, _held(now, keep)) if rule is None else _by_rule(now, plan.plans, rule)
        known = cost_of(costs, start) if now == before else None
        things = tuple(id for number in order for id in now[number].things)
        spaces.append(Arranged(name, things, known, cost_of(costs, order)))
    return Proposal(tuple(spaces), moved, left_over)


def _units(fit: SpaceFit, plan: ShelfPlan, entries: Mapping[str, int]) -> list[Unit]:
    """What may be moved in a space: books that are written in the file."""
    clearance = plan.spec.spaces[fit.name].clearance
    return units_in([id for id in fit.things if id in entries], plan.plans, entries, clearance)


def _held(units: Sequence[Unit], keep: frozenset[str]) -> frozenset[int]:
    """The places of a row in which units stay."""
    return frozenset(at for at, unit in enumerate(units) if keep & set(unit.things))


def _by_rule(units: Sequence[Unit], plans: Mapping[str, Plan], rule: Rule) -> tuple[int, ...]:
    from colorsys import rgb_to_hls

    def key(number: int) -> tuple[object, ...]:
        unit = units[number]
        name = plans[unit.things[0]].name.casefold()
        match rule:
            case "height":
                return (-unit.first.height, name)
            case "thickness":
                return (-unit.first.thickness, name)
            case "colour":
                hue, light, vivid = rgb_to_hls(*(unit.first.tone or (0.5, 0.5, 0.5)))
                return (vivid < 0.1, round(hue, 3), light, name)
        return (name,)

    return tuple(sorted(range(len(units)), key=key))


def _housed(
    plan: ShelfPlan, units: Mapping[str, list[Unit]], entries: Mapping[str, int], keep: frozenset[str]
) -> tuple[dict[str, list[Unit]], dict[str, str], tuple[str, ...]]:
    """The units of each space, once those that it does not take are elsewhere; what moved; what nothing takes."""
    fits = {fit.name: fit for fit in plan.spaces}
    placed = {name: list(there) for name, there in units.items()}
    room = {name: fit.room_left for name, fit in fits.items()}
    homeless = _homeless(plan, entries)
    for name, there in placed.items():
        out = {one.thing for one in fits[name].stands_out}
        for unit in [unit for unit in there if out & set(unit.things) and not keep & set(unit.things)]:
            there.remove(unit)
            room[name] += unit.width
            homeless.append((unit, name))
        while room[name] < 0 and (free := [unit for unit in there if not keep & set(unit.things)]):
            enough = [unit for unit in free if unit.width >= -room[name]]
            unit = min(enough, key=_width) if enough else max(free, key=_width)
            there.remove(unit)
            room[name] += unit.width
            homeless.append((unit, name))
    moved: dict[str, str] = {}
    left_over: list[str] = []
    for unit, home in sorted(homeless, key=lambda pair: -pair[0].width):
        takes = [name for name in placed if room[name] >= unit.width and _has_height(plan, name, unit)]
        if not takes:
            left_over += unit.things
            if home:
                placed[home].append(unit)
                room[home] -= unit.width
            continue
        best = home if home in takes else min(takes, key=lambda name: room[name])
        placed[best].append(unit)
        room[best] -= unit.width
        moved |= {id: best for id in unit.things if best != home}
    return placed, moved, tuple(left_over)


def _width(unit: Unit) -> float:
    return unit.width


def _homeless(plan: ShelfPlan, entries: Mapping[str, int]) -> list[tuple[Unit, str]]:
    """What stands nowhere yet, though it could."""
    inside = {id for one in plan.plans.values() for id in one.held}
    nowhere = [id for id in entries if id not in inside and plan.plans[id].space is None and plan.plans[id].standing]
    clearance = max((space.clearance for space in plan.spec.spaces.values()), default=0.0)
    return [(unit, "") for unit in units_in(nowhere, plan.plans, entries, clearance)]


def _has_height(plan: ShelfPlan, name: str, unit: Unit) -> bool:
    space = plan.spec.spaces[name]
    return unit.height <= space.height and unit.depth <= space.depth
