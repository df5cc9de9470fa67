"""Pins: which things stay beside one another, and what is wrong with them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ...ground.problems import Problem
from ...shelf_file.book_names import UnknownBook
from ..register import Register

__all__ = ["pin_problems", "pinned_together"]

FIELD = ("pinned",)


def pinned_together(register: Register) -> Mapping[str, tuple[str, ...]]:
    """The things that each thing is to stand beside, either way."""
    beside: dict[str, list[str]] = {}
    for id, thing in register.things.items():
        for name in thing.pinned.beside:
            for other in _found(register, name):
                if other != id and other not in beside.setdefault(id, []):
                    beside[id].append(other)
                    beside.setdefault(other, []).append(id)
    return {id: tuple(others) for id, others in beside.items()}


def _found(register: Register, name: str) -> tuple[str, ...]:
    try:
        return register.find(name, one=True)
    except UnknownBook:
        return ()


def pin_problems(register: Register, *, all_listed: bool) -> Iterator[Problem]:
    """Names that nothing goes by, and pins that contradict each other."""
    at: dict[tuple[str, str], str] = {}
    for id, thing in register.things.items():
        yield from _names(id, register, all_listed)
        end = thing.pinned.at
        if thing.pinned.stays and thing.space is None:
            said = f"{thing.name} is pinned {end or 'in its space'}, but stands in no space"
            yield Problem(said, "add space: with a name from spaces", field=FIELD, thing=id)
        elif end in ("first", "last") and thing.space:
            before = at.setdefault((thing.space, end), id)
            if before != id:
                both = f"{register.things[before].name} and {thing.name} are both pinned {end} in {thing.space}"
                yield Problem(both, "leave that to one of them", field=FIELD, thing=id, by_itself=True)
    beside = pinned_together(register)
    for id, others in beside.items():
        thing = register.things[id]
        if len(others) > 2:
            names = ", ".join(str(register.things[other].name) for other in others)
            said = f"{thing.name} is to stand beside {len(others)} others: {names}"
            yield Problem(said, "only two can stand beside a book", field=FIELD, thing=id, by_itself=True)
        elif len(others) == 2 and thing.pinned.at in ("first", "last"):
            said = f"{thing.name} is pinned {thing.pinned.at}, and two others are to stand beside it"
            yield Problem(said, "take one of these pins away", field=FIELD, thing=id, by_itself=True)
    yield from _rings(beside, register)


def _names(id: str, register: Register, all_listed: bool) -> Iterator[Problem]:
    thing = register.things[id]
    for name in thing.pinned.beside:
        try:
            (other,) = register.find(name, one=True)
        except UnknownBook as unknown:
            if all_listed:
                yield Problem(unknown.message, unknown.remedy, field=FIELD, value=name, thing=id)
            continue
        there = register.things[other].space
        if other == id:
            yield Problem(f"{thing.name} is pinned beside itself", "write another title", field=FIELD, thing=id)
        elif there != thing.space:
            said = f"{thing.name} is pinned beside {register.things[other].name}, which stands in {there or 'no space'}"
            yield Problem(said, "write the same space for both", field=FIELD, thing=id, by_itself=True)


def _rings(beside: Mapping[str, tuple[str, ...]], register: Register) -> Iterator[Problem]:
    """Things that are to stand beside one another all around."""
    seen: set[str] = set()
    for id in beside:
        if id in seen:
            continue
        ring = [id]
        for one in ring:
            ring += [other for other in beside[one] if other not in ring]
        seen.update(ring)
        if len(ring) > 2 and all(len(beside[one]) == 2 for one in ring):
            names = ", ".join(str(register.things[one].name) for one in ring)
            said = f"{names} are pinned beside one another all around: a row has two ends"
            yield Problem(said, "take one of these pins away", field=FIELD, thing=ring[-1], by_itself=True)
