"""Where everything is on the surfaces of a room, and what cannot be there; arithmetic only, lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from ...ground.geometry import Point, Rect, Size
from ...ground.problems import FieldPath, Problem, Severity
from ...ground.units import print_mm
from ...things.place import LEVEL, UPRIGHT, PlaceEntry
from ...things.thing import Plan
from ...things.wording import with_article
from ..register import Register
from ..space_entry import SpaceEntry
from .surface_entry import RoomSurfaceEntry

__all__ = ["OnSurface", "SurfacePlan", "surface_plan"]

FAR = 0.05
"""A group is where it was asked for if its centre is no further away than this, in mm."""

TOUCH = 1e-6
"""Things that share no more than this, in mm, touch."""


@dataclass(frozen=True, slots=True)
class OnSurface:
    """What is where on a surface, from its lower left corner, or of what is level from its front left one.

    `thing` is its id; of a space of the shelf it is empty. `field` says where in the shelf file, from its entry if it
    is a thing that has a place of its own, that it is there. `hook` is where it hangs.
    """

    name: str
    rect: Rect
    field: FieldPath
    thing: str = ""
    group: bool = False
    hook: Point | None = None


@dataclass(frozen=True, slots=True)
class SurfacePlan:
    """A wall, a desk or a floor with all that is on it, from left to right, and what is wrong there."""

    name: str
    entry: RoomSurfaceEntry
    things: tuple[OnSurface, ...]
    faults: tuple[Problem, ...]


def surface_plan(
    name: str,
    entry: RoomSurfaceEntry,
    register: Register,
    plans: Mapping[str, Plan],
    spaces: Mapping[str, SpaceEntry],
    scale: float,
) -> SurfacePlan:
    """Put everything on a surface that is to be there."""
    faults: list[Problem] = []
    found = [*_spaces(name, entry, spaces, faults), *_measured(name, entry, plans, faults)]
    for number, group in enumerate(entry.groups):
        together = [plans[id] for wanted in group.things for id in register.answering(wanted)]
        here = [*_grouped(name, number, entry, together, scale, faults)]
        faults += _moved_away(name, number, group.centre, here)
        found += here
    faults += _off_the_edge(name, entry, found)
    faults += _overlaps(name, found)
    return SurfacePlan(name, entry, tuple(sorted(found, key=lambda one: (one.rect.x, one.rect.y))), tuple(faults))


def _size_on(plan: Plan, entry: RoomSurfaceEntry) -> Size | None:
    return plan.on_wall if entry.upright else plan.from_above


def _hung(name: str, rect: Rect, field: FieldPath, entry: RoomSurfaceEntry, thing: str, *, group: bool) -> OnSurface:
    """A thing in its place, and on a wall with its hook: the middle of its width, some way below its upper edge."""
    drop = min(entry.hook, rect.height / 2)
    hook = Point(rect.centre.x, rect.top - drop) if entry.upright else None
    return OnSurface(name, rect, field, thing, group, hook)


def _spaces(
    name: str, entry: RoomSurfaceEntry, spaces: Mapping[str, SpaceEntry], faults: list[Problem]
) -> Iterator[OnSurface]:
    """The spaces of the shelf that are before a wall, or on a desk."""
    for called, space in spaces.items():
        if space.place and space.place.on == name:
            size = Size(space.width, space.height if entry.upright else space.depth)
            field = ("spaces", called, "place")
            if wrong := _wrong_way(name, entry, space.place, field):
                faults.append(wrong)
            else:
                yield OnSurface(called, space.place.rect(size, entry.size), field)


def _measured(
    name: str, entry: RoomSurfaceEntry, plans: Mapping[str, Plan], faults: list[Problem]
) -> Iterator[OnSurface]:
    """The things that say where they are."""
    for id, plan in plans.items():
        place = plan.thing.place
        if place is None or place.on != name:
            continue
        size = _size_on(plan, entry)
        if size is None:
            faults.append(_cannot_be_there(plan, name, entry, ("place", "on")).about(id))
        elif wrong := _wrong_way(name, entry, place, ("place",)):
            faults.append(wrong.about(id))
        else:
            yield _hung(plan.name, place.rect(size, entry.size), ("place",), entry, id, group=False)


def _wrong_way(name: str, entry: RoomSurfaceEntry, place: PlaceEntry, field: FieldPath) -> Problem | None:
    """A measure from the floor on what is level, or from the front edge on a wall."""
    wrong, right = (LEVEL, UPRIGHT) if entry.upright else (UPRIGHT, LEVEL)
    if place.across not in wrong:
        return None
    said = "a wall, measured from foot or top" if entry.upright else "level, measured from front or back"
    remedy = f"write {right[wrong.index(place.across)]} or centre"
    return Problem(f"{name} is {said}", remedy, field=(*field, place.across))


def _cannot_be_there(plan: Plan, name: str, entry: RoomSurfaceEntry, field: FieldPath) -> Problem:
    how, where = ("hang on a wall", "lay it on a desk") if entry.upright else ("lie on what is level", "hang it up")
    return Problem(f"{plan.name}, {with_article(plan.family.noun)}, does not {how} as {name} is", where, field=field)


def _grouped(
    name: str,
    number: int,
    entry: RoomSurfaceEntry,
    things: Sequence[Plan],
    scale: float,
    faults: list[Problem],
) -> Iterator[OnSurface]:
    """The things of a group, in its pattern; what goes nowhere is told."""
    field: FieldPath = ("surfaces", name, "groups", number, "things")
    sized = [(plan, size) for plan in things if (size := _size_on(plan, entry))]
    faults += (_cannot_be_there(plan, name, entry, field) for plan in things if not _size_on(plan, entry))
    stretch = entry.groups[number].stretch(entry.size)
    if stretch.width <= 0 or stretch.right > entry.size.width + TOUCH:
        faults.append(_no_stretch(name, entry, number))
        return
    places = entry.places(entry.groups[number], [size for _, size in sized], scale) if sized else ()
    for (plan, _), rect in zip(sized, places, strict=True):
        if rect is None:
            said = f"there is no room for {plan.name} in this group"
            faults.append(Problem(said, "make the gap smaller, or take something out", field=field))
        else:
            yield _hung(plan.name, rect, field, entry, plan.id, group=True)


def _no_stretch(name: str, entry: RoomSurfaceEntry, number: int) -> Problem:
    """A stretch that ends before it begins, or beyond the surface."""
    group, width = entry.groups[number], print_mm(entry.size.width)
    start, end = print_mm(group.start or 0.0), width if group.end is None else print_mm(group.end)
    return Problem(
        f"the stretch of this group goes from {start} to {end}, and {name} is {width} wide",
        f"write a start and a later end between 0 and {width}",
        field=("surfaces", name, "groups", number, "start" if group.end is None else "end"),
    )


def _moved_away(name: str, number: int, wanted: float | None, found: Sequence[OnSurface]) -> Iterator[Problem]:
    """A group whose centre could not be where it was asked for, without hanging over an edge."""
    if wanted is None or not found:
        return
    centre = Rect.around([corner for one in found for corner in one.rect.corners]).centre.y
    if abs(centre - wanted) > FAR:
        yield Problem(
            f"this group has its centre at {print_mm(centre, 1)}, not at {print_mm(wanted)}, or it would go over the "
            f"edge of {name}",
            f"write {print_mm(centre, 1)}, or a smaller gap",
            Severity.WARNING,
            field=("surfaces", name, "groups", number, "centre"),
        )


def _off_the_edge(name: str, entry: RoomSurfaceEntry, found: Sequence[OnSurface]) -> Iterator[Problem]:
    whole = Rect(0, 0, *entry.size)
    edges = ("left", "right", "foot", "top") if entry.upright else ("left", "right", "front", "back")
    for one in found:
        over = (-one.rect.x, one.rect.right - whole.right, -one.rect.y, one.rect.top - whole.top)
        by, edge = max(zip(over, edges, strict=True))
        if by > TOUCH:
            yield Problem(
                f"{one.name} is {print_mm(by, 2)} off the {edge} of {name}",
                "make the gap smaller, or give the group a longer stretch"
                if one.group
                else f"move it {print_mm(by, 2)}",
                field=one.field,
                thing="" if one.group else one.thing,
            )


def _overlaps(name: str, found: Sequence[OnSurface]) -> Iterator[Problem]:
    """Every two that lie over one another, told of the one that is written later."""
    for first, second in combinations(found, 2):
        if first.rect.overlaps(second.rect, TOUCH):
            aside = min(first.rect.right, second.rect.right) - max(first.rect.x, second.rect.x)
            above = min(first.rect.top, second.rect.top) - max(first.rect.y, second.rect.y)
            yield Problem(
                f"{second.name} overlaps {first.name} on {name} by {print_mm(aside, 2)} × {print_mm(above, 2)}",
                f"move it {print_mm(min(aside, above), 2)} or more",
                field=second.field,
                thing="" if second.group else second.thing,
            )
