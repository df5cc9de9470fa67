"""The whole shelf worked out: everything that is made, every space. Arithmetic only, nothing is drawn."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from ..ground.demands import demand, exhausted, summed
from ..ground.kept.last_time import AFRESH, Keeper
from ..ground.problems import Problem, ShelfFileError, gathered
from ..ground.told import in_units
from ..paper.stock import Stock, make_stock
from ..sheets.piece import Piece
from ..shelf_file.fields.entry import named
from ..things.terms import Terms
from ..things.thing import Plan, Thing
from ..typesetting.stand_ins import printable
from .entries import ShelfSpec
from .filling.spaces import fill_spaces, fit_of, spared
from .fit import SpaceFit
from .measured_rows import MeasuredRow, as_measured, measured_row
from .register import Register
from .room.room_plan import SurfacePlan, surface_plan

__all__ = ["ShelfPlan", "plan_shelf"]

MOST_ROUNDS = 8
"""So often a space is filled, each time with what was learnt from the last."""

A_HAIR = 0.005
"""So much more is left where a row came out too full, in mm."""

NEARLY_FULL = 0.05
"""A space of which less is left over than this, in mm, is not filled again."""

NO_BREAK = "\N{NO-BREAK SPACE}"
"""Within what stays of a label when it is shortened."""


@dataclass(frozen=True, slots=True)
class ShelfPlan:
    """Everything that is made, by id, and how it stands on the shelf."""

    spec: ShelfSpec
    terms: Terms
    register: Register
    plans: Mapping[str, Plan]
    spaces: tuple[SpaceFit, ...]
    measured_rows: tuple[MeasuredRow, ...] = ()
    room: tuple[SurfacePlan, ...] = ()
    notes: tuple[Problem, ...] = ()

    @property
    def stocks(self) -> Mapping[str, Stock]:
        """All stocks by name."""
        return self.terms.stocks

    @property
    def printed_already(self) -> frozenset[str]:
        """The ids of what is ticked off as printed."""
        return frozenset(id for id, plan in self.plans.items() if "printed" in plan.thing.done)

    def held_by(self, plan: Plan) -> list[Plan]:
        """The plans of what stands in something."""
        return [self.plans[id] for id in plan.held]

    def holder_of(self, thing: str) -> Plan | None:
        """What a thing stands in; None if it stands by itself."""
        return next((plan for plan in self.plans.values() if thing in plan.held), None)

    def number_of(self, thing: str) -> int | None:
        """Which on its list a thing is, from 1; None if it is on none that is counted."""
        return self.register.number_of(thing)

    def called(self, things: Sequence[str]) -> str:
        """How some things are called in a list of the shelf file, so that they are found again."""
        return self.register.called(things)

    def labelled(self, piece: Piece) -> Piece:
        """A piece as it is to be printed: with the number of its thing in the label."""
        (name, part), number = piece.label, self.number_of(piece.owner)
        if number is None:
            return piece
        noun = self.plans[piece.owner].family.noun
        return replace(piece, label=(f"{number}. {name}" if name else f"{noun}{NO_BREAK}{number}", part))

    def printed(self, thing: str) -> str:
        """The number of a thing, if it has one, and its name; the number alone, if no typeface here has the letters."""
        plan, number = self.plans[thing], self.number_of(thing)
        if number is None:
            return plan.name
        return f"{number}. {plan.name}" if printable(plan.name) else f"{plan.family.noun} {number}"


def plan_shelf(spec: ShelfSpec, register: Register, kept: Keeper = AFRESH) -> ShelfPlan:
    """Work out everything: first what has a thickness of its own, then what fills the spaces.

    What was kept of the same things on the same terms is taken as it is.

    Raises:
        ShelfFileError: with every stock and every thing that cannot be made.
    """
    problems: list[Problem] = []
    written = (spec.shelf, spec.scale, spec.printer, spec.stocks, spec.viewing_distance, spec.glue_tolerances)
    terms, spoilt = kept.value("terms", written, partial(_terms, spec))
    problems += spoilt
    things = _settled(register, terms, problems, kept)
    rows = tuple(measured_row(row, register) for row in spec.measured_rows)
    plans = _plan_all(things, register, terms, rows, problems, kept)
    _refuse_if_any(problems)
    filled, said = _filled(spec, things, plans, terms, problems, kept)
    plans |= filled
    _refuse_if_any(problems)
    spaces = tuple(fit_of(name, spec, plans, terms) for name in spec.spaces)
    notes = [*said]
    notes += [note.about(id) for id in register.things for note in plans[id].notes]
    dressed = _dressed(plans, register)
    room = tuple(
        surface_plan(name, entry, register, dressed, spec.spaces, spec.scale) for name, entry in spec.surfaces.items()
    )
    return ShelfPlan(spec, terms, register, dressed, spaces, rows, room, tuple(notes))


def _refuse_if_any(problems: Sequence[Problem]) -> None:
    if problems:
        raise ShelfFileError(problems)


def _terms(spec: ShelfSpec) -> tuple[Terms, Sequence[Problem]]:
    """What the shelf gives to its things, and what is wrong with stocks that cannot be made."""
    problems: list[Problem] = []
    stocks: dict[str, Stock] = {}
    for name, entry in spec.stocks.items():
        with gathered(problems):
            stocks[name] = make_stock(name, entry, spec.printer)
    terms = Terms(spec.shelf, spec.scale, spec.printer, stocks, spec.viewing_distance, spec.glue_tolerances)
    return terms, problems


def _settled(register: Register, terms: Terms, problems: list[Problem], kept: Keeper) -> dict[str, Thing]:
    """The things of which all stocks could be made, with what they left open settled."""
    settled: dict[str, Thing] = {}
    for id, thing in register.things.items():
        found = kept.value(("settled", id), (thing, terms), partial(_settled_thing, thing, terms))
        if found:
            settled[id], said = found
            problems += said
    return settled


def _settled_thing(thing: Thing, terms: Terms) -> tuple[Thing, Sequence[Problem]] | None:
    """A thing with what it left open settled; None if one of its stocks could not be made."""
    if not {name for _, name in named(thing.entry, "stock")} <= terms.stocks.keys():
        return None
    settled, said = thing.settled(terms)
    return settled, [problem.about(thing.id) for problem in said]


def _plan_all(
    things: Mapping[str, Thing],
    register: Register,
    terms: Terms,
    rows: Iterable[MeasuredRow],
    problems: list[Problem],
    kept: Keeper,
) -> dict[str, Plan]:
    """The plans of all things, in the order of the file: first of what holds nothing, then what is around it."""
    plans = _planned("plan", {id: thing for id, thing in things.items() if not thing.holds}, terms, {}, problems, kept)
    plans = as_measured(plans, rows)
    waiting = {id: register.held_by(thing) for id, thing in things.items() if thing.holds}
    for id, held in waiting.items():
        problems += (_fills_in_vain(plans[one], things[id]) for one in held if one in plans and _must_fill(plans[one]))
    while ready := {id: held for id, held in waiting.items() if plans.keys() >= set(held)}:
        around = {id: [plans[one] for one in held] for id, held in ready.items()}
        plans |= _planned("plan", {id: things[id] for id in ready}, terms, around, problems, kept)
        waiting = {id: held for id, held in waiting.items() if id not in ready}
    return {id: plans[id] for id in things if id in plans}


def _planned(
    step: str,
    things: Mapping[str, Thing],
    terms: Terms,
    held: Mapping[str, Sequence[Plan]],
    problems: list[Problem],
    kept: Keeper,
) -> dict[str, Plan]:
    """The things that can be made; what is wrong with others is added to the problems."""
    plans: dict[str, Plan] = {}
    for id, thing in things.items():
        try:
            inside = tuple(held.get(id, ()))
            plans[id] = kept.value((step, id), (thing, terms, inside), partial(thing.plan, terms, inside))
            demand("pages", sum(len(flat.panels) for flat in plans[id].flats), name=plans[id].name)
        except ShelfFileError as refusal:
            problems += (problem.about(id) for problem in refusal.problems)
        if exhausted():
            break
    return plans


def _must_fill(plan: Plan) -> bool:
    """Whether nothing but what is left on its space says how thick it is."""
    return plan.stretch is not None and plan.stretch.about is None


def _fills_in_vain(plan: Plan, holder: Thing) -> Problem:
    assert plan.stretch  # asked only of what is to fill
    noun = holder.family.noun
    return Problem(
        f"{plan.name} is to fill its space, but it stands in the {noun} {holder.name}",
        f"write a thickness such as {in_units('4 mm', '5/32 in')}, or take it out of the {noun}",
        field=(*plan.stretch.field, "thickness"),
        thing=plan.id,
    )


def _filled(
    spec: ShelfSpec,
    things: Mapping[str, Thing],
    plans: Mapping[str, Plan],
    terms: Terms,
    problems: list[Problem],
    kept: Keeper,
) -> tuple[Mapping[str, Plan], tuple[Problem, ...]]:
    """The plans of what takes the rest of its space, and what there is to say.

    Layers that are added bring errors of their own: where the row is then less sure to fit, or surer than it must be,
    it is filled once more with as much less, or more. What leaves least of all that fit is taken.
    """
    less: dict[str, float] = {}
    best: tuple[float, Mapping[str, Plan], tuple[Problem, ...]] | None = None
    for _ in range(MOST_ROUNDS):
        filling = fill_spaces(spec, plans, terms, less, problems)
        settled = {id: things[id].of_thickness(thick) for id, thick in filling.thicknesses.items()}
        with summed():  # what fills is planned again and again
            found = _planned("filled", settled, terms, {}, problems, kept)
        if problems:
            break
        fits = [fit_of(name, spec, {**plans, **found}, terms) for name in {plans[id].space: 0 for id in found} if name]
        short = {fit.name: spared(spec, fit) - fit.room_left for fit in fits}
        left = -sum(short.values())
        if all(by <= 1e-6 for by in short.values()) and (best is None or left < best[0]):
            best = (left, found, filling.notes)
        if best and (not less or left < NEARLY_FULL):
            break
        # a little more than is missing, for what is taken away takes its errors along: nearer each time, from one side
        less = {name: less.get(name, 0.0) + by + (A_HAIR if by > 1e-6 else 0.0) for name, by in short.items()}
    return best[1:] if best else (found, filling.notes)


def _dressed(plans: Mapping[str, Plan], register: Register) -> dict[str, Plan]:
    """The plans with what things of one kind settle among themselves."""
    dressed: Sequence[Plan] = list(plans.values())
    for family in register.families:
        dressed = family.dressed(dressed)
    return {plan.id: plan for plan in dressed}
