"""On which space each book stands: where its space takes it, or else where it fits, heavy ones low."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations
from typing import NamedTuple

from ...things.standing import Standing
from ..fit import Verdict, fit_space
from ..plan import ShelfPlan
from .units import Unit, units_in

__all__ = ["Housed", "housed"]


class Housed(NamedTuple):
    """The units of each space, the books that change theirs, and those that no space takes."""

    placed: Mapping[str, Sequence[Unit]]
    moved: Mapping[str, str]
    left_over: tuple[str, ...]


def housed(
    plan: ShelfPlan, units: Mapping[str, Sequence[Unit]], entries: Mapping[str, int], keep: frozenset[str]
) -> Housed:
    """Where all stand.

    What stands on a space that takes it stays. Others go where the least room is left over, the widest first, if they
    fit there as surely as the maker wishes; then they change places until the heavier ones stand on the lower space,
    spaces being listed from the top.
    """
    placed, others = {name: list(there) for name, there in units.items()}, _others(plan, units)
    homeless = [(unit, "") for unit in _homeless(plan, entries)]
    for name, there in placed.items():
        homeless += [(unit, name) for unit in _crowded_out(plan, name, there, keep)]
    roving: dict[str, list[Unit]] = {name: [] for name in placed}
    homes: dict[Unit, str] = {}
    left_over: list[str] = []
    for unit, home in sorted(homeless, key=lambda pair: -pair[0].width):
        homes[unit] = home
        takes = [name for name in _by_room(plan, placed) if _takes(plan, name, [*placed[name], unit], others[name])]
        if takes:
            best = home if home in takes else takes[0]
            placed[best].append(unit)
            roving[best].append(unit)
        else:
            left_over += unit.books
            if home:
                placed[home].append(unit)
    _heavy_low(plan, placed, roving, others)
    moved = {
        book: name for name, there in roving.items() for unit in there if homes[unit] != name for book in unit.books
    }
    return Housed(placed, moved, tuple(left_over))


def _crowded_out(plan: ShelfPlan, name: str, there: list[Unit], keep: frozenset[str]) -> list[Unit]:
    """What must leave a space: what stands out, and of the rest as little as makes room; it is taken out."""
    fit = next(fit for fit in plan.spaces if fit.name == name)
    out = {one.thing for one in fit.stands_out}
    room, leaving = fit.room_left, [unit for unit in there if out & set(unit.things) and _may_leave(unit, keep)]
    for unit in leaving:
        there.remove(unit)
        room += unit.width
    while room < 0 and (free := [unit for unit in there if _may_leave(unit, keep)]):
        enough = [unit for unit in free if unit.width >= -room]
        unit = min(enough, key=_width) if enough else max(free, key=_width)
        there.remove(unit)
        leaving.append(unit)
        room += unit.width
    return leaving


def _may_leave(unit: Unit, keep: frozenset[str]) -> bool:
    return not unit.stays and not keep & set(unit.things)


def _width(unit: Unit) -> float:
    return unit.width


def _homeless(plan: ShelfPlan, entries: Mapping[str, int]) -> list[Unit]:
    """What stands nowhere yet, though it could."""
    inside = {id for one in plan.plans.values() for id in one.held}
    nowhere = [id for id in entries if id not in inside and plan.plans[id].space is None and plan.plans[id].standing]
    clearance = max((space.clearance for space in plan.spec.spaces.values()), default=0.0)
    return units_in(nowhere, plan.plans, entries, clearance, {})


def _by_room(plan: ShelfPlan, placed: Mapping[str, Sequence[Unit]]) -> list[str]:
    """The spaces, those with the least room first."""
    return sorted(placed, key=lambda name: plan.spec.spaces[name].width - sum(map(_width, placed[name])))


def _takes(plan: ShelfPlan, name: str, units: Sequence[Unit], others: Sequence[Standing]) -> bool:
    """Whether all fit a space as surely as is wished, with what else stands there."""
    space = plan.spec.spaces[name]
    unit = units[-1]
    if unit.height > space.height or unit.depth > space.depth or sum(map(_width, units)) > space.width:
        return False
    standing = [found for one in units for id in one.things if (found := plan.plans[id].standing)]
    return fit_space(name, space, [*standing, *others], plan.terms.tolerances).verdict is Verdict.FITS


def _others(plan: ShelfPlan, units: Mapping[str, Sequence[Unit]]) -> dict[str, list[Standing]]:
    """What stands on each space and is in no unit."""
    taken = {id for there in units.values() for unit in there for id in unit.things}
    return {
        fit.name: [found for id in fit.things if id not in taken and (found := plan.plans[id].standing)]
        for fit in plan.spaces
    }


def _heavy_low(
    plan: ShelfPlan,
    placed: Mapping[str, list[Unit]],
    roving: Mapping[str, list[Unit]],
    others: Mapping[str, Sequence[Standing]],
) -> None:
    """Exchange what was housed, one against one, as long as a heavier thing stands over a lighter one and both fit."""
    for upper, lower in combinations(placed, 2):
        for high in sorted(roving[upper], key=lambda unit: -unit.volume):
            for low in sorted(roving[lower], key=lambda unit: unit.volume):
                if high.volume <= low.volume:
                    break
                above = [*(unit for unit in placed[upper] if unit is not high), low]
                below = [*(unit for unit in placed[lower] if unit is not low), high]
                if _takes(plan, upper, above, others[upper]) and _takes(plan, lower, below, others[lower]):
                    placed[upper][:], placed[lower][:] = above, below
                    roving[upper][:] = [*(unit for unit in roving[upper] if unit is not high), low]
                    roving[lower][:] = [*(unit for unit in roving[lower] if unit is not low), high]
                    break
