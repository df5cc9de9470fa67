"""The surfaces of a room as the page shows them, and what hangs or lies there put elsewhere."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ...ground.problems import CommandError, FieldPath, Problem
from ...ground.units import print_mm
from ...sheets.facsimiles import Facsimile
from ...sheets.flat import Role
from ...shelf.entries import ShelfSpec
from ...shelf.plan import ShelfPlan
from ...shelf.register import Register
from ...shelf.room.room_plan import OnSurface, SurfacePlan
from ...shelf_file.edits.edit import Edit, Remove, SetValue
from ...shelf_file.yaml_tree import Plain
from ...things.draft import Draft
from ...things.faces_seen import facsimile_of_face
from ...things.thing import Plan
from ..replies import Value
from .gallery import Gallery

__all__ = ["hung_elsewhere", "surfaces_shown"]


def surfaces_shown(plan: ShelfPlan, drafts: Mapping[str, Draft], gallery: Gallery) -> Iterator[Value]:
    """Every wall, desk and floor, with what is on it; lengths in mm, from the lower left or the front left corner."""
    for surface in plan.room:
        width, height = surface.entry.size
        yield {
            "name": surface.name,
            "width": width,
            "height": height,
            "surface": "wall" if surface.entry.upright else "level",
            "shown": [
                _shown(one, surface, plan.plans[one.thing], drafts, gallery) for one in surface.things if one.thing
            ],
        }


def _shown(one: OnSurface, surface: SurfacePlan, plan: Plan, drafts: Mapping[str, Draft], gallery: Gallery) -> Value:
    seen = _seen(plan, drafts[one.thing], upright=surface.entry.upright) if one.thing in drafts else None
    picture = gallery.hang_face(drafts[one.thing], seen) if seen else None
    return {"thing": one.thing, "rect": [round(side, 4) for side in one.rect], "lies": False, "picture": picture}


def _seen(plan: Plan, draft: Draft, *, upright: bool) -> Facsimile | None:
    """What is seen of a thing on a wall, or from above: of a book its front, or the pages at which it lies open."""
    if plan.standing and (opened := plan.standing.stance.opened):
        return draft.openings[opened.page // 2]
    return (draft.hanging if upright else draft.lying) or facsimile_of_face(draft.pieces, Role.FRONT)


def hung_elsewhere(
    spec: ShelfSpec, register: Register, thing: str, on: str, left: float, low: float
) -> tuple[list[Edit], FieldPath]:
    """The edits that give a thing a place of its own, and take it out of its group.

    Raises:
        CommandError: the thing or the surface is no longer there.
    """
    field, surface = register.fields.get(thing), spec.surfaces.get(on)
    if field is None or surface is None:
        raise CommandError((Problem(f"{on if field else thing} is no longer there", "load the page again"),))
    place: dict[str, Plain] = {
        "on": on,
        "left": print_mm(left, 1),
        "foot" if surface.upright else "front": print_mm(low, 1),
    }
    return [SetValue((*field, "place"), place), *_out_of_groups(spec, register, thing)], field


def _out_of_groups(spec: ShelfSpec, register: Register, thing: str) -> Iterator[Edit]:
    """A group that is left without a thing goes with it."""
    for name, surface in spec.surfaces.items():
        for number, group in enumerate(surface.groups):
            mine = [at for at, wanted in enumerate(group.things) if thing in register.answering(wanted)]
            path: FieldPath = ("surfaces", name, "groups", number)
            if mine and len(group.things) == 1:
                yield Remove(path if len(surface.groups) > 1 else path[:-1])
            elif mine:
                yield Remove((*path, "things", mine[0]))
