"""Allowances of boxes against the rule of the trade, one caliper from crease to crease and three around two walls.

From crease to crease a panel is the room inside and one caliper c; what goes round another panel is three calipers and
the play k on both sides larger than the room inside that (derived geometry; the same rule gives the published
clamshell of A. Krupp, "The Library Company's Corrugated Clamshell Box", *The Abbey Newsletter* 15(6), 1991, whose
boards are + c inside and + 3c around two walls). Here tabs are glued inside the end walls, which costs each wall that
meets them one caliper and a film of glue more.
"""

from __future__ import annotations

import pytest

from bookmaker.things.box.forms.drawer import sleeve_net
from bookmaker.things.box.forms.kinds import KINDS
from bookmaker.things.box.forms.tray import outside_of_tray, tray_net
from bookmaker.things.box.net import Card, Room
from tests.kit.boxes import entry_of, kind_of

CASES = (
    (Room(30, 20, 12), 0.3, (30.3, 20.3), 12.15, (31.3, 21.3), (21.2, 12.9), 12.3, (31.3, 20.8)),
    (Room(15, 10, 6), 0.2, (15.2, 10.2), 6.1, (16.0, 11.0), (10.9, 6.7), 6.2, (16.0, 10.6)),
)
"""A room, a caliper; then the floor of a tray between its creases, its wall, the top of a lid over it (k 0.2), the
middles of a sleeve over an open tray (k 0.15), the back wall of a hinged box and its lid (k 0.2), without tabs."""

GLUE = 0.03

every_case = pytest.mark.parametrize("case", CASES)
Case = tuple[
    Room, float, tuple[float, float], float, tuple[float, float], tuple[float, float], float, tuple[float, float]
]


@every_case
def test_a_tray_and_the_lid_over_it(case: Case) -> None:
    room, c, floor, wall, lid, *_ = case
    card = Card(c, GLUE)
    tab = card.layer
    base = tray_net("base", room, card, None).by_name
    assert base["floor"].rect.size == pytest.approx((floor[0] + 2 * tab, floor[1]))
    assert base["front wall"].rect.size == pytest.approx((floor[0], wall))
    outside = outside_of_tray(room, card)
    over = Room(outside.length + 0.4, outside.width + 0.4, 5)
    top = tray_net("lid", over, card, None, lid=True).by_name["floor"].rect
    assert top.size == pytest.approx((lid[0] + 4 * tab, lid[1]))


@every_case
def test_a_sleeve(case: Case) -> None:
    """The seam lies in the floor, so that the one side is a caliper and a film higher than the other."""
    room, c, _, _, _, sleeve, *_ = case
    card = Card(c, GLUE)
    drawer = outside_of_tray(room, card)
    clear = Room(drawer.length, drawer.width + 0.3, drawer.height + 0.3)
    net = sleeve_net(clear, card).by_name
    assert net["top"].rect.height == pytest.approx(sleeve[0])
    assert net["back"].rect.height == pytest.approx(sleeve[1])
    assert net["front"].rect.height == pytest.approx(sleeve[1] + card.layer)


@every_case
def test_a_lid_on_a_hinge(case: Case) -> None:
    room, c, _, _, _, _, back, lid = case
    card = Card(c, GLUE)
    entry = entry_of(next(form for form in KINDS if kind_of(form) == "hinged box"))
    (net,) = entry.nets(room, card).nets
    assert net.by_name["back wall"].rect.height == pytest.approx(back)
    assert net.by_name["lid"].rect.size == pytest.approx((lid[0] + 2 * card.layer, lid[1] + card.layer))
