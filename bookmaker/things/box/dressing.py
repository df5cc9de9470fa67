"""The nets of a box dressed: every side upright as who turns the box sees it, glue flaps left bare."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.art import NOTHING, Filled, Group, Pictured
from ...ground.drawing import WHITE, Art
from ...ground.geometry import Path, Rect, Size, Transform
from ...ground.outlines import spread
from ...ground.pictures import covering
from ...ground.problems import Problem, Severity, within
from ...sheets.flat import Role
from ..book.designs.artwork import on_ground, picture_problems
from ..book.designs.design import Words
from ..surface import PLAIN_SURFACE, Surface, SurfaceEntry, dress_surface
from .net import BLEED, Net, NetPanel
from .plan import BoxPlan, DressedFaces

__all__ = ["dress_net", "unseen_sides", "upright"]

SIDES = (Role.FRONT, Role.BACK, Role.LEFT, Role.RIGHT, Role.TOP, Role.BOTTOM)


def dress_net(plan: BoxPlan, net: Net) -> tuple[Art, tuple[Problem, ...]]:
    """The art of a net in the coordinates of its flat, and what is wrong with it, by the keys of the box."""
    written = plan.entry.faces_of(net.name)
    if written is None:
        return NOTHING, ()
    key = next((key for key, faces in plan.thing.faces.items() if faces.entry == written), "faces")
    faces = plan.thing.faces.get(key, DressedFaces(written, {}))
    if faces.entry != written:  # sides in the colour of others, which show nothing else
        faces = DressedFaces(written, {})
    layers = list(_ground(net, faces))
    problems: list[Problem] = []
    if faces.picture:
        box = Rect.around(point for panel in net.panels for point in panel.outline)
        problems += picture_problems(faces.picture, box.size, "picture")
    words = Words(plan.name)
    for panel in _sides_first(net):
        surface = faces.sides.get(panel.role.value, PLAIN_SURFACE)
        if surface.entry != PLAIN_SURFACE.entry and not panel.plain:
            art, found = _side(panel, net, surface, faces, words)
            layers.append(art)
            problems += within((panel.role.value,), found)
        size, to_net = upright(panel)
        if over := tuple(plan.entry.written_on(panel.name, size)):
            layers.append(Group(over, to_net))
    corner = net.corner
    art = Group(tuple(layers), Transform.move(-corner.x, -corner.y)) if layers else NOTHING
    return art, tuple(within((key,), problems))


def unseen_sides(plan: BoxPlan) -> Iterator[Problem]:
    """ThreeSides that were written and are on no net."""
    for key, faces in plan.thing.faces.items():
        nets = [net for net in plan.nets if plan.entry.faces_of(net.name) == faces.entry]
        has = {panel.role.value for net in nets for panel in net.panels}
        for name, written in faces.entry:
            if isinstance(written, SurfaceEntry) and written != SurfaceEntry() and name not in has:
                whose = nets[0].name if nets else plan.entry.kind
                yield Problem(
                    f"the {whose} has no {name} side: what is written for it is not seen",
                    "leave it out",
                    Severity.NOTE,
                    field=(key, name),
                )


def _ground(net: Net, faces: DressedFaces) -> Iterator[Art]:
    """The colour and the picture of the whole net, under all panels but glue flaps and as far as bleed goes."""
    seen = [spread(panel.outline, (), BLEED) for panel in net.panels if panel.role is not Role.TAB]
    clip = Path(tuple(command for path in seen for command in path.commands))
    if faces.entry.colour:
        yield Filled(clip, faces.entry.colour)
    if faces.picture:
        box = Rect.around(point for panel in net.panels for point in panel.outline).grown(BLEED)
        picture = on_ground(faces.picture, faces.entry.colour or WHITE)
        yield Group((Pictured(picture, covering(picture, box)),), clip=clip)


def _sides_first(net: Net) -> Sequence[NetPanel]:
    """The panels that are sides of the box."""
    return [panel for panel in net.panels if panel.role in SIDES]


def _side(
    panel: NetPanel, net: Net, surface: Surface, faces: DressedFaces, words: Words
) -> tuple[Art, tuple[Problem, ...]]:
    """One side on the net, its head turned as the panel says."""
    size, to_net = upright(panel)
    reach = to_net.inverse.apply_to(_reach(panel, net))
    seen = Size(size.width, max(size.height - panel.covered, size.height / 10))
    dress = dress_surface(surface, seen, reach, words, faces.entry.colour)
    return Group((dress.art,), to_net), dress.problems


def upright(panel: NetPanel) -> tuple[Size, Transform]:
    """How large a side is as who turns the box sees it, and the way from there to the net."""
    rect = panel.rect
    size = rect.size.turned if panel.quarters % 2 else rect.size
    turned = Transform.quarter_turn(panel.quarters)
    around = turned.apply_to(Rect(0, 0, *size))
    return size, turned.moved(rect.x - around.x, rect.y - around.y)


def _reach(panel: NetPanel, net: Net) -> Rect:
    """A side with its bleed, which ends at the creases of other sides: their own print begins there."""
    rect = panel.rect
    others = [other.rect for other in net.panels if other is not panel and other.role in (*SIDES, Role.EDGE)]

    def bleed(strip: Rect) -> float:
        return 0.0 if any(strip.overlaps(other) for other in others) else BLEED

    fine = 0.01
    return rect.grown(
        bleed(Rect(rect.x - fine, rect.y, fine, rect.height)),
        bleed(Rect(rect.x, rect.y - fine, rect.width, fine)),
        bleed(Rect(rect.right, rect.y, fine, rect.height)),
        bleed(Rect(rect.x, rect.top, rect.width, fine)),
    )
