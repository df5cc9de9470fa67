"""What is wrong with the names in a room: things in two places at once, surfaces that nobody described."""

from __future__ import annotations

from collections.abc import Iterator

from ...ground.problems import FieldPath, Problem
from ...shelf_file.book_names import UnknownBook
from ...shelf_file.unknown_names import unknown_name
from ...things.thing import Thing
from ..entries import ShelfSpec
from ..register import Register

__all__ = ["room_problems"]


def room_problems(spec: ShelfSpec, register: Register, *, all_listed: bool) -> Iterator[Problem]:
    """What is wrong; unless all lists could be read, a name that nothing goes by may be on one of them."""
    for name, space in spec.spaces.items():
        if space.place and space.place.on not in spec.surfaces:
            yield unknown_name("surface", space.place.on, spec.surfaces, ("spaces", name, "place", "on"))
    within = {id: thing for thing in register.things.values() for id in register.held_by(thing)}
    taken: dict[str, str] = {}
    for id, thing in register.things.items():
        if thing.place:
            taken[id] = f"has a place on {thing.place.on} already"
            yield from (problem.about(id) for problem in _placed_twice(thing, within.get(id)))
    for field, wanted in _grouped(spec):
        try:
            found = register.find(wanted)
        except UnknownBook as unknown:
            if all_listed:
                yield Problem(unknown.message, unknown.remedy, field=field, value=wanted)
            continue
        for id in found:
            yield from _in_group_too(register.things[id], within.get(id), taken.get(id), field)
            taken[id] = f"is in a group on {field[1]} already"


def _grouped(spec: ShelfSpec) -> Iterator[tuple[FieldPath, str]]:
    """Every name in a group, and its field."""
    for name, surface in spec.surfaces.items():
        for number, group in enumerate(surface.groups):
            for position, wanted in enumerate(group.things):
                yield ("surfaces", name, "groups", number, "things", position), wanted


def _placed_twice(thing: Thing, holder: Thing | None) -> Iterator[Problem]:
    """A place for what stands in a space, or lies in something, as well."""
    if thing.space:
        said = f"stands in the space {thing.space} and has a place on {thing.place.on if thing.place else ''}"
        yield Problem(f"{thing.name} {said}", "leave one of them out", field=("place",))
    if holder:
        yield Problem(
            f"{thing.name} is in the {holder.family.noun} {holder.name} and has a place of its own",
            f"leave its place out, or take it out of the {holder.family.noun}",
            field=("place",),
        )


def _in_group_too(thing: Thing, holder: Thing | None, taken: str | None, field: FieldPath) -> Iterator[Problem]:
    if holder:
        taken = f"is in the {holder.family.noun} {holder.name}"
    elif thing.space:
        taken = f"stands in the space {thing.space}"
    if taken:
        yield Problem(f"{thing.name} {taken}", "take it out of this group, or leave the other out", field=field)
