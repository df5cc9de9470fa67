"""What is wrong between the parts of a shelf file: names that stand for nothing, things in two places at once."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import partial

from ..ground.kept.last_time import AFRESH, Keeper
from ..ground.problems import Problem
from ..shelf_file.book_names import UnknownBook
from ..shelf_file.fields.entry import named
from ..shelf_file.unknown_names import unknown_name
from ..things.thing import Thing
from .arranging.pins import pin_problems
from .entries import ShelfSpec
from .register import Register
from .room.room_check import room_problems

__all__ = ["cross_check"]


def cross_check(
    spec: ShelfSpec, register: Register, kept: Keeper = AFRESH, *, all_listed: bool = True
) -> Iterator[Problem]:
    """What is wrong between the parts.

    Unless all lists could be read, a name that nothing goes by may be on one of them, and is not told.
    """
    yield from _row_problems(spec, register, all_listed)
    names = {"stock": tuple(spec.stocks), "space": tuple(spec.spaces), "surface": tuple(spec.surfaces)}
    for id, thing in register.things.items():
        yield from kept.value(
            ("by itself", id), (thing, spec.scale, names), partial(_by_itself, thing, spec.scale, names)
        )
    yield from _given_twice(register)
    yield from _holding_problems(register, all_listed)
    yield from pin_problems(register, all_listed=all_listed)
    yield from room_problems(spec, register, all_listed=all_listed)


def _by_itself(thing: Thing, scale: float, names: Mapping[str, Collection[str]]) -> Sequence[Problem]:
    """What is wrong with a thing whatever the others are; `names` are those it may use."""
    problems = [
        unknown_name(what, name, known, field)
        for what, known in names.items()
        for field, name in named(thing.entry, what)
        if name not in known
    ]
    return [problem.about(thing.id) for problem in (*problems, *thing.checks(scale))]


def _row_problems(spec: ShelfSpec, register: Register, all_listed: bool) -> Iterator[Problem]:
    """Things in measured rows that are not on the list, or are measured twice."""
    seen: set[str] = set()
    for number, row in enumerate(spec.measured_rows):
        for position, name in enumerate(row.books):
            field = ("measured_rows", number, "books", position)
            try:
                found = register.find_counted(name)
            except UnknownBook as unknown:
                if all_listed:
                    yield Problem(unknown.message, unknown.remedy, field=field, value=name)
                continue
            for id in found:
                if id in seen:
                    said = f"{register.things[id].name} is measured twice"
                    yield Problem(said, "leave it in one row", field=field, value=name)
            seen.update(found)


def _given_twice(register: Register) -> Iterator[Problem]:
    """Things that were given the id of another."""
    for id, thing in register.things.items():
        given = dict(thing.entry).get("id")
        if given is not None and given != id:
            said = f"the id {given} is that of {register.things[given].name} already"
            yield Problem(said, "write another one", field=("id",), value=given, thing=id)


def _holding_problems(register: Register, all_listed: bool) -> Iterator[Problem]:
    """What is wrong with what stands in something else: whether each is one thing, and stands there alone."""
    taken: dict[str, Thing] = {}
    for holder in register.things.values():
        for name, field in holder.holds:
            try:
                found = register.find(name)
            except UnknownBook as unknown:
                if all_listed:
                    yield Problem(unknown.message, unknown.remedy, field=field, value=name, thing=holder.id)
                continue
            for id in found:
                for said, remedy in _misplaced(register.things[id], taken.get(id), holder):
                    yield Problem(said, remedy, field=field, thing=holder.id)
                taken.setdefault(id, holder)
        yield from _different_spaces(holder, register)
    yield from (_within_itself(holder) for holder in register.things.values() if _is_within(holder, holder, taken))


def _misplaced(thing: Thing, before: Thing | None, holder: Thing) -> Iterator[tuple[str, str]]:
    """What keeps a thing from standing in a holder, and what to do; `before` is what it stands in already."""
    if before is holder:
        yield f"{thing.name} is listed twice", f"list each {thing.family.noun} once"
    elif before:
        both = f"{_called(before)} and in {_called(holder)}"
        yield f"{thing.name} stands in {both}", "take it out of one of them"
    elif thing.stack:
        said = f"{thing.name} lies in the stack {thing.stack} and stands in {_called(holder)}"
        yield said, f"take its stack away, or take it out of the {holder.family.noun}"
    elif thing.stands_otherwise:
        said = f"{thing.name} has stands: {thing.stands_otherwise} and stands in {_called(holder)}"
        yield said, f"leave one of the two out: what stands in a {holder.family.noun} is upright, spine to the room"


def _called(thing: Thing) -> str:
    return f"the {thing.family.noun} {thing.name}"


def _different_spaces(holder: Thing, register: Register) -> Iterator[Problem]:
    spaces = [register.things[id].space for id in register.held_by(holder)] if holder.space is None else []
    named = list(dict.fromkeys(space for space in spaces if space))
    if len(named) > 1:
        yield Problem(
            f"what stands in {_called(holder)} names different spaces: {', '.join(named)}",
            f"write where the {holder.family.noun} stands, such as space: {named[0]}",
            thing=holder.id,
        )


def _is_within(thing: Thing, around: Thing, taken: Mapping[str, Thing]) -> bool:
    """Whether a thing stands, however deep, in another one."""
    seen: set[str] = set()
    holder = taken.get(thing.id)
    while holder and holder.id not in seen:
        if holder is around:
            return True
        seen.add(holder.id)
        holder = taken.get(holder.id)
    return False


def _within_itself(holder: Thing) -> Problem:
    said = f"{_called(holder)} would stand in itself"
    return Problem(said, "take it out of what it holds", field=holder.holds[0].field[:1], thing=holder.id)
