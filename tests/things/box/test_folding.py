"""Boxes folded in space, their card as thick as it is: nothing passes through anything, and what is to meet meets."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.geometry import Point, Rect
from bookmaker.ground.outlines import area_within
from bookmaker.sheets.flat import Role
from bookmaker.things.box.folding import Place, Pose, folded
from bookmaker.things.box.forms.form import BoxEntry
from bookmaker.things.box.forms.kinds import KINDS
from bookmaker.things.box.forms.tuck import TuckBox
from bookmaker.things.box.net import Card, Net, NetPanel, Room, Shown
from tests.kit.boxes import entry_of, kind_of
from tests.kit.slabs import Slab, brick, deepest, on_panel, overlap, slab_of

LAST = 99
"""After all steps."""

CLOSE = 0.02
"""Faces meet within so many mm of what was promised."""

FLAT_KINDS = ("envelope", "folder")

every_form = pytest.mark.parametrize("form", KINDS, ids=lambda form: form.__name__)
rooms = st.builds(Room, st.floats(6, 60), st.floats(6, 60), st.floats(4, 40))
cards = st.builds(Card, st.floats(0.15, 0.5), st.floats(0.0, 0.05))


def suited(form: type[BoxEntry], room: Room) -> Room:
    """A room as the form is made for: what lies in envelopes and folders is thin."""
    return room._replace(height=room.height / 20) if kind_of(form) in FLAT_KINDS else room


def slabs_of(net: Net, card: Card, step: int = LAST, share: float = 1.0) -> dict[str, Slab]:
    poses = folded(net, step, share)
    return {panel.name: slab_of(panel, poses[panel.name], card.caliper) for panel in net.panels}


def extent(slabs: Sequence[Slab]) -> tuple[float, ...]:
    corners = np.vstack([slab.corners for slab in slabs])
    return tuple(float(side) for side in corners.max(0) - corners.min(0))


@every_form
@settings(max_examples=6)
@given(room=rooms, card=cards)
def test_no_panel_passes_through_another_in_any_step(form: type[BoxEntry], room: Room, card: Card) -> None:
    room = suited(form, room)
    for net in entry_of(form).nets(room, card).nets:
        hang = {frozenset((panel.name, panel.hinge.to)) for panel in net.panels if panel.hinge}
        for step in net.steps:
            for share in (0.15, 0.5, 0.85, 1.0):
                found, which = deepest(slabs_of(net, card, step, share), hang)
                assert found < 1e-6, f"{which} in step {step}"


@every_form
@settings(max_examples=20)
@given(room=rooms, card=cards)
def test_the_room_inside_is_as_large_as_it_was_asked_for(form: type[BoxEntry], room: Room, card: Card) -> None:
    """A block of its size goes in; one a little larger touches walls on both sides of it."""
    room = suited(form, room)
    entry = entry_of(form)
    net = entry.nets(room, card).nets[0]
    slabs = slabs_of(net, card)
    low, high = place_of_room(entry, net, room, card)
    assert max(overlap(slab, brick(low, high)) for slab in slabs.values()) < 1e-6
    axes = {Role.LEFT: 0, Role.RIGHT: 0} if kind_of(form) not in FLAT_KINDS else {}
    for role, axis in axes.items():
        walls = [slabs[panel.name] for panel in net.panels if panel.role in (role, Role.TAB, Role.FLAP)]
        grown = [low[n] - (n == axis) * 0.02 for n in range(3)], [high[n] + (n == axis) * 0.02 for n in range(3)]
        assert max(overlap(wall, brick(*grown)) for wall in walls) > 0


def place_of_room(entry: BoxEntry, net: Net, room: Room, card: Card) -> tuple[list[float], list[float]]:
    """The corners of the room in the folded net, whose first panel keeps its place."""
    half = card.caliper / 2
    if net.shown is Shown.UPRIGHT:  # a tube: the front comes first, behind it the tucks
        front = -(3 * half + entry.play)
        return [half, half, front - room.width], [half + room.length, half + room.height, front]
    aside, deep = room.length / 2, room.width / 2
    return [-aside, -deep, -half - room.height], [aside, deep, -half]


@every_form
@settings(max_examples=20)
@given(room=rooms, card=cards)
def test_glue_flaps_lie_on_their_walls_a_film_apart(form: type[BoxEntry], room: Room, card: Card) -> None:
    room = suited(form, room)
    for net in entry_of(form).nets(room, card).nets:
        poses, slabs = folded(net, LAST), slabs_of(net, card)
        for flap, wall in net.glued:
            assert overlap(slabs[flap], slabs[wall]) == pytest.approx(-card.glue, abs=CLOSE)
            under = net.by_name[wall]
            assert parallel(poses[flap], poses[wall])
            for at in on_panel(poses[wall], slabs[flap].corners):
                assert within(under, at, slack=card.caliper + card.glue + 1e-6)


def parallel(one: Pose, other: Pose) -> bool:
    return bool(abs(abs(np.dot(np.array(one.z), np.array(other.z))) - 1) < 1e-9)


def within(panel: NetPanel, at: Point, slack: float) -> bool:
    """Whether a point lies in a convex panel, or hardly outside of it."""
    for start, end in pairwise([*panel.outline, panel.outline[0]]):
        length = ((end.x - start.x) ** 2 + (end.y - start.y) ** 2) ** 0.5
        left = (end.x - start.x) * (at.y - start.y) - (end.y - start.y) * (at.x - start.x)
        if left / length < -slack:
            return False
    return True


@every_form
@settings(max_examples=20)
@given(room=rooms, card=cards)
def test_a_folded_box_is_as_large_outside_as_it_says(form: type[BoxEntry], room: Room, card: Card) -> None:
    room = suited(form, room)
    entry = entry_of(form)
    found = entry.nets(room, card)
    length, width, height = extent([*slabs_of(found.nets[-1], card).values()])
    if found.nets[-1].shown is Shown.UPRIGHT:
        width, height = height, width
    expected = found.outside
    if kind_of(form) == "lidded box":  # its lid alone is not as high
        height = expected.height
    assert (length, width, height) == pytest.approx(expected, abs=1e-6)
    assert entry.around(found.outside, card) == pytest.approx(room, abs=1e-6)


@settings(max_examples=10)
@given(room=rooms, card=cards)
def test_the_lid_goes_on_with_its_play(room: Room, card: Card) -> None:
    """Base upright, the lid over it at ever lower heights: it touches nothing, and ends on the walls of the base."""
    entry = entry_of(next(form for form in KINDS if kind_of(form) == "lidded box"))
    base_net, lid_net = entry.nets(room, card).nets
    base = {name: slab.turned_over() for name, slab in slabs_of(base_net, card).items()}
    lid = slabs_of(lid_net, card)
    on = room.height + card.caliper
    for above in (room.height, room.height / 2, 1.0, 0.0):
        placed = [slab.moved(0, 0, on + above) for slab in lid.values()]
        assert max(overlap(one, other) for one in placed for other in base.values()) < 1e-6
    rests = lid["floor"].moved(0, 0, on)
    assert max(overlap(rests, base[wall]) for wall in ("front wall", "left wall")) == pytest.approx(0, abs=CLOSE)
    beside = overlap(lid["front wall"].moved(0, 0, on), base["front wall"])
    assert beside == pytest.approx(-entry.play, abs=CLOSE)
    at_end = max(overlap(lid[tab].moved(0, 0, on), base["right wall"]) for tab in ("front right tab", "back right tab"))
    assert at_end == pytest.approx(-entry.play, abs=CLOSE)


@settings(max_examples=10)
@given(room=rooms, card=cards)
def test_the_drawer_slides_in_its_sleeve_with_its_play(room: Room, card: Card) -> None:
    entry = entry_of(next(form for form in KINDS if kind_of(form) == "drawer box"))
    drawer_net, sleeve_net = entry.nets(room, card).nets
    drawer = {name: slab.turned_over() for name, slab in slabs_of(drawer_net, card).items()}
    sleeve = slabs_of(sleeve_net, card)
    high = room.height + card.caliper + 2 * entry.play
    for out in (room.length, room.length / 2, 1.0, 0.0):
        placed = [slab.moved(out, 0, entry.play - high) for slab in drawer.values()]
        assert max(overlap(one, other) for one in placed for other in sleeve.values()) < 1e-6
    for wall, other in (("front wall", "front"), ("floor", "glue flap"), ("back wall", "top")):
        gap = overlap(drawer[wall].moved(0, 0, entry.play - high), sleeve[other])
        assert gap == pytest.approx(-entry.play, abs=CLOSE)


STOOD = {
    Shown.PRINT_UP: lambda place: place,
    Shown.ON_FLOOR: lambda place: Place(place.x, -place.y, -place.z),
    Shown.UPRIGHT: lambda place: Place(place.x, -place.z, place.y),
}
"""How a folded net is set down to stand."""

OUTWARD = {
    Role.FRONT: (0, -1, 0),
    Role.BACK: (0, 1, 0),
    Role.LEFT: (-1, 0, 0),
    Role.RIGHT: (1, 0, 0),
    Role.TOP: (0, 0, 1),
    Role.BOTTOM: (0, 0, -1),
}


@pytest.mark.parametrize("form", [form for form in KINDS if kind_of(form) not in FLAT_KINDS], ids=kind_of)
def test_every_side_looks_its_way_and_stands_on_its_feet(form: type[BoxEntry]) -> None:
    """As who stands before the box sees it: left is left, and the heads of all walls are up."""
    for net in entry_of(form).nets(Room(30, 20, 12), Card(0.3, 0.03)).nets:
        poses, stood = folded(net, LAST), STOOD[net.shown]
        sides = [panel for panel in net.panels if panel.role in OUTWARD]
        assert len({panel.role for panel in sides}) == len(sides) or kind_of(form) == "hinged box"
        for panel in sides:
            pose = poses[panel.name]
            assert stood(pose.z) == pytest.approx(OUTWARD[panel.role], abs=1e-9), panel.name
            if panel.role not in (Role.TOP, Role.BOTTOM):
                heads = (pose.y, minus(pose.x), minus(pose.y), pose.x)
                assert stood(heads[panel.quarters]) == pytest.approx((0, 0, 1), abs=1e-9), panel.name


def minus(place: Place) -> Place:
    return Place(-place.x, -place.y, -place.z)


@every_form
@settings(max_examples=20)
@given(room=rooms, card=cards)
def test_the_flat_is_its_panels_and_no_more(form: type[BoxEntry], room: Room, card: Card) -> None:
    """Panels lie side by side: their areas are together that of the outline, and each crease is a fold."""
    room = suited(form, room)
    for net in entry_of(form).nets(room, card).nets:
        flat = net.flat("box", "card")
        panels = sum(area_within(panel.outline) for panel in net.panels)
        assert min(area_within(panel.outline) for panel in net.panels) > 0
        assert area_within(flat.outline) == pytest.approx(panels, rel=1e-4)
        assert Rect.around(flat.outline)[:2] == pytest.approx((0, 0), abs=1e-6)
        strips = [panel for panel in net.panels if panel.role is Role.EDGE and min(panel.rect.size) < 1]
        assert len(flat.folds) == sum(panel.hinge is not None for panel in net.panels) - len(strips)


@pytest.mark.parametrize("form", KINDS, ids=kind_of)
@pytest.mark.parametrize("high", [0.4, 12.0])
def test_the_steps_that_are_told_bend_every_crease_on_the_sheet_once(form: type[BoxEntry], high: float) -> None:
    """A strip so narrow that it has one crease is bent with what lies beyond it, and not told by itself."""
    for net in entry_of(form).nets(Room(30, 20, high), Card(0.1, 0.02)).nets:
        told = [panel.name for _, panels in net.creases for panel in panels]
        assert len(told) == len(set(told)) == len(net.flat("box", "card").folds)
        eased = {panel.hinge.eased[0] for panel in net.panels if panel.hinge and panel.hinge.eased}
        assert eased <= {step for step, _ in net.creases}


def test_a_pack_of_cards_stands_in_its_tuck_box() -> None:
    assert TuckBox.turned_to(entry_of(TuckBox), Room(7.4, 5.2, 3.1)) == Room(5.2, 3.1, 7.4)
