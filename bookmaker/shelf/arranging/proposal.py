"""Where each book might stand: on which space, and in which order there.

Each space is put in the order that costs least by `pleasing`, or in a plain one; what is pinned stays.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from ...things.thing import Plan
from ..fit import SpaceFit
from ..plan import ShelfPlan
from .costs import cost_of
from .housing import housed
from .keys import ArrangeEntry, Rule
from .order import best_order
from .pins import pinned_together
from .pleasing import costs_of
from .units import Unit, units_in, written_in

__all__ = ["Arranged", "Proposal", "proposed"]

Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Arranged:
    """A space with its things as they would stand, by id, the books among and in them, and what the order costs.

    Where books came or went before and after cannot be compared: `before` is None.
    """

    space: str
    things: tuple[str, ...]
    books: tuple[str, ...]
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
    wishes: ArrangeEntry,
    keep: frozenset[str] = frozenset(),
    progress: Progress = lambda *_: None,
) -> Proposal:
    """Propose places for all books of a shelf.

    `entries` are the entries of the file that books come from, by id: what shares one stays together; what has none
    stays where it is. Those in `keep` stay in their place, counted from the left, as those that are pinned there.
    """
    beside = pinned_together(plan.register)
    units = {fit.name: _units(fit, plan, entries, beside) for fit in plan.spaces}
    found = housed(plan, units, entries, keep)
    spaces: list[Arranged] = []
    for at, (name, before) in enumerate(units.items()):
        now, held = _pinned(found.placed[name], keep)
        costs = costs_of([unit.first for unit in now], [unit.last for unit in now], wishes)
        if wishes.by is None:
            order = best_order(costs, range(len(now)), held, _within(progress, at, len(units)))
        else:
            order = _by_rule(now, held, plan.plans, wishes.by)
        known = None
        if {*before} == {*now}:
            known = cost_of(costs, [now.index(unit) for unit in before])
        progress(at + 1, len(units))
        things, books = ([id for number in order for id in ids[number]] for ids in _ids(now))
        spaces.append(Arranged(name, tuple(things), tuple(books), known, cost_of(costs, order)))
    return Proposal(tuple(spaces), found.moved, found.left_over)


def _ids(units: Sequence[Unit]) -> tuple[list[tuple[str, ...]], list[tuple[str, ...]]]:
    return [unit.things for unit in units], [unit.books for unit in units]


def _within(progress: Progress, at: int, count: int) -> Progress:
    """Progress of one part in so many."""
    return lambda done, of: progress(at * of + done, count * of)


def _units(
    fit: SpaceFit, plan: ShelfPlan, entries: Mapping[str, int], beside: Mapping[str, Sequence[str]]
) -> list[Unit]:
    """What may be moved in a space: books that are written in the file, and what holds them."""
    clearance = plan.spec.spaces[fit.name].clearance
    written = [id for id in fit.things if written_in(id, plan.plans, entries)]
    return units_in(written, plan.plans, entries, clearance, beside)


def _pinned(units: Sequence[Unit], keep: frozenset[str]) -> tuple[list[Unit], frozenset[int]]:
    """The units of a row with those that are pinned in their places, and these places."""
    slots: dict[int, Unit] = {}
    last = len(units) - 1
    for at, unit in enumerate(units):
        here = unit.at == "here" or bool(keep & set(unit.things))
        wanted = {"first": 0, "last": last}.get(unit.at, at if here else -1)
        if wanted >= 0:
            near = sorted(range(len(units)), key=lambda place: (abs(place - wanted), place))
            slots[next(place for place in near if place not in slots)] = unit
    pinned = set(slots.values())
    rest = iter([unit for unit in units if unit not in pinned])
    return [slots[place] if place in slots else next(rest) for place in range(len(units))], frozenset(slots)


def _by_rule(units: Sequence[Unit], held: frozenset[int], plans: Mapping[str, Plan], rule: Rule) -> tuple[int, ...]:
    free = [number for number in range(len(units)) if number not in held]
    ranked = iter(sorted(free, key=lambda number: _rank(units[number], plans, rule)))
    return tuple(number if number in held else next(ranked) for number in range(len(units)))


def _rank(unit: Unit, plans: Mapping[str, Plan], rule: Rule) -> tuple[float | str | bool, ...]:
    """What a plain order goes by."""
    from colorsys import rgb_to_hls

    plan = plans[unit.books[0]]
    name = plan.name.casefold()
    match rule:
        case "height":
            return (-unit.first.height, name)
        case "thickness":
            return (-unit.first.thickness, name)
        case "colour":
            hue, light, vivid = rgb_to_hls(*(unit.first.tone or (0.5, 0.5, 0.5)))
            return (vivid < 0.1, round(hue, 3), light, name)
        case "author":
            return (not plan.filed_under, plan.filed_under.casefold(), name)
        case "title":
            return (name,)
