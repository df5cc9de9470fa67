"""The shelf as the page shows it: spaces with all that stands in them, gauges of room, and what is wrong where."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from ...ground.geometry import Rect
from ...ground.problems import Problem
from ...ground.told import Units
from ...shelf.fit import SpaceFit
from ...shelf.plan import ShelfPlan
from ...things.draft import Draft
from ...things.thing import Plan
from ...writers.shelf_front import Front, fronts
from ..replies import Value
from .gallery import Gallery
from .links import problem_told
from .placing import ANYWHERE, Placing
from .proposals import offered

__all__ = ["NOTHING_YET", "shelf_shown"]

NOTHING_YET: Value = {"spaces": [], "things": {}, "problems": [], "complete": True}
"""What is shown of a shelf that could not be read once."""


def shelf_shown(
    path: Path,
    plan: ShelfPlan,
    drafts: Mapping[str, Draft],
    problems: Iterable[Problem] | None,
    placed: Mapping[str, Placing],
    gallery: Gallery,
) -> Value:
    """A shelf of which all things are drawn that have drafts; `problems` is None as long as they are not known.

    `placed` says how things may be moved. Lengths are in mm; rects are x, y, width, height from the lower left.
    """
    seen = {front.name: front for front in fronts(plan, drafts)}
    spaces = [_space(fit, plan, seen.pop(fit.name, None), gallery) for fit in plan.spaces]
    spaces += [_stray(front, gallery) for front in seen.values()]
    return {
        "shelf": plan.spec.shelf,
        "scale": plan.spec.scale,
        "inches": plan.spec.told is Units.INCHES,
        "file": path.name,
        "spaces": spaces,
        "things": {id: _thing(one, plan, placed.get(id, ANYWHERE)) for id, one in plan.plans.items()},
        "problems": [problem_told(problem) for problem in problems or ()],
        "offers": offered(plan.spec.stocks, plan.spec.arrange),
        "complete": problems is not None,
    }


def _space(fit: SpaceFit, plan: ShelfPlan, front: Front | None, gallery: Gallery) -> Value:
    space = plan.spec.spaces[fit.name]
    return {
        "name": fit.name,
        "width": space.width,
        "height": space.height,
        "depth": space.depth,
        "used": fit.used,
        "clearance": fit.clearance,
        "room_left": fit.room_left,
        "likely": fit.likely,
        "one_way": fit.all_one_way,
        "sure": fit.probability,
        "verdict": str(fit.verdict),
        "stands_out": [{"title": one.title, "side": one.side, "by": one.by} for one in fit.stands_out],
        "shown": list(_shown(front, gallery)) if front else [],
    }


def _stray(front: Front, gallery: Gallery) -> Value:
    """What stands nowhere, as if on a board of its own."""
    return {"name": "", "width": front.width, "height": front.height, "shown": list(_shown(front, gallery))}


def _shown(front: Front, gallery: Gallery) -> Iterator[Value]:
    for place in front.places:
        for one in place:
            yield {"thing": one.thing, "rect": _rect(one.box), "lies": one.lies, "picture": gallery.hang_shown(one)}


def _rect(rect: Rect) -> list[float]:
    return [round(value, 4) for value in rect]


def _thing(one: Plan, plan: ShelfPlan, placed: Placing) -> Value:
    standing, thing = one.standing, one.thing
    return {
        "name": one.name,
        "noun": one.family.noun,
        "number": plan.number_of(one.id),
        "space": thing.space,
        "stack": thing.stack,
        "held": list(one.held),
        "thick": standing.thickness if standing else None,
        "high": standing.height if standing else None,
        "fixed": placed.fixed,
        "list": placed.list,
        "first": placed.first,
    }
