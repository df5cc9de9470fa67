"""What the finished plan has to say: things that do not fit, and what would help."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from ..ground.problems import Problem, Severity
from ..ground.quantities import counted
from ..ground.thin import print_um, thinner
from ..ground.told import rounded_down, rounded_up
from ..ground.units import print_mm
from ..things.draft import Draft
from ..things.standing import Standing
from ..things.thing import Plan
from .fit import NOISE, SpaceFit, StandsOut, Verdict
from .placing.unsteady import lean_findings
from .plan import ShelfPlan
from .space_entry import SpaceEntry

__all__ = ["fit_findings", "how_many", "row_findings", "thing_findings"]

MOST_LIKELY = 2
"""So many remedies are offered; more would be noise."""


def thing_findings(plan: ShelfPlan, drafts: Mapping[str, Draft]) -> Iterator[Problem]:
    """What is wrong with the art, and what each kind of thing has to say of each, and of all together."""
    for id, one in plan.plans.items():
        yield from (problem.about(id) for problem in drafts[id].problems)
        yield from (problem.about(id) for problem in one.family.findings(one, drafts[id], plan))
    for family in plan.register.families:
        yield from family.together(list(plan.plans.values()), list(drafts.values()), plan)


def fit_findings(plan: ShelfPlan) -> Iterator[Problem]:
    """Errors for every space that is over, warnings for those that are tight."""
    for space in plan.spaces:
        yield from (_stands_out(found, space, plan) for found in space.stands_out)
        if space.room_left < -1e-9:
            yield _over(space, plan)
        elif space.verdict is Verdict.TIGHT:
            yield from _tight(space)
        yield from lean_findings(space, plan)


def row_findings(plan: ShelfPlan) -> Iterator[Problem]:
    """Warnings about measured rows of books that do not stand together."""
    for number, row in enumerate(plan.measured_rows):
        places = list(dict.fromkeys(_stands_in(plan.plans[id], plan) for id in row.things))
        if len(places) > 1:
            yield Problem(
                f"the books of this row do not stand together, but in {' and '.join(places)}",
                "measure side by side what stands together, and write a row for each",
                Severity.WARNING,
                field=("measured_rows", number, "books"),
            )


def how_many(things: Sequence[Plan]) -> list[str]:
    """How many there are of each kind, such as 2 books, 1 slipcase and 1 set of labels."""
    kinds = Counter(one.family.noun for one in things)
    return [counted(number, *_one_and_many(noun)) for noun, number in kinds.items()]


def _one_and_many(noun: str) -> tuple[str, str]:
    """What one of a kind is called, and several: of what is several already, such as cards, a set.

    >>> _one_and_many("box"), _one_and_many("labels")
    (('box', ''), ('set of labels', 'sets of labels'))
    """
    if noun.endswith(("s", "music")) and not noun.endswith("ss"):
        return f"set of {noun}", f"sets of {noun}"
    return noun, ""


def _stands_in(one: Plan, plan: ShelfPlan) -> str:
    """Where a thing stands, in words."""
    holder = plan.holder_of(one.id)
    if holder is not None:
        return f"the {holder.family.noun} {holder.name}"
    return f"the space {one.space}" if one.space else "no space"


def _over(space: SpaceFit, plan: ShelfPlan) -> Problem:
    """What is over and by how much; the remedies make up for the likely error too, so that the row then fits."""
    excess = -space.room_left
    needed = excess + space.reserve
    own = [plan.plans[id] for id in space.things]
    row = [*own, *(held for one in own for held in plan.held_by(one))]
    remedies = [
        *_thinner(row, needed),
        *_other_space(own, needed, space, plan),
        *_thinner_stock(own, needed, plan),
    ]
    remedies.append(f"write width: {print_mm(rounded_up(space.width + needed, 2), 2)} for {space.name}")
    first, *rest = remedies
    need = "with its clearance needs" if len(own) == 1 else "with their clearance need"
    return Problem(
        f"{space.name} is over: {' and '.join(how_many(own))} {need} {print_mm(space.used + space.clearance, 2)}, "
        f"the space has {print_mm(space.width, 2)}, {print_mm(excess, 2)} too little",
        "; or ".join([first, *rest[:MOST_LIKELY]]),
        field=("spaces", space.name, "width"),
    )


def _tight(space: SpaceFit) -> Iterator[Problem]:
    """What may not fit: things that nearly touch the board above or stand at the edge, or else the row."""
    for found in space.doubtful:
        limit = "height" if found.side == "tall" else "depth"
        yield Problem(
            f"{found.title} has {print_mm(max(0.0, found.spare), 2)} to spare in the {limit} of {space.name}, "
            f"but may be off by ± {print_mm(found.tolerance, 2)} (chance that all fits: {space.probability:.0%})",
            f"make it smaller, or make the {limit} of the space larger",
            Severity.WARNING,
            field=("spaces", space.name, limit),
        )
    if space.doubtful and space.room_left >= space.reserve - NOISE:
        return
    yield Problem(
        f"{space.name} is tight: {print_mm(space.room_left, 2)} are left, but the thicknesses may be off by "
        f"± {print_mm(space.likely, 2)} (chance to fit: {space.probability:.0%})",
        "measure a pile of each paper, or leave a book out",
        Severity.WARNING,
        field=("spaces", space.name, "width"),
    )


def _stands_out(found: StandsOut, space: SpaceFit, plan: ShelfPlan) -> Problem:
    limits = plan.spec.spaces[space.name]
    limit = limits.height if found.side == "tall" else limits.depth
    by, has = print_mm(found.by, 2), print_mm(limit, 2)
    message = f"{found.title} is {by} too {found.side} for {space.name}, which has {has}"
    if found.thing is None:
        return Problem(message, "put some of its books in another space", field=("spaces", space.name))
    one = plan.plans[found.thing]
    return Problem(message, _where_it_stands(one, found, space, plan), field=("space",), thing=one.id)


def _where_it_stands(one: Plan, found: StandsOut, space: SpaceFit, plan: ShelfPlan) -> str:
    standing = one.standing
    other = next(
        (
            name
            for name, candidate in plan.spec.spaces.items()
            if name != space.name and standing and _under(standing, candidate)
        ),
        None,
    )
    pulled = standing.stance.pulled_out if standing else 0.0
    if found.side == "deep" and pulled >= found.by:
        return f"pull it out {print_mm(rounded_down(pulled - found.by), 1)} at most, or make the space deeper"
    smaller = one.smaller(found.side)
    return f"put it in {other}, where it can stand, or {smaller}" if other else f"{smaller}, or make the space larger"


def _thinner(things: Sequence[Plan], missing: float) -> Iterator[str]:
    """The one thing that can best lose what is missing; the books of a set stay alike."""
    found = [advice for one in things if not one.thing.name.in_a_set and (advice := one.thinner(missing))]
    if found:
        yield max(found, key=lambda advice: advice.worth).text


def _other_space(things: Sequence[Plan], missing: float, space: SpaceFit, plan: ShelfPlan) -> Iterator[str]:
    """A single thing whose move makes up for what is missing, and a space that has room for it; sets stay together."""
    alone = [one for one in things if not one.thing.name.in_a_set]
    standing = [found for one in alone if (found := one.standing) and found.stack is None]
    for one in sorted(standing, key=lambda one: one.across.length):
        if one.across.length + plan.spec.spaces[space.name].clearance < missing:
            continue
        for other in plan.spaces:
            entry = plan.spec.spaces[other.name]
            roomy = other.room_left >= one.across.length + entry.clearance
            if other.name != space.name and roomy and _under(one, entry):
                yield f"put {one.title} in {other.name}, which has {print_mm(other.room_left, 2)} left"
                return


def _under(one: Standing, space: SpaceEntry) -> bool:
    """Whether it has room over and behind it."""
    return space.height >= one.up.length and space.depth >= one.out.length


def _thinner_stock(things: Sequence[Plan], missing: float, plan: ShelfPlan) -> Iterator[str]:
    """How thin the most used stock would have to be."""
    slopes: dict[str, float] = {}
    for one in things:
        if one.standing and one.standing.stack is None:
            for name, slope in one.standing.across.error.slopes.items():
                if name in plan.stocks:  # films of glue have slopes of their own
                    slopes[name] = slopes.get(name, 0.0) + slope
    if not slopes:
        return
    stock, slope = max(slopes.items(), key=lambda item: item[1])
    caliper = plan.stocks[stock].caliper
    thin = caliper - missing / slope
    if thin >= caliper * 0.6:
        # rounded down: a remedy that is rounded the other way would still be too thick
        yield f"take a paper of {print_um(thinner(thin))} or less for {stock}, now {print_um(caliper)}"
