"""All spaces of a shelf: how everything stands in them, and what is shared out in each among what takes the rest."""

from __future__ import annotations

from collections.abc import Mapping

from ...ground.problems import Problem, gathered
from ...things.terms import Terms
from ...things.thing import Plan
from ..entries import ShelfSpec
from ..fit import SpaceFit, fit_space
from .space import Filler, Filling, fill_space

__all__ = ["fill_spaces", "fit_of", "spared"]


def spared(spec: ShelfSpec, fit: SpaceFit) -> float:
    """What is to be left of the width of a space, in mm."""
    written = spec.spaces[fit.name].to_spare
    return fit.reserve if written is None else written


def fill_spaces(
    spec: ShelfSpec, plans: Mapping[str, Plan], terms: Terms, less: Mapping[str, float], problems: list[Problem]
) -> Filling:
    """How thick what takes the rest of its space becomes, with so much less to share as is said for each space."""
    thicknesses: dict[str, float] = {}
    notes: list[Problem] = []
    held = {id for plan in plans.values() for id in plan.held}
    for name in spec.spaces:
        here = {id: plan for id, plan in plans.items() if plan.space == name and id not in held}
        fillers = [Filler(id, *one.stretch, one.look) for id, one in here.items() if one.stretch is not None]
        if fillers:
            fit = fit_of(name, spec, plans, terms)
            others = [plan.layers[0][1].value for plan in here.values() if plan.stretch is None and plan.layers]
            with gathered(problems):
                to_spare = spared(spec, fit) + less.get(name, 0.0)
                filling = fill_space(fit, fillers, spec.scale, to_spare, others)
                thicknesses |= filling.thicknesses
                notes += filling.notes
    return Filling(thicknesses, tuple(notes))


def fit_of(name: str, spec: ShelfSpec, plans: Mapping[str, Plan], terms: Terms) -> SpaceFit:
    """How everything stands in one space that does not stand in something else.

    What holds other things stands where the first of them is listed.
    """
    held = {id for plan in plans.values() for id in plan.held}
    listed = {id: number for number, id in enumerate(plans)}
    own = [plan for id, plan in plans.items() if plan.space == name and id not in held]
    own.sort(key=lambda plan: _listed_first(plan, plans, listed))
    return fit_space(name, spec.spaces[name], [plan.standing for plan in own if plan.standing], terms.tolerances)


def _listed_first(plan: Plan, plans: Mapping[str, Plan], listed: Mapping[str, int]) -> int:
    """Where the first of what a thing holds is listed, or it itself if it holds nothing."""
    inside = [_listed_first(plans[id], plans, listed) for id in plan.held if id in plans]
    return min(inside, default=listed[plan.id])
