"""How many books an entry invents that is to take as many as its space does."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from ...ground.problems import Problem, ShelfFileError
from ...shelf_file.reading import ShelfFile
from ...things.thing import Plan
from ..entries import ShelfSpec
from ..plan import ShelfPlan

__all__ = ["as_many_as_it_takes"]

MIDDLING_IN_LIFE = 50.0
"""A block of middling thickness in life, in mm: about 4 mm at 1:12 (common practice)."""

MOST = 300


def as_many_as_it_takes(shelf: ShelfFile[ShelfSpec], plan: ShelfPlan) -> Mapping[int, int]:
    """The count for each entry that leaves it open, by its number; `plan` has one book of each.

    Raises:
        ShelfFileError: such an entry stands in no space.
    """
    by_place = {shelf.tree.place_of(field): plan.plans[id] for id, field in plan.register.fields.items()}
    first = {number: by_place[place] for number, place in shelf.open_walls.items()}
    homeless = [one for one in first.values() if not one.space]
    if homeless:
        raise ShelfFileError(shelf.located([_homeless(one) for one in homeless], plan.register.fields))
    sharing = Counter(one.space for one in first.values())
    return {number: _count(one, plan, sharing[one.space]) for number, one in first.items()}


def _homeless(one: Plan) -> Problem:
    said = "this entry invents as many books as fit, but names no space for them"
    return Problem(said, "add space: with a name from spaces, or a count", thing=one.id, by_itself=True)


def _count(one: Plan, plan: ShelfPlan, sharing: int) -> int:
    """So many of middling thickness as go where one stands now, with what is left beside it."""
    fit = next(space for space in plan.spaces if space.name == one.space)
    clearance, standing = plan.spec.spaces[fit.name].clearance, one.standing
    # the bounds that were written: those of the plan are closed on what it became
    stretch = plan.register.things[one.id].plan(plan.terms, ()).stretch
    assert standing  # what has a space stands there
    block = one.layers[0][1].value
    middling = block
    if stretch:
        most = stretch.at_most
        middling = (stretch.at_least + most) / 2 if most else max(stretch.at_least, MIDDLING_IN_LIFE / plan.terms.scale)
    around = standing.thickness - block + clearance
    room = (max(0.0, fit.room_left - fit.likely) + block + around) / sharing
    return min(MOST, max(1, round(room / (middling + around))))
